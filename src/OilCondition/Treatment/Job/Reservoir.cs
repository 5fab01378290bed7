using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>A well-mixed tank of oil: how much, how warm, what it loses, and what comes in.</summary>
/// <remarks>
/// The loss per kelvin comes from <see cref="Thermal.TankHeatLoss.WattPerKelvin"/> or, better, from a measured cool-down. Dead corners and a
/// bottom of water that no suction reaches are not in it: drain the bottom first.
/// </remarks>
/// <example>
/// <code>
/// var reservoir = new Reservoir(Volume.FromLiters(2000), start: Temperature.FromDegreesCelsius(15),
///     ambient: Temperature.FromDegreesCelsius(15), lossWattPerKelvin: 60, waterIngress: MassFlow.FromGramsPerHour(10));
/// </code>
/// </example>
public sealed class Reservoir
{
    /// <summary>Describes a reservoir. Name the arguments that have a default.</summary>
    /// <param name="oilVolume">Oil in it, read at the temperature of the start, 1 mL to 10⁶ m³.</param>
    /// <param name="start">Oil temperature at the start, −60 to 200 °C.</param>
    /// <param name="ambient">Temperature of the surroundings, −40 to 80 °C.</param>
    /// <param name="lossWattPerKelvin">Heat lost per kelvin above the surroundings, 0 or more, in W/K.</param>
    /// <param name="waterIngress">Water that comes in while the treatment runs, 0 or more.</param>
    /// <param name="ingression">Particles that come in while the treatment runs; null for none.</param>
    /// <param name="highestTemperature">Highest temperature that seals, hoses and coating bear, 0 to 150 °C; null for 150 °C.</param>
    /// <param name="steel">Heat capacity of the steel that is warmed with the oil, 0 or more.</param>
    /// <param name="heatInput">Heat that the running machine or a tank heater gives to the oil all the time, 0 to 100 MW; none where the oil stands and cools.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public Reservoir(
        Volume oilVolume,
        Temperature start,
        Temperature ambient,
        double lossWattPerKelvin,
        MassFlow waterIngress = default,
        ParticleIngression? ingression = null,
        Temperature? highestTemperature = null,
        Entropy steel = default,
        Power heatInput = default
    )
    {
        Guard.InRange(oilVolume.CubicMeters, 1e-6, 1e6, "m³", nameof(oilVolume));
        OilTemperature.Celsius(start);
        Guard.InRange(ambient.DegreesCelsius, -40, 80, "°C", nameof(ambient));
        LossWattPerKelvin = Guard.InRange(lossWattPerKelvin, 0, 1e6, "W/K");
        Guard.InRange(waterIngress.KilogramsPerHour, 0, 1e6, "kg/h", nameof(waterIngress));
        var highest = highestTemperature ?? Temperature.FromDegreesCelsius(150);
        Guard.InRange(highest.DegreesCelsius, 0, 150, "°C", nameof(highestTemperature));
        Guard.InRange(steel.JoulesPerKelvin, 0, 1e12, "J/K", nameof(steel));
        Guard.InRange((double)heatInput.Watts, 0, 1e8, "W", nameof(heatInput));
        HeatInput = heatInput;
        OilVolume = oilVolume;
        Start = start;
        Ambient = ambient;
        WaterIngress = waterIngress;
        Ingression = ingression ?? ParticleIngression.None;
        HighestTemperature = highest;
        Steel = steel;
    }

    /// <summary>Oil in it, at the temperature of the start.</summary>
    public Volume OilVolume { get; }

    /// <summary>Oil temperature at the start.</summary>
    public Temperature Start { get; }

    /// <summary>Temperature of the surroundings.</summary>
    public Temperature Ambient { get; }

    /// <summary>Heat lost per kelvin above the surroundings, in W/K.</summary>
    public double LossWattPerKelvin { get; }

    /// <summary>Water that comes in while the treatment runs.</summary>
    public MassFlow WaterIngress { get; }

    /// <summary>Particles that come in while the treatment runs.</summary>
    public ParticleIngression Ingression { get; }

    /// <summary>Highest temperature that seals, hoses and coating bear.</summary>
    public Temperature HighestTemperature { get; }

    /// <summary>Heat capacity of the steel that is warmed with the oil.</summary>
    public Entropy Steel { get; }

    /// <summary>Heat that the running machine or a tank heater gives to the oil all the time.</summary>
    public Power HeatInput { get; }

    /// <summary>The same with another start, ingress or loss, or with the oil at another volume.</summary>
    internal Reservoir With(
        Temperature? start = null,
        MassFlow? waterIngress = null,
        double? lossWattPerKelvin = null,
        Volume? oilVolume = null
    ) =>
        new(
            oilVolume ?? OilVolume,
            start ?? Start,
            Ambient,
            lossWattPerKelvin ?? LossWattPerKelvin,
            waterIngress ?? WaterIngress,
            Ingression,
            HighestTemperature,
            Steel,
            HeatInput
        );

    /// <summary>The reservoir in a few words.</summary>
    /// <returns>For example <c>2000 L at 15 °C, surroundings 15 °C, loss 60 W/K, 10 g/h of water comes in</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(OilVolume.Liters)} L at {PlainText.Number(Start.DegreesCelsius)} °C, surroundings {PlainText.Number(Ambient.DegreesCelsius)} °C, "
        + $"loss {PlainText.Number(LossWattPerKelvin)} W/K"
        + (HeatInput.Watts > 0 ? $", given {PlainText.Number((double)HeatInput.Kilowatts)} kW" : "")
        + (
            WaterIngress.GramsPerHour > 0
                ? $", {PlainText.Number(WaterIngress.GramsPerHour)} g/h of water comes in"
                : ""
        );
}
