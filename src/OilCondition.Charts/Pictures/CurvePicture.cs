using OilCondition.Charts.Drawing;
using OilCondition.Cleanup;
using ScottPlot;

namespace OilCondition.Charts.Pictures;

/// <summary>A cleanup curve alone with its readings, drawn. The curve does not know in which unit they are.</summary>
internal sealed class CurvePicture(Page page, CleanupCurve curve, double confidence)
{
    private readonly ChartTexts texts = page.Texts;
    private readonly Shown shown = new("");

    public Scene Scene()
    {
        var title = texts.Say("Cleanup curve");
        var readings = curve.FittedReadings;
        if (readings.Count == 0)
        {
            return Drawing.Scene.Nothing(title, texts.Say("No readings."));
        }

        var time = page.Time(readings.Select(one => one.At).Append(curve.Origin));
        var flagged = new HashSet<int>(curve.FlaggedReadings);
        var curves = CurveLayers.Of(page, shown, curve, time, confidence).ToList();
        List<Layer> layers =
        [
            .. curves.OfType<Shade>(),
            .. Marks("reading", Ink.Black, MarkerShape.FilledCircle, isFlagged: false),
            .. Marks("does not fit the others", Ink.Purple, MarkerShape.OpenCircleWithEks, isFlagged: true),
            .. curves.OfType<Trace>(),
        ];
        IEnumerable<Layer> Marks(string key, Ink ink, MarkerShape shape, bool isFlagged) =>
            ReadingMarks.Of(
                page,
                shown,
                texts.Say(key),
                ink,
                shape,
                [
                    .. readings
                        .Where(one => flagged.Contains(one.Position) == isFlagged)
                        .Select(one => (one.At, one.Reading)),
                ]
            );
        var floor = texts.Say("floor {0}", texts.Number(curve.Floor, curve.ScatterAt(curve.Floor)));
        return new Scene(
            title,
            [
                texts.Say(
                    "{0} readings from {1} to {2}.",
                    texts.Count(curve.Count),
                    page.Minute(curve.FirstReadingAt),
                    page.Minute(curve.LastReadingAt)
                ),
            ],
            time,
            NumberAxis.Around(
                texts.Say("unit of the readings"),
                readings.SelectMany(one => new[] { one.Reading.Value, one.Fitted }).Append(curve.Floor),
                false,
                texts,
                isFromZero: true
            )
        )
        {
            Layers = layers,
            Levels = [new LevelMark(curve.Floor, floor, Ink.Grey, Dash.Long)],
        };
    }
}
