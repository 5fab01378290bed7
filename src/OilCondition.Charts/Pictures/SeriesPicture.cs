using OilCondition.Charts.Drawing;
using ScottPlot;

namespace OilCondition.Charts.Pictures;

/// <summary>A trend alone, drawn: its readings, its line and the slopes that they allow. No machine, no limit and no date of today.</summary>
internal sealed class SeriesPicture(Page page, SeriesTrend trend)
{
    private readonly ChartTexts texts = page.Texts;
    private readonly Measurand measurand = trend.Series.Measurand;
    private readonly Shown shown = Shown.Of(trend.Series.Measurand.Unit, page.Units);

    public Scene Scene()
    {
        var name = texts.Name(measurand.Name);
        var (judged, setAside) = (trend.Judged.Points, trend.Judged.LeftOut);
        SeriesPoint[] all = [.. judged, .. setAside];
        if (all.Length == 0)
        {
            return Drawing.Scene.Nothing(name, texts.Say("No readings."));
        }

        var from = all.Min(point => point.At);
        var line = TrendLayers.Line(page, shown, trend, from);
        var slopes = TrendLayers.Slopes(page, shown, trend, from);
        var isLogarithmic = measurand.Scale == NaturalScale.Logarithmic;
        List<Layer> layers =
        [
            .. slopes is null ? [] : new Layer[] { slopes },
            .. ReadingMarks.Of(
                page,
                shown,
                texts.Say("reading"),
                Ink.Black,
                MarkerShape.FilledCircle,
                [.. judged.Select(point => (point.At, point.Reading))]
            ),
            .. ReadingMarks.SetAside(page, shown, setAside),
            .. line is null ? [] : new Layer[] { line },
        ];
        var unit = shown.Unit.Length == 0 ? "" : $", {texts.Name(shown.Unit)}";
        return new Scene(
            name,
            [
                texts.Say("{0}: {1}", name, TrendLayers.Verdict(page, shown, trend)) + ".",
                .. ReadingMarks.Notes(page, measurand, judged, setAside),
            ],
            page.Time(all.Select(point => point.At)),
            NumberAxis.Around(
                name + unit,
                [
                    .. all.Select(point => shown.From(point.Reading.Value)),
                    .. (line?.Spots ?? []).Concat(slopes?.Outline ?? []).Select(spot => spot.Y),
                ],
                isLogarithmic,
                texts
            )
        )
        {
            Layers = layers,
        };
    }
}
