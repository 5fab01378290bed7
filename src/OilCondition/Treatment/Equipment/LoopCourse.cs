using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>A separator or filter on a side loop, integrated from the start: it works while the oil warms, or cools, in the circuit of every treatment.</summary>
/// <remarks>
/// C_b dT/dt = P − U (T − T_amb) + P_in;   dC/dt = r/M − (ṁ/M) F ((1 − φ) η_d + φ η_e),   F = max(0, C − S(T_process));
/// dφ/dt = φ ((1 − φ)(η_d − η_e) ṁ/M − r/(M F));   dN/dt = R/V − (ṁ/M) s N.
/// F: water above saturation behind the heater;  φ: emulsified share of it;  what comes in is taken as drops that settle.
/// </remarks>
internal sealed class LoopCourse
{
    private const double LeastFree = 1e-9;

    private readonly TreatmentJob job;
    private readonly SideLoop loop;
    private readonly OilCircuit circuit;
    private readonly Func<double, double, Removal> removalAt;
    private readonly CodeLimits codeLimits;
    private readonly double waterTarget;
    private double heatJoules;

    public LoopCourse(TreatmentJob job, SideLoop loop, Func<double, double, Removal> removalAt)
    {
        this.job = job;
        this.loop = loop;
        this.removalAt = removalAt;
        var start = job.Reservoir.Start;
        var set = loop.WorkingTemperature ?? start;
        circuit = new OilCircuit(job, loop.Pump, loop.HeaterPower, set.DegreesCelsius, loop.HighestRise);
        codeLimits = new CodeLimits(job.Target.Code);
        waterTarget = job.Target.Water?.DecimalFractions ?? 0;
        var hottest = set > start ? set : start;
        Obstacle =
            hottest > job.Oil.HighestTemperature || hottest > job.Reservoir.HighestTemperature
                ? WhyNot.TooHot
                : OilCircuit.Obstacle(job, loop.StartViscosity, set.DegreesCelsius);
        var tank = circuit.SteadyCelsius(0);
        var process = circuit.ProcessCelsius(tank);
        Temperature = Temperature.FromDegreesCelsius(process);
        HeaterHolds = set <= start || process >= set.DegreesCelsius - 0.1;
        EndTurnover = circuit.TurnoverPerSecond(tank);
        EndFlow = circuit.FlowAt(tank);
        End = removalAt(process, EndFlow);
    }

    /// <summary>What makes the course uncertain.</summary>
    public TreatmentDoubts Flags
    {
        get
        {
            var start = job.Reservoir.Start;
            var thick = loop.Pump.FlowAt(job.Oil.ViscosityLine, start);
            return TreatmentDoubtsOf.Job(job, Temperature, thick)
                | (circuit.IsExtrapolated ? TreatmentDoubts.CurveExtrapolated : TreatmentDoubts.None)
                | (HeaterHolds ? TreatmentDoubts.None : TreatmentDoubts.HeaterLimited)
                | (
                    circuit.IsHeldToRise(
                        circuit.FlowAt(start.DegreesCelsius) * circuit.DensityAt(start.DegreesCelsius),
                        start.DegreesCelsius
                    )
                        ? TreatmentDoubts.HeldToRise
                        : TreatmentDoubts.None
                );
        }
    }

    public WorkConditions Conditions =>
        WorkConditions.Of(
            job,
            circuit.SetCelsius,
            loop.HeaterPower.Watts > 0 && circuit.SetCelsius > job.Reservoir.Start.DegreesCelsius
        );

    /// <summary>What keeps the loop from being started at all, if anything.</summary>
    public WhyNot? Obstacle { get; }

    /// <summary>Oil temperature behind the heater in the end.</summary>
    public Temperature Temperature { get; }

    public bool HeaterHolds { get; }

    /// <summary>Flow in the end, m³/s.</summary>
    public double EndFlow { get; }

    /// <summary>What is removed per pass in the end.</summary>
    public Removal End { get; }

    public TargetPart Water { get; private set; } = TargetPart.NotAsked;

    public TargetPart Particles { get; private set; } = TargetPart.NotAsked;

    public Energy Heat => Energy.FromJoules(heatJoules).ToUnit(UnitsNet.Units.EnergyUnit.KilowattHour);

    public Energy Electricity => loop.MotorPower * (TargetPart.RunTime(Water, Particles) ?? TimeSpan.Zero);

    public double OilKilograms => circuit.OilKilograms;

    /// <summary>Lowest water in the end without ingress, or what was reached on the way.</summary>
    public MassFraction Floor { get; private set; }

    /// <summary>Share of the oil that passes in a second, in the end.</summary>
    private double EndTurnover { get; }

