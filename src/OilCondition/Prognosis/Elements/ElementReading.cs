using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Prognosis;

/// <summary>A pressure drop across a filter element, with the flow and viscosity at which it was read.</summary>
public sealed record ElementReading
{
    /// <summary>States a reading.</summary>
    /// <param name="at">When; in the years 1900 to 2199.</param>
    /// <param name="drop">Pressure drop of the element, 0 to 10 MPa.</param>
    /// <param name="flow">Oil flow, above 0.</param>
    /// <param name="viscosity">Viscosity of the oil at its temperature then, 0.21 to 2e7 mm²/s.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public ElementReading(DateTimeOffset at, Pressure drop, VolumeFlow flow, KinematicViscosity viscosity)
    {
        At = Guard.Moment(at);
        Guard.InRange(drop.Pascals, 0, 1e7, "Pa", nameof(drop));
        Guard.InRange(flow.LitersPerMinute, 1e-6, 1e6, "L/min", nameof(flow));
        PhysicalRange.Centistokes(viscosity);
        Drop = drop;
        Flow = flow;
        Viscosity = viscosity;
    }

    /// <summary>When.</summary>
    public DateTimeOffset At { get; }

    /// <summary>Pressure drop of the element.</summary>
    public Pressure Drop { get; }

    /// <summary>Oil flow.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>Viscosity of the oil at its temperature then.</summary>
    public KinematicViscosity Viscosity { get; }

    /// <summary>The reading in one line.</summary>
    /// <returns>For example <c>1.1 bar at 20 L/min, 46 mm²/s on 2026-03-02</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(Drop.Bars)} bar at {PlainText.Number(Flow.LitersPerMinute)} L/min, {PlainText.Number(Viscosity.Centistokes)} mm²/s on {PlainText.Date(At)}";
}
