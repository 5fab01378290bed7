using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The balances of a reservoir with a vacuum dehydration unit on a side loop.</summary>
/// <remarks>
/// (M c + C_steel) dT/dt = P − w h_fg − U (T − T_amb);   M dC/dt = r − w;   V dN/dt = R − Q (1 − 1/β) N.
/// Flow, heater and thermostat are those of every oil circuit (<see cref="OilCircuit"/>). Counts are per mL of oil at the temperature of the start.
/// Heat capacity is that at the mean of start and process temperature, so that the heat-up without water is exactly first order.
/// </remarks>
internal sealed class PlanPhysics
{
    private readonly Reservoir reservoir;
    private readonly PurificationUnit unit;
    private readonly ViscosityTemperatureLine line;
    private readonly double transferUnits;
    private readonly double removalCentistokes;
    private readonly double[] filterShares;

    public PlanPhysics(TreatmentJob job, PurificationUnit unit)
    {
        this.unit = unit;
        reservoir = job.Reservoir;
        line = job.Oil.ViscosityLine;
        (var setCelsius, HeldDownBy) = Capped(job, unit);
        Circuit = new OilCircuit(job, unit.Pump, unit.HeaterPower, setCelsius, unit.HighestRise);
        Stage = new DehydrationStage(job.Oil.SaturationCurve, unit.Chamber);
        transferUnits = -Math.Log(Math.Max(1e-300, 1 - unit.RemovalPerPass.DecimalFractions));
        removalCentistokes =
            unit.RemovalViscosity?.Centistokes
            ?? line.ViscosityAt(Temperature.FromDegreesCelsius(setCelsius)).Viscosity.Centistokes;
        filterShares = unit.Filter is { } filter
            ?
            [
                filter.At4.Efficiency.DecimalFractions,
                filter.At6.Efficiency.DecimalFractions,
                filter.At14.Efficiency.DecimalFractions,
            ]
            : [0, 0, 0];
    }

    /// <summary>Number of quantities in a state.</summary>
    public const int Size = 12;

    public OilCircuit Circuit { get; }

    public PurificationPlan.TemperatureLimit HeldDownBy { get; }

    public DehydrationStage Stage { get; }

    public double FilterShare(int size) => filterShares[size];

    public double IngressionPerSecond(int size) =>
        size switch
        {
            0 => reservoir.Ingression.At4PerMinute,
            1 => reservoir.Ingression.At6PerMinute,
            _ => reservoir.Ingression.At14PerMinute,
        } / 60;

    /// <summary>Removal per pass in oil of another viscosity: fewer transfer units in a thicker film.</summary>
    public double RemovalAt(double processCelsius) =>
        1
        - Math.Exp(
            -transferUnits
                * Math.Sqrt(
                    removalCentistokes
                        / line.ViscosityAt(Temperature.FromDegreesCelsius(processCelsius)).Viscosity.Centistokes
                )
        );

    public StagePass Pass(double massFlow, double content, double processCelsius) =>
        Stage.Pass(massFlow, Circuit.HeatCapacity, content, processCelsius, RemovalAt(processCelsius));

    public PlanRates At(double celsius, double content)
    {
        var flow = Circuit.FlowAt(celsius);
        var massFlow = flow * Circuit.DensityAt(celsius);
        var heater = Circuit.HeaterWatts(massFlow, celsius);
        var process = celsius + heater / (massFlow * Circuit.HeatCapacity);
        var pass = Pass(massFlow, Math.Max(0, content), process);
        return new PlanRates(
            flow,
            massFlow,
            process,
            heater,
            Circuit.IsHeldToRise(massFlow, celsius),
            Circuit.LossWatts(celsius),
            pass,
            Stage.CondensedIn(pass)
        );
    }

    /// <summary>State: °C, kg/kg, three counts per mL, then sums: heater, loss, latent J; evaporated, condensed, exhausted kg; oil passed m³.</summary>
    public double[] Rates(double[] state)
    {
        // A trial step may leave the range that the rooms below answer for; its error then makes the step shorter.
        var now = At(Math.Min(190, Math.Max(-55, state[0])), Math.Min(1, state[1]));
        var rates = new double[Size];
        rates[0] = (now.HeaterWatts - now.LossWatts - now.Pass.LatentWatts) / Circuit.CapacityJoulePerKelvin;
        rates[1] =
            (reservoir.WaterIngress.KilogramsPerSecond - now.Pass.EvaporatedKilogramPerSecond) / Circuit.OilKilograms;
        for (var size = 0; size < 3; size++)
        {
            rates[2 + size] =
                IngressionPerSecond(size) / (reservoir.OilVolume.CubicMeters * 1e6)
                - now.OilKilogramPerSecond / Circuit.OilKilograms * filterShares[size] * state[2 + size];
        }

        rates[5] = now.HeaterWatts;
        rates[6] = now.LossWatts;
        rates[7] = now.Pass.LatentWatts;
        rates[8] = now.Pass.EvaporatedKilogramPerSecond;
        rates[9] = now.CondensedKilogramPerSecond;
        rates[10] = now.Pass.VapourKilogramPerSecond - now.CondensedKilogramPerSecond;
        rates[11] = now.FlowCubicMetrePerSecond;
        return rates;
    }

    /// <summary>The thermostat's setting, held down by the lowest of the limits of oil, seals and unit.</summary>
    private static (double Celsius, PurificationPlan.TemperatureLimit HeldDownBy) Capped(
        TreatmentJob job,
        PurificationUnit unit
    )
    {
        (double Celsius, PurificationPlan.TemperatureLimit HeldDownBy)[] limits =
        [
            (unit.ProcessTemperature.DegreesCelsius, PurificationPlan.TemperatureLimit.None),
            (job.Oil.HighestTemperature.DegreesCelsius, PurificationPlan.TemperatureLimit.Oil),
            (job.Reservoir.HighestTemperature.DegreesCelsius, PurificationPlan.TemperatureLimit.Seals),
            (unit.HighestTemperature.DegreesCelsius, PurificationPlan.TemperatureLimit.Unit),
        ];
        var lowest = limits[0];
        foreach (var limit in limits)
        {
            lowest = limit.Celsius < lowest.Celsius ? limit : lowest;
        }

        return lowest;
    }
}
