using MathNet.Numerics.RootFinding;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Oil pumped from a reservoir through an in-line heater and back: the same flow and heat for every row of a comparison.</summary>
/// <remarks>
/// Q = Q_full min(1, v_limit/v(T)).   ṁ = ρ(T) Q.   P = min(P_max, ṁ c (T_set − T), ṁ c ΔT_max): heater, thermostat behind it, rise per pass.
/// C = M c + C_steel.   M: mass of the oil, from its volume and density at the start, where the volume was read;  c: at the mean of start and setting.
/// The tank loses U (T − T_amb) and gains what the machine or a tank heater gives.
/// </remarks>
internal sealed class OilCircuit
{
    /// <summary>Rise of the oil per pass of an in-line heater of low watt density (common practice, no source).</summary>
    public const double CommonRiseKelvins = 11;

    /// <summary>Viscosity above which gear and screw pumps are not started as a rule (common practice, no source).</summary>
    public const double CommonStartCentistokes = 5000;

    /// <summary>How far the oil behind a heater stays below the flash point; the film on the heater is hotter (ours).</summary>
    public const double FlashMarginKelvins = 30;

    /// <summary>A turnover in less than a minute: hardly a side loop is faster, and no time to a target is known to a minute (ours).</summary>
    private const double FastestPerSecond = 0.02;

    private readonly Reservoir reservoir;
    private readonly TreatedOil oil;
    private readonly PumpViscosityLimit pump;
    private readonly double heaterWatts;
    private readonly double riseKelvins;

    public OilCircuit(
        TreatmentJob job,
        PumpViscosityLimit pump,
        Power heaterPower,
        double setCelsius,
        TemperatureDelta highestRise
    )
    {
        reservoir = job.Reservoir;
        oil = job.Oil;
        this.pump = pump;
        heaterWatts = (double)heaterPower.Watts;
        riseKelvins = highestRise.Kelvins;
        SetCelsius = setCelsius;
        var mean = Temperature.FromDegreesCelsius((reservoir.Start.DegreesCelsius + setCelsius) / 2);
        var properties = oil.Properties.At(mean);
        HeatCapacity = properties.HeatCapacity.JoulesPerKilogramKelvin;
        IsExtrapolated = properties.IsDensityExtrapolated || properties.IsHeatExtrapolated;
        OilKilograms = job.OilMass.Kilograms;
        CapacityJoulePerKelvin = OilKilograms * HeatCapacity + reservoir.Steel.JoulesPerKelvin;
    }

    public double SetCelsius { get; }

    public double HeatCapacity { get; }

    public bool IsExtrapolated { get; }

    public double OilKilograms { get; }

    public double CapacityJoulePerKelvin { get; }

    /// <summary>What keeps such a circuit from being started at all, if anything.</summary>
    public static WhyNot? Obstacle(TreatmentJob job, KinematicViscosity startViscosity, double setCelsius)
    {
        var start = job.Reservoir.Start;
        var thick = job.Oil.ViscosityLine.ViscosityAt(start);
        return job.Oil.PourPoint is { } pour && start <= pour ? WhyNot.BelowPourPoint
            : thick.IsThicker || thick.Viscosity.Centistokes > startViscosity.Centistokes ? WhyNot.PumpCannotStart
            : job.Oil.FlashPoint is { } flash
            && Math.Max(setCelsius, start.DegreesCelsius) > flash.DegreesCelsius - FlashMarginKelvins
                ? WhyNot.NearFlashPoint
            : null;
    }

    /// <summary>Flow that the pump holds, m³/s.</summary>
    public double FlowAt(double celsius) =>
        pump.FlowAt(oil.ViscosityLine, Temperature.FromDegreesCelsius(celsius)).Flow.CubicMetersPerSecond;

    public double DensityAt(double celsius) =>
        oil.Properties.At(Temperature.FromDegreesCelsius(celsius)).Density.KilogramsPerCubicMeter;

    /// <summary>Share of the oil that passes in a second.</summary>
    public double TurnoverPerSecond(double celsius) => FlowAt(celsius) * DensityAt(celsius) / OilKilograms;

    /// <summary>Heat that the heater gives: what the thermostat asks for, as far as heater and rise per pass go.</summary>
    public double HeaterWatts(double massFlow, double celsius) =>
        Math.Min(heaterWatts, massFlow * HeatCapacity * Math.Min(riseKelvins, Math.Max(0, SetCelsius - celsius)));

