using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Cleanliness;

/// <summary>The filtration ratio of a filter at one size.</summary>
/// <remarks>
/// <para>β = n_up/n_down; efficiency e = 1 − 1/β. n_up, n_down: cumulative counts at the size before and after the filter, per mL.</para>
/// <para>
/// A ratio belongs to its size and to its test. In service it is lower (flow ripple, bypass, ageing: common practice, no source), and
/// above about 1000 so few particles are left downstream that the ratio is unstable.
/// </para>
/// <para>Source: the definition in ISO 16889 (seen in secondary reproductions).</para>
/// </remarks>
/// <example><code>new FilterBeta(200).Efficiency.Percent; // 99.5</code></example>
public sealed record FilterBeta
{
    /// <summary>A filtration ratio.</summary>
    /// <param name="beta">Above 1 (at 1 nothing is held back), to 10⁷.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ratio lies outside 1.000001 to 10⁷.</exception>
    public FilterBeta(double beta) => Value = Guard.InRange(beta, 1.000001, 1e7, "(filtration ratio)");

    /// <summary>β.</summary>
    public double Value { get; }

    /// <summary>Share of the particles that the filter holds back, 1 − 1/β.</summary>
    public Ratio Efficiency => Ratio.FromDecimalFractions(1 - (1 / Value));

    /// <summary>The ratio of two counts, or of two columns of counts over a test.</summary>
    /// <remarks>The counts are averaged first and then divided (ISO 16889, from memory); the mean of ratios is biased high.</remarks>
    /// <param name="upstreamPerMillilitre">Counts before the filter, per mL, at equal intervals.</param>
    /// <param name="downstreamPerMillilitre">Counts after it, as many.</param>
    /// <returns>The ratio.</returns>
    /// <exception cref="ArgumentException">
    /// The columns are empty or differ in length, a count is negative or not finite, none was counted downstream, or no more were counted
    /// upstream than downstream.
    /// </exception>
    public static FilterBeta FromCounts(
        ReadOnlySpan<double> upstreamPerMillilitre,
        ReadOnlySpan<double> downstreamPerMillilitre
    )
    {
        Guard.SameLength(
            downstreamPerMillilitre.Length,
            upstreamPerMillilitre.Length,
            nameof(downstreamPerMillilitre),
            nameof(upstreamPerMillilitre)
        );
        double upstream = 0;
        double downstream = 0;
        for (var i = 0; i < upstreamPerMillilitre.Length; i++)
        {
            upstream += Guard.NotNegative(upstreamPerMillilitre[i], "per mL", nameof(upstreamPerMillilitre));
            downstream += Guard.NotNegative(downstreamPerMillilitre[i], "per mL", nameof(downstreamPerMillilitre));
        }

        // The number of counts is the same on both sides and cancels.
        return downstream > 0
            ? new FilterBeta(upstream / downstream)
            : throw new ArgumentException(
                "No particle was counted downstream; a ratio needs at least one.",
                nameof(downstreamPerMillilitre)
            );
    }

    /// <summary>What one pass leaves of a count, n/β.</summary>
    /// <param name="countPerMillilitre">Cumulative count before the filter.</param>
    /// <returns>Cumulative count after it, per mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The count is negative or not finite.</exception>
    public double Downstream(double countPerMillilitre) => Guard.NotNegative(countPerMillilitre, "per mL") / Value;

    /// <summary>The ratio.</summary>
    /// <returns>For example <c>β 200</c>.</returns>
    public override string ToString() => $"β {PlainText.Number(Value)}";
}
