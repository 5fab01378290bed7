using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>What a planned unit takes out of its oil, and where the content levels off, in whatever state it runs: the physics of the plan.</summary>
internal sealed class RunPhysics
{
    private const double ColdestCelsius = 0.02;
    private const double MostPpm = 1e6;
    private const double SmallestFlowShare = 1e-6;

    private readonly PurificationPlan plan;
    private readonly PlanPhysics physics;
    private readonly double kilogramPerSecond;

    public RunPhysics(PurificationPlan plan)
    {
        this.plan = plan;
        physics = new PlanPhysics(plan.Job, plan.Unit);
        kilogramPerSecond =
            plan.End.Flow.CubicMetersPerSecond * physics.Circuit.DensityAt(plan.End.TankTemperature.DegreesCelsius);
        Planned = new UnitState(
            plan.ProcessTemperature.DegreesCelsius,
            plan.Unit.Chamber.AbsolutePressure.Pascals,
            1,
            1
        );
    }

    public UnitState Planned { get; }

    public double OilKilograms => physics.Circuit.OilKilograms;

    public bool HasSweep => plan.Unit.Chamber.Sweep.DryAir.KilogramsPerHour > 0;

    public double AmbientCelsius => plan.Job.Reservoir.Ambient.DegreesCelsius;

    /// <summary>How much colder than the oil in the chamber the tank is at the end of the plan.</summary>
    public double PlannedDropKelvins =>
        Math.Max(0, plan.End.ProcessTemperature.DegreesCelsius - plan.End.TankTemperature.DegreesCelsius);

    /// <summary>Water before the run, mg/kg.</summary>
    public double BeforePpm => plan.Job.Contamination.Water.PartsPerMillion;

    public double SaturationPpm(double celsius) =>
        1e6 * Stage(Planned with { Celsius = celsius }).SaturationAt(celsius);

    /// <summary>The content that the unit tends to when nothing comes in, mg/kg.</summary>
    public double Floor(UnitState state)
    {
        var celsius = Math.Max(ColdestCelsius, state.Celsius);
        var stage = Stage(state);
        return 1e6 * stage.SaturationAt(celsius) * Math.Min(1, stage.ActivityOver(0, celsius));
    }

    /// <summary>What the unit takes out at a content, mg/kg an hour.</summary>
    public double RemovedPerHour(UnitState state, double ppm) => Removed(Stage(state), state, ppm);

    /// <summary>Where the content levels off while it would rise by so much an hour; null where more comes in than leaves at any content.</summary>
    public double? Level(UnitState state, double risePerHour)
    {
        var stage = Stage(state);
        if (risePerHour <= 0)
        {
            return Floor(state);
        }

        if (Removed(stage, state, MostPpm) < risePerHour)
        {
            return null;
        }

        var (low, high) = (0.0, MostPpm);
        while (high - low > 1e-4 * (1 + low))
        {
            // Halves a range of six decades by its logarithm first.
            var middle = low > 0 ? Math.Sqrt(low * high) : Math.Min(high / 2, Math.Max(1e-3, Math.Sqrt(high)));
            if (middle <= low || middle >= high)
            {
                middle = (low + high) / 2;
            }

            var isLess = Removed(stage, state, middle) < risePerHour;
            (low, high) = isLess ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    /// <summary>Rate of a fall between two contents, 1/h: the slope of what is taken out over the content.</summary>
    public double RatePerHour(UnitState state, double lowPpm, double highPpm)
    {
        var stage = Stage(state);
        var high = Math.Max(lowPpm * 1.05 + 1, highPpm);
        return Math.Max(0, (Removed(stage, state, high) - Removed(stage, state, lowPpm)) / (high - lowPpm));
    }

    private double Removed(DehydrationStage stage, UnitState state, double ppm) =>
        stage
            .Pass(
                kilogramPerSecond * Math.Max(SmallestFlowShare, state.FlowShare),
                physics.Circuit.HeatCapacity,
                ppm * 1e-6,
                Math.Max(ColdestCelsius, state.Celsius),
                physics.RemovalAt(Math.Max(ColdestCelsius, state.Celsius))
            )
            .EvaporatedKilogramPerSecond
        * 3600
        / OilKilograms
        * 1e6;

    private DehydrationStage Stage(UnitState state)
    {
        var set = plan.Unit.Chamber;
        var sweep = set.Sweep.WithFlow(
            MassFlow.FromKilogramsPerHour(set.Sweep.DryAir.KilogramsPerHour * Math.Max(0, state.SweepShare))
        );
        var chamber = new VacuumChamber(
            Pressure.FromPascals(Math.Max(10, Math.Min(110_000, state.Pascal))),
            sweep,
            set.PumpCapacity,
            set.Condenser
        );
        return new DehydrationStage(plan.Job.Oil.SaturationCurve, chamber);
    }
}
