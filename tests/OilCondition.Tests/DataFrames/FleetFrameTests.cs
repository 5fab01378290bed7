using Microsoft.Data.Analysis;
using OilCondition.DataFrames;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Tests.DataFrames;

/// <summary>Every figure of the frames of a fleet is the one that the assessment or the decision has.</summary>
public class FleetFrameTests
{
    /// <summary>The station now, and on a day when the water of one machine was beyond its limit and not yet treated.</summary>
    private static readonly IReadOnlyList<ConditionAssessment> Fleet =
    [
        .. HarrowPointFleet.Assessments,
        .. HarrowPointFleet.Station.Machines.Select(one =>
            ConditionAssessor.Assess(
                one.History,
                one.Limits,
                new AssessmentOptions(new DateTimeOffset(2025, 12, 8, 12, 0, 0, TimeSpan.Zero))
            )
        ),
    ];

    [Fact]
    public void Each_life_is_a_row_with_the_figures_of_the_assessment()
    {
        var frame = FleetFrames.Lives(Fleet);
        var row = 0L;
        foreach (var assessment in Fleet)
        {
            foreach (var state in assessment.States)
            {
                foreach (var life in state.Lives.DefaultIfEmpty())
                {
                    ShouldBeKeys(frame, row, assessment);
                    ShouldBeTrend(frame, row, state);
                    ShouldBeLife(frame, row, state, life);
                    ShouldBeNextSample(frame, row, assessment.NextSample);
                    row++;
                }
            }
        }

        frame.Rows.Count.ShouldBe(row);
    }

    [Fact]
    public void Lives_of_every_outcome_are_in_the_fleet_that_is_compared() =>
        ((StringDataFrameColumn)FleetFrames.Lives(Fleet)["outcome"])
            .Distinct()
            .ShouldBe(
                ["crosses", "no-latest-date", "not-approaching", "already-crossed", "too-few-readings", "no-life"],
                ignoreOrder: true
            );

    [Fact]
    public void A_machine_never_sampled_has_rows_that_say_so()
    {
        var all = FleetFrames.Lives(HarrowPointFleet.Assessments);
        var lives = all.Filter(all["machine"].ElementwiseEquals(HarrowPointFleet.NeverSampled));

        lives.Rows.Count.ShouldBeGreaterThan(0);
        for (var row = 0L; row < lives.Rows.Count; row++)
        {
            lives["latest"][row].ShouldBeNull();
            lives["slopePerDay"][row].ShouldBeNull();
            lives["slopeUnit"][row].ShouldBeNull();
            lives["p10Utc"][row].ShouldBeNull();
            lives["trend"][row].ShouldBe("too-few-readings");
            lives["nextSampleReason"][row].ShouldBe("never-sampled");
        }
    }

    [Fact]
    public void Each_machine_is_a_row_with_its_first_limit()
    {
        var frame = FleetFrames.Machines(Fleet);

        frame.Rows.Count.ShouldBe(Fleet.Count);
        for (var row = 0; row < Fleet.Count; row++)
        {
            var one = Fleet[row];
            ShouldBeKeys(frame, row, one);
            frame["worst"][row].ShouldBe(PlainText.Kebab(one.Worst));
            frame["problems"][row].ShouldBe(one.Problems.Count);
            frame["samples"][row].ShouldBe(one.History.Samples.Count);
            frame["cleanlinessCode"][row].ShouldBe(one.Cleanliness?.ToString());
            frame["underTreatment"][row].ShouldBe(one.Cleanup is not null);
            frame["crossed"][row].ShouldBe(one.First.IsCrossed);
            var water = one.Water as WaterInOil.Split;
            frame["waterMgPerKg"][row].ShouldBe(water?.Running.Total.PartsPerMillion);
            frame["freeRunningMgPerKg"][row].ShouldBe(water?.Running.Free.PartsPerMillion);
            frame["freeStandstillMgPerKg"][row].ShouldBe(water?.Standstill.Free.PartsPerMillion);
            frame["firstMeasurand"]
                [row]
                .ShouldBe(one.First.Shares.Count > 0 ? one.First.Shares[0].Life.Series.Measurand.Id : null);
            frame["firstLimit"][row].ShouldBe(one.First.Shares.Count > 0 ? one.First.Shares[0].Life.Limit : null);
            frame["firstChance"][row].ShouldBe(one.First.Shares.Count > 0 ? one.First.Shares[0].Chance : null);
            frame["p50Utc"]
                [row]
                .ShouldBe(!one.First.IsCrossed && one.First.TryAt(0.5, out var at) ? at.UtcDateTime : null);
            ShouldBeNextSample(frame, row, one.NextSample);
        }
    }

