using OilCondition.Text;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>A pump on a side loop, with or without a heater, that carries a separator or a filter.</summary>
/// <remarks>
/// The oil is warmed first and treated then; it is held at the working temperature against its losses, U (T − T_amb). The flow is that which the pump
/// holds at the working temperature.
/// </remarks>
public sealed class SideLoop
{
    /// <summary>Describes a loop. Name the arguments that have a default.</summary>
    /// <param name="pump">Flow of the oil pump and the viscosity up to which it holds it.</param>
    /// <param name="workingTemperature">Oil temperature at work, 0 to 150 °C; null, or lower, for the temperature at the start.</param>
    /// <param name="heaterPower">Heat to the oil at most, 0 to 100 MW.</param>
    /// <param name="motorPower">Electrical power of motors, 0 to 100 MW.</param>
    /// <exception cref="ArgumentNullException">The pump is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public SideLoop(
        PumpViscosityLimit pump,
        Temperature? workingTemperature = null,
        Power heaterPower = default,
        Power motorPower = default
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
    }

    /// <summary>Flow of the oil pump and the viscosity up to which it holds it.</summary>
    public PumpViscosityLimit Pump { get; }

    /// <summary>Oil temperature at work; null for the temperature at the start.</summary>
    public Temperature? WorkingTemperature { get; }

    /// <summary>Heat to the oil at most.</summary>
    public Power HeaterPower { get; }

    /// <summary>Electrical power of motors.</summary>
    public Power MotorPower { get; }

    /// <summary>The loop in a few words.</summary>
    /// <returns>For example <c>40 L/min at 50 °C, heater 12 kW</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(Pump.FullFlow.LitersPerMinute)} L/min"
        + (WorkingTemperature is { } warm ? $" at {PlainText.Number(warm.DegreesCelsius)} °C" : "")
        + (HeaterPower.Watts > 0 ? $", heater {PlainText.Number((double)HeaterPower.Kilowatts)} kW" : "");
}
