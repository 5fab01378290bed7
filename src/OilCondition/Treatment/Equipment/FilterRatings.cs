using OilCondition.Cleanliness;
using OilCondition.Text;

namespace OilCondition.Treatment;

/// <summary>The filtration ratios of a filter at the three sizes of ISO 4406, as in service: below those of the test.</summary>
public sealed record FilterRatings
{
    /// <summary>States the ratios.</summary>
    /// <param name="at4">At 4 µm(c).</param>
    /// <param name="at6">At 6 µm(c): no less than at 4.</param>
    /// <param name="at14">At 14 µm(c): no less than at 6.</param>
    /// <exception cref="ArgumentNullException">A ratio is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A filter would hold back large particles worse than small ones.</exception>
    public FilterRatings(FilterBeta at4, FilterBeta at6, FilterBeta at14)
    {
        At4 = Guard.NotNull(at4);
        At6 = Guard.NotNull(at6);
        At14 = Guard.NotNull(at14);
        Guard.InRange(at6.Value, at4.Value, 1e7, "(filtration ratio)", nameof(at6));
        Guard.InRange(at14.Value, at6.Value, 1e7, "(filtration ratio)", nameof(at14));
    }

    /// <summary>At 4 µm(c).</summary>
    public FilterBeta At4 { get; }

    /// <summary>At 6 µm(c).</summary>
    public FilterBeta At6 { get; }

    /// <summary>At 14 µm(c).</summary>
    public FilterBeta At14 { get; }

    /// <summary>The three ratios.</summary>
    /// <returns>For example <c>β 75/200/1000</c>, at 4, 6 and 14 µm(c).</returns>
    public override string ToString() =>
        $"β {PlainText.Number(At4.Value)}/{PlainText.Number(At6.Value)}/{PlainText.Number(At14.Value)}";
}
