using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Thermal;

/// <summary>A well-mixed tank of oil that is heated, or cools, with losses to its surroundings.</summary>
/// <remarks>
/// C dT/dt = P − U (T − T_amb), so T(t) = T_inf + (T_0 − T_inf) exp(−t U / C), T_inf = T_amb + P / U.
/// C: heat capacity of oil and steel [J/K];  U: loss, coefficient times area [W/K];  P: heat to the oil [W]. All constant.
/// The model knows no thermostat, no flash point and no film temperature: it states what constant power would do. Caution: hot oil; keep the
/// heater's limits and cut-outs as the maker and local codes demand.
/// </remarks>
/// <example>
/// <code>
/// var tank = HeatedTank.FromOil(Mass.FromKilograms(870), SpecificEntropy.FromKilojoulesPerKilogramKelvin(1.95), 60);
/// var heatUp = tank.TimeTo(Temperature.FromDegreesCelsius(60), Temperature.FromDegreesCelsius(20),
///     Power.FromKilowatts(6), Temperature.FromDegreesCelsius(20));   // expected 4.01 h
/// </code>
/// </example>
public sealed class HeatedTank
{
    private readonly double _joulePerKelvin;

    /// <summary>Describes a tank by its whole heat capacity.</summary>
    /// <param name="heatCapacity">Heat capacity of oil and steel together, above 0.</param>
    /// <param name="lossWattPerKelvin">Loss per kelvin above the surroundings, 0 or more, in W/K.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public HeatedTank(Entropy heatCapacity, double lossWattPerKelvin)
    {
        _joulePerKelvin = Guard.InRange(heatCapacity.JoulesPerKelvin, 1, 1e15, "J/K", nameof(heatCapacity));
        LossWattPerKelvin = Guard.InRange(lossWattPerKelvin, 0, 1e9, "W/K");
        HeatCapacity = heatCapacity;
    }

    /// <summary>Heat capacity of the whole, C.</summary>
    public Entropy HeatCapacity { get; }

    /// <summary>Loss per kelvin above the surroundings, U, in W/K.</summary>
    public double LossWattPerKelvin { get; }

    /// <summary>A tank whose steel is left out, which is on the fast side for small tanks.</summary>
    /// <param name="oilMass">Mass of the oil fill, above 0.</param>
    /// <param name="heatCapacity">Specific heat capacity of the oil, 500 to 5000 J/(kg K).</param>
    /// <param name="lossWattPerKelvin">Loss per kelvin above the surroundings, 0 or more, in W/K: <see cref="TankHeatLoss"/>.</param>
    /// <returns>The tank.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static HeatedTank FromOil(Mass oilMass, SpecificEntropy heatCapacity, double lossWattPerKelvin)
    {
        var kilograms = Guard.Positive(oilMass.Kilograms, "kg", nameof(oilMass));
        var c = PhysicalRange.HeatCapacity(heatCapacity);
        return new HeatedTank(Entropy.FromJoulesPerKelvin(kilograms * c), lossWattPerKelvin);
    }

    /// <summary>Temperature after a time of constant power.</summary>
    /// <param name="start">Oil temperature at the start, −60 to 200 °C.</param>
    /// <param name="power">Heat to the oil, 0 for cooling.</param>
    /// <param name="ambient">Temperature of the surroundings, −60 to 200 °C.</param>
    /// <param name="time">Time, 0 or more.</param>
    /// <returns>Oil temperature; it may lie above what the oil bears.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public Temperature TemperatureAfter(Temperature start, Power power, Temperature ambient, TimeSpan time)
    {
        var t0 = OilTemperature.Celsius(start);
        var seconds = Guard.InRange(time.TotalSeconds, 0, 1e10, "s", nameof(time));
        var gain = Gain(t0, power, ambient);
        var x = seconds * LossWattPerKelvin / _joulePerKelvin;

        // (1 − exp(−x)) / x, which goes to 1 where nothing is lost.
        var slowing = x < 1e-5 ? 1 - x / 2 + x * x / 6 : (1 - Math.Exp(-x)) / x;
        return Temperature.FromDegreesCelsius(t0 + gain * seconds / _joulePerKelvin * slowing);
    }

    /// <summary>Temperature at which losses balance the heater, T_amb + P / U.</summary>
    /// <param name="power">Heat to the oil, 0 or more.</param>
    /// <param name="ambient">Temperature of the surroundings, −60 to 200 °C.</param>
    /// <param name="steady">The steady temperature; the ambient one where the method returns false.</param>
    /// <returns>False for a tank without losses that is heated: its temperature rises without end.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public bool TrySteadyTemperature(Power power, Temperature ambient, out Temperature steady)
    {
        var watts = Watts(power);
        var celsius = OilTemperature.Celsius(ambient);
        var rise = watts > 0 ? watts / LossWattPerKelvin : 0;
        var exists = Guard.IsFinite(rise);
        steady = Temperature.FromDegreesCelsius(exists ? celsius + rise : celsius);
        return exists;
    }

    /// <summary>Time to a temperature at constant power.</summary>
    /// <remarks>t = −(C/U) ln(1 − U (T − T_0) / (P − U (T_0 − T_amb))).</remarks>
    /// <param name="target">Temperature to be reached, −60 to 200 °C.</param>
    /// <param name="start">Oil temperature at the start, −60 to 200 °C.</param>
    /// <param name="power">Heat to the oil, 0 for cooling.</param>
    /// <param name="ambient">Temperature of the surroundings, −60 to 200 °C.</param>
    /// <returns>
    /// Expected after the time; already there; or never: the temperature moves the other way, or losses balance the heater before, or exactly at,
    /// the target (<see cref="TrySteadyTemperature"/> says where). Heater energy until then is power times time.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public Arrival<TimeSpan> TimeTo(Temperature target, Temperature start, Power power, Temperature ambient)
    {
        var t0 = OilTemperature.Celsius(start);
        var rise = OilTemperature.Celsius(target) - t0;
        var gain = Gain(t0, power, ambient);
        if (rise == 0)
        {
            return new Arrival<TimeSpan>.Already(TimeSpan.Zero);
        }

        var share = LossWattPerKelvin * rise / gain;
        if (gain == 0 || rise > 0 != gain > 0 || !(share < 1))
        {
            return new Arrival<TimeSpan>.Never();
        }

        // −ln(1 − x) / x, which goes to 1 where nothing is lost.
        var slowing = share < 1e-5 ? 1 + share / 2 + share * share / 3 : -Math.Log(1 - share) / share;
        return new Arrival<TimeSpan>.Expected(Elapsed.FromSeconds(_joulePerKelvin * rise / gain * slowing));
    }

    /// <summary>The tank in short.</summary>
    /// <returns>For example <c>1700 kJ/K, loses 60 W/K</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(_joulePerKelvin / 1000)} kJ/K, loses {PlainText.Number(LossWattPerKelvin)} W/K";

    /// <summary>Heat that stays in the oil at the start, P − U (T_0 − T_amb).</summary>
    private double Gain(double startCelsius, Power power, Temperature ambient) =>
        Watts(power) - LossWattPerKelvin * (startCelsius - OilTemperature.Celsius(ambient));

    private static double Watts(Power power) => Guard.InRange((double)power.Watts, 0, 1e9, "W", nameof(power));
}
