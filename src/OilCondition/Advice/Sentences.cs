using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Text;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition;

/// <summary>The one place where problems, findings, recommendations and cautions become English sentences.</summary>
public static partial class Sentences
{
    /// <summary>A finding as a sentence.</summary>
    /// <param name="finding">The finding.</param>
    /// <returns>One sentence with its figures and units.</returns>
    public static string Of(Finding finding) => Guard.NotNull(finding).Sentence;

    /// <summary>A recommendation as a sentence.</summary>
    /// <param name="recommendation">The recommendation.</param>
    /// <returns>What to do, with quantities.</returns>
    public static string Of(Recommendation recommendation)
    {
        Guard.NotNull(recommendation);
        var what = recommendation.Action switch
        {
            RecommendedAction.ContinueTreatment => "Continue the treatment until the target holds.",
            RecommendedAction.ProveCleanup =>
                "Prove the result by a Karl Fischer titration of a warm, well-mixed sample, and sample again within days to see whether the water returns.",
            RecommendedAction.FindCauseOfStall =>
                "Find out why the cleanup has stalled: vacuum and sweep air, oil temperature, bypass, water still coming in.",
            RecommendedAction.FindWaterIngress => "Find where water gets in (cooler, seals, breather) and stop it.",
            RecommendedAction.DrainFreeWater => "Drain the free water from the lowest point after standstill.",
            RecommendedAction.VacuumDehydrate => "Dry the oil under vacuum.",
            RecommendedAction.FilterInKidneyLoop => "Filter the oil in a kidney loop with a fine filter.",
            RecommendedAction.FindDirtIngress =>
                "Find where dirt gets in (breather, rod seals, filter bypass) or is made (wear), and stop it.",
            RecommendedAction.RemoveVarnish =>
                "Remove the varnish with an adsorbent or fine depth filter, and check servo valves, coolers and bearings for deposits; an oil change alone leaves them.",
            RecommendedAction.CheckOilIdentity =>
                "Check for the wrong oil, a mixture or dilution: compare with the data sheet and the last top-up, and sample again.",
            RecommendedAction.FindWear =>
                "Find the part that wears: compare the metals with the machine's parts, look at the debris, check vibration, bearing temperature and filter.",
            RecommendedAction.PlanOilChange => "Plan the oil change.",
            RecommendedAction.SampleAgain => "Take another sample before acting.",
            _ => "Find the cause with the oil supplier and the machine maker before acting.",
        };
        return recommendation.Quantities.Count == 0 ? what : $"{what} ({string.Join("; ", recommendation.Quantities)})";
    }

    /// <summary>A caution as a sentence.</summary>
    /// <param name="caution">The caution.</param>
    /// <returns>The usual warning of the trade.</returns>
    public static string Of(Caution caution) =>
        caution switch
        {
            Caution.HotOil => "Hot oil and hot surfaces burn: let them cool or wear protection.",
            Caution.Vacuum => "Vacuum vessels and hoses can collapse or draw in: vent before opening.",
            Caution.FlashPoint => "Keep heaters and vapour away from the oil's flash point and from ignition sources.",
            Caution.ElectricalIsolation =>
                "Isolate, lock, prove dead and earth before working on electrical parts or heaters.",
            Caution.PressurisedOil => "Release pressure and stored energy before opening an oil system.",
            Caution.SpillsAndWaste =>
                "Contain spills; used oil, condensate and the water drained from it are regulated waste.",
            Caution.FoamOver =>
                "Oil with free water or detergents foams over under vacuum: draw the vacuum down slowly and watch the level.",
            Caution.LightEndsLost =>
                "Deep vacuum on hot oil strips light ends and additives: keep to the oil maker's limits, and check viscosity, flash point and additives afterwards.",
            Caution.CokingOnHeater =>
                "Oil cokes on a heater film: flow before heat, heat off before flow, and no more watt density than the oil bears.",
            Caution.DrainWaterFirst =>
                "Drain free water from the lowest point before heating, filtering or pulling a vacuum.",
            Caution.MovingMachinery => "Keep clear of pumps, couplings and rotating bowls; guards stay on.",
            Caution.MakersLimits => "The limits of the makers of machine, oil and seals come first.",
            _ => "Follow local codes and permits; some of this work is for licensed people.",
        };

