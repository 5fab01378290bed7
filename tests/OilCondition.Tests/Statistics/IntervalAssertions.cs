namespace OilCondition.Tests;

/// <summary>Comparisons of the ends of intervals: an end that is missing equals only another that is missing.</summary>
internal static class IntervalAssertions
{
    public static void ShouldBe(this double? actual, double? expected, double? tolerance)
    {
        if (actual is { } one && expected is { } other)
        {
            one.ShouldBe(other, tolerance ?? 0);
            return;
        }

        actual.HasValue.ShouldBe(expected.HasValue, $"one end is missing: {actual} and {expected}");
    }

    public static void ShouldBeInRange(this double? actual, double from, double to) =>
        actual.ShouldNotBeNull().ShouldBeInRange(from, to);

    public static void ShouldBeLessThan(this double? actual, double? expected) =>
        actual.ShouldNotBeNull().ShouldBeLessThan(expected.ShouldNotBeNull());

    public static void ShouldBeGreaterThan(this double? actual, double? expected) =>
        actual.ShouldNotBeNull().ShouldBeGreaterThan(expected.ShouldNotBeNull());

    public static void ShouldBeGreaterThanOrEqualTo(this double? actual, double? expected) =>
        actual.ShouldNotBeNull().ShouldBeGreaterThanOrEqualTo(expected.ShouldNotBeNull());
}
