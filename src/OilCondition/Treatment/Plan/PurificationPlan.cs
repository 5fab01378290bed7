using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>A vacuum dehydration, hour by hour: temperatures, water, vapour, particles, heat, until the target is reached or the horizon ends.</summary>
/// <remarks>
/// <para>
/// (M c + C_steel) dT/dt = P − w h_fg − U (T − T_amb);  M dC/dt = r − w;  V dN/dt = R − Q (1 − 1/β) N.
/// P = min(P_max, ρ Q c (T_set − T));  T_process = T + P/(ρ Q c);  Q = Q_full min(1, v_limit/v(T)).
/// One pass: w = η ρ Q (C − S(T_out) a) with a = y p/p_sat(T_out), y = n_v/(n_v + n_air), T_out = T_process − w h_fg/(ρ Q c), and a ≤ 1: with free
/// water the gas leaves saturated, and heat, pump or sweep air set the rate (<see cref="RemovalLimit"/>). p = max(p_set, n R T/Q_pump).
/// </para>
/// <para>
/// M, C, T: mass, water content and temperature of the oil; N: particles per mL; r, R: water and particles that come in; U: loss; S: saturation.
/// Derived from balances. Density and heat capacity are taken at the mean of start and process temperature, volume and flow with them. Left out: the
/// water that lies at the bottom, heat of pumps, sensible heat of water and air, losses of pipes, a tank that is not well mixed.
/// </para>
/// <para>
/// More flow dries faster as long as the heater holds the process temperature; with too small a heater more flow is colder oil in the chamber, and a
/// higher floor.
/// </para>
/// <para>
/// Cold thick oil starves pumps and breaks couplings; the pump's maker says from which viscosity on it may be started. While the pump holds less than
/// its full flow, the heater can give no more than that flow carries away at the process temperature: this is what makes cold heavy oil slow. The same task
/// with another oil (<see cref="TreatmentJob.With"/>) shows how many hours it costs.
/// </para>
/// <para>Caution: hot oil, vacuum, flash point, electricity: <see cref="Cautions"/> and the makers' limits come before any figure here.</para>
/// </remarks>
/// <example>
/// <code>
/// var plan = PurificationPlan.Create(job, unit);
/// Console.WriteLine(plan);
/// if (plan.Arrival is Arrival&lt;TimeSpan&gt;.Expected reached) { var hours = reached.Estimate.TotalHours; }
/// var floor = plan.End.WaterFloor.PartsPerMillion;
/// </code>
/// </example>
public sealed partial class PurificationPlan
{
    /// <summary>Relative tolerance of the integration: a plan is right to more digits than anything that goes into it.</summary>
    internal const double FineTolerance = 1e-8;

    /// <summary>One of the many cases of a band: right to a thousandth, and three times as quick.</summary>
    internal const double RoughTolerance = 1e-5;

    private PurificationPlan(
        TreatmentJob job,
        PurificationUnit unit,
        PlanPhysics physics,
        PurificationPlan.EndState end,
        PlanCourse course
    )
    {
        Job = job;
        Unit = unit;
        End = end;
        ProcessTemperature = Temperature.FromDegreesCelsius(physics.Circuit.SetCelsius);
        HeldDownBy = physics.HeldDownBy;
        States = course.States;
        WaterPart = course.Water;
        ParticlePart = course.Particles;
        var whole = TargetPart.Both(WaterPart, ParticlePart);
        Arrival = whole.Arrival!;
        WhyNot = whole.WhyNot;
        FullFlow = course.FullFlowSeconds switch
        {
            null when course.Obstacle is not null => new Arrival<TimeSpan>.Never(),
            null => new Arrival<TimeSpan>.NotBefore(Last.Time),
            0 => new Arrival<TimeSpan>.Already(TimeSpan.Zero),
            { } seconds => new Arrival<TimeSpan>.Expected(Elapsed.FromSeconds(seconds)),
        };
        WaterImbalance = Mass.FromKilograms(
            Math.Abs(
                physics.Circuit.OilKilograms
                    * (Last.Water.Total.DecimalFractions - job.Contamination.Water.DecimalFractions)
                    + Last.Evaporated.Kilograms
                    - job.Reservoir.WaterIngress.KilogramsPerSecond * Last.Time.TotalSeconds
            )
        );
        HeatImbalance = Energy.FromJoules(
            Math.Abs(
                physics.Circuit.CapacityJoulePerKelvin * (Last.TankTemperature - job.Reservoir.Start).Kelvins
                    + Last.LostHeat.Joules
                    + Last.LatentHeat.Joules
                    - Last.HeaterEnergy.Joules
            )
        );
        var curve = job.Oil.SaturationCurve;
        IsExtrapolated =
            physics.Circuit.IsExtrapolated
            || States.Any(state => !curve.Covers(state.ProcessTemperature) || !curve.Covers(state.TankTemperature));
        IsViscosityExtrapolated = States.Any(state =>
            state.Flow < unit.Pump.FullFlow && job.Oil.ViscosityLine.ViscosityAt(state.TankTemperature).IsExtrapolated
        );
        HeaterLimitedUntil = States
            .LastOrDefault(state => state.ProcessTemperature.DegreesCelsius < physics.Circuit.SetCelsius - 0.1)
            ?.Time;
        Cautions = CautionsOf.Treatment(
            TreatmentKind.VacuumDehydration,
            WorkConditions.Of(
                job,
                physics.Circuit.SetCelsius,
                unit.HeaterPower.Watts > 0,
                unit.Chamber.AbsolutePressure.Pascals
            )
        );
        HeldToRiseUntil = States.LastOrDefault(state => state.IsHeldToRise)?.Time;
        HeaterHolds = End.ProcessTemperature.DegreesCelsius >= physics.Circuit.SetCelsius - 0.1;
    }

