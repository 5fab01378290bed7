using OilCondition.Charts.Drawing;
using OilCondition.Prognosis;

namespace OilCondition.Charts.Pictures;

/// <summary>From the end of the trend, or from the last reading, to the dates at which a limit is passed.</summary>
/// <param name="Layers">Shade, middle and the stretch on the limit.</param>
/// <param name="Limit">The limit, where it stands on the axis.</param>
internal sealed record ForecastFan(IReadOnlyList<Layer> Layers, double Limit)
{
    /// <summary>The fan of a life; null where there is none to be drawn.</summary>
    public static ForecastFan? Of(
        Page page,
        Shown shown,
        SeriesTrend trend,
        RemainingLife? life,
        Trace? line,
        TimeAxis time
    )
    {
        var points = trend.Judged.Points;
        if (life is not RemainingLife.Forecast forecast || points.Count == 0)
        {
            return null;
        }

        DateTimeOffset? At(double chance) => forecast.Crossing.TryAt(chance, out var at) ? at : null;
        var (p10, p50, p90) = (At(0.1), At(0.5), At(0.9));
        if (p10 is not { } early || page.Days(early) > time.To)
        {
            return null;
        }

        var last = points[points.Count - 1];
        var limit = shown.From(life.Limit);
        var start = new Spot(page.Days(last.At), shown.From(last.Reading.Value));
        if (line is { Spots: { Count: > 1 } spots })
        {
            var end = spots[spots.Count - 1];
            start = life.Side == LimitSide.Upper == end.Y < limit ? end : start;
        }

        var isLogarithmic = trend.Series.Measurand.Scale == NaturalScale.Logarithmic;
        var width = Math.Max(time.To - start.X, 1e-6);
        Spot Cut(DateTimeOffset? at)
        {
            var x = at is { } moment ? page.Days(moment) : start.X + 1e4 * width;
            return x <= time.To
                ? new Spot(Math.Max(x, start.X), limit)
                : new Spot(time.To, Between(start.Y, limit, (time.To - start.X) / (x - start.X), isLogarithmic));
        }

        var (first, latest) = (Cut(early), Cut(p90));
        var corner = new Spot(time.To, limit);
        var isWhole = latest.Y == limit;
        List<Layer> layers =
        [
            new Shade(
                page.Texts[p90 is null ? "forecast.open" : "forecast.dates"],
                Ink.PaleBlue,
                isWhole ? [start, first, latest] : [start, first, corner, latest]
            ),
        ];
        if (p50 is not null)
        {
            layers.Add(new Trace(page.Texts["forecast.middle"], Ink.Blue, Dash.Short, [start, Cut(p50)], 1.6f));
        }

        layers.Add(new Strokes(null, Ink.Blue, Dash.Solid, [new Stroke(first, isWhole ? latest : corner)], 5));
        return new ForecastFan(layers, limit);
    }

    private static double Between(double from, double to, double part, bool isLogarithmic) =>
        isLogarithmic && from > 0 && to > 0
            ? Math.Exp(Math.Log(from) + part * (Math.Log(to) - Math.Log(from)))
            : from + part * (to - from);
}
