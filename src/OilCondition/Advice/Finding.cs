using OilCondition.Text;

namespace OilCondition;

/// <summary>
/// Something found about an oil, as facts: <see cref="LimitFinding"/>, <see cref="FreeWaterFinding"/>,
/// <see cref="RemainingLifeFinding"/>, <see cref="CleanupFinding"/> or <see cref="RecordFinding"/>.
/// </summary>
public abstract class Finding
{
    private protected Finding(FindingCode code, Severity severity, Measurand measurand)
    {
        Code = code;
        Severity = severity;
        Measurand = Guard.NotNull(measurand);
    }

    /// <summary>What was found.</summary>
    public FindingCode Code { get; }

    /// <summary>How much it asks for.</summary>
    public Severity Severity { get; }

    /// <summary>What it is about.</summary>
    public Measurand Measurand { get; }

    /// <summary>The figures on which it rests, so that a planner can check it by hand.</summary>
    public abstract IReadOnlyList<EvidenceItem> Evidence { get; }
}
