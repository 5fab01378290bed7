using FirstCalls;
using HarrowPoint;
using OilCondition.Tests.Architecture;

namespace OilCondition.Tests.Examples;

/// <summary>The README's first calls are the compiled ones, and they do what they say.</summary>
public class FirstCallTests
{
    private static readonly string Data = RepositoryFiles.PathOf("examples", "HarrowPoint", "Data");
    private static readonly StationRecords TheStation = StationRecords.Read(Data);

    [Theory]
    [InlineData("Integrator.cs")]
    [InlineData("Analyst.cs")]
    [InlineData("Vendor.cs")]
    public void The_readme_shows_the_compiled_snippet(string file)
    {
        var snippet = Snippet(file);

        snippet.Count.ShouldBeGreaterThan(3);
        RepositoryFiles.Read("README.md").ShouldContain(string.Join('\n', snippet), Case.Sensitive);
    }

    [Theory]
    [InlineData("start-integrator.md", "OwnMachine.cs", "Integrator.cs")]
    [InlineData("start-analyst.md", "OwnRecords.cs", "Analyst.cs")]
    [InlineData("start-vendor.md", "Vendor.cs")]
    public void A_start_page_shows_the_compiled_snippets_and_no_others(string page, params string[] files)
    {
        var code = RepositoryFiles
            .Read("docs", page)
            .Split("```csharp\n")
            .Skip(1)
            .Select(text => text.Split("\n```")[0]);
        code.ShouldBe(files.Select(file => string.Join('\n', Snippet(file)).TrimEnd()));
    }

    [Fact]
    public void The_start_pages_print_what_comes_back()
    {
        Shown("start-integrator.md").ShouldBe(Requests().Select(request => $"{request.Key}\n{request.Text}"));
        var machine = TheStation.Machines.Single(one => one.History.Machine.Id == "HP-TGB2");
        Shown("start-analyst.md").ShouldBe([Analyst.Run(machine.History, TheStation.AsOf)]);
        var assessments = TheStation.Machines.Select(one =>
            ConditionAssessor.Assess(one.History, one.Limits, new AssessmentOptions(TheStation.AsOf))
        );
        Shown("start-vendor.md").ShouldBe([string.Join('\n', assessments.Select(FirstLine))]);
    }

    private static IEnumerable<string> Shown(string page) =>
        RepositoryFiles.Read("docs", page).Split("```text\n").Skip(1).Select(text => text.Split("\n```")[0]);

    private static string FirstLine(ConditionAssessment assessment) => assessment.ToString().Split('\n')[0];

