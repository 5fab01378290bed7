using OilCondition.Statistics;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Prognosis;

/// <summary>How long oil charges, or parts, of a fleet have lasted: what is known of a machine that has no trend yet.</summary>
/// <remarks>Weibull distribution by maximum likelihood with suspensions, see <see cref="WeibullFit"/>; hours throughout.</remarks>
/// <example>
/// <code>
/// var fleet = FleetLife.From(agesAtFailure, agesStillInService);
/// var forecast = fleet.Forecast(Elapsed.FromHours(8000), asOf);
/// var chance = forecast.ChanceBefore(asOf.AddDays(180));
/// </code>
/// </example>
public sealed class FleetLife
{
    private FleetLife(WeibullFit fit)
    {
        Fit = fit;
    }

    /// <summary>The distribution, ages in hours; see its status.</summary>
    public WeibullFit Fit { get; }

    /// <summary>Whether there were enough failures to learn from.</summary>
    public bool IsDetermined => Fit.IsDetermined;

    /// <summary>Learns from a fleet.</summary>
    /// <param name="failures">Ages at which a limit was crossed or a part failed, above 0.</param>
    /// <param name="suspensions">Ages of those still in service or taken out for another reason, above 0.</param>
    /// <returns>What the fleet teaches.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An age is not above 0.</exception>
    public static FleetLife From(IReadOnlyList<TimeSpan> failures, IReadOnlyList<TimeSpan> suspensions) =>
        new(
            WeibullLife.Fit(
                [.. Guard.NotNull(failures).Select(age => age.TotalHours)],
                [.. Guard.NotNull(suspensions).Select(age => age.TotalHours)]
            )
        );

    /// <summary>The age by which a fraction has failed: 10 % for the B10 life.</summary>
    /// <param name="failedFraction">The fraction, above 0 and below 1.</param>
    /// <returns>The age.</returns>
    /// <exception cref="InvalidOperationException">The fleet taught too little.</exception>
    public TimeSpan AgeAt(Ratio failedFraction) => Elapsed.FromHours(Fit.AgeAt(failedFraction.DecimalFractions));

    /// <summary>Mean time left at an age.</summary>
    /// <param name="age">Age now, 0 or more.</param>
    /// <returns>The mean time left.</returns>
    /// <exception cref="InvalidOperationException">The fleet taught too little.</exception>
    public TimeSpan MeanResidualLife(TimeSpan age) =>
        Elapsed.FromHours(Fit.MeanResidualLife(Guard.NotNegative(age.TotalHours, "h", nameof(age))));

    /// <summary>When a unit of an age fails, given that it has not: estimates taken as true, so that the uncertainty of a small fleet is not in it.</summary>
    /// <param name="age">Age now, 0 or more.</param>
    /// <param name="asOf">Now; in the years 1900 to 2199.</param>
    /// <returns>Any quantile, and the chance by any date.</returns>
    /// <exception cref="InvalidOperationException">The fleet taught too little.</exception>
    public CrossingForecast Forecast(TimeSpan age, DateTimeOffset asOf)
    {
        var hours = Guard.NotNegative(age.TotalHours, "h", nameof(age));
        var law = CrossingLaw.Of(days => 1 - Fit.ConditionalReliability(hours, 24 * days), LifeForecast.HorizonDays);
        return new CrossingForecast(law, Guard.Moment(asOf), asOf);
    }

    /// <summary>The B10 life, or that too little is known.</summary>
    /// <returns>For example <c>a tenth fails within 12300 h</c>.</returns>
    public override string ToString() =>
        IsDetermined ? $"a tenth fails within {PlainText.Number(Fit.AgeAt(0.1))} h" : "too few failures to learn from";
}
