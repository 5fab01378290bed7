using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Cleanup;

/// <summary>Invented runs with a known truth and seeded scatter.</summary>
public static class Runs
{
    public static DateTimeOffset At(double hour) => Invented.Start.AddHours(hour);

    public static DateTimeOffset[] Moments(IEnumerable<double> hours) => [.. hours.Select(At)];

    public static double[] Evenly(int count, double span) =>
        [.. Enumerable.Range(0, count).Select(i => span * i / (count - 1))];

    public static double Exponential(double hour, double start, double floor, double rate) =>
        floor + (start - floor) * Math.Exp(-rate * hour);

    /// <summary>Standard normal deviate (Box and Muller).</summary>
    public static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
