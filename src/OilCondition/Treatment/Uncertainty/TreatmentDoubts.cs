namespace OilCondition.Treatment;

/// <summary>What makes a plan or a row less certain than its figures look.</summary>
[Flags]
public enum TreatmentDoubts
{
    /// <summary>Nothing of the following.</summary>
    None = 0,

    /// <summary>The saturation curve or the oil's properties are used outside the range in which they were measured or published.</summary>
    CurveExtrapolated = 1,

    /// <summary>The pump's flow is held down at a viscosity outside the temperatures at which the oil was measured.</summary>
    ViscosityExtrapolated = 2,

    /// <summary>The heater does not hold the process temperature in the end.</summary>
    HeaterLimited = 4,

    /// <summary>The heater is turned down to keep the highest rise per pass.</summary>
    HeldToRise = 8,

    /// <summary>Part of the water is emulsified: a share that nobody measures well, and drops that separate slowly.</summary>
    Emulsion = 16,

    /// <summary>The oil is too thick for the pump's full flow when the work starts: the hours begin with a slow start.</summary>
    SlowStart = 32,

    /// <summary>The chamber pressure looks like a gauge reading typed as an absolute pressure.</summary>
    PressureInDoubt = 64,
}
