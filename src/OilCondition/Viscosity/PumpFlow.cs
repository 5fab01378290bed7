using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>The flow that a pump can hold at an oil temperature.</summary>
public sealed record PumpFlow
{
    internal PumpFlow(VolumeFlow flow, ViscosityPoint oil, bool isReduced)
    {
        Flow = flow;
        Oil = oil;
        IsReduced = isReduced;
    }

    /// <summary>
    /// The flow, the full one at most. Where <see cref="Oil"/> is thicker than the scale it is an upper bound, and no flow to count on.
    /// </summary>
    public VolumeFlow Flow { get; }

    /// <summary>The oil's viscosity there; it says whether it was extrapolated or is beyond the scale.</summary>
    public ViscosityPoint Oil { get; }

    /// <summary>Whether the oil is thicker than the pump's limit, so that the flow is not the full one.</summary>
    public bool IsReduced { get; }

    /// <summary>The flow with the oil behind it.</summary>
    /// <returns>For example <c>27.1 L/min, reduced: 1470 mm²/s at -10 °C, extrapolated</c>.</returns>
    public override string ToString() =>
        Oil.IsThicker
            ? $"no flow to count on: {Oil}"
            : $"{PlainText.Number(Flow.LitersPerMinute)} L/min, {(IsReduced ? "reduced" : "full flow")}: {Oil}";
}