    private static List<WorkRequest> Requests()
    {
        var folder = Directory.CreateTempSubdirectory("first-calls-");
        try
        {
            var maintenance = new MaintenanceSystem();
            Integrate(Path.Combine(folder.FullName, "journal.json"), maintenance);
            return [.. maintenance.Requests.Values];
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void The_integrator_gets_work_requests_with_keys_and_no_second_one()
    {
        var folder = Directory.CreateTempSubdirectory("first-calls-");
        try
        {
            var maintenance = new MaintenanceSystem();
            var journal = Path.Combine(folder.FullName, "journal.json");
            Integrate(journal, maintenance);
            var requests = maintenance.Requests.Values.ToList();
            requests.Select(request => request.Key).ShouldContain("HP-CWP2/undated/oil-ageing");
            Integrate(journal, maintenance);
            maintenance.Requests.Values.ShouldBe(requests);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void A_machine_of_ones_own_has_limits_to_begin_with()
    {
        var folder = Directory.CreateTempSubdirectory("first-calls-");
        try
        {
            var limitFile = Path.Combine(folder.FullName, "limits.json");
            var machine = OwnMachine.Run(limitFile);
            var known = TheStation.Machines.Single(one => one.History.Machine.Id == machine.Id).History.Machine;

            machine.ToString().ShouldBe(known.ToString());
            LimitSet.Parse(File.ReadAllText(limitFile)).Limits.ShouldNotBeEmpty();
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void Records_of_ones_own_are_kept_as_json_and_read_back()
    {
        var machine = TheStation.Machines[0].History.Machine;
        var history = OwnRecords.Run(machine, TheStation.AsOf.AddYears(-1));
        history.ToString().ShouldBe($"{machine.Id}: 1 samples, 0 sensor readings, 2 events, 0 issues");
    }

    [Theory]
    [InlineData("src", "PACKAGE.md")]
    [InlineData("docs", "net-framework.md")]
    public void What_a_page_shows_for_a_plug_in_is_what_the_build_calls_under_Mono(params string[] page)
    {
        var called = RepositoryFiles
            .Read("tests", "Packages", "Framework", "Program.cs")
            .Split('\n')
            .SkipWhile(line => line.Trim() != "// snippet")
            .Skip(1)
            .TakeWhile(line => line.Trim() != "// end")
            .Select(line => line.Length > 12 ? line[12..] : line.Trim());

        RepositoryFiles.Read(page).ShouldContain("```csharp\n" + string.Join("\n", called) + "\n```");
    }

    [Fact]
    public void The_page_of_a_package_links_to_nothing_beside_it() =>
        RepositoryFiles.Read("src", "PACKAGE.md").ShouldNotMatch(@"\]\((?!https?:)");

    private static List<string> Snippet(string file) =>
        [
            .. RepositoryFiles
                .Read("examples", "FirstCalls", file)
                .Split('\n')
                .SkipWhile(line => line.Trim() != "// snippet")
                .Skip(1)
                .TakeWhile(line => line.Trim() != "// end")
                .Select(line => line.Length > 8 ? line[8..] : line.Trim()),
        ];

    private static void Integrate(string journal, MaintenanceSystem maintenance) =>
        Integrator.Run(
            OwnMachine.Run(journal + ".limits"), // as the page makes it
            Path.Combine(Data, "lab-b-2025-2026.csv"),
            Path.Combine(Data, "limits", "bearing.json"),
            journal,
            TheStation.AsOf,
            maintenance
        );

    [Fact]
    public void The_analyst_gets_a_slope_with_its_error() =>
        Analyst
            .Run(TheStation.Machines.Single(one => one.History.Machine.Id == "HP-TGB2").History, TheStation.AsOf)
            .ShouldMatch(@"^-?\d+\.\d\d ± \d+\.\d\d mg/kg per day, p = \d\.\d{3}; 1 readings left out$");

    [Fact]
    public void The_analysts_robust_trend_prints_both_answers() =>
        Analyst
            .RunRobust(TheStation.Machines.Single(one => one.History.Machine.Id == "HP-TGB2").History, TheStation.AsOf)
            .ShouldMatch(@"^.*\d.*; .*\d.*$");

    [Fact]
    public void The_analysts_columns_and_sensor_log_make_series() =>
        Analyst
            .RunColumns(
                TheStation.Machines.First(one => one.History.SensorReadings.Any()).History,
                TheStation.Machines.First(one => one.History.SensorReadings.Any()).History.SensorReadings[^1].At
            )
            .ShouldMatch(
                @"^acid number to 0\.4 mgKOH/g: 10 % by 20\d\d-\d\d-\d\d, .*; water content: .*\([1-9]\d*( readings)?\)$"
            );

    [Fact]
    public void The_page_on_control_charts_shows_the_compiled_snippet_and_a_steady_machine_its_chart()
    {
        var snippet = Snippet("SteadyMachine.cs");
        snippet.Count.ShouldBeGreaterThan(3);
        RepositoryFiles.Read("docs", "control-charts.md").ShouldContain(string.Join('\n', snippet), Case.Sensitive);

        var history = TheStation.Machines.Single(one => one.History.Machine.Id == "HP-TGB2").History;
        SteadyMachine
            .Run(history, Measurands.WaterContent, TheStation.AsOf.AddDays(-200), TheStation.AsOf)
            .ShouldMatch(@"^mean [\d.]+, limits -?[\d.]+ to [\d.]+; \d+ readings since, (no shift|shifted: .+), \d+$");
    }

    [Fact]
    public void The_vendor_gets_the_same_bytes_twice()
    {
        var fleet = TheStation.Machines.Select(one => one.History).ToList();
        var limits = TheStation.Machines[0].Limits;

        Vendor.Run(fleet, limits, TheStation.AsOf).ShouldBe(Vendor.Run(fleet, limits, TheStation.AsOf));
    }
}