    [Fact]
    public void Each_finding_and_each_figure_of_evidence_is_a_row()
    {
        var findings = FleetFrames.Findings(Fleet);
        var evidence = FleetFrames.Evidence(Fleet);
        var (row, item) = (0L, 0L);
        foreach (var assessment in Fleet)
        {
            foreach (var problem in assessment.Problems)
            {
                foreach (var finding in problem.Findings)
                {
                    ShouldBeKeys(findings, row, assessment);
                    findings["subject"][row].ShouldBe(problem.Subject);
                    findings["statement"][row].ShouldBe(problem.Statement);
                    findings["code"][row].ShouldBe(PlainText.Kebab(finding.Code));
                    findings["severity"][row].ShouldBe(PlainText.Kebab(finding.Severity));
                    findings["measurand"][row].ShouldBe(finding.Measurand.Id);
                    findings["sentence"][row].ShouldBe(finding.ToString());
                    row++;
                }

                foreach (var (measurand, one) in problem.Evidence.SelectMany(of => of.Select(one => (of.Key, one))))
                {
                    evidence["subject"][item].ShouldBe(problem.Subject);
                    evidence["measurand"][item].ShouldBe(measurand.Id);
                    evidence["evidence"][item].ShouldBe(one.Id);
                    evidence["value"][item].ShouldBe(one.Value);
                    evidence["text"][item].ShouldBe(one.Text);
                    (evidence["unit"][item] ?? "").ShouldBe(one.Unit);
                    item++;
                }
            }
        }

        (findings.Rows.Count, evidence.Rows.Count).ShouldBe((row, item));
        row.ShouldBeGreaterThan(5);
    }

    [Fact]
    public void Each_way_to_treat_is_a_row_with_its_cautions()
    {
        var frame = FleetFrames.Options(HarrowPointFleet.Decisions);
        var row = 0L;
        foreach (var decision in HarrowPointFleet.Decisions)
        {
            foreach (var option in decision.Options)
            {
                ShouldBeKeys(frame, row, decision.Assessment);
                frame["option"][row].ShouldBe(option.Id);
                frame["isChoice"][row].ShouldBe(decision.Choice?.Id == option.Id);
                frame["verdict"][row].ShouldBe(PlainText.Kebab(option.Verdict));
                (frame["ruledOut"][row] ?? "").ShouldBe(option.RuledOut);
                frame["probability"][row].ShouldBe(option.Probability.DecimalFractions);
                frame["probabilityInTime"][row].ShouldBe(option.ProbabilityInTime.DecimalFractions);
                frame["hoursP10"][row].ShouldBe(option.Assessment?.Band?.TimeP10?.TotalHours);
                frame["hoursP90"][row].ShouldBe(option.Assessment?.Band?.TimeP90?.TotalHours);
                frame["hoursP50"][row].ShouldBe(option.Assessment?.Band?.TimeP50?.TotalHours);
                frame["boundHours"][row].ShouldBe(option.Bound?.TotalHours);
                frame["floorP50MgPerKg"][row].ShouldBe(option.Floor?.PartsPerMillion);
                frame["costP10"][row].ShouldBe(option.Cost?.P10);
                frame["costP50"][row].ShouldBe(option.Cost?.P50);
                frame["costP90"][row].ShouldBe(option.Cost?.P90);
                frame["currency"][row].ShouldBe(option.Cost?.Currency);
                frame["beginsUtc"][row].ShouldBe(option.Begins?.UtcDateTime);
                frame["doneP10Utc"][row].ShouldBe(option.DoneP10?.UtcDateTime);
                frame["doneP50Utc"][row].ShouldBe(option.DoneP50?.UtcDateTime);
                frame["doneP90Utc"][row].ShouldBe(option.DoneP90?.UtcDateTime);
                frame["riskDateUtc"][row].ShouldBe(decision.RiskDate.UtcDateTime);
                foreach (var caution in option.Assessment?.Cautions ?? [])
                {
                    ((string)frame["cautions"][row]).ShouldContain(Sentences.English.Of(caution));
                }

                decision.ToString().Replace("\n", " ").ShouldContain("makers' limits");
                ((string)frame["notice"][row]).ShouldContain("makers' limits, local codes and licensed practice");
                row++;
            }
        }

        frame.Rows.Count.ShouldBe(row);
        row.ShouldBeGreaterThan(10);
        frame["cautions"].NullCount.ShouldBeLessThan(row);
    }