    /// <summary>The task.</summary>
    public TreatmentJob Job { get; }

    /// <summary>The unit.</summary>
    public PurificationUnit Unit { get; }

    /// <summary>The course: at the start, at each interval, and when the last part of the target is reached.</summary>
    public IReadOnlyList<PurificationPlan.State> States { get; }

    /// <summary>The last of the states.</summary>
    public PurificationPlan.State Last => States[States.Count - 1];

    /// <summary>When the water target is reached; null where the target does not ask for it.</summary>
    public Arrival<TimeSpan>? Water => WaterPart.Arrival;

    /// <summary>Why the water target is not reached; null where it is, or is not asked for.</summary>
    public WhyNot? WhyNotWater => WaterPart.WhyNot;

    /// <summary>When the code is reached; null where the target does not ask for it.</summary>
    public Arrival<TimeSpan>? Particles => ParticlePart.Arrival;

    /// <summary>Why the code is not reached; null where it is, or is not asked for.</summary>
    public WhyNot? WhyNotParticles => ParticlePart.WhyNot;

    /// <summary>When all that was asked is reached.</summary>
    public Arrival<TimeSpan> Arrival { get; }

    /// <summary>Why not all that was asked is reached, the water's reason first; null where it is.</summary>
    public WhyNot? WhyNot { get; }

    /// <summary>Whether all that was asked is reached.</summary>
    public bool MeetsTarget => WhyNot is null;

    /// <summary>When the oil is thin enough for the pump's full flow; not before the end of the plan where that is later than planned.</summary>
    public Arrival<TimeSpan> FullFlow { get; }

    /// <summary>Where it would level off.</summary>
    public PurificationPlan.EndState End { get; }

    /// <summary>Process temperature that the thermostat holds: the unit's setting, or the lowest limit of oil, seals and unit.</summary>
    public Temperature ProcessTemperature { get; }

    /// <summary>Whose limit holds the process temperature below the setting of the thermostat.</summary>
    public TemperatureLimit HeldDownBy { get; }

    /// <summary>Whether the saturation curve or the oil's properties were used outside the range in which they were measured or published.</summary>
    public bool IsExtrapolated { get; }

    /// <summary>Whether the oil pump's flow was held down at a viscosity outside the temperatures at which the oil was measured.</summary>
    public bool IsViscosityExtrapolated { get; }

    /// <summary>Whether the heater holds the process temperature in the end; if not, more flow is colder oil and a higher floor.</summary>
    public bool HeaterHolds { get; }

    /// <summary>
    /// The last state at which the heater is at its limit, so that the oil in the chamber is colder than planned: then, and only then, can more flow be
    /// slower. Null where it is at none.
    /// </summary>
    public TimeSpan? HeaterLimitedUntil { get; }

    /// <summary>The last state at which the heater is turned down to keep the highest rise per pass; null where it is at none.</summary>
    public TimeSpan? HeldToRiseUntil { get; }

    /// <summary>Water that the balance of the plan misses by: rounding of the integration.</summary>
    public Mass WaterImbalance { get; }

    /// <summary>Heat that the balance of the plan misses by: rounding of the integration.</summary>
    public Energy HeatImbalance { get; }

