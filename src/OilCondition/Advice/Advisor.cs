using OilCondition.Treatment;

namespace OilCondition;

/// <summary>From findings to recommendations: which finding asks for which action, with quantities and cautions.</summary>
/// <remarks>
/// Common practice, no source: free water is drained before it is evaporated; water that returns after a treatment has a way in;
/// dirt is filtered and its way in is closed; oil that ages is changed before its limit; varnish is removed, since an oil change leaves it in
/// the machine; metals point to the part that wears; what tells the oil's identity is checked against a mix-up or dilution. On the side on
/// which a measurand gets better no remedy is named: the cause is to be found.
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
        IReadOnlyList<Finding> findings,
        WaterInOil water
    )
    {
        var asked = findings.SelectMany(finding =>
            Actions(records, finding, findings).Select(action => (action, finding))
        );
        return
        [
            .. asked
                .GroupBy(pair => pair.action, pair => pair.finding)
                .Select(group => Recommendation(records, group.Key, [.. group], water))
                .OrderByDescending(recommendation => recommendation.Severity)
                .ThenBy(recommendation => recommendation.Action),
        ];
    }

    private static IEnumerable<RecommendedAction> Actions(
        ChargeRecords records,
        Finding finding,
        IReadOnlyList<Finding> all
    )
    {
        if (finding is RecordFinding or SampleOverdueFinding)
        {
            return finding.Severity >= Severity.Alert ? [RecommendedAction.SampleAgain] : [];
        }

        if (finding is ReturnFinding)
        {
            return
            [
                finding.Measurand.Topic switch
                {
                    MeasurandTopic.Water => RecommendedAction.FindWaterIngress,
                    MeasurandTopic.Particles => RecommendedAction.FindDirtIngress,
                    _ => RecommendedAction.InvestigateCause,
                },
            ];
        }

        if (finding is CleanupFinding)
        {
            return finding.Code switch
            {
                FindingCode.CleanupTargetReached => [RecommendedAction.ProveCleanup],
                FindingCode.CleanupStalled => [RecommendedAction.FindCauseOfStall],
                FindingCode.CleanupSourcesDisagree => [RecommendedAction.SampleAgain],
                _ => [RecommendedAction.ContinueTreatment],
            };
        }

        if (finding.Severity < Severity.Alert)
        {
            // Who must act on a reading anyway is not told to wait for another one.
            return
                finding is { Code: FindingCode.LimitNotConfirmed } or SuddenChangeFinding
                && !all.Any(one => one.Severity >= Severity.Alert && one.Measurand.Equals(finding.Measurand))
                ? [RecommendedAction.SampleAgain]
                : [];
        }

        return finding.IsOnBetterSide ? [RecommendedAction.InvestigateCause] : ByTopic(records, finding);
    }

    /// <summary>What a measurand beyond its limit, or on the way to it, asks for: the one place that switches on the topic.</summary>
    private static IEnumerable<RecommendedAction> ByTopic(ChargeRecords records, Finding finding) =>
        finding.Measurand.Topic switch
        {
            MeasurandTopic.Water => WaterActions(records, finding),
            MeasurandTopic.Particles when records.IsBeingTreated(finding.Measurand) =>
            [
                RecommendedAction.FindDirtIngress,
            ],
            MeasurandTopic.Particles => [RecommendedAction.FilterInKidneyLoop, RecommendedAction.FindDirtIngress],
            MeasurandTopic.Ageing => [RecommendedAction.PlanOilChange],
            MeasurandTopic.Varnish => [RecommendedAction.RemoveVarnish],
            MeasurandTopic.OilIdentity => [RecommendedAction.CheckOilIdentity],
            MeasurandTopic.Wear => [RecommendedAction.FindWear],
            _ => [RecommendedAction.InvestigateCause],
        };

    private static IEnumerable<RecommendedAction> WaterActions(ChargeRecords records, Finding finding)
    {
        var treated = records.IsBeingTreated(finding.Measurand);
        if (records.WasTreated(finding.Measurand) || finding is RemainingLifeFinding || treated)
        {
            yield return RecommendedAction.FindWaterIngress;
        }

        if (!treated)
        {
            if (finding is FreeWaterFinding)
            {
                yield return RecommendedAction.DrainFreeWater;
            }

            yield return RecommendedAction.VacuumDehydrate;
        }
    }

    private static Recommendation Recommendation(
        ChargeRecords records,
        RecommendedAction action,
        IReadOnlyList<Finding> reasons,
        WaterInOil water
    ) =>
        new(
            action,
            reasons.Max(finding => finding.Severity),
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
                    "free water at standstill",
                    free.Liters,
                    "L",
                    split.UncertaintyOfFreeLitres
                );
                break;
            case RecommendedAction.PlanOilChange:
                yield return EvidenceItem.Figure("oil fill", records.History.Machine.ChargeVolume.Liters, "L");
                foreach (var life in reasons.OfType<RemainingLifeFinding>().OrderBy(one => one.Earliest).Take(1))
                {
                    yield return EvidenceItem.Date("no later than", life.Earliest);
                }

                break;
            case RecommendedAction.FilterInKidneyLoop:
            case RecommendedAction.VacuumDehydrate:
                yield return EvidenceItem.Figure("oil fill", records.History.Machine.ChargeVolume.Liters, "L");
                break;
            default:
                break;
        }
    }

    /// <summary>Cautions of a treatment are those that its plan carries; work beside a treatment has its own.</summary>
    private static IReadOnlyList<Caution> Cautions(RecommendedAction action) =>
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
