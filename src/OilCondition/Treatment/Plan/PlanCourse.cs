using OilCondition.Text;

namespace OilCondition.Treatment;

/// <summary>The integrated course of a plan and the moments at which the parts of its target are reached.</summary>
internal sealed class PlanCourse
{
    /// <summary>With this share of water it is no oil any more.</summary>
    private const double Flooded = 0.5;

    private readonly TreatmentJob job;
    private readonly PurificationUnit unit;
    private readonly PlanPhysics physics;
    private readonly PurificationPlan.EndState end;
    private readonly double waterTarget;
    private readonly CodeLimits codeLimits;
    private readonly double fullFlowCelsius;
    private readonly List<PurificationPlan.State> states = [];
    private double[] lastState = [];
    private readonly double tolerance;

    private PlanCourse(
        TreatmentJob job,
        PurificationUnit unit,
        PlanPhysics physics,
        PurificationPlan.EndState end,
        double tolerance
    )
    {
        this.tolerance = tolerance;
        this.job = job;
        this.unit = unit;
        this.physics = physics;
        this.end = end;
        waterTarget = job.Target.Water?.DecimalFractions ?? 0;
        codeLimits = new CodeLimits(job.Target.Code);
        fullFlowCelsius = unit.Pump.ColdestAtFullFlow(job.Oil.ViscosityLine).Temperature.DegreesCelsius;
        FullFlowSeconds = job.Reservoir.Start.DegreesCelsius >= fullFlowCelsius ? 0 : null;
    }

    public IReadOnlyList<PurificationPlan.State> States => states;

    /// <summary>What keeps the unit from being started at all, if anything.</summary>
    public WhyNot? Obstacle { get; private set; }

    public TargetPart Water { get; private set; } = TargetPart.NotAsked;

    public TargetPart Particles { get; private set; } = TargetPart.NotAsked;

    /// <summary>When the oil is thin enough for the pump's full flow; null for never.</summary>
    public double? FullFlowSeconds { get; private set; }

    public static PlanCourse Run(
        TreatmentJob job,
        PurificationUnit unit,
        PlanPhysics physics,
        PurificationPlan.EndState end,
        TimeSpan interval,
        double tolerance
    )
    {
        var course = new PlanCourse(job, unit, physics, end, tolerance);
        course.Run(interval);
        return course;
    }

    /// <summary>As a share of the target, as the code's excess is; of 1 mg/kg where the target is lower.</summary>
    private double WaterExcess(double[] state) => (state[1] - waterTarget) / Math.Max(1e-6, waterTarget);

    private double CodeExcess(double[] state) => codeLimits.Excess(state[2], state[3], state[4]);

    private void Run(TimeSpan interval)
    {
        var start = Start();
        Add(0, start);
        var obstacle = OilCircuit.Obstacle(job, unit.StartViscosity, physics.Circuit.SetCelsius);
        var canStart = obstacle is null;
        double? waterAt = job.Target.Water is null || WaterExcess(start) <= 0 ? 0 : null;
        double? codeAt = job.Target.Code is null || CodeExcess(start) <= 0 ? 0 : null;
        if (canStart && (waterAt is null || codeAt is null))
        {
            Integrate(start, interval.TotalSeconds, ref waterAt, ref codeAt);
        }

        if (canStart && Lost(waterAt, WaterExcess))
        {
            waterAt = null;
        }

        if (canStart && Lost(codeAt, CodeExcess))
        {
            codeAt = null;
        }

        Obstacle = obstacle;
        Water = Part(job.Target.Water is not null, waterAt, obstacle ?? WhyNoWater());
        Particles = Part(job.Target.Code is not null, codeAt, obstacle ?? WhyNoCode());
    }

    private void Integrate(double[] start, double interval, ref double? waterAt, ref double? codeAt)
    {
        const double FirstStepSeconds = 10;
        var solver = new DormandPrince(physics.Rates, start, Allowed(), tolerance, FirstStepSeconds);
        var horizon = job.Horizon.TotalSeconds;
        for (var number = 1; solver.Time < horizon; number++)
        {
            var next = Math.Min(horizon, number * interval);
            while (solver.Time < next)
            {
                solver.StepTowards(next);
                waterAt ??= solver.Crossing(WaterExcess);
                codeAt ??= solver.Crossing(CodeExcess);
                FullFlowSeconds ??= solver.Crossing(state => fullFlowCelsius - state[0]);
                if (waterAt is { } water && codeAt is { } code)
                {
                    var last = Math.Max(water, code);
                    Add(last, solver.Within(last));
                    return;
                }
            }

            Add(solver.Time, solver.State);
            if (solver.State[1] > Flooded || (IsHopeless(waterAt is null, codeAt is null) && IsSettled()))
            {
                return;
            }
        }
    }

