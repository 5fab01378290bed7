using OilCondition.Text;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>A pump on a side loop, with or without a heater, that carries a separator or a filter.</summary>
/// <remarks>
/// The oil is treated while it warms: the in-line heater lifts what the pump carries to the working temperature, by no more than the highest rise per pass,
/// and the tank follows against its losses, U (T − T_amb). Flow, heat and start are those of a <see cref="PurificationUnit"/>, so that rows of a comparison
/// differ by what they do to the oil and not by how they warm it.
/// </remarks>
public sealed class SideLoop
{
    /// <summary>Describes a loop. Name the arguments that have a default.</summary>
    /// <param name="pump">Flow of the oil pump and the viscosity up to which it holds it.</param>
    /// <param name="workingTemperature">Oil temperature behind the heater that its thermostat holds, 0 to 150 °C; null for the temperature at the start.</param>
    /// <param name="heaterPower">Heat to the oil at most, 0 to 100 MW.</param>
    /// <param name="motorPower">Electrical power of motors, 0 to 100 MW.</param>
    /// <param name="highestRise">Highest rise of the oil per pass, to which the heater turns down, 0.1 to 150 K; null for 11 K (common practice, no source).</param>
    /// <param name="startViscosity">
    /// Viscosity above which the oil pump must not be started; null for 5000 mm²/s, or the limit of its full flow where that is more (common practice, no source).
    /// </param>
    /// <exception cref="ArgumentNullException">The pump is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public SideLoop(
        PumpViscosityLimit pump,
        Temperature? workingTemperature = null,
        Power heaterPower = default,
        Power motorPower = default,
        TemperatureDelta? highestRise = null,
        KinematicViscosity? startViscosity = null
    )
    {
        Pump = Guard.NotNull(pump);
        Guard.InRange(pump.FullFlow.LitersPerMinute, 1e-6, 1e6, "L/min", nameof(pump));
        if (workingTemperature is { } temperature)
        {
            Guard.InRange(temperature.DegreesCelsius, 0, 150, "°C", nameof(workingTemperature));
        }

        Guard.InRange((double)heaterPower.Watts, 0, 1e8, "W", nameof(heaterPower));
        Guard.InRange((double)motorPower.Watts, 0, 1e8, "W", nameof(motorPower));
        WorkingTemperature = workingTemperature;
        HeaterPower = heaterPower;
        MotorPower = motorPower;
        HighestRise = CircuitLimits.Rise(highestRise, nameof(highestRise));
        StartViscosity = CircuitLimits.Start(startViscosity, pump, nameof(startViscosity));
    }

    /// <summary>Flow of the oil pump and the viscosity up to which it holds it.</summary>
    public PumpViscosityLimit Pump { get; }

    /// <summary>Oil temperature behind the heater; null for the temperature at the start.</summary>
    public Temperature? WorkingTemperature { get; }

    /// <summary>Heat to the oil at most.</summary>
    public Power HeaterPower { get; }

    /// <summary>Electrical power of motors.</summary>
    public Power MotorPower { get; }

    /// <summary>Highest rise of the oil per pass; the heater turns down to keep it.</summary>
    public TemperatureDelta HighestRise { get; }

    /// <summary>Viscosity above which the oil pump must not be started.</summary>
    public KinematicViscosity StartViscosity { get; }

    internal SideLoop Shifted(InputShift shift) =>
        new(
            new PumpViscosityLimit(Pump.FullFlow * shift.Flow, Pump.HighestViscosity),
            WorkingTemperature,
            HeaterPower,
            MotorPower,
            HighestRise,
            StartViscosity
        );

    /// <summary>The same loop with its heater turned down.</summary>
    internal SideLoop With(Power heaterPower) =>
        new(Pump, WorkingTemperature, heaterPower, MotorPower, HighestRise, StartViscosity);

    /// <summary>The loop in a few words.</summary>
    /// <returns>For example <c>40 L/min at 50 °C, heater 12 kW</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(Pump.FullFlow.LitersPerMinute)} L/min"
        + (WorkingTemperature is { } warm ? $" at {PlainText.Number(warm.DegreesCelsius)} °C" : "")
        + (HeaterPower.Watts > 0 ? $", heater {PlainText.Number((double)HeaterPower.Kilowatts)} kW" : "");
}