    /// <summary>Why the next sample is due when it is, as a sentence.</summary>
    /// <param name="nextSample">The next sample.</param>
    /// <returns>One sentence with its date.</returns>
    public static string Of(NextSample nextSample)
    {
        Guard.NotNull(nextSample);
        var due = nextSample.IsOverdue ? "was due on" : "is due by";
        var why = nextSample.Reason switch
        {
            NextSampleReason.RiskReached =>
                "by then the chance that a limit is passed unnoticed reaches the accepted risk",
            NextSampleReason.ShortestInterval =>
                "the accepted risk is reached sooner, so the shortest interval applies",
            NextSampleReason.LongestInterval => "the accepted risk is not reached, so the longest interval applies",
            NextSampleReason.LimitCrossed => "a limit is passed or water is free, and another sample should confirm it",
            NextSampleReason.SuddenChange =>
                "the latest readings lie far on the worse side, and another sample should confirm it",
            NextSampleReason.NoForecast =>
                "there are too few readings for a forecast, so the shortest interval applies",
            NextSampleReason.NeverSampled => "there is no sample of this oil yet",
            _ => "no fixed limit is set to run to, so the longest interval applies",
        };
        return $"The next sample {due} {PlainText.Date(nextSample.At)}: {why}.";
    }

    /// <summary>What a measurand does, as a phrase with its figures that agrees with its limits and its findings.</summary>
    /// <remarks>
    /// A measurand that changed at once, or stands beyond a limit, is not called without a trend only because its readings are too few or too scattered
    /// to show an even one: what they went from and to is said instead.
    /// </remarks>
    /// <param name="state">Where the measurand stands.</param>
    /// <returns>A phrase without a full stop.</returns>
    public static string Of(MeasurandState state)
    {
        var trend = Guard.NotNull(state).Trend;
        var judged = trend.Assessment;
        var setAside = trend.Judged.LeftOut.Count - trend.Series.LeftOut.Count;
        var more = judged.Reasons.Contains(TrendReason.MoreOutliersPossible)
            ? ", as many wild ones as are looked for"
            : "";
        var aside = setAside == 0 ? "" : $", {setAside} set aside{more}";
        var readings = $"({trend.Judged.Points.Count} readings{aside})";
        if (SuddenChangeFinding.Of(state) is { } change)
        {
            var course =
                $"from about {Level(change.Before, change)} to {Level(change.After, change)} {state.Measurand.Unit}".TrimEnd();
            return change.IsUnconfirmed
                ? $"sudden change {course}, to be confirmed {readings}"
                : $"changed at once {course} {readings}";
        }

        var better = state.Measurand.Worse == LimitSide.Upper ? TrendVerdict.Falling : TrendVerdict.Rising;
        var improving = state.Measurand.Worse != LimitSide.Both && judged.Verdict == better ? ", improving" : "";
        return judged.Verdict switch
        {
            TrendVerdict.Rising => $"rising{improving}, {TrendPace.Words(trend)} {readings}",
            TrendVerdict.Falling => $"falling{improving}, {TrendPace.Words(trend)} {readings}",
            _ when state.Worst.State >= LimitState.Alert && trend.Judged.Points.Count > 1 =>
                $"{PlainText.Reported(trend.Judged.Points[0].Reading.Value)} to {state.Measurand.Text(trend.Judged.Points[trend.Judged.Points.Count - 1].Reading)}, no even trend {readings}",
            TrendVerdict.NoTrend => $"no significant trend {readings}",
            _ => $"too few readings ({trend.Judged.Points.Count}{aside})",
        };
    }

