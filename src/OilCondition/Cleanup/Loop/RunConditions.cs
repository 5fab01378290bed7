using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>How a unit runs now, as its gauges read, and the physical floor that this allows.</summary>
/// <remarks>
/// Floor p = S(T) y p_chamber / p_sat(T), with S: content at saturation and y: share of water in the gas of the chamber (1 without sweep air). Stated with
/// the oil as warm as it is, and as it would be at working temperature with the present vacuum: the difference is what the cold costs.
/// <para>
/// Only conditions <see cref="Of"/> a plan know what else a level could come from: sweep air that does not flow, a gauge that reads wrong. What is read
/// besides (sweep air, oil flow, condensate, a second gauge) tells them apart.
/// </para>
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

    /// <summary>Absolute pressure in the chamber, as read; null where only floors were stated.</summary>
    public Pressure? ChamberPressure { get; private init; }

    /// <summary>Dry sweep air, as read; null where it was not.</summary>
    public MassFlow? SweepAir { get; private init; }

    /// <summary>Oil flow, as read; null where it was not.</summary>
    public VolumeFlow? OilFlow { get; private init; }

    /// <summary>Water that is collected an hour; null where it was not measured.</summary>
    public MassFlow? CondensateFlow { get; private init; }

    /// <summary>Whether a second gauge reads the same pressure.</summary>
    public bool IsPressureConfirmed { get; private init; }

    /// <summary>Whether a second thermometer reads the same temperature.</summary>
    public bool IsTemperatureConfirmed { get; private init; }

    /// <summary>What the plan's physics says of any state; null where only floors were stated.</summary>
    internal RunPhysics? Physics { get; private init; }

    /// <summary>The state that the gauges read; what is not read is as planned.</summary>
    internal UnitState State { get; private init; }

    /// <summary>Temperature and floor.</summary>
    /// <returns>For example <c>oil at 50 °C, floor 31 mg/kg; planned 60 °C, floor 25 mg/kg</c>.</returns>
    public override string ToString() =>
        $"oil at {PlainText.Number(ProcessTemperature.DegreesCelsius)} °C, floor {PlainText.Number(Floor.PartsPerMillion)} mg/kg; "
        + $"planned {PlainText.Number(WorkingTemperature.DegreesCelsius)} °C, floor {PlainText.Number(FloorWhenWarm.PartsPerMillion)} mg/kg";

    /// <summary>The conditions of a planned unit as its gauges read now. Name the arguments that have a default.</summary>
    /// <param name="plan">The plan: oil, sweep air, vacuum pump, working temperature.</param>
    /// <param name="processTemperature">Oil temperature in the chamber, 0.01 to 200 °C.</param>
    /// <param name="chamberPressure">Absolute pressure in the chamber, 10 Pa to 110 kPa.</param>
    /// <param name="sweepAir">Dry sweep air as its own meter reads, 0 to 10⁶ kg/h; null where it is not read.</param>
    /// <param name="flow">Oil flow as measured, 0 to 10⁹ L/h; null where it is not read.</param>
    /// <param name="condensateFlow">Water collected an hour while the content hardly moves, 0 to 10⁶ kg/h; null where it is not measured.</param>
    /// <param name="pressureConfirmed">Whether a second gauge reads the same pressure.</param>
    /// <param name="temperatureConfirmed">Whether a second thermometer reads the same temperature.</param>
    /// <returns>The conditions.</returns>
    /// <exception cref="ArgumentNullException">There is no plan.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static RunConditions Of(
        PurificationPlan plan,
        Temperature processTemperature,
        Pressure chamberPressure,
        MassFlow? sweepAir = null,
        VolumeFlow? flow = null,
        MassFlow? condensateFlow = null,
        bool pressureConfirmed = false,
        bool temperatureConfirmed = false
    )
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
        Guard.InRange(sweepAir?.KilogramsPerHour ?? 0, 0, 1e6, "kg/h", nameof(sweepAir));
        Guard.InRange(flow?.LitersPerHour ?? 0, 0, 1e9, "L/h", nameof(flow));
        Guard.InRange(condensateFlow?.KilogramsPerHour ?? 0, 0, 1e6, "kg/h", nameof(condensateFlow));
        var physics = new RunPhysics(plan);
        var plannedSweep = plan.Unit.Chamber.Sweep.DryAir.KilogramsPerHour;

        // More sweep air than planned is taken as planned: a plan says nothing of what its pump makes of it.
        var state = new UnitState(
            processTemperature.DegreesCelsius,
            chamberPressure.Pascals,
            sweepAir is { } air && plannedSweep > 0 ? Math.Min(1, air.KilogramsPerHour / plannedSweep) : 1,
            flow is { } measured ? measured.LitersPerHour / plan.End.Flow.LitersPerHour : 1
        );
        var working = plan.ProcessTemperature;
        return new RunConditions(
            processTemperature,
            working,
            MassFraction.FromPartsPerMillion(physics.Floor(state)),
            MassFraction.FromPartsPerMillion(physics.Floor(state with { Celsius = working.DegreesCelsius }))
        )
        {
            ChamberPressure = chamberPressure,
            SweepAir = sweepAir,
            OilFlow = flow,
            CondensateFlow = condensateFlow,
            IsPressureConfirmed = pressureConfirmed,
            IsTemperatureConfirmed = temperatureConfirmed,
            Physics = physics,
            State = state,
        };
    }
}
