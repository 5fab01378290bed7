using OilCondition.Text;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>What sets the time and the floor of a vacuum dehydration: each knob turned by itself, the one that is worth most on top.</summary>
/// <remarks>
/// Each row is a whole plan with one thing changed, so that a heater that no longer follows, a vacuum pump that is too small or a temperature limit show.
/// Caution: more heat and more vacuum take light ends and additives out of the oil, and bring hot film and vapour nearer to their limits: the makers of
/// oil, seals and unit decide how far a knob may be turned.
/// </remarks>
public sealed class PlanSensitivity
{
    private PlanSensitivity(PurificationPlan plan, IReadOnlyList<KnobEffect> rows)
    {
        Plan = plan;
        Rows = rows;
    }

    /// <summary>The plan as it is.</summary>
    public PurificationPlan Plan { get; }

    /// <summary>The rows: what makes the target reachable first, then by time saved, then by the fall of the level.</summary>
    public IReadOnlyList<KnobEffect> Rows { get; }

    /// <summary>Turns each knob.</summary>
    /// <param name="job">The task.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="change">Relative change of flow, heater power, pressure, sweep air and ingress, 0.01 to 0.9; null for 0.25.</param>
    /// <param name="warmer">Rise of the process temperature, 0.1 to 50 K; null for 5 K.</param>
    /// <returns>The table. A knob that cannot be turned, such as ingress where none is, has no row.</returns>
    /// <exception cref="ArgumentNullException">Job or unit is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A change lies outside its range.</exception>
    public static PlanSensitivity Of(
        TreatmentJob job,
        PurificationUnit unit,
        Ratio? change = null,
        TemperatureDelta? warmer = null
    )
    {
        Guard.NotNull(job);
        Guard.NotNull(unit);
        var share = Guard.InRange(change?.DecimalFractions ?? 0.25, 0.01, 0.9, "(ratio)", nameof(change));
        var kelvins = Guard.InRange(warmer?.Kelvins ?? 5, 0.1, 50, "K", nameof(warmer));
        var plan = Planned(job, unit);
        List<KnobEffect> rows =
        [
            new(PlanKnob.Flow, plan, Planned(job, Changed(unit, flow: 1 + share))),
            new(PlanKnob.ProcessTemperature, plan, Planned(job, Changed(unit, warmer: kelvins))),
            new(
                PlanKnob.Vacuum,
                plan,
                Planned(job, Changed(unit, chamber: Chamber(unit, 1 - share, unit.Chamber.Sweep)))
            ),
        ];
        var air = MoreAir(job, unit, share);
        if (unit.Chamber.CanCarry(air))
        {
            rows.Add(new(PlanKnob.SweepAir, plan, Planned(job, Changed(unit, chamber: Chamber(unit, 1, air)))));
        }

        if (unit.HeaterPower.Watts > 0)
        {
            rows.Add(new(PlanKnob.HeaterPower, plan, Planned(job, Changed(unit, heater: 1 + share))));
        }

        if (job.Reservoir.WaterIngress.KilogramsPerHour > 0)
        {
            rows.Add(new(PlanKnob.WaterIngress, plan, Planned(LessIngress(job, 1 - share), unit)));
        }

        return new PlanSensitivity(
            plan,
            [
                .. rows.OrderByDescending(row => row.MakesReachable)
                    .ThenByDescending(row => row.TimeSaved.TotalHours)
                    .ThenByDescending(row => row.LevelDropMgPerKg),
            ]
        );
    }

    private static PurificationPlan Planned(TreatmentJob job, PurificationUnit unit)
    {
        var hours = Math.Min(720, Math.Max(1, job.Horizon.TotalHours / 50));
        return PurificationPlan.Create(job, unit, Elapsed.FromHours(hours));
    }

    private static PurificationUnit Changed(
        PurificationUnit unit,
        double flow = 1,
        double warmer = 0,
        double heater = 1,
        VacuumChamber? chamber = null
    ) =>
        new(
            new PumpViscosityLimit(unit.Pump.FullFlow * flow, unit.Pump.HighestViscosity),
            Power.FromWatts((double)unit.HeaterPower.Watts * heater),
            Temperature.FromDegreesCelsius(Math.Min(150, unit.ProcessTemperature.DegreesCelsius + warmer)),
            chamber ?? unit.Chamber,
            unit.RemovalPerPass,
            unit.Filter,
            unit.MotorPower,
            unit.HighestTemperature,
            unit.StartViscosity
        );

    private static VacuumChamber Chamber(PurificationUnit unit, double pressure, SweepAir sweep) =>
        new(
            Pressure.FromPascals(Math.Max(10, unit.Chamber.AbsolutePressure.Pascals * pressure)),
            sweep,
            unit.Chamber.PumpCapacity,
            unit.Chamber.Condenser
        );

    private static SweepAir MoreAir(TreatmentJob job, PurificationUnit unit, double share)
    {
        const double OfOil = 1e-3;
        var air = unit.Chamber.Sweep;
        var density = job.Oil.Properties.At(unit.ProcessTemperature).Density;
        return air.DryAir.KilogramsPerSecond > 0
            ? air.WithFlow(air.DryAir * (1 + share))
            : SweepAir.Dry(
                MassFlow.FromKilogramsPerSecond(
                    OfOil * unit.Pump.FullFlow.CubicMetersPerSecond * density.KilogramsPerCubicMeter
                )
            );
    }

    private static TreatmentJob LessIngress(TreatmentJob job, double share)
    {
        var tank = job.Reservoir;
        return new TreatmentJob(
            job.Oil,
            new Reservoir(
                tank.OilVolume,
                tank.Start,
                tank.Ambient,
                tank.LossWattPerKelvin,
                tank.WaterIngress * share,
                tank.Ingression,
                tank.HighestTemperature,
                tank.Steel
            ),
            job.Contamination,
            job.Target,
            job.Horizon
        );
    }
}
