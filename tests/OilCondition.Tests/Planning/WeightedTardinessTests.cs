using OilCondition.Planning;
using OilCondition.Tests.Architecture;
using static OilCondition.Tests.Planning.Plant;

namespace OilCondition.Tests.Planning;

/// <summary>Published instances of single-machine total weighted tardiness, without travel, windows and crew (tests/Reference/SOURCES.md).</summary>
public class WeightedTardinessTests
{
    public static TheoryData<string> Instances() =>
        [.. File.ReadLines(RepositoryFiles.PathOf("tests", "Reference", "weighted-tardiness.csv")).Skip(1)];

    /// <summary>The plan costs what the optimum does, and the stated bound lies below it.</summary>
    [Theory]
    [MemberData(nameof(Instances))]
    public void A_published_optimum_is_reached_and_never_undercut(string row)
    {
        var fields = row.Split(',');
        var optimum = double.Parse(fields[1], System.Globalization.CultureInfo.InvariantCulture);
        var (lengths, weights, dues) = (Numbers(fields[2]), Numbers(fields[3]), Numbers(fields[4]));
        var tasks = lengths.Select((length, i) => Task($"J{i:00}", length, dues[i], weights[i])).ToList();

        var planned = Planned(tasks, options: new SchedulingOptions(Start, TimeSpan.FromHours(1), effort: 5));

        planned.Schedule.WeightedLatenessHours.ShouldBe(optimum, fields[0]);
        var bound = planned.Schedule.WeightedLatenessHours - planned.MostWeightedHoursFromBest;
        bound.ShouldBeInRange(0.5 * optimum, optimum, fields[0]);
    }

    private static int[] Numbers(string text) =>
        [.. text.Split(' ').Select(one => int.Parse(one, System.Globalization.CultureInfo.InvariantCulture))];
}
