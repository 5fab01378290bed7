using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>The flow that a pump can hold at an oil temperature.</summary>
public sealed record PumpFlow
{
    internal PumpFlow(VolumeFlow flow, ViscosityPoint oil, PumpFlowOutcome outcome)
    {
        Flow = flow;
        Oil = oil;
        Outcome = outcome;
    }

    /// <summary>The flow, the full one at most.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>The oil's viscosity there; it says whether it was extrapolated.</summary>
    public ViscosityPoint Oil { get; }

    /// <summary>Full, reduced, or beyond the scale.</summary>
    public PumpFlowOutcome Outcome { get; }
}
