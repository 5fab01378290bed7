using OilCondition;
using OilCondition.Charts;
using OilCondition.ControlCharts;
using OilCondition.Planning;
using OilCondition.Reporting;

namespace HarrowPoint;

/// <summary>One chart of each kind, of the invented station: the pictures of docs/charts.md.</summary>
public static class Pictures
{
    /// <summary>Readings that a control chart takes its limits from: those of the first year.</summary>
    private const int SoundReadings = 12;

    /// <summary>The charts with their names, in the order of the page.</summary>
    public static IReadOnlyList<(string Name, Chart Chart)> Of(
        StationRecords station,
        IReadOnlyList<ConditionAssessment> assessments,
        IReadOnlyList<TreatmentDecision> decisions,
        ScheduleOutcome schedule,
        ChartOptions? options = null
    )
    {
        ConditionAssessment Machine(string id) => assessments.Single(one => one.History.Machine.Id == id);
        return
        [
            ("chart-trend", TrendChart.Of(Machine("HP-TGB1"), Measurands.WaterContent, options)),
            ("chart-saturation", SaturationChart.Of(Machine("HP-IGG1"), options)),
            ("chart-cleanup", CleanupChart.Of(Machine("HP-DTG1"), options)),
            ("chart-cleanliness", CleanlinessChart.Of(Machine("HP-GOV1"), options)),
            ("chart-control", Control(Machine("HP-TGB2").History, station.AsOf, options)),
            (
                "chart-options",
                OptionsChart.OfHours(
                    decisions.First(one => one.Assessment.History.Machine.Id == "HP-TGB1" && one.Options.Count > 0),
                    options
                )
            ),
            (
                "chart-schedule",
                schedule is ScheduleOutcome.Planned planned
                    ? ScheduleChart.Of(
                        "HP-VDU, mobile vacuum dehydration unit",
                        planned.Schedule.Visits,
                        options: options
                    )
                    : throw new InvalidOperationException("The unit of the station has no plan.")
            ),
        ];
    }

    /// <summary>What a reader of the report looks for: a machine's problems, its water and dirt where they are problems, and a cleanup under way.</summary>
    public static IReadOnlyList<ReportPicture> OfReport(ConditionAssessment assessment)
    {
        bool Has(ProblemTopic topic) => assessment.Problems.Any(one => one.Topic == topic);
        List<Chart> charts =
        [
            .. assessment.Cleanup is null ? [] : new[] { CleanupChart.Of(assessment) },
            .. assessment.Problems.SelectMany(problem => AssessmentCharts.Of(assessment, problem)),
            .. Has(ProblemTopic.Water) && assessment.History.Machine.Oil.SaturationCurve is not null
                ? new[] { SaturationChart.Of(assessment) }
                : [],
            .. Has(ProblemTopic.Dirt) && assessment.Cleanliness is not null
                ? new[] { CleanlinessChart.Of(assessment) }
                : [],
        ];
        // Two stand beside each other on a page.
        return charts.ConvertAll(chart => Picture(chart.WithSize(640, 440)));
    }

    /// <summary>Where the unit goes, as a picture of the first page.</summary>
    public static IReadOnlyList<ReportPicture> OfPlan(ScheduleOutcome schedule) =>
        schedule is ScheduleOutcome.Planned planned
            ? [Picture(ScheduleChart.Of("HP-VDU, mobile vacuum dehydration unit", planned.Schedule.Visits))]
            : [];

    private static ReportPicture Picture(Chart chart) => new(chart.Title, chart.ToString(), chart.ToSvg());

    public static void Write(TextWriter to, string folder, StationRecords station)
    {
        var assessments = station
            .Machines.Select(one =>
                ConditionAssessor.Assess(one.History, one.Limits, new AssessmentOptions(station.AsOf))
            )
            .ToList();
        var decisions = Decisions.Of(station, assessments);
        Directory.CreateDirectory(folder);
        foreach (var (name, chart) in Of(station, assessments, decisions, Decisions.Schedule(station, decisions)))
        {
            File.WriteAllText(Path.Combine(folder, name + ".svg"), chart.ToSvg());
            to.WriteLine($"wrote {name}.svg, {chart}");
        }
    }

    private static Chart Control(OilHistory history, DateTimeOffset asOf, ChartOptions? options)
    {
        history.TryFirstRecord(out var first);
        var series = history.SampleSeries(Measurands.WaterContent, first, asOf);
        var (_, values) = series.ToColumns();
        var sound = IndividualsChart.Of(values.AsSpan(0, SoundReadings));
        return ControlChart.Of(
            CusumChart.ForOneSigma(sound.Mean, sound.Sigma),
            series,
            $"{history.Machine.Id} {history.Machine.Name}",
            options
        );
    }
}