    [Fact]
    public void No_fleet_has_no_rows_and_the_same_columns()
    {
        var (none, some) = (FleetFrames.Lives([]), FleetFrames.Lives(Fleet));

        none.Rows.Count.ShouldBe(0);
        none.Columns.Select(column => (column.Name, column.DataType))
            .ShouldBe(some.Columns.Select(column => (column.Name, column.DataType)));
        FleetFrames.Options([]).Rows.Count.ShouldBe(0);
    }

    private static void ShouldBeKeys(DataFrame frame, long row, ConditionAssessment assessment)
    {
        frame["machine"][row].ShouldBe(assessment.History.Machine.Id);
        frame["charge"][row].ShouldBe(assessment.Charge.ToString());
        frame["asOfUtc"][row].ShouldBe(assessment.Options.AsOf.UtcDateTime);
    }

    private static void ShouldBeTrend(DataFrame frame, long row, MeasurandState state)
    {
        var trend = state.Trend.Assessment;
        frame["measurand"][row].ShouldBe(state.Measurand.Id);
        frame["unit"][row].ShouldBe(state.Measurand.Unit);
        frame["latest"][row].ShouldBe(state.Latest?.Reading.Value);
        frame["latestUtc"][row].ShouldBe(state.Latest?.At.UtcDateTime);
        frame["trend"][row].ShouldBe(PlainText.Kebab(trend.Verdict));
        frame["readingsUsed"][row].ShouldBe(trend.Used.Count);
        if (trend.Verdict == TrendVerdict.TooFewReadings)
        {
            frame["slopePerDay"][row].ShouldBeNull();
            return;
        }

        frame["slopePerDay"][row].ShouldBe(trend.Slope);
        frame["slopePerDayLower"][row].ShouldBe(trend.SlopeInterval.Lower);
        frame["slopePerDayUpper"][row].ShouldBe(trend.SlopeInterval.Upper);
        frame["slopeConfidence"][row].ShouldBe(trend.Confidence);
        frame["slopeUnit"]
            [row]
            .ShouldBe(trend.Scale == NaturalScale.Logarithmic ? "ln per day" : $"{state.Measurand.Unit} per day");
    }

    private static void ShouldBeLife(DataFrame frame, long row, MeasurandState state, RemainingLife? life)
    {
        frame["limit"][row].ShouldBe(life?.Limit);
        frame["outcome"][row].ShouldBe(life is null ? "no-life" : Kebab(life.GetType().Name));
        frame["side"][row].ShouldBe(life is null ? null : PlainText.Kebab(life.Side));
        var crosses = life as RemainingLife.Crosses;
        frame["p10Utc"][row].ShouldBe((crosses?.P10 ?? (life as RemainingLife.NoLatestDate)?.P10)?.UtcDateTime);
        frame["p90Utc"][row].ShouldBe(crosses?.P90.UtcDateTime);
        if (crosses is not null)
        {
            frame["p50Utc"][row].ShouldBe(crosses.P50.UtcDateTime);
        }

        if (life is not null)
        {
            frame["reason"][row].ShouldBe(Sentences.English.Of(state, life));
        }
    }

    private static string Kebab(string name) =>
        string.Concat(
            name.Select((letter, i) => (i > 0 && char.IsUpper(letter) ? "-" : "") + char.ToLowerInvariant(letter))
        );

    private static void ShouldBeNextSample(DataFrame frame, long row, NextSample? next)
    {
        frame["nextSampleUtc"][row].ShouldBe(next?.At.UtcDateTime);
        frame["nextSampleReason"][row].ShouldBe(next is null ? null : PlainText.Kebab(next.Reason));
        frame["nextSampleOverdue"][row].ShouldBe(next?.IsOverdue);
        frame["chanceUnseen"][row].ShouldBe(next?.ChanceUnseen);
    }
}
