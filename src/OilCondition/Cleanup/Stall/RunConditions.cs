using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>How a unit runs now: the oil in its chamber and the physical floor that this allows.</summary>
/// <remarks>
/// Floor p = S(T) y p_chamber / p_sat(T), with S: content at saturation and y: share of water in the gas of the chamber (1 without sweep air). Stated with
/// the oil as warm as it is, and as it would be at working temperature with the present vacuum: the difference is what the cold costs.
/// </remarks>
public sealed record RunConditions
{
    /// <summary>States the conditions by their figures.</summary>
    /// <param name="processTemperature">Oil temperature in the chamber, −60 to 200 °C.</param>
    /// <param name="workingTemperature">The temperature that was planned, −60 to 200 °C.</param>
    /// <param name="floor">Physical floor at the process temperature and the present vacuum, 0 to 500 000 mg/kg.</param>
    /// <param name="floorWhenWarm">Physical floor at the working temperature and the present vacuum, 0 to 500 000 mg/kg.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public RunConditions(
        Temperature processTemperature,
        Temperature workingTemperature,
        MassFraction floor,
        MassFraction floorWhenWarm
    )
    {
        OilTemperature.Celsius(processTemperature);
        OilTemperature.Celsius(workingTemperature);
        PhysicalRange.Water(floor);
        PhysicalRange.Water(floorWhenWarm);
        ProcessTemperature = processTemperature;
        WorkingTemperature = workingTemperature;
        Floor = floor;
        FloorWhenWarm = floorWhenWarm;
    }

    /// <summary>Oil temperature in the chamber.</summary>
    public Temperature ProcessTemperature { get; }

    /// <summary>The temperature that was planned.</summary>
    public Temperature WorkingTemperature { get; }

    /// <summary>Physical floor at the process temperature and the present vacuum.</summary>
    public MassFraction Floor { get; }

    /// <summary>Physical floor at the working temperature and the present vacuum.</summary>
    public MassFraction FloorWhenWarm { get; }

    /// <summary>Temperature and floor.</summary>
    /// <returns>For example <c>oil at 50 °C, floor 31 mg/kg; planned 60 °C, floor 25 mg/kg</c>.</returns>
    public override string ToString() =>
        $"oil at {PlainText.Number(ProcessTemperature.DegreesCelsius)} °C, floor {PlainText.Number(Floor.PartsPerMillion)} mg/kg; "
        + $"planned {PlainText.Number(WorkingTemperature.DegreesCelsius)} °C, floor {PlainText.Number(FloorWhenWarm.PartsPerMillion)} mg/kg";

    /// <summary>The conditions of a planned unit as its gauges read now.</summary>
    /// <param name="plan">The plan: oil, sweep air, vacuum pump, working temperature.</param>
    /// <param name="processTemperature">Oil temperature in the chamber, 0.01 to 200 °C.</param>
    /// <param name="chamberPressure">Absolute pressure in the chamber, 10 Pa to 110 kPa.</param>
    /// <returns>The conditions.</returns>
    /// <exception cref="ArgumentNullException">There is no plan.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static RunConditions Of(PurificationPlan plan, Temperature processTemperature, Pressure chamberPressure)
    {
        Guard.NotNull(plan);
        Guard.InRange(
            processTemperature.DegreesCelsius,
            0.01,
            OilTemperature.HighestCelsius,
            "°C",
            nameof(processTemperature)
        );
        Guard.InRange(chamberPressure.Pascals, 10, 110_000, "Pa", nameof(chamberPressure));
        var set = plan.Unit.Chamber;
        var chamber = new VacuumChamber(chamberPressure, set.Sweep, set.PumpCapacity, set.Condenser);
        var stage = new DehydrationStage(plan.Job.Oil.SaturationCurve, chamber);
        MassFraction FloorAt(double celsius) =>
            MassFraction.FromPartsPerMillion(
                1e6 * stage.SaturationAt(celsius) * Math.Min(1, stage.ActivityOver(0, celsius))
            );
        var working = plan.ProcessTemperature;
        return new RunConditions(
            processTemperature,
            working,
            FloorAt(processTemperature.DegreesCelsius),
            FloorAt(Math.Max(0.01, working.DegreesCelsius))
        );
    }
}
