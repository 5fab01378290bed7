using OilCondition.Cleanup;
using OilCondition.Limits;
using OilCondition.Statistics;
using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition;

/// <content>Each kind of finding as a sentence.</content>
public sealed partial class Sentences
{
    /// <summary>A finding as a sentence.</summary>
    /// <param name="finding">The finding.</param>
    /// <returns>One sentence with its figures and units.</returns>
    public string Of(Finding finding) => Guard.NotNull(finding).Said(this);

    internal string Overdue(SampleOverdueFinding finding) =>
        Say("finding.overdue", ("date", Date(finding.LastSampleAt)), ("days", Number(finding.Plan.Longest.TotalDays)));

    internal string NeverSampled(NeverSampledFinding finding) =>
        finding.ChargedAt is { } at
            ? Say("finding.never-sampled-since", ("date", Date(at)))
            : Say("finding.never-sampled");

    internal string Limit(LimitFinding finding)
    {
        var waits = finding.Code == FindingCode.LimitNotConfirmed ? Say("finding.waits") : "";
        var source =
            finding.Evaluation.Limit.Source + string.Concat(finding.Missing.Select(missing => $"; {Of(missing)}"));
        var measurand = ("measurand", Capital(Name(finding.Measurand)));
        var reading = Say(
            "finding.reading",
            ("quantity", Quantity(finding.Point.Reading, finding.Measurand)),
            ("date", Date(finding.Point.At))
        );
        return finding.Evaluation.Rate is { } rate
            ? Say(
                "finding.rate",
                measurand,
                ("rate", Rate(finding, rate)),
                ("reading", reading),
                ("word", WordOf(finding)),
                ("limit", RateFigure(finding)),
                ("waits", waits),
                ("source", source)
            )
            : Say(
                "finding.limit",
                measurand,
                ("reading", reading),
                ("against", Against(finding)),
                ("waits", waits),
                ("source", source)
            );
    }

    /// <summary>A rate has the unit of its measurand per time; what a scale is shifted by does not count.</summary>
    private string Rate(LimitFinding finding, double rate) =>
        $"{Number(Scaled(rate, finding.Measurand.Unit)!.Value)} {Of(finding.RateUnit)}";

    private string RateFigure(LimitFinding finding) =>
        Reported(Scaled(finding.Evaluation.Figure!.Value, finding.Measurand.Unit)!.Value);

    /// <summary>Where a reading stands against its figure, as a phrase.</summary>
    private string Against(LimitFinding finding)
    {
        var side =
            !IsBeyond(finding) ? "against.inside"
            : finding.Side == LimitSide.Upper ? "against.above"
            : "against.below";
        return Say(
            side + (LimitRank.CodeOf(finding.Evaluation.Limit.Kind) == FindingCode.OutOfTheUsual ? "-usual" : ""),
            ("word", WordOf(finding)),
            ("limit", Quantity(finding.Evaluation.Figure!.Value, finding.Measurand))
        );
    }

    private string WordOf(LimitFinding finding)
    {
        var evaluation = finding.Evaluation;
        var waits = finding.Code == FindingCode.LimitNotConfirmed;
        return Say((waits ? evaluation.Pending : evaluation.State) == LimitState.Alarm ? "word.alarm" : "word.alert");
    }

    private static bool IsBeyond(LimitFinding finding) =>
        finding.Side == LimitSide.Upper
            ? finding.Point.Reading.Value >= finding.Evaluation.Figure!.Value
            : finding.Point.Reading.Value <= finding.Evaluation.Figure!.Value;

    internal string FreeWater(FreeWaterFinding finding)
    {
        var balance = finding.Balance;
        var water = Measurands.WaterContent;
        var running = balance.Running.HasFreeWater;
        var (state, free) = Free(balance);
        return Say(
            running ? "finding.free-running" : "finding.free-standstill",
            ("total", Quantity(balance.Point.Reading, water)),
            ("saturation", Rounded(state.Saturation.Content.PartsPerMillion, water)),
            ("temperature", Degrees(state)),
            ("extrapolated", Extrapolated(state.Saturation.IsExtrapolated)),
            ("free", free.Middle),
            ("lowest", free.Lowest),
            ("highest", free.Highest),
            ("litres", Volumes(balance, running)),
            (
                "separation",
                With(balance.Separation.Temperature.DegreesCelsius, "°C", WaterInOil.Split.SeparationUncertainty)
            ),
            ("separationExtrapolated", Extrapolated(balance.Separation.IsExtrapolated))
        );
    }

