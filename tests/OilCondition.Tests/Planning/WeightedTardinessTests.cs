using OilCondition.Planning;
using OilCondition.Tests.Architecture;
using static OilCondition.Tests.Planning.Plant;

namespace OilCondition.Tests.Planning;

/// <summary>Published instances of single-machine total weighted tardiness, without travel, windows and crew (tests/Reference/SOURCES.md).</summary>
public class WeightedTardinessTests
{
    public static TheoryData<string> Instances() =>
        [.. File.ReadLines(RepositoryFiles.PathOf("tests", "Reference", "weighted-tardiness.csv")).Skip(1)];

    /// <summary>The optimum lies between the stated bound and the plan, and the plan comes near it.</summary>
    [Theory]
    [MemberData(nameof(Instances))]
    public void A_published_optimum_is_between_bound_and_plan(string row)
    {
        var fields = row.Split(',');
        var optimum = double.Parse(fields[1], System.Globalization.CultureInfo.InvariantCulture);
        var (lengths, weights, dues) = (Numbers(fields[2]), Numbers(fields[3]), Numbers(fields[4]));
        var tasks = lengths.Select((length, i) => Task($"J{i:00}", length, dues[i], weights[i])).ToList();

        var planned = Planned(
            tasks,
            options: new SchedulingOptions(Start, TimeSpan.FromHours(1), effort: fields[0] == "wt40-3" ? 4 : 1)
        );

        planned.Schedule.WeightedLatenessHours.ShouldBeInRange(optimum, 1.01 * optimum, fields[0]);
        var bound = planned.Schedule.WeightedLatenessHours - planned.MostWeightedHoursFromBest;
        bound.ShouldBeInRange(0, optimum, fields[0]);

        // What the page shows is this plan.
        RepositoryFiles
            .Read("docs", "planning.md")
            .Split('\n')
            .Select(line => line.Split('|', StringSplitOptions.TrimEntries))
            .Single(cells => cells.Length > 4 && cells[1] == fields[0])[4]
            .ShouldBe(
                planned.Schedule.WeightedLatenessHours.ToString(System.Globalization.CultureInfo.InvariantCulture)
            );
    }

    private static int[] Numbers(string text) =>
        [.. text.Split(' ').Select(one => int.Parse(one, System.Globalization.CultureInfo.InvariantCulture))];
}
