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
        Shown shown,
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
                        .Select(one => new Spot(page.Days(one.At), shown.From(one.Reading.Value))),
                ],
                size
            );
        Marks[] layers =
        [
            Layer(key, shape, reading => !reading.IsCensored),
            Layer(
                page.Texts.Say("{0}: less than (<)", key),
                MarkerShape.OpenTriangleDown,
                reading => reading.Qualifier == Qualifier.LessThan
            ),
            Layer(
                page.Texts.Say("{0}: more than (>)", key),
                MarkerShape.OpenTriangleUp,
                reading => reading.Qualifier == Qualifier.GreaterThan
            ),
        ];
        return layers.Where(layer => layer.Spots.Count > 0);
    }

    /// <summary>Readings that were set aside; nothing where there are none.</summary>
    public static IEnumerable<Layer> SetAside(Page page, Shown shown, IReadOnlyList<SeriesPoint> points) =>
        points.Count == 0
            ? []
            :
            [
                new Marks(
                    page.Texts.Say("set aside"),
                    Ink.Purple,
                    MarkerShape.OpenCircleWithEks,
                    [.. points.Select(point => new Spot(page.Days(point.At), shown.From(point.Reading.Value)))],
                    10
                ),
            ];

    /// <summary>What to know of where the marks stand.</summary>
    public static IEnumerable<string> Notes(
        Page page,
        Measurand measurand,
        IReadOnlyList<SeriesPoint> judged,
        IReadOnlyList<SeriesPoint> others
    )
    {
        if (judged.Any(point => point.Reading.Value != point.Reported.Value))
        {
            yield return page.Texts.Say("Dilution by top-ups is taken out of the readings.");
        }

        if (
            measurand.Scale == NaturalScale.Logarithmic
            && judged.Concat(others).Any(point => !(point.Reading.Value > 0))
        )
        {
            yield return page.Texts.Say("Readings of 0 stand at the foot of the scale.");
        }
    }
}