    /// <summary>The water that is free while the machine runs, else at standstill, and its range.</summary>
    private (WaterState State, (string Middle, string Lowest, string Highest) Free) Free(WaterInOil.Split balance)
    {
        var state = balance.Running.HasFreeWater ? balance.Running : balance.Standstill;
        var open = balance.UncertaintyOfFree(state);
        var free = state.Free.PartsPerMillion;
        var unit = Measurands.WaterContent.Unit;
        return (
            state,
            (With(free, unit, open), Bare(Math.Max(0, free - open), unit, open), Bare(free + open, unit, open))
        );
    }

    /// <summary>The volume of the oil fill's free water, each beside the temperature at which so much is free.</summary>
    private string Volumes(WaterInOil.Split balance, bool running)
    {
        if (balance.FreeAtStandstill is not { } cold)
        {
            return "";
        }

        string Of(Volume volume, WaterState state) =>
            Say(
                "finding.volume-at",
                (
                    "volume",
                    With(
                        volume.Liters,
                        "L",
                        volume.Liters * balance.UncertaintyOfFree(state) / state.Free.PartsPerMillion
                    )
                ),
                ("temperature", Degrees(state))
            );
        var standstill =
            Of(cold, balance.Standstill) + Extrapolated(running && balance.Standstill.Saturation.IsExtrapolated);
        return running && balance.FreeAtRunning is { } warm
            ? Say("finding.volumes", ("warm", Of(warm, balance.Running)), ("cold", standstill))
            : Say("finding.volume", ("cold", standstill));
    }

    private string Rounded(double value, Measurand measurand) =>
        With(value, measurand.Unit, measurand.UncertaintyOf(value));

    private string Degrees(WaterState state) => With(state.Saturation.Temperature.DegreesCelsius, "°C");

    private string Extrapolated(bool isExtrapolated) => isExtrapolated ? Say("finding.extrapolated") : "";

    internal string Life(RemainingLifeFinding finding)
    {
        var crossing = finding.Life.Crossing;
        var direction = finding.Life.Side == LimitSide.Upper ? "finding.rising" : "finding.falling";
        return Say(
            finding.Life.Crossing.IsLikelyPassed ? "finding.life-unseen" : "finding.life",
            ("measurand", Capital(Name(finding.Measurand))),
            ("direction", Say(direction + (finding.FollowsTreatment ? "-since" : ""))),
            ("limit", Quantity(finding.Life.Limit, finding.Measurand)),
            ("chance", Unseen(finding.Life)),
            ("around", crossing.TryAt(0.5, out var p50) ? Say("finding.around", ("date", Date(p50))) : ""),
            ("early", Date(finding.Earliest)),
            (
                "late",
                crossing.TryAt(0.9, out var p90) ? Say("finding.late", ("date", Date(p90))) : Say("finding.late-open")
            ),
            ("count", Number(finding.State.Trend.Assessment.Used.Count))
        );
    }

    internal string Return(ReturnFinding finding) =>
        Say(
            finding.State.Trend.Assessment.Verdict == TrendVerdict.Rising
                ? "finding.return-rising"
                : "finding.return-falling",
            ("measurand", Capital(Name(finding.Measurand))),
            ("date", Date(finding.Run.EndedAt!.Value)),
            ("reading", Quantity(finding.State.Latest!.Reading, finding.Measurand)),
            ("target", Quantity(finding.Run.Target, finding.Measurand)),
            ("count", Number(finding.State.Trend.Assessment.Used.Count))
        );

    internal string Change(UnrecordedChangeFinding finding) =>
        Say(
            "finding.unrecorded",
            ("before", Date(finding.Before.At)),
            ("after", Date(finding.After.At)),
            ("measurands", string.Join(Say("word.and"), finding.States.Select(state => Name(state.Measurand)))),
            ("anew", Say(finding.HasBetter ? "finding.anew" : "finding.not-anew"))
        );

