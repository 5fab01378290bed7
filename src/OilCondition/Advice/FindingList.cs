using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Statistics;

namespace OilCondition;

/// <summary>From states to findings: the one place that says what is worth saying.</summary>
internal sealed class FindingList(
    ChargeRecords records,
    IReadOnlyList<MeasurandState> states,
    AssessmentOptions options
)
{
    /// <summary>Chance of crossing within the planning horizon from which on a work request is due: the P10 date lies within it.</summary>
    private const double ChanceWorthPlanning = 0.1;

    private readonly List<Finding> found = [];

    public IReadOnlyList<Finding> Of(WaterInOil water, CleanupProgress? cleanup)
    {
        AddLimits();
        var changes = UnrecordedChanges();
        AddSuddenChanges(changes);
        AddLives();
        AddReturns();
        found.AddRange(changes);
        if (HasFreeWater(water))
        {
            found.Add(new FreeWaterFinding((WaterInOil.Split)water));
        }

        found.AddRange(CleanupFinding.Of(cleanup));
        AddRecords();
        AddNextSample();
        return found;
    }

    /// <summary>A total that is only known to lie below a figure proves no free water.</summary>
    private static bool HasFreeWater(WaterInOil water) =>
        water is WaterInOil.Split { Standstill.HasFreeWater: true, Point.Reading.Qualifier: not Qualifier.LessThan };

    private void AddLimits()
    {
        foreach (var state in states)
        {
            foreach (var worst in state.WorstOfEachCode)
            {
                if ((worst.State >= LimitState.Alert || worst.Pending >= LimitState.Alert) && state.Latest is { } point)
                {
                    found.Add(new LimitFinding(worst, point));
                }
            }
        }
    }

    private void AddLives()
    {
        var horizon = options.AsOf.AddDays(options.PlanningHorizon.TotalDays);
        foreach (var state in states)
        {
            if (state.Trend.Assessment.Verdict is not (TrendVerdict.Rising or TrendVerdict.Falling))
            {
                continue;
            }

            if (Soonest(state, horizon) is { } soonest)
            {
                found.Add(new RemainingLifeFinding(soonest, state, horizon, records.FollowsTreatment(state.Measurand)));
            }
        }
    }

    private RemainingLife.Forecast? Soonest(MeasurandState state, DateTimeOffset horizon) =>
        state
            .Lives.OfType<RemainingLife.Forecast>()
            .Where(life =>
                MovesTowards(state.Trend.Assessment, life.Side)
                && !RestsOnOneReading(state, life.Side)
                && RemainingLifeFinding.ChanceOf(life, horizon) >= ChanceWorthPlanning
            )
            .OrderByDescending(life => RemainingLifeFinding.ChanceOf(life, horizon))
            .FirstOrDefault();

    /// <summary>A sudden change that waits for its confirmation is told as that, and not as a rise with dates, unless the readings before it rise as well.</summary>
    private bool RestsOnOneReading(MeasurandState state, LimitSide side) =>
        SuddenChangeFinding.Of(state) is { IsUnconfirmed: true } change
        && !MovesTowards(
            SeriesTrend
                .Of(
                    state.Trend.Series.WithPoints([
                        .. state.Trend.Series.Sources.Where(one => one.Origin.At < change.First.At),
                    ]),
                    SeriesTrend.OptionsFor(state.Trend.Series, confidence: 1 - options.TrendSignificance)
                )
                .Assessment,
            side
        );

    private void AddReturns()
    {
        foreach (var state in states)
        {
            if (
                records.LastFinishedRun(state.Measurand) is { } run
                && (ComesBack(state, run, LimitSide.Upper) || ComesBack(state, run, LimitSide.Lower))
            )
            {
                found.Add(new ReturnFinding(run, state));
            }
        }
    }

    /// <summary>Whether a measurand moves in a direction that is worse, and stands beyond the target of its treatment there.</summary>
    private static bool ComesBack(MeasurandState state, TreatmentRun run, LimitSide side) =>
        state.Measurand.IsWorse(side)
        && MovesTowards(state.Trend.Assessment, side)
        && state.Latest is { } latest
        && (
            side == LimitSide.Upper
                ? latest.Reading.Qualifier != Qualifier.LessThan && latest.Reading.Value > run.Target
                : latest.Reading.Qualifier != Qualifier.GreaterThan && latest.Reading.Value < run.Target
        );

    /// <summary>What changed together with others of which one got better, as another oil does, is told once. What is worse in all of them is told of each.</summary>
    private void AddSuddenChanges(IReadOnlyList<UnrecordedChangeFinding> together)
    {
        foreach (var state in states)
        {
            if (SuddenChangeFinding.Of(state) is { } one && !IsAmong(together, one))
            {
                found.Add(one);
            }
        }
    }

    private static bool IsAmong(IReadOnlyList<UnrecordedChangeFinding> together, SuddenChangeFinding one) =>
        together.Any(other => other.HasBetter && other.After.At == one.First.At && other.States.Contains(one.State));

    private IReadOnlyList<UnrecordedChangeFinding> UnrecordedChanges()
    {
        // One measurand may jump for its own reasons; two that jump between the same samples tell of the oil, if one of them can: new oil makes
        // something better, another oil changes what tells its identity. What is worse in all of them is no oil change.
        if (states.All(state => state.Trend.Assessment.Changes.Count == 0))
        {
            return [];
        }

        var changes =
            from state in states
            from change in state.Trend.Assessment.Changes
            let points = state.Trend.Series.Points
            select (
                State: state,
                Before: points[change.LastBefore],
                After: points[change.FirstAfter],
                change.IsToBetter
            );
        return
        [
            .. changes
                .GroupBy(one => (one.Before.At, one.After.At))
                .Where(group =>
                    group.Any(one => one.IsToBetter || one.State.Measurand.TellsOilIdentity)
                    && group.Select(one => ToldOf(one.State.Measurand)).Distinct(StringComparer.Ordinal).Count() >= 2
                )
                .Select(group => new UnrecordedChangeFinding(
                    group.First().Before,
                    group.First().After,
                    [.. group.Select(one => one.State)],
                    group.Any(one => one.IsToBetter)
                ))
                .Where(finding =>
                    !records.History.Events.Any(one => one.At > finding.Before.At && one.At <= finding.After.At)
                ),
        ];
    }

    /// <summary>All measurands of water tell of one thing, and so do all of particles; every other one of its own.</summary>
    private static string ToldOf(Measurand measurand) =>
        measurand.Topic is MeasurandTopic.Water or MeasurandTopic.Particles ? measurand.Topic.ToString() : measurand.Id;

    private void AddRecords()
    {
        if (records.History.Issues.Count == 0)
        {
            return;
        }

        foreach (
            var issue in records
                .History.Issues.Where(one => one.At >= records.Charge.Since)
                .OrderByDescending(one => one.At)
                .ThenBy(one => one.SampleNumber, StringComparer.Ordinal)
                .ThenBy(one => one.Kind)
        )
        {
            var measurand = issue
                .Readings.Keys.OrderByDescending(key => key.TellsOilIdentity)
                .ThenBy(key => key.Id, StringComparer.Ordinal)
                .FirstOrDefault();
            found.Add(
                new RecordFinding(
                    issue,
                    measurand ?? Measurands.WaterContent,
                    issue.At >= records.LatestSampleAt,
                    records.AsOf
                )
            );
        }
    }

    /// <summary>A machine that is due for a sample, or never had one. One that only sensors watch has none to wait for.</summary>
    private void AddNextSample()
    {
        var (history, sampling) = (records.History, options.Sampling);
        var measurand = states.Count > 0 ? states[0].Measurand : Measurands.WaterContent;
        if (history.Samples.Count > 0 && options.AsOf > records.LatestSampleAt.AddDays(sampling.Longest.TotalDays))
        {
            found.Add(new SampleOverdueFinding(records.LatestSampleAt, sampling, measurand));
        }
        else if (history.Samples.Count + history.SensorReadings.Count == 0)
        {
            found.Add(new NeverSampledFinding(records.Charge, sampling, options.AsOf, measurand));
        }
    }

    internal static bool MovesTowards(TrendAssessment trend, LimitSide side) =>
        trend.Verdict == (side == LimitSide.Upper ? TrendVerdict.Rising : TrendVerdict.Falling);
}