    /// <summary>Why a state is not determined, as a phrase.</summary>
    /// <param name="reason">The reason.</param>
    /// <returns>A phrase without a full stop.</returns>
    public static string Of(LimitReason reason) =>
        reason switch
        {
            LimitReason.NoReading => "no reading",
            LimitReason.NewOilValueMissing => "the new-oil value is not known",
            LimitReason.BoundDoesNotDecide => "the reading is only a bound (< or >)",
            LimitReason.AwaitingConfirmation => "not yet confirmed by another sample",
            LimitReason.TooFewReadings => "too few readings for this kind of limit",
            LimitReason.HistoryMoves => "the earlier readings have a trend, so there is no usual level",
            LimitReason.NoFleet => "no fleet was given for this percentile",
            LimitReason.FleetTooSmall => "the fleet is too small for this percentile",
            LimitReason.FleetOnlyBounded => "the percentile falls among fleet readings that are only bounds (< or >)",
            _ => "compared",
        };

    /// <summary>A percentile that a fleet did not give, as a phrase.</summary>
    /// <param name="missing">The figure.</param>
    /// <returns>For example <c>the upper alarm is not determined: percentile 98 takes 114 oil charges with a reading, the fleet has 60</c>.</returns>
    public static string Of(Limit.MissingFigure missing)
    {
        Guard.NotNull(missing);
        var why =
            missing.Reason == LimitReason.FleetOnlyBounded
                ? $"percentile {PlainText.Reported(missing.Percentile)} falls among fleet readings that are only bounds (< or >)"
                : $"percentile {PlainText.Reported(missing.Percentile)} takes {missing.ChargesNeeded} oil charges with a reading, the fleet has {missing.Charges}";
        return $"the {PlainText.Spaced(missing.Side)} {PlainText.Spaced(missing.Zone)} is not determined: {why}";
    }

    /// <summary>The figures of a measurand that a fleet did not give, each as a phrase behind a semicolon.</summary>
    internal static string Missing(IEnumerable<LimitEvaluation> limits) =>
        string.Concat(limits.SelectMany(one => one.Limit.MissingFigures).Select(missing => $"; {Of(missing)}"));

    internal static string Overdue(SampleOverdueFinding finding) =>
        $"No sample since {PlainText.Date(finding.LastSampleAt)}; the sampling plan allows at most {PlainText.Number(finding.Plan.Longest.TotalDays)} days.";

    internal static string NeverSampled(NeverSampledFinding finding) =>
        "No sample and no sensor reading of this oil is on record"
        + (finding.ChargedAt is { } at ? $" since it was changed on {PlainText.Date(at)}" : "")
        + "; nobody knows its condition.";

    internal static string Limit(LimitFinding finding)
    {
        var wait = finding.Code == FindingCode.LimitNotConfirmed ? "; not yet confirmed by a second sample" : "";
        var limit = finding.Evaluation.Limit;
        var source = limit.Source + string.Concat(finding.Missing.Select(missing => $"; {Of(missing)}"));
        var reading = $"{Quantity(finding.Point.Reading, finding.Measurand)} on {PlainText.Date(finding.Point.At)}";
        return finding.Evaluation.Rate is { } rate
            ? $"{Capital(finding.Measurand.Name)}: changed at {PlainText.Number(rate)} {finding.RateUnit} to {reading}; "
                + $"the {WordOf(finding)} limit is {PlainText.Reported(finding.Evaluation.Figure!.Value)}{wait} ({source})."
            : $"{Capital(finding.Measurand.Name)}: {reading}, {Against(finding)}{wait} ({source}).";
    }

    /// <summary>Where a reading stands against its figure, as a phrase.</summary>
    private static string Against(LimitFinding finding)
    {
        var usual = finding.Code == FindingCode.OutOfTheUsual ? " (what is usual for this machine)" : "";
        var named =
            $"the {WordOf(finding)} limit of {Quantity(new Reading(finding.Evaluation.Figure!.Value), finding.Measurand)}{usual}";
        return IsBeyond(finding)
            ? $"{(finding.Side == LimitSide.Upper ? "above" : "below")} {named}"
            : $"back inside {named}, but by less than the dead band";
    }

    private static string WordOf(LimitFinding finding)
    {
        var evaluation = finding.Evaluation;
        var waits = finding.Code == FindingCode.LimitNotConfirmed;
        return (waits ? evaluation.Pending : evaluation.State) == LimitState.Alarm ? "alarm" : "alert";
    }

