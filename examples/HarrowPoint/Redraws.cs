using HarrowPoint.Generator;
using OilCondition;
using OilCondition.Prognosis;

namespace HarrowPoint;

/// <summary>The stories of the station with their scatter drawn anew: what is found by luck shows here.</summary>
public sealed class Redraws
{
    private readonly IReadOnlyList<(int Seed, IReadOnlyList<ConditionAssessment> Assessments)> stations;

    private Redraws(IReadOnlyList<(int, IReadOnlyList<ConditionAssessment>)> stations) => this.stations = stations;

    public int Count => stations.Count;

    /// <summary>Draws and assesses the whole station from each of so many seeds; files that do not depend on the seed come from the folder.</summary>
    public static Redraws Of(string folder, int firstSeed, int count) =>
        new([
            .. Enumerable
                .Range(firstSeed, count)
                .AsParallel()
                .AsOrdered()
                .Select(seed =>
                {
                    var files = StationGenerator.Generate(seed);
                    var station = StationRecords.Read(name =>
                        files.TryGetValue(name, out var text)
                            ? text.TrimStart('\uFEFF')
                            : File.ReadAllText(Path.Combine(folder, name))
                    );
                    IReadOnlyList<ConditionAssessment> assessments =
                    [
                        .. station.Machines.Select(one =>
                            ConditionAssessor.Assess(one.History, one.Limits, new AssessmentOptions(station.AsOf))
                        ),
                    ];
                    return (seed, assessments);
                }),
        ]);

    public IEnumerable<(int Seed, ConditionAssessment Assessment)> Of(string machine) =>
        stations.Select(one => (one.Seed, one.Assessments.Single(each => each.History.Machine.Id == machine)));

    /// <summary>The seeds in which a machine has no alert of this problem with this finding, of this measurand if one is named.</summary>
    public IReadOnlyList<int> Missed(string machine, string subject, FindingCode code, string measurand = "") =>
        [
            .. Of(machine)
                .Where(one =>
                    !one.Assessment.Alerts.Any(alert =>
                        alert.Problem.Subject == subject
                        && alert.Findings.Any(finding =>
                            finding.Code == code && (measurand.Length == 0 || finding.Measurand.Id == measurand)
                        )
                    )
                )
                .Select(one => one.Seed),
        ];

    /// <summary>Forecast chance of having crossed by the true date, one number for each redraw that has a forecast.</summary>
    public IReadOnlyList<double> ChancesAt(string machine, string measurand, DateTimeOffset truth) =>
        [
            .. Of(machine)
                .Select(one => one.Assessment.States.First(state => state.Measurand.Id == measurand).Lives)
                .SelectMany(lives => lives.OfType<RemainingLife.Forecast>().Take(1))
                .Select(life => life.Crossing.ChanceBefore(truth)),
        ];

    public void Write(TextWriter to, Truth truth)
    {
        to.WriteLine($"{Count} redraws of the scatter of Harrow Point, an INVENTED station.");
        to.WriteLine();
        to.WriteLine($"{"machine", -10}{"story", -44}{"found in", 10}");
        foreach (
            var (machine, subject, code, measurand) in new[]
            {
                ("HP-TGB1", "water", FindingCode.RemainingLifeShort, ""),
                ("HP-TGB1", "water", FindingCode.CleanupRebounding, ""),
                ("HP-GOV1", "dirt", FindingCode.LimitPassed, ""),
                ("HP-GOV1", "dirt", FindingCode.RemainingLifeShort, ""),
                ("HP-IGG1", "water", FindingCode.FreeWaterAtStandstill, ""),
                ("HP-CWP2", "oil-ageing", FindingCode.RemainingLifeShort, "acid-number"),
                ("HP-CWP2", "oil-ageing", FindingCode.RemainingLifeShort, "rpvot"),
                ("HP-DTG1", "water", FindingCode.FreeWaterAtStandstill, ""),
            }
        )
        {
            var story = $"{subject}: {code} {measurand}";
            to.WriteLine($"{machine, -10}{story, -44}{Count - Missed(machine, subject, code, measurand).Count, 10}");
        }

        var healthy = Of("HP-TGB2").Count(one => one.Assessment.Alerts.Count > 0);
        to.WriteLine($"{"HP-TGB2", -10}{"healthy: false alarms", -44}{healthy, 10}");
        to.WriteLine();
        to.WriteLine($"{"machine", -10}{"limit", -14}{"forecasts", 10}{"true date before P10", 22}{"after P90", 11}");
        foreach (
            var (machine, measurand, at) in new[]
            {
                ("HP-TGB1", "water-content", truth.WaterAlarmAt),
                ("HP-GOV1", "particles-4um", truth.GovernorAlarmAt),
                ("HP-CWP2", "acid-number", truth.PumpAcidAlarmAt),
                ("HP-CWP2", "rpvot", truth.PumpRpvotAlarmAt),
            }
        )
        {
            var chances = ChancesAt(machine, measurand, at);
            to.WriteLine(
                $"{machine, -10}{measurand, -14}{chances.Count, 10}{chances.Count(chance => chance < 0.1), 22}{chances.Count(chance => chance > 0.9), 11}"
            );
        }
    }
}