    internal string Change(SuddenChangeFinding finding) =>
        Say(
            finding.IsUnconfirmed ? "finding.step-unconfirmed" : "finding.step",
            ("measurand", Capital(Name(finding.Measurand))),
            ("step", Step(finding)),
            ("count", Number(finding.Readings))
        );

    private string Step(SuddenChangeFinding finding) =>
        Say(
            finding.IsUnconfirmed ? "step.sudden" : "step.changed",
            ("course", Course(finding)),
            ("date", Date(finding.First.At))
        );

    internal string Cleanup(CleanupFinding finding)
    {
        var (progress, run, status) = (finding.Progress, finding.Progress.Run, finding.Progress.Status);
        if (finding.Code == FindingCode.CleanupSourcesDisagree)
        {
            return Say(
                "cleanup.sources",
                ("measurand", Capital(Name(run.Measurand))),
                ("contradiction", Of(status.Contradiction!)),
                ("followed", Say(status.FollowsSensor ? "cleanup.sensor" : "cleanup.samples"))
            );
        }

        var target = ("target", Say("cleanup.target", ("target", With(run.Target, run.Measurand.Unit))));
        var hold = ("hold", $"{Number(status.Options.HoldFor.TotalHours)} h");
        string At(DateTimeOffset at) => Time(progress.Local(at));
        var last = ("last", At(status.AsOf));
        var what = status.Arrival switch
        {
            Arrival<DateTimeOffset>.Already => Say(
                "cleanup.already",
                target,
                hold,
                ("date", At(status.HoldingSince!.Value))
            ),
            Arrival<DateTimeOffset>.Expected expected => Say(
                progress.IsPastDue ? "cleanup.past-due" : "cleanup.expected",
                target,
                hold,
                ("date", At(expected.Estimate)),
                ("early", At(expected.Earliest)),
                ("late", At(expected.Latest)),
                ("now", At(progress.AsOf)),
                last
            ),
            Arrival<DateTimeOffset>.NotBefore open when open.Earliest < progress.AsOf => Say(
                "cleanup.not-shown",
                target,
                last
            ),
            Arrival<DateTimeOffset>.NotBefore open => Say(
                "cleanup.not-before",
                target,
                hold,
                ("early", At(open.Earliest))
            ),
            Arrival<DateTimeOffset>.Never => Say(
                "cleanup.never",
                target,
                (
                    "level",
                    $"{Level(status, run.Measurand)} {Shown(0, run.Measurand.Unit).Unit}".TrimEnd() + ComesIn(status)
                )
            ),
            _ => status.Reason switch
            {
                CompletionReason.Stalled => Say("cleanup.stalled", target) + ComesIn(status),
                CompletionReason.FreeWater when status.RiseOfSamples is { } rise => Say(
                    "cleanup.risen",
                    ("first", With(rise.First, run.Measurand.Unit)),
                    ("latest", With(rise.Latest, run.Measurand.Unit))
                ),
                CompletionReason.FreeWater => Say("cleanup.free-water"),
                CompletionReason.NotOnOneCourse => Say(
                    "cleanup.not-one-course",
                    ("course", Of(status.Curve.Course.Departure)),
                    target
                ),
                CompletionReason.ReadingsTooFarApart => Say("cleanup.too-far-apart", target),
                _ => Say("cleanup.few", ("count", Number(status.Curve.Count))),
            },
        };
        return Say("cleanup.under-way", ("what", what + Pace(status)));
    }

    internal string Of(SourceContradiction contradiction)
    {
        double In(double difference) => Scaled(difference, contradiction.Measurand.Unit)!.Value;
        var uncertainty = In(contradiction.Uncertainty);
        return Say(
            contradiction.Difference > 0 ? "cleanup.read-higher" : "cleanup.read-lower",
            ("by", Number(In(Math.Abs(contradiction.Difference)), uncertainty)),
            ("uncertainty", $"{Number(uncertainty, uncertainty)} {Unit(contradiction.Measurand)}".TrimEnd()),
            ("count", Number(contradiction.Count))
        );
    }