    /// <summary>Share of the vapour of the whole plan that leaves with the exhaust instead of condensing; null where none leaves the oil.</summary>
    public Ratio? ExhaustShare
    {
        get
        {
            var condensed = Last.Condensate.Liters * WaterContent.WaterDensity.KilogramsPerCubicMeter / 1000;
            var all = condensed + Last.Exhausted.Kilograms;
            return all > 0 ? Ratio.FromDecimalFractions(Last.Exhausted.Kilograms / all) : null;
        }
    }

    /// <summary>What can hurt someone, under the conditions of this plan.</summary>
    public IReadOnlyList<Caution> Cautions { get; }

    /// <summary>What makes the plan less certain than its figures look.</summary>
    public TreatmentDoubts Flags =>
        TreatmentDoubtsOf.Job(Job, ProcessTemperature, Unit.Pump.FlowAt(Job.Oil.ViscosityLine, Job.Reservoir.Start))
        | (IsExtrapolated ? TreatmentDoubts.CurveExtrapolated : TreatmentDoubts.None)
        | (IsViscosityExtrapolated ? TreatmentDoubts.ViscosityExtrapolated : TreatmentDoubts.None)
        | (HeaterHolds ? TreatmentDoubts.None : TreatmentDoubts.HeaterLimited)
        | (HeldToRiseUntil.HasValue ? TreatmentDoubts.HeldToRise : TreatmentDoubts.None)
        | (Unit.Chamber.IsPressureInDoubt ? TreatmentDoubts.PressureInDoubt : TreatmentDoubts.None);

    /// <summary>Hours and floor with what the inputs may be out by: 31 plans, made anew at each call.</summary>
    /// <param name="errors">The errors of the inputs; null for the usual ones.</param>
    /// <returns>The band.</returns>
    public TreatmentBand Band(InputErrors? errors = null) =>
        new(
            InputShift
                .All(errors ?? InputErrors.Usual)
                .Select(shift => Create(shift.Job(Job), Unit.Shifted(shift), LongInterval(Job), RoughTolerance))
                .Select(one => (one.MeetsTarget ? (TimeSpan?)one.Last.Time : null, one.End.WaterFloor))
        );

    private static TimeSpan LongInterval(TreatmentJob job) =>
        Elapsed.FromHours(Math.Min(720, Math.Max(1.0 / 60, job.Horizon.TotalHours / 10)));

    internal TargetPart WaterPart { get; }

    internal TargetPart ParticlePart { get; }

    /// <summary>Plans a run.</summary>
    /// <param name="job">The task.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="interval">Time between two states, 1 min to 30 days, and 10 000 states at most; null for 1 h, or more for a far horizon.</param>
    /// <returns>The plan.</returns>
    /// <exception cref="ArgumentNullException">Job or unit is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The interval lies outside its range.</exception>
    public static PurificationPlan Create(TreatmentJob job, PurificationUnit unit, TimeSpan? interval = null) =>
        Create(job, unit, interval, FineTolerance);

    internal static PurificationPlan Create(
        TreatmentJob job,
        PurificationUnit unit,
        TimeSpan? interval,
        double tolerance
    )
    {
        Guard.NotNull(job);
        Guard.NotNull(unit);
        const double MostStates = 10_000;
        var least = Math.Max(1.0 / 60, job.Horizon.TotalHours / MostStates);
        var between = interval ?? Elapsed.FromHours(Math.Max(1, least));
        Guard.InRange(between.TotalHours, least, 720, "h", nameof(interval));
        var physics = new PlanPhysics(job, unit);
        var end = PlanEndFinder.Find(job, physics);
        var course = PlanCourse.Run(job, unit, physics, end, between, tolerance);
        return new PurificationPlan(job, unit, physics, end, course);
    }

    /// <summary>The plan in one line.</summary>
    /// <returns>For example <c>water in 12.3 h, particles not asked; floor 78.7 mg/kg, level 219 mg/kg with ingress, oil at 61.2 °C</c>.</returns>
    public override string ToString() => $"{WaterPart.Of("water")}, {ParticlePart.Of("particles")}; {End}";

    /// <summary>Whose limit holds the process temperature below the setting of the thermostat.</summary>
    public enum TemperatureLimit
    {
        /// <summary>Nobody's: the unit runs at its setting.</summary>
        None,

        /// <summary>The oil's.</summary>
        Oil,

        /// <summary>That of seals, hoses and coating of the reservoir.</summary>
        Seals,

        /// <summary>The unit's.</summary>
        Unit,
    }
}
