using OilCondition.Prognosis;
using OilCondition.Statistics;

namespace OilCondition;

/// <summary>One stretch of one measurand against one limit: whether it was crossed, and how good the forecasts were that ran to it.</summary>
/// <remarks>Forecasts of one stretch are one series refitted, so that together they count once (Saxena and others 2010).</remarks>
internal sealed class LimitEpisode(
    Measurand measurand,
    LimitSide side,
    double limit,
    IReadOnlyList<SeriesPoint> points,
    DateTimeOffset lastReadingAt
)
{
    /// <summary>Forecasts are held against their 5 to 95 % interval.</summary>
    private const double Tail = 0.05;

    private readonly List<CrossedForecast> crossed = [];
    private readonly List<double> chancesByEnd = [];
    private readonly List<(double Chance, bool Came)> withinHorizon = [];

    public Measurand Measurand => measurand;

    public LimitSide Side => side;

    public double Limit => limit;

    public string Subject { get; } = ProblemIdentity.Of(measurand, side).ToString();

    /// <summary>The first reading, with which the stretch begins.</summary>
    public SeriesPoint Begin => points[0];

    /// <summary>Whether the first reading lay beyond the limit: it was never seen inside, and did not cross.</summary>
    public bool BegunBeyond => IsBeyond(points[0]);

    /// <summary>The first reading beyond the limit; null when there is none, or when the stretch began there.</summary>
    public SeriesPoint? Crossing { get; } =
        points[0].Reading.IsBeyond(limit, side)
            ? null
            : points.FirstOrDefault(point => point.Reading.IsBeyond(limit, side));

    public bool HasCrossedForecasts => crossed.Count > 0;

    public double HeldShare => crossed.Average(one => one.Chance is >= Tail and <= 1 - Tail ? 1.0 : 0);

    /// <summary>Share of forecasts before whose interval the crossing came.</summary>
    public double BeforeShare => crossed.Average(one => one.Chance < Tail ? 1.0 : 0);

    /// <summary>Share of forecasts after whose interval the crossing came.</summary>
    public double AfterShare => crossed.Average(one => one.Chance > 1 - Tail ? 1.0 : 0);

    /// <summary>Median width of the intervals in days; infinite where most have no latest date.</summary>
    public double MedianWidthDays => Middle(crossed.Select(one => one.WidthDays));

    public double MeanScoreDays => crossed.Average(one => one.ScoreDays);

    /// <summary>Whether forecasts were made and the limit was not crossed as long as the stretch lasted.</summary>
    public bool IsStillRunning => chancesByEnd.Count > 0;

    /// <summary>Mean stated chance of a crossing up to the last reading.</summary>
    public double MeanChanceByEnd => chancesByEnd.Average();

    /// <summary>Share of forecasts whose interval had passed by the last reading.</summary>
    public double PastShare => chancesByEnd.Average(chance => chance > 1 - Tail ? 1.0 : 0);

    public bool HasHorizonForecasts => withinHorizon.Count > 0;

    public double MeanChanceWithinHorizon => withinHorizon.Average(one => one.Chance);

    public double CameWithinHorizonShare => withinHorizon.Average(one => one.Came ? 1.0 : 0);

    /// <summary>The middle one, or the mean of the middle two.</summary>
    public static double Middle(IEnumerable<double> values)
    {
        var ordered = values.OrderBy(value => value).ToList();
        var half = ordered.Count / 2;
        return ordered.Count % 2 == 1 ? ordered[half] : (ordered[half - 1] + ordered[half]) / 2;
    }

    /// <summary>Takes what was forecast on a day of this stretch.</summary>
    public void Take(CrossingForecast forecast, DateTimeOffset day, DateTimeOffset horizon)
    {
        if (BegunBeyond || Crossing?.At <= day)
        {
            return;
        }

        var end = points[points.Count - 1].At;
        if (Crossing is { } crossing)
        {
            crossed.Add(CrossedForecast.Of(forecast, day, crossing.At));
        }
        else
        {
            chancesByEnd.Add(forecast.ChanceBefore(end));
        }

        // Only days whose whole horizon the record can show: whether a day counts must not depend on whether the crossing came.
        if (horizon <= lastReadingAt && (Crossing is not null || horizon <= end))
        {
            withinHorizon.Add((forecast.ChanceBefore(horizon), Crossing?.At <= horizon));
        }
    }

    private bool IsBeyond(SeriesPoint point) => point.Reading.IsBeyond(limit, side);

    private readonly record struct CrossedForecast(double Chance, double WidthDays, double ScoreDays)
    {
        public static CrossedForecast Of(CrossingForecast forecast, DateTimeOffset day, DateTimeOffset crossingAt)
        {
            // For the score an end that is not reached within the years that a forecast looks ahead counts as their end.
            var lower = forecast.TryAt(Tail, out var p5) ? (p5 - day).TotalDays : LifeForecast.HorizonDays;
            var isBounded = forecast.TryAt(1 - Tail, out var p95);
            var upper = isBounded ? Math.Max(lower, (p95 - day).TotalDays) : LifeForecast.HorizonDays;
            return new(
                forecast.ChanceBefore(crossingAt),
                isBounded ? upper - lower : double.PositiveInfinity,
                ForecastScore.Interval(lower, Math.Max(lower, upper), (crossingAt - day).TotalDays, 1 - 2 * Tail)
            );
        }
    }
}
