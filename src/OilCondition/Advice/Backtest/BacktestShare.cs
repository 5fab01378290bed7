using System.Globalization;
using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition;

/// <summary>A share with what its count leaves open: 5 of 8 is not 63 %, but anything from 29 to 89 %.</summary>
/// <remarks>
/// The interval is the one of Clopper and Pearson 1934. Where each of the things counts by a fraction, its lower end is that of the next whole
/// number below and its upper end that of the next one above.
/// </remarks>
public sealed class BacktestShare
{
    internal BacktestShare(double part, int count, double confidence)
    {
        // Sums of fractions such as 1/3 may miss a whole number by rounding.
        var whole = Math.Round(part);
        Part = Math.Abs(part - whole) < 1e-9 ? whole : part;
        Count = count;
        Interval =
            count == 0
                ? Interval.Without(IntervalOutcome.NotDetermined, confidence, IntervalSide.Both)
                : Interval.Between(
                    new IntervalCoverage((int)Math.Floor(Part), count).ShareInterval(confidence).Lower,
                    new IntervalCoverage((int)Math.Ceiling(Part), count).ShareInterval(confidence).Upper,
                    confidence
                );
    }

    /// <summary>How many of them; with a fraction where each counts by the share of its forecasts.</summary>
    public double Part { get; }

    /// <summary>Of how many.</summary>
    public int Count { get; }

    /// <summary>The share, 0 to 1; null of none.</summary>
    public double? Share => Count == 0 ? null : Part / Count;

    /// <summary>Where the true share may lie, 0 to 1; not determined of none.</summary>
    public Interval Interval { get; }

    /// <summary>Count, share and interval.</summary>
    /// <returns>For example <c>5 of 8, 63 % (29 to 89 %)</c>.</returns>
    public override string ToString() =>
        Share is { } share
            ? $"{PlainText.Tenths(Part)} of {Count}, {Percent(share)} % ({Percent(Interval.Lower!.Value)} to {Percent(Interval.Upper!.Value)} %)"
            : "none";

    /// <summary>A share in whole per cent, half a per cent upwards.</summary>
    internal static string Percent(double share) =>
        Math.Round(100 * share, MidpointRounding.AwayFromZero).ToString(CultureInfo.InvariantCulture);
}