    private void Add(double seconds, double[] state)
    {
        lastState = state;
        states.Add(new PurificationPlan.State(job, unit, physics, seconds, state));
    }

    /// <summary>Whether all that is still open lies beyond where the plan levels off.</summary>
    private bool IsHopeless(bool waterOpen, bool codeOpen) =>
        (!waterOpen || WhyNoWater() != WhyNot.TakesTooLong) && (!codeOpen || WhyNoCode() != WhyNot.TakesTooLong);

    /// <summary>Whether the last interval has changed nothing that anyone would read.</summary>
    private bool IsSettled()
    {
        const double Share = 1e-4;
        var (before, after) = (states[states.Count - 2], states[states.Count - 1]);
        var hours = (after.Time - before.Time).TotalHours;
        var warmed = Math.Abs((after.TankTemperature - before.TankTemperature).Kelvins);
        var (c0, c1) = (before.Water.Total.DecimalFractions, after.Water.Total.DecimalFractions);
        var (n0, n1) = (before.Particles.At4PerMillilitre, after.Particles.At4PerMillilitre);
        return warmed < 0.01 * hours
            && Math.Abs(c1 - c0) < Share * hours * c1
            && Math.Abs(n1 - n0) <= Share * hours * n1;
    }

    /// <summary>Whether a part that was met once, for example from the start, is met no more when the plan ends: more comes in than leaves.</summary>
    private bool Lost(double? metAt, Func<double[], double> excess) =>
        metAt is not null && excess(lastState) > 100 * tolerance;

    private double[] Start()
    {
        var particles = job.Contamination.Particles;
        var start = new double[PlanPhysics.Size];
        start[0] = job.Reservoir.Start.DegreesCelsius;
        start[1] = job.Contamination.Water.DecimalFractions;
        start[2] = particles.At4PerMillilitre;
        start[3] = particles.At6PerMillilitre;
        start[4] = particles.At14PerMillilitre;
        return start;
    }

    /// <summary>Absolute tolerances of a fine plan: 1 µK, 1e-6 mg/kg, counts and sums far below anything that is read.</summary>
    private double[] Allowed()
    {
        var times = tolerance / PurificationPlan.FineTolerance;
        return [.. Fine().Select(one => one * times)];
    }

    private double[] Fine()
    {
        var joules = 1e-8 * physics.Circuit.CapacityJoulePerKelvin;
        var kilograms = 1e-10 * physics.Circuit.OilKilograms;
        return
        [
            1e-6,
            1e-12,
            1e-7,
            1e-7,
            1e-7,
            joules,
            joules,
            joules,
            kilograms,
            kilograms,
            kilograms,
            1e-8 * job.Reservoir.OilVolume.CubicMeters,
        ];
    }

    private TargetPart Part(bool asked, double? seconds, WhyNot otherwise) =>
        !asked ? TargetPart.NotAsked
        : seconds is not { } reached ? TargetPart.Not(otherwise, job)
        : reached <= 0 ? TargetPart.Already
        : TargetPart.After(Elapsed.FromSeconds(reached));

    private WhyNot WhyNoWater() =>
        !end.Evaporates ? WhyNot.NothingEvaporates
        : end.WaterFloor.DecimalFractions >= waterTarget ? WhyNot.FloorAboveTarget
        : end.WaterLevel is not { } level || level.DecimalFractions >= waterTarget ? WhyNot.IngressTooHigh
        : WhyNot.TakesTooLong;

    private WhyNot WhyNoCode() =>
        unit.Filter is null ? WhyNot.NotTouched
        : codeLimits.Excess(end.ParticleLevels ?? new ParticleLevels(0, 0, 0)) >= 0 ? WhyNot.IngressTooHigh
        : WhyNot.TakesTooLong;
}
