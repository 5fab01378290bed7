using OilCondition.Charts.Drawing;
using ScottPlot;

namespace OilCondition.Charts.Pictures;

/// <summary>Readings as marks: a value is a disc, a bound a triangle that points to where the true value lies.</summary>
internal static class ReadingMarks
{
    private const int Some = 60;
    private const int Many = 400;

    public static IEnumerable<Layer> Of(
        Page page,
        Func<double, double> height,
        string key,
        Ink ink,
        MarkerShape shape,
        IReadOnlyList<(DateTimeOffset At, Reading Reading)> readings
    )
    {
        var size =
            readings.Count > Many ? 4
            : readings.Count > Some ? 5.5f
            : 8;
        Marks Layer(string words, MarkerShape mark, Func<Reading, bool> which) =>
            new(
                words,
                ink,
                mark,
                [
                    .. readings
                        .Where(one => which(one.Reading))
                        .Select(one => new Spot(page.Days(one.At), height(one.Reading.Value))),
                ],
                size
            );
        Marks[] layers =
        [
            Layer(key, shape, reading => !reading.IsCensored),
            Layer(
                page.Texts.Say("mark.less-than", ("what", key)),
                MarkerShape.OpenTriangleDown,
                reading => reading.Qualifier == Qualifier.LessThan
            ),
            Layer(
                page.Texts.Say("mark.more-than", ("what", key)),
                MarkerShape.OpenTriangleUp,
                reading => reading.Qualifier == Qualifier.GreaterThan
            ),
        ];
        return layers.Where(layer => layer.Spots.Count > 0);
    }
}
