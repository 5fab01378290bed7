using OilCondition.Text;
using OilCondition.Thermal;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Dry air through the head-space of the reservoir: it carries off all forms of water, slowly.</summary>
/// <remarks>
/// <para>
/// M dC/dt = r − w,  w = ε ṁ (W(a) − W_in),  W(a) = 0.62196 a p_sat/(p − a p_sat),  a = min(1, C/S);  C_b dT/dt = P_in − U (T − T_amb) − w h_fg.
/// ṁ: dry air; ε: how far the air that leaves has come to equilibrium with the oil, 1 at most. An unheated tank cools towards its surroundings, and
/// what evaporates cools it as well; heat of the running machine or of a tank heater is that of the reservoir. With free water the rate is that of saturated
/// air. The floor is C = S p_w/p_sat with the vapour pressure of the air let in, at the temperature at which the tank ends.
/// </para>
/// <para>
/// No source tells ε of a real tank: still oil gives off water through its surface only. Measure it, humidity in and out, where the time matters. The heat that
/// the air takes is left out.
/// </para>
/// </remarks>
public sealed class HeadSpacePurge : ITreatment, IShiftable
{
    private const double MolarMassRatio = VacuumChamber.WaterKilogramPerMole / VacuumChamber.AirKilogramPerMole;

