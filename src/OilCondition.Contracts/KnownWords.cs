namespace OilCondition.Contracts;

/// <summary>
/// The words of each field that has some, as the library writes them. What is named after an enumeration of the library has the words of its
/// members, without those after <c>But</c>.
/// </summary>
internal static class KnownWords
{
    public const string AlertState = "unacknowledged-active acknowledged-active returned-unacknowledged normal";
    public const string Arrival = "reached expected not-before never not-determined";
    public const string Axis = "calendar oil-hours";
    public const string Caution =
        "hot-oil vacuum flash-point electrical-isolation pressurised-oil spills-and-waste makers-limits local-codes foam-over light-ends-lost coking-on-heater drain-water-first moving-machinery";
    public const string CleanupFigureOutcome =
        "bounded no-upper-end no-lower-end not-determined too-few-readings too-few-above-limit known floor-contradicted";
    public const string CleanupPhase = "no-readings warming free-water falling stalled holding at-target rebounded";
    public const string CleanupVerdict = "not-determined target-met hold-not-completed not-reached stalled rebounded";
    public const string CompletionReasonButNone =
        "not-yet-shown not-on-one-course too-cold free-water too-few-readings readings-too-far-apart stalled";
    public const string CondensateAgreement = "not-measured not-determined agrees less-collected more-collected";
    public const string CondensateReason =
        "vapour-with-exhaust drained-elsewhere less-water-before water-came-in standing-water humid-sweep-air";
    public const string EventKind =
        "oil-change top-up settling-and-draining centrifuge coalescer water-absorbing-elements vacuum-dehydration head-space-purge fine-filtration";
    public const string ExponentialDecayStatus =
        "determined at-floor-bound straight-line faster-than-sampling rising too-few-readings too-few-above-limit";
    public const string FindingCode =
        "limit-passed rate-of-change out-of-the-usual limit-not-confirmed sudden-change free-water-running free-water-at-standstill remaining-life-short cleanup-under-way cleanup-target-reached cleanup-stalled cleanup-sources-disagree cleanup-rebounding unrecorded-change sample-overdue never-sampled suspect-sample record-fault";
    public const string Follows = "sensor samples";
    public const string HistoryIssueKind =
        "repeated-sample conflicting-sample implausible-reading dated-later suspect-sample";
    public const string JournalChangeKind =
        "raised raised-again escalated eased acknowledged cleared cleared-by-oil-change machine-retired taken-back";
    public const string JournalChangeKindButAcknowledged =
        "raised raised-again escalated eased cleared cleared-by-oil-change machine-retired taken-back";
    public const string LeftOutReason = "suspect-sample other-method no-oil-hours wild before-change implausible";
    public const string LifeOutcome = "crosses no-latest-date already-crossed not-approaching too-few-readings";
    public const string LimitKind = "absolute change-from-new percent-change-from-new rate-of-change own-history fleet";
    public const string LimitKindButRateOfChange = "absolute change-from-new percent-change-from-new own-history fleet";
    public const string LimitReason =
        "compared no-reading new-oil-value-missing bound-does-not-decide awaiting-confirmation too-few-readings history-moves no-fleet fleet-only-bounded fleet-too-small";
    public const string LimitSideButBoth = "upper lower";
    public const string LimitState = "not-determined normal alert alarm";
    public const string LimitStateButNotDeterminedAndNormal = "alert alarm";
    public const string NaturalScale = "linear logarithmic";
    public const string NextSampleReason =
        "risk-reached shortest-interval longest-interval limit-crossed sudden-change no-forecast never-sampled nothing-to-forecast sample-in-doubt";
    public const string OptionVerdict =
        "meets meets-late not-sure waits does-not-reach not-enough-in-stock outage-too-short not-enough-power cannot-be-connected";
    public const string Origin = "sample sensor";
    public const string ProblemTopic = "water dirt wear oil-ageing varnish oil-identity cleanup other sampling records";
    public const string PumpKind = "liquid-ring oil-sealed dry";
    public const string Qualifier = "none less-than greater-than approximately";
    public const string QualifierButNone = "less-than greater-than approximately";
    public const string RankedBy = "cost hours";
    public const string RecommendedAction =
        "continue-treatment prove-cleanup find-cause-of-stall find-water-ingress drain-free-water vacuum-dehydrate filter-in-kidney-loop find-dirt-ingress remove-varnish check-oil-identity find-wear plan-oil-change sample-again investigate-cause";
    public const string Separation = "stays-dissolved stays-free separates-below";
    public const string Severity = "information alert alarm";
    public const string SeverityButInformation = "alert alarm";
    public const string SourceKind = "standard paper handbook user-data derived common-practice from-memory";
    public const string StallCauseKind =
        "vacuum-or-sweep-air oil-too-cold water-ingress bypass-or-short-circuit poor-vacuum sweep-air-missing vacuum-gauge-wrong thermometer-wrong";
    public const string StallCheck =
        "chamber-pressure sweep-air oil-temperature heater water-sources standing-water bypass-valves suction-and-return oil-flow titration-beside-sensor condensate more-readings";
    public const string StallSignButNone = "levels-off shows-no-fall behind-the-plan rises at-saturation";
    public const string StallVerdict = "not-determined sensor-at-saturation done not-stalled slow stalled";
    public const string TopUpOutcome = "corrected no-top-up does-not-add-up new-oil-value-missing renews-charge";
    public const string TreatmentKind =
        "settling-and-draining centrifuge coalescer water-absorbing-elements vacuum-dehydration head-space-purge fine-filtration drain-and-refill";
    public const string TreatmentKindButDrainAndRefill =
        "settling-and-draining centrifuge coalescer water-absorbing-elements vacuum-dehydration head-space-purge fine-filtration";
    public const string TrendMethod = "none straight-line theil-sen";
    public const string TrendReason =
        "too-few-readings same-time nothing-varies enough-readings censored-readings zeros-taken-as-below correlated-residuals cycle outliers-left-out since-change suddenly-worse below-smallest-change more-outliers-possible";
    public const string TrendVerdict = "too-few-readings no-trend rising falling";
    public const string WaterBound = "limit standstill as-it-is";
    public const string WaterOutcome = "split no-saturation-curve no-water-reading";
    public const string WaterSource = "none sensor titration";
    public const string WeekDay = "mon tue wed thu fri sat sun";
    public const string WhyNot =
        "takes-too-long floor-above-target ingress-too-high emulsion-stays nothing-evaporates not-touched detergents-in-oil water-does-not-sink particles-too-light density-not-stated pump-cannot-start heater-too-weak too-hot below-pour-point near-flash-point water-freezes";
}
