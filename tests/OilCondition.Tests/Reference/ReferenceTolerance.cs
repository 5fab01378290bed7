using System.Globalization;

namespace OilCondition.Tests.Reference;

/// <summary>
/// A tolerance as the reference files write it: <c>rel x</c>, <c>abs x</c>, <c>exact</c>, a plain number (absolute), <c>x %</c> (relative).
/// </summary>
public readonly record struct ReferenceTolerance(bool IsRelative, double Size)
{
    /// <summary>Room for the rounding of one operation, since 'exact' is said of decimal figures.</summary>
    private const double Rounding = 1e-12;

    public static ReferenceTolerance Parse(string text)
    {
        var trimmed = text.Trim();
        if (trimmed == "exact")
        {
            return new ReferenceTolerance(IsRelative: true, Rounding);
        }

        if (trimmed.StartsWith("rel ", StringComparison.Ordinal))
        {
            return new ReferenceTolerance(IsRelative: true, Read(trimmed[4..]));
        }

        if (trimmed.StartsWith("abs ", StringComparison.Ordinal))
        {
            return new ReferenceTolerance(IsRelative: false, Read(trimmed[4..]));
        }

        return trimmed.EndsWith('%')
            ? new ReferenceTolerance(IsRelative: true, Read(trimmed[..^1]) / 100)
            : new ReferenceTolerance(IsRelative: false, Read(trimmed));
    }

    public double AllowedDifference(double expected) =>
        (IsRelative ? Size * Math.Abs(expected) : Size) + Rounding * Math.Abs(expected);

    private static double Read(string number) => double.Parse(number, NumberStyles.Float, CultureInfo.InvariantCulture);
}
