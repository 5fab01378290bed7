using OilCondition;
using OilCondition.Charts;
using OilCondition.Cleanliness;
using OilCondition.ControlCharts;
using OilCondition.Planning;
using OilCondition.Water;
using UnitsNet;

namespace HarrowPoint;

/// <summary>One chart of each kind, of the invented station: the pictures of docs/charts.md.</summary>
public static class Pictures
{
    /// <summary>File names without ending, in the order of the page, each with its chart.</summary>
    public static IReadOnlyList<(string Name, Chart Chart)> Of(StationRecords station, ChartOptions? options = null)
    {
        var assessments = station
            .Machines.Select(one =>
                ConditionAssessor.Assess(one.History, one.Limits, new AssessmentOptions(station.AsOf))
            )
            .ToList();
        var decisions = Decisions.Of(station, assessments);
        List<(string, Chart)> charts =
        [
            .. assessments.SelectMany(one =>
                AssessmentCharts.Of(one, options).Select((chart, i) => ($"{one.History.Machine.Id}-{i}", chart))
            ),
            .. decisions.SelectMany(
                (one, i) =>
                    new[]
                    {
                        ($"hours-{i}", OptionsChart.OfHours(one, options)),
                        ($"cost-{i}", OptionsChart.OfCost(one, options)),
                    }
            ),
        ];
        if (Decisions.Schedule(station, decisions) is ScheduleOutcome.Planned planned)
        {
            charts.Add(("schedule", ScheduleChart.Of("HP-VDU", planned.Schedule, options)));
        }

        return charts;
    }

    public static void Write(string folder, StationRecords station)
    {
        Directory.CreateDirectory(folder);
        foreach (var (name, chart) in Of(station))
        {
            File.WriteAllText(Path.Combine(folder, name + ".svg"), chart.ToSvg());
            Console.WriteLine($"wrote {name}.svg: {chart.Title}");
        }
    }
}
