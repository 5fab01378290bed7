using OilCondition.Charts.Drawing;
using OilCondition.Cleanup;
using ScottPlot;

namespace OilCondition.Charts.Pictures;

/// <summary>A cleanup curve alone with its readings, drawn. The curve does not know in which unit they are.</summary>
internal sealed class CurvePicture(Page page, CleanupCurve curve, double confidence)
{
    private readonly ChartTexts texts = page.Texts;

    public Scene Scene()
    {
        var title = texts["curve.title"];
        var readings = curve.FittedReadings;
        if (readings.Count == 0)
        {
            return Drawing.Scene.Nothing(title, texts["readings.none"]);
        }

        var time = page.Time(readings.Select(one => one.At).Append(curve.Origin));
        var flagged = new HashSet<int>(curve.FlaggedReadings);
        var curves = CurveLayers.Of(page, value => value, curve, time, confidence).ToList();
        List<Layer> layers =
        [
            .. curves.OfType<Shade>(),
            .. Marks("mark.reading", Ink.Black, MarkerShape.FilledCircle, isFlagged: false),
            .. Marks("curve.misfit", Ink.Purple, MarkerShape.OpenCircleWithEks, isFlagged: true),
            .. curves.OfType<Trace>(),
        ];
        IEnumerable<Layer> Marks(string key, Ink ink, MarkerShape shape, bool isFlagged) =>
            ReadingMarks.Of(
                page,
                value => value,
                texts[key],
                ink,
                shape,
                [
                    .. readings
                        .Where(one => flagged.Contains(one.Position) == isFlagged)
                        .Select(one => (one.At, one.Reading)),
                ]
            );
        var floor = page.Sentences.Number(curve.Floor, curve.ScatterAt(curve.Floor));
        return new Scene(
            title,
            [
                texts.Say(
                    "curve.told",
                    ("count", page.Sentences.Number(curve.Count)),
                    ("from", page.Minute(curve.FirstReadingAt)),
                    ("to", page.Minute(curve.LastReadingAt))
                ),
            ],
            time,
            NumberAxis.Around(
                texts["curve.unit"],
                readings.SelectMany(one => new[] { one.Reading.Value, one.Fitted }).Append(curve.Floor),
                false,
                texts,
                isFromZero: true
            )
        )
        {
            Layers = layers,
            Levels = [new LevelMark(curve.Floor, texts.Say("curve.floor", ("level", floor)), Ink.Grey, Dash.Long)],
        };
    }
}