    internal string Of(CourseDeparture departure) => Say("course." + PlainText.Kebab(departure));

    private string Level(CleanupStatus status, Measurand measurand)
    {
        double? Figure(string id) => StallFigure(status, id);
        var level = ("level", Bare(Figure("mean") ?? Figure("observed-level") ?? status.Curve.Floor, measurand.Unit));
        return status.StallSign switch
        {
            StallSign.Rises => Say("cleanup.rises", level),
            StallSign.BehindThePlan when Figure("upper-end-of-the-fall") <= 0 => Say("cleanup.rises", level),
            StallSign.BehindThePlan when Figure("planned-fall-per-hour") is { } planned => Say(
                "cleanup.behind-the-plan",
                level,
                (
                    "most",
                    Bare(
                        Figure("upper-end-of-the-fall")!.Value / Figure("observed-for")!.Value,
                        measurand.Unit,
                        planned
                    )
                ),
                ("planned", Bare(planned, measurand.Unit, planned))
            ),
            StallSign.ShowsNoFall or StallSign.BehindThePlan => Say("cleanup.no-fall", level),
            _ => Say("cleanup.levels-off", level),
        };
    }

    private static double? StallFigure(CleanupStatus status, string id) =>
        status.StallEvidence.FirstOrDefault(item => item.Id == id)?.Value;

    /// <summary>That it falls more slowly than planned; nothing where that is not shown.</summary>
    private string Pace(CleanupStatus status) =>
        status.MostOfPlannedPace is { } most ? Say("cleanup.slower", ("most", $"{Number(100 * most)} %")) : "";

    /// <summary>What comes in if the unit takes out what was planned; nothing where the run has no plan.</summary>
    private string ComesIn(CleanupStatus status)
    {
        double? Figure(string id) => StallFigure(status, id);
        return Figure("at-least") is not { } least ? ""
            : Figure("at-most") is { } most && Figure("water-that-comes-in") is { } rate
                ? Say(
                    "cleanup.comes-in",
                    ("rate", With(rate, "g/h", most - rate)),
                    ("least", Bare(least, "g/h", most - rate)),
                    ("most", With(most, "g/h", most - rate))
                )
            : Say("cleanup.comes-in-at-least", ("least", With(least, "g/h", 0.1 * least)));
    }

    internal string Record(RecordFinding finding)
    {
        var issue = finding.Issue;
        var what = (
            "what",
            issue.SampleNumber.Length == 0 ? Say("record.sensor") : Say("record.sample", ("number", issue.SampleNumber))
        );
        var date = ("date", Date(issue.At));
        return issue.Kind switch
        {
            HistoryIssueKind.SuspectSample => Say("record.suspect", what, date),
            HistoryIssueKind.DatedLater when finding.IsOfToday => Say(
                "record.dated-ahead",
                what,
                ("time", Time(issue.At))
            ),
            HistoryIssueKind.DatedLater => Say("record.dated-later", what, date),
            HistoryIssueKind.RepeatedSample => Say("record.repeated", what, date),
            HistoryIssueKind.ConflictingSample when issue.Readings.Count == 0 => Say(
                "record.conflicting-empty",
                what,
                date
            ),
            HistoryIssueKind.ConflictingSample => Say(
                "record.conflicting",
                what,
                date,
                ("readings", Each(issue, _ => ""))
            ),
            _ => Say(
                "record.implausible",
                what,
                date,
                (
                    "readings",
                    Each(
                        issue,
                        measurand =>
                            Say(
                                "record.allowed",
                                ("lowest", Bare(measurand.LowestPlausible, measurand.Unit)),
                                ("highest", Bare(measurand.HighestPlausible, measurand.Unit))
                            )
                    )
                )
            ),
        };
    }

    private string Each(HistoryIssue issue, Func<Measurand, string> aside) =>
        string.Join(
            ", ",
            issue
                .Readings.OrderBy(pair => pair.Key.Id, StringComparer.Ordinal)
                .Select(pair => $"{Name(pair.Key)} {Quantity(pair.Value, pair.Key)}{aside(pair.Key)}")
        );
}
