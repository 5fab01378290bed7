using OilCondition.Text;

namespace OilCondition;

/// <summary>Something found about an oil, as facts: a code, its severity, what it is about, and the figures on which it rests.</summary>
/// <remarks>
/// What was compared and forecast stands beside it in <see cref="ConditionAssessment.States"/>, <see cref="ConditionAssessment.Water"/> and
/// the history; <see cref="Sentences"/> makes a sentence of it.
/// </remarks>
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

    /// <summary>The finding as a sentence.</summary>
    /// <returns>As <see cref="Sentences"/> says it.</returns>
    public override string ToString() => Sentences.English.Of(this);

    /// <summary>The finding in the words of a language.</summary>
    internal abstract string Said(Sentences sentences);

    /// <summary>On which side of its measurand it was found: beyond the upper or the lower limit, rising or falling.</summary>
    internal virtual LimitSide Side => LimitSide.Upper;
}