    /// <summary>Runs the loop for the parts that it acts on; a part that it leaves alone stays as it is.</summary>
    public LoopCourse Run(WhyNot? noWater = null, WhyNot? noParticles = null)
    {
        var (untouchedWater, untouchedCode) = (TargetPart.UntouchedWater(job), TargetPart.UntouchedParticles(job));
        double? waterAt = untouchedWater.IsMet || noWater.HasValue || Obstacle.HasValue ? 0 : null;
        double? codeAt = untouchedCode.IsMet || noParticles.HasValue || Obstacle.HasValue ? 0 : null;
        var lowest = job.Contamination.Water.DecimalFractions;
        if (waterAt is null || codeAt is null)
        {
            Integrate(ref waterAt, ref codeAt, ref lowest);
        }

        Water =
            untouchedWater.IsMet ? untouchedWater
            : noWater is { } dry ? TargetPart.Not(dry, job)
            : Obstacle is { } stop ? TargetPart.Not(stop, job)
            : Part(waterAt, WhyNoWater());
        Particles =
            untouchedCode.IsMet ? untouchedCode
            : noParticles is { } clean ? TargetPart.Not(clean, job)
            : Obstacle is { } obstacle ? TargetPart.Not(obstacle, job)
            : Part(codeAt, WhyNoCode());
        var (dissolved, stays) = EndWater();
        Floor = MassFraction.FromPartsPerMillion(1e6 * Math.Min(dissolved + stays, lowest));
        return this;
    }

    private void Integrate(ref double? waterAt, ref double? codeAt, ref double lowest)
    {
        var particles = job.Contamination.Particles;
        double[] start =
        [
            job.Reservoir.Start.DegreesCelsius,
            job.Contamination.Water.DecimalFractions,
            job.Contamination.EmulsifiedShare.DecimalFractions,
            particles.At4PerMillilitre,
            particles.At6PerMillilitre,
            particles.At14PerMillilitre,
            0,
        ];
        double[] allowed = [1e-6, 1e-12, 1e-9, 1e-7, 1e-7, 1e-7, 1e-8 * circuit.CapacityJoulePerKelvin];
        var solver = new DormandPrince(Rates, start, allowed, 1e-8, 10);
        var horizon = job.Horizon.TotalSeconds;
        var (waterOpen, codeOpen) = (waterAt is null, codeAt is null);
        while (solver.Time < horizon)
        {
            var before = (solver.Time, solver.State);
            var next = Math.Min(horizon, Math.Max(600, 1.25 * solver.Time));
            while (solver.Time < next)
            {
                solver.StepTowards(next);
                if (waterAt is null && solver.Crossing(WaterExcess) is { } dry)
                {
                    waterAt = dry;
                    heatJoules = Math.Max(heatJoules, solver.Within(dry)[6]);
                }

                if (codeAt is null && solver.Crossing(CodeExcess) is { } clean)
                {
                    codeAt = clean;
                    heatJoules = Math.Max(heatJoules, solver.Within(clean)[6]);
                }

                lowest = waterOpen ? Math.Min(lowest, waterAt.HasValue ? waterTarget : solver.State[1]) : lowest;
                if (waterAt.HasValue && codeAt.HasValue)
                {
                    return;
                }
            }

            var isHopeless =
                (waterAt.HasValue || WhyNoWater() != WhyNot.TakesTooLong)
                && (codeAt.HasValue || WhyNoCode() != WhyNot.TakesTooLong);
            if (
                solver.State[1] > 0.5
                || StandsUntil(horizon, before, (solver.Time, solver.State))
                || (isHopeless && IsSettled(before, (solver.Time, solver.State)))
            )
            {
                return;
            }
        }
    }

