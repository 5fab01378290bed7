using OilCondition.Charts.Drawing;
using OilCondition.Charts.Pictures;
using OilCondition.Text;
using OilCondition.Treatment;

namespace OilCondition.Charts;

/// <summary>The ways to treat an oil side by side, each with its interval of one and nine cases in ten.</summary>
public static class OptionsChart
{
    /// <summary>Hours from the begin of each option until it is done.</summary>
    /// <param name="decision">The decision.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart; one that says so where there is nothing to choose from.</returns>
    public static Chart OfHours(TreatmentDecision decision, ChartOptions? options = null) =>
        Of(decision, options, isCost: false);

    /// <summary>Hours of each treatment of a comparison, which has no machine and recommends none.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="options">Size, words; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart; one that says so where nothing is compared. A treatment that half of the cases do not get by has no bar.</returns>
    public static Chart OfHours(TreatmentComparison comparison, ChartOptions? options = null)
    {
        Guard.NotNull(comparison);
        options ??= ChartOptions.Default;
        return new Chart(new ComparisonPicture(options.Texts, comparison).Scene(), options);
    }

    /// <summary>Cost of each option, in the currency of the station.</summary>
    /// <param name="decision">The decision.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart; one that says so where there is nothing to choose from. Options without prices have no bar.</returns>
    public static Chart OfCost(TreatmentDecision decision, ChartOptions? options = null) =>
        Of(decision, options, isCost: true);

    private static Chart Of(TreatmentDecision decision, ChartOptions? options, bool isCost)
    {
        Guard.NotNull(decision);
        options ??= ChartOptions.Default;
        var page = Page.Of(options, decision.Assessment.Options.AsOf);
        return new Chart(new OptionsPicture(page, decision, isCost).Scene(), options);
    }
}
