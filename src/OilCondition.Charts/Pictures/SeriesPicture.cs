using OilCondition.Charts.Drawing;

namespace OilCondition.Charts.Pictures;

/// <summary>A trend alone, drawn: its readings, its line and the slopes that they allow. No machine, no limit and no date of today.</summary>
internal sealed class SeriesPicture(Page page, SeriesTrend trend)
{
    public Scene Scene()
    {
        var texts = page.Texts;
        var shown = new Shown(texts, trend.Series.Measurand);
        var readings = new TrendReadings(trend);
        if (!readings.Moments.Any())
        {
            return Drawing.Scene.Nothing(shown.Name, texts["readings.none"]);
        }

        var isLogarithmic = trend.Series.Measurand.Scale == NaturalScale.Logarithmic;
        var line = TrendLine.Of(page, shown, trend);
        var slopes = TrendLine.Slopes(page, shown, trend);
        List<Layer> marks = [.. readings.Layers(page, shown)];
        return new Scene(
            shown.Name,
            [
                texts.Say("trend.told-alone", ("measurand", shown.Name), ("trend", page.Sentences.Of(trend))),
                .. readings.Notes(texts, isLogarithmic),
            ],
            page.Time(readings.Moments),
            NumberAxis.Around(
                shown.Label,
                marks
                    .OfType<Marks>()
                    .SelectMany(layer => layer.Spots)
                    .Concat(line?.Spots ?? [])
                    .Concat(slopes?.Outline ?? [])
                    .Select(spot => spot.Y),
                isLogarithmic,
                texts
            )
        )
        {
            Layers =
            [
                .. slopes is null ? [] : new Layer[] { slopes },
                .. marks,
                .. line is null ? [] : new Layer[] { line },
            ],
        };
    }
}