    private static bool IsBeyond(LimitFinding finding) =>
        finding.Side == LimitSide.Upper
            ? finding.Point.Reading.Value >= finding.Evaluation.Figure!.Value
            : finding.Point.Reading.Value <= finding.Evaluation.Figure!.Value;

    internal static string FreeWater(FreeWaterFinding finding)
    {
        var balance = finding.Balance;
        var water = Measurands.WaterContent;
        var running = balance.Running.HasFreeWater;
        var state = running ? balance.Running : balance.Standstill;
        var open = balance.UncertaintyOfFree(state);
        string Free(double content) => PlainText.Number(Math.Max(0, content), open);
        var free = state.Free.PartsPerMillion;
        return $"{(running ? "Free water at running temperature" : "Free water after standstill")}: of {Quantity(balance.Point.Reading, water)} "
            + $"the oil holds {water.Text(state.Saturation.Content.PartsPerMillion)} mg/kg at {Degrees(state)}{Extrapolated(state.Saturation.IsExtrapolated)}, "
            + $"so that about {Free(free)} mg/kg, {Free(free - open)} to {Free(free + open)}, are free{Litres(balance, running)}; water separates below "
            + $"{PlainText.Number(balance.Separation.Temperature.DegreesCelsius, WaterInOil.Split.SeparationUncertainty)} °C"
            + $"{Extrapolated(balance.Separation.IsExtrapolated)}.";
    }

    /// <summary>The litres of the oil fill, each beside the temperature at which so much is free.</summary>
    private static string Litres(WaterInOil.Split balance, bool running)
    {
        if (balance.FreeAtStandstill is not { } cold)
        {
            return "";
        }

        string Of(Volume volume, WaterState state) =>
            $"{PlainText.Number(volume.Liters, volume.Liters * balance.UncertaintyOfFree(state) / state.Free.PartsPerMillion)} L "
            + $"at {Degrees(state)}";
        var standstill =
            Of(cold, balance.Standstill) + Extrapolated(running && balance.Standstill.Saturation.IsExtrapolated);
        return running && balance.FreeAtRunning is { } warm
            ? $" (some {Of(warm, balance.Running)}, and {standstill} after standstill)"
            : $" (some {standstill})";
    }

    private static string Degrees(WaterState state) =>
        $"{PlainText.Number(state.Saturation.Temperature.DegreesCelsius)} °C";

    private static string Extrapolated(bool isExtrapolated) => isExtrapolated ? " (curve extrapolated)" : "";

    internal static string Life(RemainingLifeFinding finding)
    {
        var crossing = finding.Life.Crossing;
        var direction = finding.Life.Side == LimitSide.Upper ? "rising" : "falling";
        var since = finding.FollowsTreatment ? " since the treatment" : "";
        var around = crossing.TryAt(0.5, out var p50) ? $", expected to reach it around {PlainText.Date(p50)}" : "";
        var late = crossing.TryAt(0.9, out var p90)
            ? $", one in ten after {PlainText.Date(p90)}"
            : "; the latest date has no upper bound";
        return $"{Capital(finding.Measurand.Name)}: {direction}{since} towards the limit of {Quantity(new Reading(finding.Life.Limit), finding.Measurand)}{around}; "
            + $"one chance in ten before {PlainText.Date(finding.Earliest)}{late} ({finding.State.Trend.Assessment.Used.Count} readings).";
    }

    internal static string Return(ReturnFinding finding)
    {
        var direction = finding.State.Trend.Assessment.Verdict == TrendVerdict.Rising ? "rising" : "falling";
        return $"{Capital(finding.Measurand.Name)}: {direction} again since the treatment that ended on {PlainText.Date(finding.Run.EndedAt!.Value)}, now {Quantity(finding.State.Latest!.Reading, finding.Measurand)} "
            + $"against its target of {Quantity(new Reading(finding.Run.Target), finding.Measurand)} ({finding.State.Trend.Assessment.Used.Count} readings).";
    }

    internal static string Change(UnrecordedChangeFinding finding) =>
        $"Between {PlainText.Date(finding.Before.At)} and {PlainText.Date(finding.After.At)} {string.Join(" and ", finding.States.Select(state => state.Measurand.Name))} changed at once, "
        + "with no event on record: an oil change or a large top-up? Trends start anew after it.";

