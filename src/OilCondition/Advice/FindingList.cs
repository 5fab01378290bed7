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

    public IEnumerable<Finding> Of(WaterInOil water, CleanupProgress? cleanup) =>
        Limits()
            .Concat(SuddenChanges())
            .Concat(Lives())
            .Concat(Returns())
            .Concat(UnrecordedChanges())
            .Concat(HasFreeWater(water) ? [new FreeWaterFinding((WaterInOil.Split)water)] : [])
            .Concat(CleanupFinding.Of(cleanup))
            .Concat(Records())
            .Concat(Overdue())
            .Concat(NeverSampled());

    /// <summary>A total that is only known to lie below a figure proves no free water.</summary>
    private static bool HasFreeWater(WaterInOil water) =>
        water is WaterInOil.Split { Standstill.HasFreeWater: true, Point.Reading.Qualifier: not Qualifier.LessThan };

    private IEnumerable<Finding> Limits() =>
        from state in states
        where state.Latest is not null
        from worst in state.WorstOfEachCode
        where worst.State >= LimitState.Alert || worst.Pending >= LimitState.Alert
        select new LimitFinding(worst, state.Latest!);

    private IEnumerable<Finding> Lives()
    {
        var horizon = options.AsOf.AddDays(options.PlanningHorizon.TotalDays);
        foreach (var state in states)
        {
            if (state.Trend.Assessment.Verdict is not (TrendVerdict.Rising or TrendVerdict.Falling))
            {
                continue;
            }

            var soonest = state
                .Lives.OfType<RemainingLife.Forecast>()
                .Where(life =>
                    MovesTowards(state.Trend.Assessment, life.Side)
                    && !RestsOnOneReading(state, life.Side)
                    && life.Crossing.ChanceBefore(horizon) >= ChanceWorthPlanning
                )
                .OrderByDescending(life => life.Crossing.ChanceBefore(horizon))
                .FirstOrDefault();
            if (soonest is not null)
            {
                yield return new RemainingLifeFinding(
                    soonest,
                    state,
                    horizon,
                    records.FollowsTreatment(state.Measurand)
                );
            }
        }
    }

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

    private IEnumerable<Finding> Returns() =>
        from state in states
        let run = records.LastFinishedRun(state.Measurand)
        where run is not null && (ComesBack(state, run, LimitSide.Upper) || ComesBack(state, run, LimitSide.Lower))
        select new ReturnFinding(run, state);

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
    private IEnumerable<Finding> SuddenChanges()
    {
        if (states.All(state => state.Trend.Assessment.Changes.Count == 0))
        {
            return [];
        }

        var together = UnrecordedChanges().Where(finding => finding.HasBetter).ToList();
        return states
            .Select(SuddenChangeFinding.Of)
            .OfType<SuddenChangeFinding>()
            .Where(one =>
                !together.Exists(other => other.After.At == one.First.At && other.States.Contains(one.State))
            );
    }

    private IEnumerable<UnrecordedChangeFinding> UnrecordedChanges()
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
        return changes
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
            );
    }

    /// <summary>All measurands of water tell of one thing, and so do all of particles; every other one of its own.</summary>
    private static string ToldOf(Measurand measurand) =>
        measurand.Topic is MeasurandTopic.Water or MeasurandTopic.Particles ? measurand.Topic.ToString() : measurand.Id;

    private IEnumerable<Finding> Records()
    {
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
            yield return new RecordFinding(
                issue,
                measurand ?? Measurands.WaterContent,
                issue.At >= records.LatestSampleAt
            );
        }
    }

    private IEnumerable<Finding> Overdue() =>
        records.History.Samples.Any(sample => sample.TakenAt <= options.AsOf)
        && options.AsOf > records.LatestSampleAt.AddDays(options.Sampling.Longest.TotalDays)
            ?
            [
                new SampleOverdueFinding(
                    records.LatestSampleAt,
                    options.Sampling,
                    states.Count > 0 ? states[0].Measurand : Measurands.WaterContent
                ),
            ]
            : [];

    private IEnumerable<Finding> NeverSampled() =>
        records.History.Samples.Count + records.History.SensorReadings.Count == 0
            ?
            [
                new NeverSampledFinding(
                    records.Charge,
                    options.Sampling,
                    options.AsOf,
                    states.Count > 0 ? states[0].Measurand : Measurands.WaterContent
                ),
            ]
            : [];

    internal static bool MovesTowards(TrendAssessment trend, LimitSide side) =>
        trend.Verdict == (side == LimitSide.Upper ? TrendVerdict.Rising : TrendVerdict.Falling);
}
