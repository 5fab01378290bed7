namespace OilCondition.Tests.Statistics;

/// <summary>Standard normal numbers from a seeded source (Box and Muller 1958).</summary>
internal static class DecayNoiseSource
{
    public static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
