using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Prognosis;

/// <summary>What other machines' series of a measurand teach about one more machine: how much of its movement is random and how fast it drifts.</summary>
/// <remarks>
/// Each series is screened as in an assessment. Give those of comparable machines on comparable duty, without the machine to be
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
    public bool IsLearnt => Prior.Lesson is not null;

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
            .Select(series => SeriesTrend.Of(series))
            .Select(trend =>
                ScaledSeries.Of(trend.Judged, measurand.Scale == NaturalScale.Logarithmic, trend.Assessment.Cycle)
            )
            .Select(scaled => Degradation.Fit(scaled.Days, scaled.Values))
            .Where(fit => fit.IsDetermined)
            .ToList();
        return new FleetKnowledge(measurand, fits.Count, DegradationFleet.Learn(fits));
    }

    /// <summary>What it is about and whether enough was learnt.</summary>
    /// <returns>For example <c>acid number, learnt from 6 machines</c>.</returns>
    public override string ToString() =>
        $"{Measurand.Name}, {(IsLearnt ? "learnt" : "too little learnt")} from {Machines} machines";
}
