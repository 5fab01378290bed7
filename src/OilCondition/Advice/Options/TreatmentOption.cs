using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition;

/// <summary>One way to treat a machine's oil: what it reaches, how surely, when, at what cost, when the trouble is back, and why it is ruled out.</summary>
public sealed class TreatmentOption
{
    internal TreatmentOption(string id, Words name, IReadOnlyList<string> equipment, OptionVerdict verdict)
    {
        Id = id;
        NameWords = name;
        Equipment = equipment;
        Verdict = verdict;
    }

    /// <summary>Identifier: of the equipment, of the train, of two pieces in a row joined by +, or <c>wait</c>.</summary>
    public string Id { get; }

    /// <summary>What people call it.</summary>
    public string Name => Sentences.English.Name(this);

    /// <summary>Identifiers of the equipment that it binds; empty for none.</summary>
    public IReadOnlyList<string> Equipment { get; }

    /// <summary>What comes of it.</summary>
    public OptionVerdict Verdict { get; }

    /// <summary>Why it does not reach the target; null where it does, or where something else rules it out.</summary>
    public WhyNot? WhyNot { get; internal init; }

    /// <summary>What rules it out, in words with figures; empty where nothing does.</summary>
    public string RuledOut => Sentences.English.RuledOut(this);

    /// <summary>The row of the comparison with its band, cautions and doubts; null for waiting and for what cannot be connected.</summary>
    public TreatmentAssessment? Assessment { get; internal init; }

    /// <summary>The plant's own run by which it is planned, with what its unit removed there; empty where it is planned by its nameplate.</summary>
    public string Experience => Sentences.English.Experience(this);

    /// <summary>What it takes to have it at the machine; null for waiting.</summary>
    public EquipmentTerms? Terms { get; internal init; }

    /// <summary>Lowest water that it can reach here without ingress, in half of the cases; null where water is not to be reached, or it cannot be planned.</summary>
    public MassFraction? Floor { get; internal init; }

    /// <summary>Share of the cases in which it meets the target at all; 0 for waiting.</summary>
    public Ratio Probability { get; internal init; }

    /// <summary>Share of the cases in which it meets the target before the date that the risk allows.</summary>
    public Ratio ProbabilityInTime { get; internal init; }

    /// <summary>When it can begin: lead time, work elsewhere that is under way, and the outage where the machine must stand; null where it cannot.</summary>
    public DateTimeOffset? Begins { get; internal init; }

    /// <summary>Done by then in one case of ten; null where it is not.</summary>
    public DateTimeOffset? DoneP10 { get; internal init; }

    /// <summary>Done by then in half of the cases; null where it is not.</summary>
    public DateTimeOffset? DoneP50 { get; internal init; }

    /// <summary>Done by then in nine cases of ten; null where it is not.</summary>
    public DateTimeOffset? DoneP90 { get; internal init; }

    /// <summary>Hours for which the equipment is bound in half of the cases, connecting and taking off included; null where it does not get there.</summary>
    public TimeSpan? Bound { get; internal init; }

    /// <summary>The outage in which it is done; null where the machine need not stand, or none is stated.</summary>
    public Outage? Outage { get; internal init; }

    /// <summary>What it costs; null without prices.</summary>
    public OptionCost? Cost { get; internal init; }

    /// <summary>What the options are compared by: cost in half of the cases where every price is known, else <see cref="Bound"/> in hours.</summary>
    public double? Effort { get; private set; }

    /// <summary>When an alert is back afterwards, if the way in stays open; null where it does not get there.</summary>
    public Arrival<DateTimeOffset>? Rebound { get; internal init; }

    /// <summary>Why it is ruled out, where its floor is, when the trouble is back, and what makes it doubtful: phrases without full stops.</summary>
    public IReadOnlyList<string> Remarks => Sentences.English.Remarks(this);

    /// <summary>Whether it can be recommended.</summary>
    public bool IsPossible => Verdict <= OptionVerdict.Waits;

    internal Words NameWords { get; }

    internal Words? RuledOutWords { get; init; }

    internal Words? ExperienceWords { get; init; }

    internal TreatmentOption WithEffort(bool byCost)
    {
        var option = (TreatmentOption)MemberwiseClone();
        option.Effort = byCost ? Cost?.P50 : Bound?.TotalHours;
        return option;
    }

    /// <summary>The option in one line.</summary>
    /// <returns>For example <c>HP-VDU mobile vacuum dehydration unit: meets the target in 97 %, 14 h (11 to 19), done by 2026-07-02 20:00</c>.</returns>
    public override string ToString() => Sentences.English.Of(this);
}
