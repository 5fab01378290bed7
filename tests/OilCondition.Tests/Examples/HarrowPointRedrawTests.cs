using HarrowPoint;
using HarrowPoint.Generator;
using OilCondition.Advice;
using OilCondition.Tests.Architecture;

namespace OilCondition.Tests.Examples;

/// <summary>The stories of the invented station with their scatter drawn anew: what is found by luck shows here.</summary>
public class HarrowPointRedrawTests
{
    private const int FirstSeed = 1000;
    private const int Redraws = 200;

    private static readonly string Data = RepositoryFiles.PathOf("examples", "HarrowPoint", "Data");

    private static readonly Lazy<IReadOnlyList<(int Seed, Station Station)>> Stations = new(() =>
        [
            .. Enumerable
                .Range(FirstSeed, Redraws)
                .AsParallel()
                .AsOrdered()
                .Select(seed =>
                {
                    var files = StationGenerator.Generate(seed);
                    return (
                        seed,
                        Station.Read(name =>
                            files.TryGetValue(name, out var text)
                                ? text.TrimStart('\uFEFF')
                                : File.ReadAllText(Path.Combine(Data, name))
                        )
                    );
                }),
        ]
    );

    [Fact]
    public void The_healthy_bearing_raises_no_more_false_alarms_than_stated()
    {
        var alarms = Keys("HP-TGB2");
        Console.WriteLine(
            string.Join("\n", alarms.SelectMany(one => one.Keys).GroupBy(k => k).Select(g => $"{g.Key} {g.Count()}"))
        );
        alarms
            .Count(one => one.Keys.Length > 0)
            .ShouldBeLessThanOrEqualTo(
                4,
                string.Join(
                    ", ",
                    alarms
                        .Where(one => one.Keys.Length > 0)
                        .Select(one => $"seed {one.Seed}: {string.Join(' ', one.Keys)}")
                )
            );
    }

    [Theory]
    [InlineData("HP-TGB1", "remaining-life-short/water")]
    [InlineData("HP-GOV1", "limit-passed/particles")]
    [InlineData("HP-IGG1", "free-water-at-standstill/water")]
    [InlineData("HP-CWP2", "remaining-life-short/acid-number")]
    [InlineData("HP-CWP2", "remaining-life-short/rpvot")]
    [InlineData("HP-DTG1", "free-water-at-standstill/water")]
    public void The_story_of_each_machine_is_found(string machine, string expected)
    {
        var found = Keys(machine);
        Console.WriteLine(
            $"{machine} {expected}: {found.Count(one => one.Keys.Any(key => key.EndsWith(expected, StringComparison.Ordinal)))}; all: "
                + string.Join(
                    "  ",
                    found.SelectMany(one => one.Keys).GroupBy(k => k).Select(g => $"{g.Key} {g.Count()}")
                )
        );
        found
            .Count(one => one.Keys.Any(key => key.EndsWith(expected, StringComparison.Ordinal)))
            .ShouldBeGreaterThan(190);
    }

    private static List<(int Seed, string[] Keys)> Keys(string machine) =>
        [
            .. Stations
                .Value.AsParallel()
                .AsOrdered()
                .Select(one =>
                {
                    var (history, limits) = one.Station.Machines.Single(pair => pair.History.Machine.Id == machine);
                    var assessment = ConditionAssessor.Assess(history, limits, new AssessmentOptions(one.Station.AsOf));
                    return (one.Seed, assessment.Alerts.Select(alert => alert.Key).ToArray());
                }),
        ];
}
