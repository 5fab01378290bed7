namespace OilCondition.Tests;

/// <summary>Three figures at once.</summary>
internal static class TupleAssertions
{
    public static void ShouldBe(
        this (double, double, double) actual,
        (double, double, double) expected,
        double tolerance
    )
    {
        actual.Item1.ShouldBe(expected.Item1, tolerance);
        actual.Item2.ShouldBe(expected.Item2, tolerance);
        actual.Item3.ShouldBe(expected.Item3, tolerance);
    }
}
