using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>The cold start of a positive-displacement pump: the highest viscosity at which its maker lets it give its full flow.</summary>
/// <remarks>
/// Formula: Q = Q_full min(1, v_limit/v).   Q: flow that can be held [L/min];  v: kinematic viscosity [mm²/s];  v_limit: highest at full flow [mm²/s].
/// Derived: the limit is taken as that of the suction side, where flow is laminar; its pressure drop goes as v Q (Hagen-Poiseuille), so the drop
/// that the pump bears at its limit is kept by a flow in inverse proportion to viscosity. Head of oil and change of density are left out, and a
/// limit that has another cause (torque, lubrication, a heater's film) is not relieved by less flow.
/// Caution: the maker's limit comes first. A slower start above it is the maker's to allow; cavitation and a starved bearing destroy pumps.
/// </remarks>
/// <example>
/// <code>
/// var pump = new PumpViscosityLimit(VolumeFlow.FromLitersPerMinute(40), KinematicViscosity.FromCentistokes(1000));
/// var coldest = pump.ColdestAtFullFlow(line);
/// </code>
/// </example>
public sealed class PumpViscosityLimit
{
    /// <summary>States a pump's limit.</summary>
    /// <param name="fullFlow">Flow at rated speed, above 0.</param>
    /// <param name="highestViscosity">Highest viscosity at that flow, 0.21 to 2e7 mm²/s, from the pump's maker.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public PumpViscosityLimit(VolumeFlow fullFlow, KinematicViscosity highestViscosity)
    {
        Guard.Positive(fullFlow.LitersPerMinute, "L/min", nameof(fullFlow));
        PhysicalRange.Centistokes(highestViscosity);
        FullFlow = fullFlow;
        HighestViscosity = highestViscosity;
    }

    /// <summary>Flow at rated speed.</summary>
    public VolumeFlow FullFlow { get; }

    /// <summary>Highest viscosity at that flow.</summary>
    public KinematicViscosity HighestViscosity { get; }

    /// <summary>The temperature at which the limit is passed: colder than this the pump cannot hold its full flow.</summary>
    /// <param name="line">The oil's viscosity against temperature.</param>
    /// <returns>The temperature, flagged where extrapolated or where the oil passes the limit only outside −60 to 200 °C.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="line"/> is null.</exception>
    public ViscosityPoint ColdestAtFullFlow(ViscosityTemperatureLine line) =>
        Guard.NotNull(line).TemperatureFor(HighestViscosity);

    /// <summary>The flow that the pump can hold at an oil temperature.</summary>
    /// <param name="line">The oil's viscosity against temperature.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The flow with the viscosity behind it.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="line"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside −60 to 200 °C.</exception>
    public PumpFlow FlowAt(ViscosityTemperatureLine line, Temperature temperature)
    {
        var oil = Guard.NotNull(line).ViscosityAt(temperature);
        var share = HighestViscosity.Centistokes / oil.Viscosity.Centistokes;
        return new PumpFlow(FullFlow * Math.Min(1, share), oil, isReduced: share < 1);
    }

    /// <summary>The limit in one line.</summary>
    /// <returns>For example <c>40 L/min up to 1000 mm²/s</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(FullFlow.LitersPerMinute)} L/min up to {PlainText.Number(HighestViscosity.Centistokes)} mm²/s";
}