    /// <summary>Describes a purge.</summary>
    /// <param name="dryAir">Mass flow of the air's dry part, above 0.</param>
    /// <param name="air">The air let in, behind its dryer.</param>
    /// <param name="localAtmosphere">Absolute pressure in the head-space, 300 to 1100 hPa.</param>
    /// <param name="approach">How far the air that leaves has come to equilibrium with the oil, ε, above 0 up to 1.</param>
    /// <param name="motorPower">Electrical power of blower and dryer, 0 to 100 MW.</param>
    /// <exception cref="ArgumentNullException">The air is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public HeadSpacePurge(
        MassFlow dryAir,
        HumidAir air,
        Pressure localAtmosphere,
        Ratio approach,
        Power motorPower = default
    )
    {
        Guard.InRange(dryAir.KilogramsPerHour, 1e-9, 1e6, "kg/h", nameof(dryAir));
        Air = Guard.NotNull(air);
        Guard.InRange(localAtmosphere.Hectopascals, 300, 1100, "hPa", nameof(localAtmosphere));
        Guard.InRange(approach.DecimalFractions, 1e-9, 1, "(ratio)", nameof(approach));
        Guard.InRange((double)motorPower.Watts, 0, 1e8, "W", nameof(motorPower));
        DryAir = dryAir;
        LocalAtmosphere = localAtmosphere;
        Approach = approach;
        MotorPower = motorPower;
    }

    /// <inheritdoc/>
    public string Name => "head-space purge";

    /// <inheritdoc/>
    public TreatmentKind? Kind => TreatmentKind.HeadSpacePurge;

    /// <inheritdoc/>
    public ContaminationForms Reaches =>
        ContaminationForms.FreeWater | ContaminationForms.EmulsifiedWater | ContaminationForms.DissolvedWater;

    /// <summary>Mass flow of the air's dry part.</summary>
    public MassFlow DryAir { get; }

    /// <summary>The air let in.</summary>
    public HumidAir Air { get; }

    /// <summary>Absolute pressure in the head-space.</summary>
    public Pressure LocalAtmosphere { get; }

    /// <summary>How far the air that leaves has come to equilibrium with the oil, ε.</summary>
    public Ratio Approach { get; }

    /// <summary>Electrical power of blower and dryer.</summary>
    public Power MotorPower { get; }

    /// <inheritdoc/>
    public TreatmentAssessment Assess(TreatmentJob job)
    {
        var start = Guard.NotNull(job).Reservoir.Start;
        var tank = StandingOil.TankOf(job, start);
        var end = Temperature.FromDegreesCelsius(StandingOil.SteadyCelsius(job, tank, start));
        var equilibrium = job.Oil.SaturationCurve.EquilibriumWith(Air, end).Dissolved;
        var water = Water(job, tank, end, equilibrium);
        var floor = equilibrium < job.Contamination.Water ? equilibrium : job.Contamination.Water;
        return new TreatmentAssessment(
            this,
            water,
            TargetPart.UntouchedParticles(job),
            water.Time.HasValue && job.Target.Water < floor ? job.Target.Water!.Value : floor,
            electricity: MotorPower * (water.Time ?? TimeSpan.Zero),
            waterRemoved: WaterRemoved.By(job, water, job.OilMass.Kilograms),
            cautions: CautionsOf.Treatment(TreatmentKind.HeadSpacePurge, WorkConditions.Of(job, end.DegreesCelsius)),
            flags: TreatmentDoubtsOf.Job(job, end)
        );
    }

    ITreatment IShiftable.Shifted(InputShift shift) =>
        new HeadSpacePurge(
            DryAir * shift.Flow,
            Air,
            LocalAtmosphere,
            Ratio.FromDecimalFractions(Math.Min(1, Approach.DecimalFractions * shift.Approach)),
            MotorPower
        );

    /// <summary>The treatment with its equipment, in a few words.</summary>
    /// <returns>For example <c>head-space purge, 5 kg/h of air</c>.</returns>
    public override string ToString() => $"{Name}, {PlainText.Number(DryAir.KilogramsPerHour)} kg/h of air";

    private TargetPart Water(TreatmentJob job, HeatedTank tank, Temperature end, MassFraction equilibrium)
    {
        var untouched = TargetPart.UntouchedWater(job);
        if (untouched.IsMet || job.Target.Water is not { } target)
        {
            return untouched;
        }

        var start = job.Reservoir.Start;
        if (Boils(start) || Boils(end))
        {
            // Oil above the boiling point of water: such a tank boils, and is no head-space purge.
            return TargetPart.Not(WhyNot.TooHot, job);
        }

        var reason = Reason(job, end, equilibrium, target);
        var solver = new DormandPrince(
            state => Rates(job, tank, state),
            [start.DegreesCelsius, job.Contamination.Water.DecimalFractions],
            [1e-6, 1e-12],
            1e-8,
            10
        );
        var horizon = job.Horizon.TotalSeconds;
        while (solver.Time < horizon)
        {
            var (since, before) = (solver.Time, solver.State);
            var next = Math.Min(horizon, Math.Max(600, 1.25 * since));
            while (solver.Time < next)
            {
                solver.StepTowards(next);
                if (
                    solver.Crossing(state =>
                        (state[1] - target.DecimalFractions) / Math.Max(1e-6, target.DecimalFractions)
                    ) is
                    { } dry
                )
                {
                    return TargetPart.After(Elapsed.FromSeconds(dry));
                }
            }

            var hours = (solver.Time - since) / 3600;
            if (
                solver.State[1] > 0.5
                || (
                    reason != WhyNot.TakesTooLong
                    && Math.Abs(solver.State[0] - before[0]) < 0.01 * hours
                    && Math.Abs(solver.State[1] - before[1]) < 1e-4 * hours * solver.State[1]
                )
            )
            {
                break;
            }
        }

        return TargetPart.Not(reason, job);
    }

    private bool Boils(Temperature temperature) =>
        WaterVapour.SaturationPressure(temperature).Pascals >= LocalAtmosphere.Pascals;

    /// <summary>Why the target is not reached, if it is not: what the air must carry off in the end for the content to stand still there.</summary>
    private WhyNot Reason(TreatmentJob job, Temperature end, MassFraction equilibrium, MassFraction target)
    {
        var share = WaterVapour.SaturationPressure(end).Pascals / LocalAtmosphere.Pascals;
        var still =
            Air.HumidityRatioAt(LocalAtmosphere).DecimalFractions
            + job.Reservoir.WaterIngress.KilogramsPerHour / (Approach.DecimalFractions * DryAir.KilogramsPerHour);
        var activity = still / (share * (MolarMassRatio + still));
        var asked = target.DecimalFractions / job.Oil.SaturationCurve.SaturationAt(end).Content.DecimalFractions;
        return equilibrium >= target ? WhyNot.FloorAboveTarget
            : activity >= Math.Min(1, asked) ? WhyNot.IngressTooHigh
            : WhyNot.TakesTooLong;
    }

    private double[] Rates(TreatmentJob job, HeatedTank tank, double[] state)
    {
        var celsius = Math.Min(190, Math.Max(-55, state[0]));
        var temperature = Temperature.FromDegreesCelsius(celsius);
        var saturation = job.Oil.SaturationCurve.SaturationAt(temperature).Content.DecimalFractions;
        var vapour =
            Math.Min(1, Math.Max(0, state[1]) / saturation)
            * Math.Min(0.99, WaterVapour.SaturationPressure(temperature).Pascals / LocalAtmosphere.Pascals);
        var carried =
            Approach.DecimalFractions
            * DryAir.KilogramsPerSecond
            * (MolarMassRatio * vapour / (1 - vapour) - Air.HumidityRatioAt(LocalAtmosphere).DecimalFractions);
        var latent = WaterVapour.LatentHeat(Temperature.FromDegreesCelsius(Math.Max(0.01, celsius))).JoulesPerKilogram;
        var reservoir = job.Reservoir;
        var lost =
            reservoir.LossWattPerKelvin * (celsius - reservoir.Ambient.DegreesCelsius)
            - (double)reservoir.HeatInput.Watts;
        return
        [
            -(lost + carried * latent) / tank.HeatCapacity.JoulesPerKelvin,
            (reservoir.WaterIngress.KilogramsPerSecond - carried) / job.OilMass.Kilograms,
        ];
    }
}
