using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The balances of a reservoir with a vacuum dehydration unit on a side loop.</summary>
/// <remarks>
/// (M c + C_steel) dT/dt = P − w h_fg − U (T − T_amb);   M dC/dt = r − w;   V dN/dt = R − Q (1 − 1/β) N.
/// P = min(P_max, ρ Q c (T_set − T)): the thermostat. Q = Q_full min(1, v_limit / v(T)): the oil pump.
/// Density and heat capacity are those at the mean of start and process temperature, so that the heat-up without water is exactly first order.
/// </remarks>
internal sealed class PlanPhysics
{
    private readonly Reservoir reservoir;
    private readonly PurificationUnit unit;
    private readonly ViscosityTemperatureLine line;
    private readonly double capacityJoulePerKelvin;
    private readonly double[] filterShares;

    public PlanPhysics(TreatmentJob job, PurificationUnit unit)
    {
        this.unit = unit;
        reservoir = job.Reservoir;
        line = job.Oil.ViscosityLine;
        (SetCelsius, HeldDownBy) = Capped(job, unit);
        var mean = Temperature.FromDegreesCelsius((reservoir.Start.DegreesCelsius + SetCelsius) / 2);
        var properties = job.Oil.Properties.At(mean);
        Density = properties.Density.KilogramsPerCubicMeter;
        HeatCapacity = properties.HeatCapacity.JoulesPerKilogramKelvin;
        IsExtrapolated = properties.IsDensityExtrapolated || properties.IsHeatExtrapolated;
        OilKilograms = reservoir.OilVolume.CubicMeters * Density;
        capacityJoulePerKelvin = OilKilograms * HeatCapacity + reservoir.Steel.JoulesPerKelvin;
        Stage = new DehydrationStage(job.Oil.SaturationCurve, unit.Chamber, unit.RemovalPerPass.DecimalFractions);
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

    public double SetCelsius { get; }

    public PurificationPlan.TemperatureLimit HeldDownBy { get; }

    public double Density { get; }

    public double HeatCapacity { get; }

    public bool IsExtrapolated { get; }

    public double OilKilograms { get; }

    public double CapacityJoulePerKelvin => capacityJoulePerKelvin;

    public DehydrationStage Stage { get; }

    public double FilterShare(int size) => filterShares[size];

    public double IngressionPerSecond(int size) =>
        size switch
        {
            0 => reservoir.Ingression.At4PerMinute,
            1 => reservoir.Ingression.At6PerMinute,
            _ => reservoir.Ingression.At14PerMinute,
        } / 60;

    public double FlowAt(double celsius) =>
        unit.Pump.FlowAt(line, Temperature.FromDegreesCelsius(celsius)).Flow.CubicMetersPerSecond;

    /// <summary>Heat that the heater gives: what the thermostat asks for, as far as it goes.</summary>
    public double HeaterWatts(double flow, double celsius) =>
        Math.Min((double)unit.HeaterPower.Watts, Math.Max(0, Density * flow * HeatCapacity * (SetCelsius - celsius)));

    public double LossWatts(double celsius) =>
        reservoir.LossWattPerKelvin * (celsius - reservoir.Ambient.DegreesCelsius);

    public PlanRates At(double celsius, double content)
    {
        var flow = FlowAt(celsius);
        var heater = HeaterWatts(flow, celsius);
        var process = celsius + heater / (Density * flow * HeatCapacity);
        var pass = Stage.Pass(Density * flow, HeatCapacity, Math.Max(0, content), process);
        return new PlanRates(flow, process, heater, LossWatts(celsius), pass, Stage.CondensedIn(pass));
    }

    /// <summary>State: °C, kg/kg, three counts per mL, then sums: heater, loss, latent J; evaporated, condensed, exhausted kg; oil passed m³.</summary>
    public double[] Rates(double[] state)
    {
        // A trial step may leave the range that the rooms below answer for; its error then makes the step shorter.
        var now = At(Math.Min(190, Math.Max(-55, state[0])), Math.Min(1, state[1]));
        var rates = new double[Size];
        rates[0] = (now.HeaterWatts - now.LossWatts - now.Pass.LatentWatts) / capacityJoulePerKelvin;
        rates[1] = (reservoir.WaterIngress.KilogramsPerSecond - now.Pass.EvaporatedKilogramPerSecond) / OilKilograms;
        for (var size = 0; size < 3; size++)
        {
            rates[2 + size] =
                IngressionPerSecond(size) / (reservoir.OilVolume.CubicMeters * 1e6)
                - now.FlowCubicMetrePerSecond / reservoir.OilVolume.CubicMeters * filterShares[size] * state[2 + size];
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