    internal static string Change(SuddenChangeFinding finding)
    {
        var wait = finding.IsUnconfirmed ? "; to be confirmed by another sample" : $" ({finding.Readings} readings)";
        return $"{Capital(finding.Measurand.Name)}: {Step(finding)}{wait}.";
    }

    private static string Step(SuddenChangeFinding finding)
    {
        var change =
            $"from about {Level(finding.Before, finding)} to {Level(finding.After, finding)} {finding.Measurand.Unit}".TrimEnd();
        return finding.IsUnconfirmed
            ? $"sudden change {change} on {PlainText.Date(finding.First.At)}"
            : $"changed at once {change} since {PlainText.Date(finding.First.At)}";
    }

    private static string Level(double value, SuddenChangeFinding finding) =>
        PlainText.Number(value, Math.Abs(finding.After - finding.Before) / 10);

    internal static string Cleanup(CleanupFinding finding)
    {
        var (run, status) = (finding.Progress.Run, finding.Progress.Status);
        if (finding.Code == FindingCode.CleanupSourcesDisagree)
        {
            return $"{Capital(run.Measurand.Name)} during the cleanup: {status.Contradiction}; check the sensor, the oil's saturation curve and the samples "
                + $"before either is believed (the forecast follows the {(status.FollowsSensor ? "sensor" : "samples")}).";
        }

        var unit = run.Measurand.Unit;
        var target = $"the target of {PlainText.Number(run.Target)} {unit}".TrimEnd();
        var hold = $"{PlainText.Number(status.Options.HoldFor.TotalHours)} h";
        string Time(DateTimeOffset at) => PlainText.Time(finding.Progress.Local(at));
        var what = status.Arrival switch
        {
            Arrival<DateTimeOffset>.Already =>
                $": {target} has held for {hold} or longer, since {Time(status.HoldingSince!.Value)}",
            Arrival<DateTimeOffset>.Expected expected when finding.Progress.IsPastDue =>
                $": {target} was expected to have held for {hold} at {Time(expected.Estimate)} "
                    + $"(between {Time(expected.Earliest)} and {Time(expected.Latest)}), which is past due at {Time(finding.Progress.AsOf)}; "
                    + $"the last reading is of {Time(status.AsOf)}: take another",
            Arrival<DateTimeOffset>.Expected expected =>
                $": {target} is expected to have held for {hold} at {Time(expected.Estimate)} "
                    + $"(between {Time(expected.Earliest)} and {Time(expected.Latest)})",
            Arrival<DateTimeOffset>.NotBefore open when open.Earliest < finding.Progress.AsOf =>
                $": the readings do not show yet that {target} will be reached; the last is of {Time(status.AsOf)}",
            Arrival<DateTimeOffset>.NotBefore open =>
                $": {target} will have held for {hold} at {Time(open.Earliest)} at the earliest; "
                    + "the readings do not show yet that it will be reached",
            Arrival<DateTimeOffset>.Never => $" does not reach {target}: {Level(status)} {unit}".TrimEnd(),
            _ => status.Reason switch
            {
                CompletionReason.Stalled =>
                    $" does not fall towards {target}: the sensor stands at saturation, and how much free water is left it cannot see",
                CompletionReason.FreeWaterLeaving =>
                    ": free water is leaving; there is no date before the dissolved water falls",
                CompletionReason.NotOnOneCourse =>
                    $": it {status.Curve.Course.Words}, so that no date can be told yet for {target}; take further readings",
                CompletionReason.ReadingsTooFarApart => $": readings come too seldom to show that {target} holds",
                _ => $": {status.Curve.Count} readings so far, too few for an estimate",
            },
        };
        return $"Cleanup under way{what}.";
    }

    private static string Level(CleanupStatus status)
    {
        var mean = status.StallEvidence.FirstOrDefault(item => item.Id == "mean");
        return mean?.Value is not { } value ? $"it levels off at about {PlainText.Number(status.Curve.Floor)}"
            : status.StallSign == StallSign.Rises ? $"it rises, and stands at about {PlainText.Number(value)}"
            : $"it shows no fall, at about {PlainText.Number(value)}";
    }

