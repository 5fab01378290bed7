using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>One row of a comparison: what a treatment reaches here, how long it takes, what it needs, or why it is ruled out.</summary>
public sealed class TreatmentAssessment
{
    /// <summary>States a row. Name the arguments that have a default.</summary>
    /// <param name="treatment">The treatment.</param>
    /// <param name="water">Whether and when the water target is reached.</param>
    /// <param name="particles">Whether and when the code is reached.</param>
    /// <param name="waterFloor">Lowest water that it can reach here without ingress.</param>
    /// <param name="runTime">How long it runs for the parts that it reaches, 0 or more.</param>
    /// <param name="heat">Heat to the oil in that time, 0 or more.</param>
    /// <param name="electricity">Electricity for motors in that time, 0 or more.</param>
    /// <param name="waterRemoved">Water taken out in that time, at 20 °C, 0 or more.</param>
    /// <param name="elements">Elements used up, 0 or more.</param>
    /// <param name="newOil">New oil, 0 or more.</param>
    /// <param name="cautions">What can hurt someone; null for none named.</param>
    /// <exception cref="ArgumentNullException">Treatment or a forecast is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure lies outside its range.</exception>
    public TreatmentAssessment(
        ITreatment treatment,
        TargetForecast water,
        TargetForecast particles,
        MassFraction waterFloor,
        TimeSpan runTime = default,
        Energy heat = default,
        Energy electricity = default,
        Volume waterRemoved = default,
        int elements = 0,
        Volume newOil = default,
        IReadOnlyList<Caution>? cautions = null
    )
    {
        Treatment = Guard.NotNull(treatment);
        Water = Guard.NotNull(water);
        Particles = Guard.NotNull(particles);
        PhysicalRange.Water(waterFloor);
        Guard.InRange(runTime.TotalHours, 0, 1e9, "h", nameof(runTime));
        Guard.InRange(heat.KilowattHours, 0, 1e12, "kWh", nameof(heat));
        Guard.InRange(electricity.KilowattHours, 0, 1e12, "kWh", nameof(electricity));
        Guard.InRange(waterRemoved.Liters, 0, 1e12, "L", nameof(waterRemoved));
        Elements = (int)Guard.InRange(elements, 0, 1e9, "elements");
        Guard.InRange(newOil.Liters, 0, 1e12, "L", nameof(newOil));
        WaterFloor = waterFloor;
        RunTime = runTime;
        Heat = heat;
        Electricity = electricity;
        WaterRemoved = waterRemoved;
        NewOil = newOil;
        Cautions = cautions ?? [];
        Forecast = TargetForecast.Of(water, particles);
    }

    /// <summary>The treatment.</summary>
    public ITreatment Treatment { get; }

    /// <summary>Whether and when the water target is reached.</summary>
    public TargetForecast Water { get; }

    /// <summary>Whether and when the code is reached.</summary>
    public TargetForecast Particles { get; }

    /// <summary>Whether and when all that was asked is reached; else why not.</summary>
    public TargetForecast Forecast { get; }

    /// <summary>Whether all that was asked is reached.</summary>
    public bool MeetsTarget => Forecast.IsMet;

    /// <summary>Lowest water that it can reach here without ingress.</summary>
    public MassFraction WaterFloor { get; }

    /// <summary>How long it runs for the parts that it reaches.</summary>
    public TimeSpan RunTime { get; }

    /// <summary>Heat to the oil in that time.</summary>
    public Energy Heat { get; }

    /// <summary>Electricity for motors in that time.</summary>
    public Energy Electricity { get; }

    /// <summary>Water taken out in that time, at 20 °C.</summary>
    public Volume WaterRemoved { get; }

    /// <summary>Elements used up.</summary>
    public int Elements { get; }

    /// <summary>New oil; as much used oil is waste.</summary>
    public Volume NewOil { get; }

    /// <summary>What can hurt someone.</summary>
    public IReadOnlyList<Caution> Cautions { get; }

    /// <summary>What it costs at the user's own prices.</summary>
    /// <param name="prices">The prices.</param>
    /// <returns>A row for each thing that is used; none is invented.</returns>
    /// <exception cref="ArgumentNullException">The prices are null.</exception>
    public TreatmentCost CostAt(TreatmentPrices prices) => new(this, Guard.NotNull(prices));
}