    /// <summary>Whether nothing will have changed by the end of the horizon if it goes on as lately: what approaches a level only slows.</summary>
    private static bool StandsUntil(
        double horizon,
        (double Time, double[] State) before,
        (double Time, double[] State) after
    )
    {
        const double Share = 1e-4;
        var spans = (horizon - after.Time) / (after.Time - before.Time);
        for (var i = 0; i < 6; i++)
        {
            if (Math.Abs(after.State[i] - before.State[i]) * spans > Share * Math.Abs(after.State[i]) + 1e-12)
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsSettled((double Time, double[] State) before, (double Time, double[] State) after)
    {
        const double Share = 1e-4;
        var hours = (after.Time - before.Time) / 3600;
        bool Stands(int index) =>
            Math.Abs(after.State[index] - before.State[index]) <= Share * hours * Math.Abs(after.State[index]) + 1e-12;
        return Math.Abs(after.State[0] - before.State[0]) < 0.01 * hours
            && Stands(1)
            && Stands(3)
            && Stands(4)
            && Stands(5);
    }

    private double WaterExcess(double[] state) => (state[1] - waterTarget) / Math.Max(1e-6, waterTarget);

    private double CodeExcess(double[] state) => codeLimits.Excess(state[3], state[4], state[5]);

    private double[] Rates(double[] state)
    {
        var celsius = Math.Min(190, Math.Max(-55, state[0]));
        var flow = circuit.FlowAt(celsius);
        var massFlow = flow * circuit.DensityAt(celsius);
        var heater = circuit.HeaterWatts(massFlow, celsius);
        var process = celsius + heater / (massFlow * circuit.HeatCapacity);
        var removal = removalAt(process, flow);
        var turnover = massFlow / circuit.OilKilograms;
        var slowed = OilCircuit.Slowed(turnover);
        var ingress = job.Reservoir.WaterIngress.KilogramsPerSecond / circuit.OilKilograms;
        var free = Math.Max(0, state[1] - SaturationAt(process));
        var share = Math.Min(1, Math.Max(0, state[2]));
        var rates = new double[7];
        rates[0] = circuit.WarmingPerSecond(celsius, massFlow, heater);
        rates[1] = slowed * (ingress - turnover * free * ((1 - share) * removal.Drops + share * removal.Emulsion));
        rates[2] =
            free > LeastFree
                ? OilCircuit.Slowed(turnover + ingress / free)
                    * share
                    * ((1 - share) * (removal.Drops - removal.Emulsion) * turnover - ingress / free)
                : 0;
        for (var size = 0; size < 3; size++)
        {
            rates[3 + size] =
                slowed
                * (
                    IngressionPerSecond(size) / (job.Reservoir.OilVolume.CubicMeters * 1e6)
                    - turnover * removal.Particles(size) * state[3 + size]
                );
        }

        rates[6] = heater;
        return rates;
    }

    private double SaturationAt(double celsius) =>
        job.Oil.SaturationCurve.SaturationAt(Temperature.FromDegreesCelsius(celsius)).Content.DecimalFractions;

    private double IngressionPerSecond(int size) =>
        size switch
        {
            0 => job.Reservoir.Ingression.At4PerMinute,
            1 => job.Reservoir.Ingression.At6PerMinute,
            _ => job.Reservoir.Ingression.At14PerMinute,
        } / 60;

    /// <summary>What is dissolved in the end, and what of the emulsion stays.</summary>
    private (double Dissolved, double Stays) EndWater()
    {
        var water = job.Oil.SaturationCurve.Split(job.Contamination.Water, Temperature);
        return (
            water.Dissolved.DecimalFractions,
            End.Emulsion > 0 ? 0 : water.Free.DecimalFractions * job.Contamination.EmulsifiedShare.DecimalFractions
        );
    }

    private WhyNot WhyNoWater()
    {
        var (dissolved, stays) = EndWater();
        var level = job.Reservoir.WaterIngress.KilogramsPerSecond / circuit.OilKilograms / (End.Drops * EndTurnover);
        return dissolved >= waterTarget ? WhyNot.FloorAboveTarget
            : dissolved + stays >= waterTarget ? WhyNot.EmulsionStays
            : dissolved + stays + level >= waterTarget ? WhyNot.IngressTooHigh
            : HeaterHolds ? WhyNot.TakesTooLong
            : WhyNot.HeaterTooWeak;
    }

    private WhyNot WhyNoCode()
    {
        double Level(int size)
        {
            var ingression = IngressionPerSecond(size) / (job.Reservoir.OilVolume.CubicMeters * 1e6);
            return ingression > 0 ? ingression / (EndTurnover * End.Particles(size)) : 0;
        }

        return codeLimits.Excess(Level(0), Level(1), Level(2)) >= 0 ? WhyNot.IngressTooHigh
            : HeaterHolds ? WhyNot.TakesTooLong
            : WhyNot.HeaterTooWeak;
    }

    private TargetPart Part(double? seconds, WhyNot otherwise) =>
        seconds is { } reached ? TargetPart.After(Elapsed.FromSeconds(reached))
        : otherwise == WhyNot.TakesTooLong ? TargetPart.TooLong(job.Horizon)
        : TargetPart.Not(otherwise, job);

    /// <summary>Shares removed in one pass: of drops that settle, of emulsified ones, and of the particles at 4, 6 and 14 µm(c).</summary>
    internal readonly record struct Removal(
        double Drops = 0,
        double Emulsion = 0,
        double At4 = 0,
        double At6 = 0,
        double At14 = 0
    )
    {
        public double Particles(int size) =>
            size switch
            {
                0 => At4,
                1 => At6,
                _ => At14,
            };
    }
}