    internal static string Record(HistoryIssue issue)
    {
        var what = issue.SampleNumber.Length == 0 ? "Sensor reading" : $"Sample {issue.SampleNumber}";
        var date = PlainText.Date(issue.At);
        return issue.Kind switch
        {
            HistoryIssueKind.SuspectSample =>
                $"{what} of {date} seems to belong to another oil (viscosity and additives jump together); it is left out of every trend.",
            HistoryIssueKind.DatedLater =>
                $"{what} is dated {date}, later than this assessment; it is not judged until its date is put right.",
            HistoryIssueKind.RepeatedSample => $"{what} of {date} is recorded twice; one is kept.",
            HistoryIssueKind.ConflictingSample when issue.Readings.Count == 0 =>
                $"{what} of {date} contradicts another record of the same number; it has no readings to set aside.",
            HistoryIssueKind.ConflictingSample =>
                $"{what} of {date} contradicts another record of the same number; set aside: {Each(issue, _ => "")}.",
            _ => $"{what} of {date} has implausible values, which are set aside: "
                + Each(
                    issue,
                    measurand =>
                        $" (allowed {PlainText.Number(measurand.LowestPlausible)} to {PlainText.Number(measurand.HighestPlausible)})"
                )
                + ".",
        };
    }

    private static string Each(HistoryIssue issue, Func<Measurand, string> aside) =>
        string.Join(
            ", ",
            issue
                .Readings.OrderBy(pair => pair.Key.Id, StringComparer.Ordinal)
                .Select(pair => $"{pair.Key.Name} {Quantity(pair.Value, pair.Key)}{aside(pair.Key)}")
        );

    private static string Quantity(Reading reading, Measurand measurand)
    {
        var mark = reading.Qualifier switch
        {
            Qualifier.LessThan => "below ",
            Qualifier.GreaterThan => "at least ",
            Qualifier.Approximately => "about ",
            _ => "",
        };
        var isCount = Measurands.HasScaleNumber(measurand) && measurand.IsPlausible(reading.Value);
        var code = isCount ? $" (ISO 4406: {Iso4406.ScaleNumber(reading.Value)})" : "";
        return mark + measurand.Text(reading).TrimStart('<', '>', '≈') + code;
    }

    /// <summary>How long a measurand has to a limit, as a phrase that agrees with what its trend says.</summary>
    /// <param name="state">The state of the measurand.</param>
    /// <param name="life">One of its lives.</param>
    /// <returns>A phrase without a full stop; dates are those of 10, 50 and 90 % chance.</returns>
    public static string Of(MeasurandState state, RemainingLife life)
    {
        Guard.NotNull(state);
        var limit = $"limit {PlainText.Reported(Guard.NotNull(life).Limit)}";
        if (life is not RemainingLife.Forecast forecast)
        {
            return life is RemainingLife.TooFewReadings few
                ? $"{limit}: {few.Count} of {few.Needed} readings needed"
                : $"{limit}: passed by the latest sample";
        }

        // What may happen one day in decades is no news, and its dates would only hide those that matter.
        if (
            forecast.Crossing.ChanceBefore(forecast.Crossing.AsOf.AddYears(5)) < 0.1
            || !forecast.Crossing.TryAt(0.1, out var p10)
        )
        {
            return $"{limit}: not within five years";
        }

        if (!FindingList.MovesTowards(state.Trend.Assessment, life.Side) && SuddenChangeFinding.Of(state) is null)
        {
            // Beyond a limit already, it is not said to stand still.
            var still = state.Worst.State >= LimitState.Alert ? "" : "no trend towards it; if it starts to drift, ";
            return $"{limit}: {still}one chance in ten before {PlainText.Date(p10)}";
        }

        return life is RemainingLife.Crosses crosses
            ? $"{limit}: {PlainText.Date(p10)} / {PlainText.Date(crosses.P50)} / {PlainText.Date(crosses.P90)}"
            : $"{limit}: one chance in ten before {PlainText.Date(p10)}, no upper bound";
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text.Substring(1);
}
