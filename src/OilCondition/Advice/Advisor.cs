using OilCondition.Treatment;

namespace OilCondition;

/// <summary>From problems to recommendations: which topic asks for which action, with quantities and cautions.</summary>
/// <remarks>
/// Common practice, no source: free water is drained before it is evaporated; water that returns after a treatment has a way in;
/// dirt is filtered and its way in is closed; oil that ages is changed before its limit; varnish is removed, since an oil change leaves it in
/// the machine; metals point to the part that wears; what tells the oil's identity is checked against a mix-up or dilution. On the side on
/// which a measurand gets better no remedy is named: the cause is to be found (<see cref="ProblemTopic.Other"/>).
/// </remarks>
internal static class Advisor
{
    private static readonly Caution[] WorkOnOil =
    [
        Caution.HotOil,
        Caution.PressurisedOil,
        Caution.SpillsAndWaste,
        Caution.MakersLimits,
        Caution.LocalCodes,
    ];

    private static readonly Caution[] Opening =
    [
        Caution.ElectricalIsolation,
        Caution.PressurisedOil,
        Caution.HotOil,
        Caution.MakersLimits,
        Caution.LocalCodes,
    ];

    public static IReadOnlyList<Recommendation> Recommend(
        ChargeRecords records,
        IReadOnlyList<Problem> problems,
        WaterInOil water
    )
    {
        if (problems.Count == 0)
        {
            return [];
        }

        var asked =
            from problem in problems
            from finding in problem.Findings
            from action in Actions(records, problem, finding)
            select (Action: action, Problem: problem, Finding: finding);
        return
        [
            .. asked
                .GroupBy(one => one.Action)
                .Select(group =>
                    Recommendation(
                        records,
                        group.Key,
                        [.. group.Select(one => one.Problem).Distinct()],
                        [.. group.Select(one => one.Finding)],
                        water
                    )
                )
                .OrderByDescending(recommendation => recommendation.Severity)
                .ThenBy(recommendation => recommendation.Action),
        ];
    }

    /// <summary>What a finding of a problem asks for: the topic of the problem decides.</summary>
    private static IEnumerable<RecommendedAction> Actions(ChargeRecords records, Problem problem, Finding finding) =>
        problem.Topic switch
        {
            ProblemTopic.Cleanup => [OfTreatment(finding)],
            _ when finding.Severity < Severity.Alert =>
            // Who must act on a problem anyway is not told to wait for another reading.
            finding
                is { Code: FindingCode.LimitNotConfirmed }
                    or SuddenChangeFinding
            && problem.Severity < Severity.Alert
                ? [RecommendedAction.SampleAgain]
                : [],
            ProblemTopic.Records or ProblemTopic.Sampling => [RecommendedAction.SampleAgain],
            ProblemTopic.Water => OfWater(records, finding),
            ProblemTopic.Dirt when finding is ReturnFinding || records.IsBeingTreated(finding.Measurand) =>
            [
                RecommendedAction.FindDirtIngress,
            ],
            ProblemTopic.Dirt => [RecommendedAction.FilterInKidneyLoop, RecommendedAction.FindDirtIngress],
            _ when finding is ReturnFinding => [RecommendedAction.InvestigateCause],
            ProblemTopic.OilAgeing => [RecommendedAction.PlanOilChange],
            ProblemTopic.Varnish => [RecommendedAction.RemoveVarnish],
            ProblemTopic.OilIdentity => [RecommendedAction.CheckOilIdentity],
            ProblemTopic.Wear => [RecommendedAction.FindWear],
            _ => [RecommendedAction.InvestigateCause],
        };

    private static RecommendedAction OfTreatment(Finding finding) =>
        finding.Code switch
        {
            FindingCode.CleanupTargetReached => RecommendedAction.ProveCleanup,
            FindingCode.CleanupStalled => RecommendedAction.FindCauseOfStall,
            FindingCode.CleanupSourcesDisagree => RecommendedAction.SampleAgain,
            _ => RecommendedAction.ContinueTreatment,
        };

    private static IEnumerable<RecommendedAction> OfWater(ChargeRecords records, Finding finding)
    {
        var treated = records.IsBeingTreated(finding.Measurand);
        if (treated || records.WasTreated(finding.Measurand) || finding is RemainingLifeFinding or ReturnFinding)
        {
            yield return RecommendedAction.FindWaterIngress;
        }

        if (treated || finding is ReturnFinding)
        {
            yield break;
        }

        if (finding is FreeWaterFinding)
        {
            yield return RecommendedAction.DrainFreeWater;
        }

        yield return RecommendedAction.VacuumDehydrate;
    }

    private static Recommendation Recommendation(
        ChargeRecords records,
        RecommendedAction action,
        IReadOnlyList<Problem> problems,
        IReadOnlyList<Finding> reasons,
        WaterInOil water
    ) =>
        new(
            action,
            reasons.Max(finding => finding.Severity),
            problems,
            reasons,
            [.. Quantities(records, action, reasons, water)],
            Cautions(action)
        );

    private static IEnumerable<EvidenceItem> Quantities(
        ChargeRecords records,
        RecommendedAction action,
        IReadOnlyList<Finding> reasons,
        WaterInOil water
    )
    {
        switch (action)
        {
            case RecommendedAction.DrainFreeWater when water is WaterInOil.Split { FreeAtStandstill: { } free } split:
                yield return EvidenceItem.Number(
                    "free-water-at-standstill",
                    free.Liters,
                    "L",
                    split.UncertaintyOfFreeLitres
                );
                break;
            case RecommendedAction.PlanOilChange:
                yield return EvidenceItem.Figure("oil-fill", records.History.Machine.ChargeVolume.Liters, "L");
                foreach (var life in reasons.OfType<RemainingLifeFinding>().OrderBy(one => one.Earliest).Take(1))
                {
                    yield return EvidenceItem.Date("no-later-than", life.Earliest);
                }

                break;
            case RecommendedAction.FilterInKidneyLoop:
            case RecommendedAction.VacuumDehydrate:
                yield return EvidenceItem.Figure("oil-fill", records.History.Machine.ChargeVolume.Liters, "L");
                break;
            default:
                break;
        }
    }

    /// <summary>Cautions of a treatment are those that its plan carries; work beside a treatment has its own.</summary>
    internal static IReadOnlyList<Caution> Cautions(RecommendedAction action) =>
        action switch
        {
            RecommendedAction.VacuumDehydrate
            or RecommendedAction.ContinueTreatment
            or RecommendedAction.FindCauseOfStall
            or RecommendedAction.ProveCleanup => CautionsOf.Treatment(TreatmentKind.VacuumDehydration),
            RecommendedAction.FilterInKidneyLoop => CautionsOf.Treatment(TreatmentKind.FineFiltration),
            RecommendedAction.DrainFreeWater => CautionsOf.Treatment(TreatmentKind.SettlingAndDraining),
            RecommendedAction.PlanOilChange => CautionsOf.Treatment(TreatmentKind.DrainAndRefill),
            RecommendedAction.FindWaterIngress or RecommendedAction.FindDirtIngress or RecommendedAction.FindWear =>
                Opening,
            RecommendedAction.CheckOilIdentity => [Caution.FlashPoint, .. WorkOnOil],
            _ => WorkOnOil,
        };
}