    /// <summary>Whether the rise per pass, and not the heater or the thermostat, holds the heat down.</summary>
    public bool IsHeldToRise(double massFlow, double celsius) =>
        SetCelsius - celsius > riseKelvins && heaterWatts > massFlow * HeatCapacity * riseKelvins;

    /// <summary>Heat that the tank loses, less what it is given otherwise.</summary>
    public double LossWatts(double celsius) =>
        reservoir.LossWattPerKelvin * (celsius - reservoir.Ambient.DegreesCelsius) - (double)reservoir.HeatInput.Watts;

    public double ProcessCelsius(double celsius)
    {
        var massFlow = FlowAt(celsius) * DensityAt(celsius);
        return celsius + HeaterWatts(massFlow, celsius) / (massFlow * HeatCapacity);
    }

    /// <summary>
    /// The first temperature from the start on at which losses and evaporation balance the heater: thick oil can hold a tank at a cold balance though
    /// a warmer one exists, because the little that the pump moves carries no more heat. Where none is found, the last temperature looked at.
    /// </summary>
    public double SteadyCelsius(double evaporatedKilogramPerSecond)
    {
        const double Step = 0.25;
        double Gain(double celsius)
        {
            var latent =
                evaporatedKilogramPerSecond > 0
                    ? evaporatedKilogramPerSecond
                        * WaterVapour
                            .LatentHeat(Temperature.FromDegreesCelsius(Math.Max(0.01, celsius)))
                            .JoulesPerKilogram
                    : 0;
            return HeaterWatts(FlowAt(celsius) * DensityAt(celsius), celsius) - LossWatts(celsius) - latent;
        }

        var at = reservoir.Start.DegreesCelsius;
        var direction = Math.Sign(Gain(at));
        var warmth =
            reservoir.LossWattPerKelvin > 0 ? (double)reservoir.HeatInput.Watts / reservoir.LossWattPerKelvin
            : reservoir.HeatInput.Watts > 0 ? 300
            : 0;
        var around = reservoir.Ambient.DegreesCelsius + warmth;
        var coldest = Math.Max(-55, Math.Min(at, around) - 10);
        var hottest = Math.Min(190, Math.Max(at, Math.Max(SetCelsius, around)) + Step);
        while (direction != 0 && at > coldest && at < hottest)
        {
            var next = Math.Min(hottest, Math.Max(coldest, at + direction * Step));
            if (Math.Sign(Gain(next)) != direction)
            {
                return Brent.FindRoot(Gain, Math.Min(at, next), Math.Max(at, next), 1e-10, 200);
            }

            at = next;
        }

        return at;
    }

    /// <summary>How fast the tank warms, in kelvins a second, with nothing evaporated; where that takes less than a minute, slowed to one.</summary>
    public double WarmingPerSecond(double celsius, double massFlow, double heaterWatts)
    {
        var fastest = (reservoir.LossWattPerKelvin + massFlow * HeatCapacity) / CapacityJoulePerKelvin;
        return Slowed(fastest) * (heaterWatts - LossWatts(celsius)) / CapacityJoulePerKelvin;
    }

    /// <summary>
    /// What a change that runs at a rate is slowed by: nothing up to <see cref="FastestPerSecond"/>. A thimble in the flow of a main would else take as many steps as its oil
    /// turns over; where it ends does not change.
    /// </summary>
    public static double Slowed(double perSecond) => Math.Min(1, FastestPerSecond / Math.Max(1e-300, perSecond));

    /// <summary>Temperature of the tank after a time, with nothing evaporated.</summary>
    public double CelsiusAfter(double seconds)
    {
        double[] Rates(double[] state)
        {
            var celsius = Math.Min(190, Math.Max(-55, state[0]));
            var massFlow = FlowAt(celsius) * DensityAt(celsius);
            return [WarmingPerSecond(celsius, massFlow, HeaterWatts(massFlow, celsius))];
        }

        var solver = new DormandPrince(Rates, [reservoir.Start.DegreesCelsius], [1e-6], 1e-8, 10);
        while (solver.Time < seconds)
        {
            solver.StepTowards(seconds);
        }

        return solver.State[0];
    }
}
