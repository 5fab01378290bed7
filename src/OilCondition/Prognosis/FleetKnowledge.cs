using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Prognosis;

/// <summary>What other machines' series of a measurand teach about one more machine: how fast it drifts and how large its random-walk part is.</summary>
/// <remarks>
/// Give the series of comparable machines on comparable duty, without the machine to be
/// forecast, or its readings count twice. Drifts are per day on the measurand's natural scale.
/// </remarks>
public sealed class FleetKnowledge
{
    private FleetKnowledge(Measurand measurand, int machines, DegradationPrior prior)
    {
        Measurand = measurand;
        Machines = machines;
        Prior = prior;
    }

    /// <summary>The measurand.</summary>
    public Measurand Measurand { get; }

    /// <summary>Machines with enough readings to learn from.</summary>
    public int Machines { get; }

    /// <summary>Whether there were enough of them; otherwise the default prior stands.</summary>
    public bool IsLearnt => Prior.KnowsDrift;

    /// <summary>What they teach; the default prior where they are too few.</summary>
    internal DegradationPrior Prior { get; }

    /// <summary>Learns from other machines.</summary>
    /// <param name="fleet">One series for each other machine, all of one measurand; at least one.</param>
    /// <returns>What they teach.</returns>
    /// <exception cref="ArgumentException">There is no series, or they are of several measurands.</exception>
    public static FleetKnowledge From(IReadOnlyList<MeasurandSeries> fleet)
    {
        if (Guard.NotNull(fleet).Count == 0)
        {
            throw new ArgumentException("fleet is empty; at least one series is required.", nameof(fleet));
        }

        var measurand = fleet[0].Measurand;
        if (fleet.Any(series => !series.Measurand.Equals(measurand)))
        {
            throw new ArgumentException($"fleet mixes measurands; all must be {measurand.Id}.", nameof(fleet));
        }

        var fits = fleet
            .Select(series => ScaledSeries.Of(series, measurand.Scale == NaturalScale.Logarithmic))
            .Select(scaled => Degradation.Fit(scaled.Days, scaled.Values))
            .Where(fit => fit.IsDetermined)
            .ToList();
        return new FleetKnowledge(measurand, fits.Count, DegradationFleet.Learn(fits));
    }
}
