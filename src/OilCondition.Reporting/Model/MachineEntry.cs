namespace OilCondition.Reporting;

/// <summary>One machine of a report: what was found, what can be done, and by when.</summary>
internal sealed record MachineEntry(
    ConditionAssessment Assessment,
    IReadOnlyList<TreatmentDecision> Decisions,
    Due Due,
    string Anchor
)
{
    /// <summary>Whether it asks for something.</summary>
    public bool AsksForSomething =>
        Assessment.Worst >= Severity.Alert || Decisions.Count > 0 || Assessment.Recommendations.Count > 0;

    /// <summary>The machines, the gravest first, then the earliest date, then the order given; what asks for nothing comes last.</summary>
    public static IReadOnlyList<MachineEntry> InOrder(
        IReadOnlyList<ConditionAssessment> assessments,
        IReadOnlyList<TreatmentDecision> decisions,
        ReportTexts texts
    )
    {
        var ofOthers = decisions.FirstOrDefault(one => !assessments.Contains(one.Assessment));
        if (ofOthers is not null)
        {
            throw new ArgumentException(
                $"decisions has one for '{ofOthers.Assessment.History.Machine.Id}' whose assessment is not among assessments.",
                nameof(decisions)
            );
        }

        var ofMachine = decisions.ToLookup(one => one.Assessment);
        return
        [
            .. assessments
                .Select(one => new MachineEntry(one, [.. ofMachine[one]], Due.Of(one, [.. ofMachine[one]], texts), ""))
                .OrderBy(entry => entry.AsksForSomething ? 0 : 1)
                .ThenByDescending(entry => entry.Assessment.Worst)
                .ThenBy(entry => entry.Due.At is null ? 1 : 0)
                .ThenBy(entry => entry.Due.At?.UtcTicks)
                .Select((entry, i) => entry with { Anchor = $"machine-{i + 1}" }),
        ];
    }
}
