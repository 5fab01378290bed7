using OilCondition.Prognosis;
using OilCondition.Tests.Sampling;
using OilCondition.Tests.Statistics;

namespace OilCondition.Tests.Prognosis;

/// <summary>Invented series for the tests of forecasts.</summary>
internal static class InventedSeries
{
    public static MeasurandSeries Of(Measurand measurand, double[] days, double[] values) =>
        Invented
            .History(values.Select((value, i) => Invented.Sample(i, days[i], (measurand, new Reading(value)))))
            .SampleSeries(measurand, Invented.Start, Invented.Start.AddDays(days[^1]));

    /// <summary>Acid number that wanders upward: 0.1 mg KOH/g and 0.1 a year on average.</summary>
    public static MeasurandSeries Wandering(int seed, int count = 10)
    {
        var random = new Random(seed);
        double state = 0.1;
        double[] days = [.. Enumerable.Range(0, count).Select(i => 60.0 * i)];
        return Of(
            Measurands.AcidNumber,
            days,
            [.. days.Select(day => day == 0 ? state : state += 0.016 + 0.005 * DecayNoiseSource.Normal(random))]
        );
    }

    public static DateTimeOffset End(MeasurandSeries series) => series.Points[^1].At;

    public static RemainingLife Default(MeasurandSeries series, double limit) =>
        LifeForecast.Of(series, limit, LimitSide.Upper, End(series));
}
