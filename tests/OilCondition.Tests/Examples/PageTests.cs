extern alias charts;

using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using charts::OilCondition.Charts;
using HarrowPoint;
using Microsoft.Data.Analysis;
using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.Contracts;
using OilCondition.DataFrames;
using OilCondition.Interactive;
using OilCondition.LabFiles;
using OilCondition.Limits;
using OilCondition.Planning;
using OilCondition.Prognosis;
using OilCondition.Reporting;
using OilCondition.Spreadsheets;
using OilCondition.Statistics;
using OilCondition.Tests.Architecture;
using OilCondition.Tests.LabFiles;
using OilCondition.Tests.Treatment;
using OilCondition.Text;
using OilCondition.Thermal;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Examples;

/// <summary>The first calls of the pages in docs are these, and they do what they say. (Cleanup and cleanliness have tests of their own.)</summary>
public partial class PageTests
{
    private static readonly StationRecords TheStation = StationRecords.Read(
        RepositoryFiles.PathOf("examples", "HarrowPoint", "Data")
    );

    private static readonly DateTimeOffset asOf = TheStation.AsOf;

    private static OilHistory History(string id) =>
        TheStation.Machines.Single(one => one.History.Machine.Id == id).History;

    /// <summary>Pages whose snippets other tests hold: <see cref="FirstCallTests"/> and those of the cleanup.</summary>
    private static readonly string[] HeldElsewhere =
    [
        "cleanup-curve.md",
        "control-charts.md",
        "net-framework.md",
        "start-analyst.md",
        "start-integrator.md",
        "start-vendor.md",
    ];

    public static TheoryData<string> PagesWithSnippets =>
        [
            .. Directory
                .EnumerateFiles(RepositoryFiles.PathOf("docs"), "*.md")
                .Where(file => File.ReadAllText(file).Contains(Fence, StringComparison.Ordinal))
                .Select(file => Path.GetFileName(file))
                .Except(HeldElsewhere)
                .Order(StringComparer.Ordinal),
        ];

    private const string Fence = "```csharp\n";

    [Theory]
    [MemberData(nameof(PagesWithSnippets))]
    public void The_snippets_of_a_page_are_compiled(string page)
    {
        var compiled = Bare(
            RepositoryFiles.Read("tests", "OilCondition.Tests", "Examples", "PageTests.cs")
                + RepositoryFiles.Read("tests", "OilCondition.Tests", "Examples", "PageTests.Cleanliness.cs")
        );
        var snippets = RepositoryFiles
            .Read("docs", page)
            .Split(Fence)
            .Skip(1)
            .Select(text => Bare(text.Split("```")[0]))
            .ToList();

        snippets.ShouldAllBe(snippet => compiled.Contains(snippet, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_model_and_every_reason_of_a_next_sample_has_its_row()
    {
        Missing<LifeModel>("prognosis.md", model => $"| `{model}`").ShouldBeEmpty();
        Missing<NextSampleReason>("prognosis.md", reason => $"| `{reason}` |").ShouldBeEmpty();
    }

    [Fact]
    public void Every_finding_limit_kind_outcome_and_treatment_has_its_row()
    {
        Missing<FindingCode>("advice.md", code => $"`{PlainText.Kebab(code)}`").ShouldBeEmpty();
        Missing<ProblemTopic>("advice.md", topic => $"| `{topic}` | `{PlainText.Kebab(topic)}").ShouldBeEmpty();
        Missing<OptionVerdict>("decisions.md", verdict => $"`{verdict}`").ShouldBeEmpty();
        Missing<LimitKind>("limits.md", kind => $"\"{PlainText.Kebab(kind)}\"").ShouldBeEmpty();
        Missing<TreatmentKind>("treatment.md", kind => $"`{kind}`").ShouldBeEmpty();
        Missing<Backtest.AlertOutcome>("backtest.md", outcome => $"`{outcome}`").ShouldBeEmpty();
        Missing<TreatmentKind>("station.md", kind => $"`{PlainText.Kebab(kind)}`").ShouldBeEmpty();
    }

    [Fact]
    public void Every_result_of_a_notebook_has_its_row()
    {
        var page = RepositoryFiles.Read("docs", "notebooks.md");
        ResultHtml.Types.ShouldAllBe(type => page.Contains($"| `{type.Name}` |", StringComparison.Ordinal));

        var history = History("HP-TGB1");
        var limits = TheStation.Machines.Single(one => one.History == history).Limits;
        var assessment = ConditionAssessor.Assess(history, limits, new AssessmentOptions(asOf));
        var html = ResultHtml.Of(assessment); // one div, well-formed, without scripts; names are escaped
        html.ShouldStartWith("<div><h4>HP-TGB1 ");
    }

    [Fact]
    public void Every_notebook_has_its_row()
    {
        var page = RepositoryFiles.Read("docs", "notebooks.md");
        Directory
            .EnumerateFiles(RepositoryFiles.PathOf("examples", "notebooks"), "*.ipynb")
            .Select(file => Path.GetFileName(file))
            .ShouldAllBe(file => page.Contains($"| `{file}` |", StringComparison.Ordinal));
    }

    private static IEnumerable<T> Missing<T>(string page, Func<T, string> word)
        where T : struct, Enum
    {
        var text = RepositoryFiles.Read("docs", page);
        return Enum.GetValues<T>().Where(member => !text.Contains(word(member), StringComparison.Ordinal));
    }

    [Fact]
    public void Decisions()
    {
        var station = TheStation;
        var assessments = station
            .Machines.Select(one => ConditionAssessor.Assess(one.History, one.Limits, new AssessmentOptions(asOf)))
            .ToList();
        foreach (var decision in TreatmentDecision.Of(assessments, station.Station))
        {
            Console.WriteLine(decision); // recommendation, options as a table, waiting, cautions
            foreach (var option in decision.Options)
            {
                Console.WriteLine($"{option.Id}: {option.Verdict}, {option.RuledOut}");
            }
        }

        var decisions = TreatmentDecision.Of(assessments, station.Station);
        decisions.Select(one => one.Choice?.Id).ShouldBe(["HP-VDU", "HP-KL1", "HP-VDU", "HP-OILC46", null]);
        decisions[^1].Target.StandstillBreaksStated.ShouldBeTrue("80 mg/kg, where the oil holds 76 at 10 °C");
    }

    [Fact]
    public void Station_files()
    {
        var data = RepositoryFiles.PathOf("examples", "HarrowPoint", "Data");
        var stationFile = Path.Combine(data, "station.json");
        var laboratory = LabFile.Read(Path.Combine(data, "lab-b-2025-2026.csv"), ColumnMap.Default);
        var limitSets = Directory
            .EnumerateFiles(Path.Combine(data, "limits"))
            .ToDictionary(
                file => Path.GetFileNameWithoutExtension(file),
                file => LimitSet.Parse(File.ReadAllText(file))
            );

        var station = Station.Parse(File.ReadAllText(stationFile), limitSets);
        foreach (var machine in station.Machines)
        {
            var history = machine.History(laboratory.SamplesOf(machine.Machine.Id), sensorReadings: []);
            var assessment = ConditionAssessor.Assess(history, machine.Limits!, new AssessmentOptions(asOf));
        }

        station.Machines.Count.ShouldBe(6);
    }

    [Fact]
    public void Laboratory_files()
    {
        var path = RepositoryFiles.PathOf("examples", "HarrowPoint", "Data", "lab-b-2025-2026.csv");
        var file = LabFile.Read(path, ColumnMap.Default);
        foreach (var problem in file.Problems.Concat(file.Doubts))
        {
            Console.Error.WriteLine(problem); // lab.csv:2, Water: '-12': water content is -12 mg/kg; allowed: 0 to 500000 mg/kg
        }

        Console.WriteLine(file.ColumnTable()); // what each column was read as, and who said in which unit
        var samples = file.SamplesOf("HP-TGB1");

        samples.Count.ShouldBeGreaterThan(5);
        var map = RepositoryFiles.Read("docs", "files.md").Split("```json\n")[1].Split("```")[0];
        ColumnMap.Parse(map).ConstantMachine.ShouldBe("HP-TGB1");
        var stored = new Dictionary<string, OilSample>();
        LargeFile(path, ColumnMap.Default, (_, sample) => stored.Add(sample.SampleNumber, sample))
            .ShouldBe(file.Problems);
        stored.Count.ShouldBe(file.MachineIds.Sum(id => file.SamplesOf(id).Count));
    }

    private static List<FileProblem> LargeFile(
        string path,
        ColumnMap map,
        Action<string, OilSample> store,
        IProgress<FileProgress>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        var problems = new List<FileProblem>();
        using var large = LabFile.Open(path, map);
        foreach (var row in large.Rows(progress, cancellationToken))
        {
            if (row.Sample is { } sample)
            {
                store(row.MachineId, sample);
            }

            problems.AddRange(row.Problems); // the first row is the header: what is to be said of columns
        }

        Console.WriteLine(large.Cells); // 40 cells: 12 keys, 20 readings, 5 blank, 1 rejected, 2 texts
        return problems;
    }

    [Fact]
    public async Task Frames()
    {
        var path = RepositoryFiles.PathOf("examples", "HarrowPoint", "Data", "lab-b-2025-2026.csv");
        using var file = LabFile.Open(path, ColumnMap.Default);
        var account = FileAccount.Of(file);
        var readings = account.Records.ToLongFrame(); // a row a reading, with its sheet and line
        var bad = account.Problems.Merge(
            readings,
            ["sheet", "line"],
            ["sheet", "line"],
            joinAlgorithm: JoinAlgorithm.Left
        );

        var machine = History("HP-TGB1").Machine;
        var records = OilRecords.FromLong(readings);
        foreach (var problem in records.Problems)
        {
            Console.Error.WriteLine(problem); // row 7, value: '-12': water content is -12 mg/kg; allowed: 0 to 500000 mg/kg
        }

        var again = OilHistory.Create(
            machine,
            records.SamplesOf(machine.Id),
            records.SensorReadingsOf(machine.Id),
            events: []
        );
        var frame = account.Records.ToWideFrame();
        frame.Columns.RenameColumn("atUtc", "Taken at");
        var taken = LabFile.Read([frame.ToTableSheet("samples")], "frame", ColumnMap.Default);

        bad.Rows.Count.ShouldBeGreaterThan(0);
        again.Samples.Count.ShouldBe(taken.SamplesOf(machine.Id).Count);
        var folder = Directory.CreateTempSubdirectory();
        var (parquetPath, arrowPath) = (
            Path.Combine(folder.FullName, "a.parquet"),
            Path.Combine(folder.FullName, "a.arrow")
        );
        await ParquetFrame.WriteAsync(readings, parquetPath);
        ArrowFrame.Write(readings, arrowPath);
        var fromParquet = await ParquetFrame.ReadAsync(parquetPath);
        var fromArrow = ArrowFrame.Read(arrowPath);

        folder.Delete(recursive: true);
        fromParquet.Rows.Count.ShouldBe(readings.Rows.Count);
        fromArrow.Rows.Count.ShouldBe(readings.Rows.Count);
    }

    [Fact]
    public void Frames_of_a_fleet_and_of_its_water()
    {
        var station = TheStation.Station;
        var curve = PublishedSaturationCurves.TransformerMineralOil;
        var history = History("HP-TGB1");
        var assessments = TheStation
            .Machines.Take(2)
            .Select(one => ConditionAssessor.Assess(one.History, one.Limits, new AssessmentOptions(asOf)))
            .ToList();
        var lives = FleetFrames.Lives(assessments).OrderBy("p10Utc"); // null comes last
        var options = FleetFrames.Options(TreatmentDecision.Of(assessments, station)); // with cautions: the plant decides

        var wide = OilRecords.Of(history).ToWideFrame(); // a row a sample or sensor reading
        var temperature = wide.ValuesOf(Measurands.OilTemperature);
        wide = wide.With(WaterColumns.Split(curve, wide.ValuesOf(Measurands.WaterContent), temperature))
            .With(WaterColumns.Sensed(curve, wide.ValuesOf(Measurands.RelativeSaturation), temperature));

        lives["p10Utc"][0].ShouldNotBeNull();
        options.Rows.Count.ShouldBeGreaterThan(0);
        wide["free [mg/kg]"].NullCount.ShouldBeLessThan(wide.Rows.Count);
    }

    [Fact]
    public void Reports()
    {
        var assessments = TheStation
            .Machines.Select(one => ConditionAssessor.Assess(one.History, one.Limits, new AssessmentOptions(asOf)))
            .ToList();
        var decisions = TreatmentDecision.Of(assessments, TheStation.Station);
        var options = new ReportOptions(
            note: "June round",
            decisions: decisions,
            picturesOf: assessment =>
                [
                    .. AssessmentCharts
                        .Of(assessment)
                        .Select(chart => new ReportPicture(chart.Title, chart.Description, chart.ToSvg())),
                ]
        );
        var html = ConditionReport.ToHtml("Oil condition, June", assessments, options);
        var markdown = ConditionReport.ToMarkdown("Oil condition, June", assessments, options);

        html.ShouldContain("data:image/svg+xml;base64,");
        markdown.ShouldContain("### Pictures");
        var german = ConditionReport.ToHtml(
            "Ölzustand, Juni",
            assessments,
            new ReportOptions(texts: ReportTexts.German)
        );
        var customary = ConditionReport.ToHtml(
            "Oil condition, June",
            assessments,
            new ReportOptions(texts: ReportTexts.English.In(Sentences.Units.UsCustomary))
        );
        var own = ReportTexts.Parse(
            """{ "language": "en-GB", "texts": { "first.no-action": "Nothing to do" } }""",
            Sentences.Parse("""{ "language": "en-GB", "texts": { "topic.water": "moisture" } }""")
        );

        german.ShouldContain("Nichts zu tun");
        customary.ShouldContain(" gal");
        ConditionReport
            .ToHtml("Oil condition, June", assessments, new ReportOptions(texts: own))
            .ShouldContain("Moisture: ");
    }

    [Fact]
    public void ChartsOfAReport()
    {
        var guideBearing = TheStation.Machines.Single(one => one.History.Machine.Id == "HP-TGB1");
        var assessment = ConditionAssessor.Assess(
            guideBearing.History,
            guideBearing.Limits,
            new AssessmentOptions(asOf)
        );
        var alert = assessment.Alerts[0];
        var page = new StringBuilder();

        // A report: every picture of one machine, with the text that says the same.
        foreach (var chart in AssessmentCharts.Of(assessment))
        {
            page.Append(
                $"<figure>{chart.ToSvg()}<figcaption>{WebUtility.HtmlEncode(chart.Description)}</figcaption></figure>"
            );
        }

        // A notebook: one measurand.
        var svg = TrendChart.Of(assessment, Measurands.WaterContent).ToSvg();

        // A work request: the pictures of one alert.
        var attachments = AssessmentCharts.Of(assessment, alert.Problem).Select(chart => chart.ToPng(scale: 2));

        page.ToString().ShouldContain(svg);
        attachments.Count().ShouldBe(1);
    }

    [Fact]
    public void ChartsInOtherWords()
    {
        var guideBearing = TheStation.Machines.Single(one => one.History.Machine.Id == "HP-TGB1");
        var assessment = ConditionAssessor.Assess(
            guideBearing.History,
            guideBearing.Limits,
            new AssessmentOptions(asOf)
        );

        // German, in °F, gallons, ppm and cSt.
        var german = new ChartOptions(ChartTexts.German.In(Sentences.Units.UsCustomary));

        // A plant's own words, its own name of a measurand, and its own dates.
        var sentences = Sentences.Parse(
            """{ "language": "en-US", "texts": { "measurand.acid-number": "TAN", "format.date": "MM/dd/yyyy" } }"""
        );
        var texts = ChartTexts.Parse(
            """{ "language": "en-US", "texts": { "limit.alarm-above": "stop above {limit}" } }""",
            sentences
        );
        var own = new ChartOptions(texts, utcOffset: TimeSpan.FromHours(1), width: 1200, height: 600);
        var chart = TrendChart.Of(assessment, Measurands.AcidNumber, own);

        chart.Title.ShouldEndWith("TAN");
        chart.Width.ShouldBe(1200);
        TrendChart.Of(assessment, Measurands.WaterContent, german).Scene.Y.Label.ShouldBe("Wassergehalt, ppm");
    }

    [Fact]
    public void Workbooks()
    {
        using var invented = new InventedWorkbook(
            ("North", InventedWorkbook.Texts(1, "Machine", "Date") + InventedWorkbook.Texts(2, "M1", "2026-03-14"))
        );
        var workbook = invented.Path;
        var book = Spreadsheet.ReadLabFile(workbook, ColumnMap.Default);
        var first = book.Columns[0].Sheet;

        first.ShouldBe("North");
    }

    [Fact]
    public void Water()
    {
        var curve = SaturationCurve.FromTwoPoints(
            "bearing oil", // invented oil
            Temperature.FromDegreesCelsius(20),
            MassFraction.FromPartsPerMillion(85),
            Temperature.FromDegreesCelsius(60),
            MassFraction.FromPartsPerMillion(310),
            Source.UserData("site laboratory")
        );
        var atStandstill = curve.Split(MassFraction.FromPartsPerMillion(180), Temperature.FromDegreesCelsius(12));

        atStandstill.HasFreeWater.ShouldBeTrue();
    }

    [Fact]
    public void Heat()
    {
        var oil = OilProperties
            .FromDensityAt15(Density.FromKilogramsPerCubicMeter(870))
            .At(Temperature.FromDegreesCelsius(40));
        var tank = HeatedTank.FromOil(Mass.FromKilograms(870), oil.HeatCapacity, 60);
        var heatUp = tank.TimeTo(
            Temperature.FromDegreesCelsius(60),
            Temperature.FromDegreesCelsius(20),
            Power.FromKilowatts(6),
            Temperature.FromDegreesCelsius(20)
        ); // expected 4.01 h; already there; or never

        heatUp.ToString().ShouldBe("expected 4.01 h"); // by hand: −(C/U) ln(1 − U ΔT/P), C = 870 kg · 1.95 kJ/(kg K)
    }

    [Fact]
    public void Viscosity()
    {
        var line = ViscosityTemperatureLine.FromTwoPoints(
            Temperature.FromDegreesCelsius(40),
            KinematicViscosity.FromCentistokes(46),
            Temperature.FromDegreesCelsius(100),
            KinematicViscosity.FromCentistokes(6.8)
        );
        var coldStart = line.ViscosityAt(Temperature.FromDegreesCelsius(-10)); // flagged: extrapolated
        var pump = new PumpViscosityLimit(VolumeFlow.FromLitersPerMinute(40), KinematicViscosity.FromCentistokes(1000));
        var coldest = pump.ColdestAtFullFlow(line); // about −6 °C
        var index = ViscosityIndex.FromViscosities(
            KinematicViscosity.FromCentistokes(73.3),
            KinematicViscosity.FromCentistokes(8.86)
        ); // 92
        var check = IsoViscosityGrade.FromNumber(46).Check(KinematicViscosity.FromCentistokes(52.4));

        coldStart.IsExtrapolated.ShouldBeTrue();
        coldest.Temperature.DegreesCelsius.ShouldBe(-6, 0.5);
        index.Reported.ShouldBe(92);
        check.IsInGrade.ShouldBeFalse();
    }

    [Fact]
    public void Exponential_fit()
    {
        double[] hours = [0, 2, 4, 8, 16, 24];
        double[] ppm = [1216, 1019, 805, 494, 246, 183];
        var analysis = ExponentialDecay.Analyze(hours, ppm);
        var fit = analysis.Fit; // Status, Start, Floor, Rate, standard errors
        var rate = analysis.Rate(0.9); // interval; an end that the readings do not give is null
        var ready = analysis.TimeTo(200, 0.95); // not before: the readings do not show that 200 is ever reached

        fit.Status.ShouldBe(ExponentialDecayStatus.Determined);
        rate.Contains(fit.Rate).ShouldBeTrue();
        ready.ShouldBeOfType<Arrival<double>.NotBefore>();
    }

    [Fact]
    public void Many_exponential_fits()
    {
        int[] offsets = [0, 6, 12];
        double[] times = [0, 2, 4, 8, 16, 24, 0, 2, 4, 8, 16, 24];
        double[] values = [1216, 1019, 805, 494, 246, 183, 608, 510, 402, 247, 123, 92];
        var fleet = ExponentialDecay.FitColumns(offsets, times, values, 0.9);
        var least = fleet[0].Rate.Lower; // fleet[0].Fit, .Start, .Floor, .Rate

        fleet.Length.ShouldBe(2);
        least!.Value.ShouldBeLessThan(fleet[0].Fit.Rate);
    }

    [Fact]
    public void Trends()
    {
        double[] months = [0, 3, 6, 9, 12, 15, 18, 21, 24, 27, 30, 33];
        double[] acid = [0.08, 0.09, 0.09, 0.10, 0.10, 0.12, 0.11, 0.13, 0.13, 0.15, 0.16, 0.16]; // mg KOH/g

        var trend = TrendAssessment.Of(months, acid);

        trend.Verdict.ShouldBe(TrendVerdict.Rising);
    }

    [Fact]
    public void Remaining_life()
    {
        var history = History("HP-CWP2");
        var series = history.SampleSeries(Measurands.AcidNumber, history.ChargeAt(asOf).Since, asOf);
        var outage = asOf.AddDays(200);
        var lastSampleAt = series.Points[^1].At;
        RemainingLife[] lives = [LifeForecast.Of(series, 0.38, LimitSide.Upper, asOf)];
        Prognosis(series, outage, lives, lastSampleAt).ShouldBe(("acid-number", true));
    }

    private static (string Leader, bool InTime) Prognosis(
        MeasurandSeries series,
        DateTimeOffset outage,
        RemainingLife[] lives,
        DateTimeOffset lastSampleAt
    )
    {
        var life = LifeForecast.Of(series, 0.3, LimitSide.Upper, asOf);
        if (life is RemainingLife.Crosses crosses)
        {
            var plan = crosses.P10; // one chance in ten to be late
            var beforeOutage = crosses.Crossing.ChanceBefore(outage);
        }

        var sampling = new SamplingPlan(Ratio.FromPercent(5), TimeSpan.FromDays(30), TimeSpan.FromDays(180));
        var next = NextSample.After(lives, lastSampleAt, sampling, asOf); // next.At, next.Reason
        var first = FirstCrossing.Of(lives, asOf); // first.Shares[0].Life.Series.Measurand leads

        return (first.Shares[0].Life.Series.Measurand.Id, next.At > lastSampleAt);
    }

    [Fact]
    public void Treatments()
    {
        var oil = Sump.Oil();
        var reservoir = Sump.Tank();
        var unit = Sump.Unit();
        var loop = new SideLoop(
            new PumpViscosityLimit(VolumeFlow.FromLitersPerMinute(20), KinematicViscosity.FromCentistokes(700))
        );
        var filter = new FilterRatings(new FilterBeta(20), new FilterBeta(100), new FilterBeta(1000));

        var job = new TreatmentJob(
            oil,
            reservoir,
            new Contamination(
                MassFraction.FromPartsPerMillion(1500),
                Ratio.FromPercent(20),
                ParticleLevels.FromCode(CleanlinessCode.Parse("20/18/15"))
            ),
            TreatmentTarget.DryAt(
                oil.SaturationCurve,
                Temperature.FromDegreesCelsius(15),
                Ratio.FromPercent(50),
                CleanlinessCode.Parse("17/15/12")
            )
        );

        var table = TreatmentComparison.Of(
            job,
            new SettlingAndDraining(Length.FromMeters(1), Length.FromMicrometers(100)),
            new WaterAbsorbingElements(loop, Ratio.FromPercent(50), Volume.FromLiters(0.5)),
            new VacuumDehydration(unit),
            new FineFiltration(loop, filter, 1)
        );
        Console.WriteLine(table); // a line a treatment; table.Rows has the figures

        var plan = PurificationPlan.Create(job, unit);
        if (plan.Arrival is Arrival<TimeSpan>.Expected reached)
        { /* reached.Estimate; otherwise plan.WhyNot says why not */
        }
        foreach (var state in plan.States)
        { /* state.TankTemperature, state.Water, state.Limit ... */
        }
        var band = plan.Band(new InputErrors(water: Ratio.FromPercent(5))); // hours and floor at 10, 50 and 90 of 100 cases
        var settings = PlanSensitivity.Of(job, unit); // the setting that is worth most on top

        table.Rows.Count.ShouldBe(4);
        plan.States.Count.ShouldBeGreaterThan(2);
        settings.Rows.ShouldNotBeEmpty();
        band.FloorP10.ShouldBeLessThan(band.FloorP90);
    }

    [Fact]
    public void Equipment()
    {
        var history = History("HP-TGB1");
        var job = Sump.Job(1500, 90, targetCode: "17/15/12");
        var unit = Sump.Unit(pascal: 2000);
        var plan = PurificationPlan.Create(job, unit);
        var loop = new SideLoop(
            new PumpViscosityLimit(VolumeFlow.FromLitersPerMinute(20), KinematicViscosity.FromCentistokes(700))
        );
        var filter = new FilterRatings(new FilterBeta(20), new FilterBeta(100), new FilterBeta(1000));
        var vacuumPump = VacuumPump.Dry(VolumeFlow.FromCubicMetersPerHour(40));
        var dischargePump = new DischargePump(
            VolumeFlow.FromLitersPerMinute(25),
            height: Length.FromMeters(1.2),
            suctionLength: Length.FromMeters(2),
            suctionDiameter: Length.FromMillimeters(40),
            headNeeded: Length.FromMeters(0.4),
            isVariableSpeed: true
        );

        var train = new TreatmentTrain(
            "drain, heat, dry, filter",
            TrainStage.For(
                new SettlingAndDraining(Length.FromMeters(1), Length.FromMicrometers(100)),
                TimeSpan.FromHours(12)
            ),
            TrainStage.Heating(
                new TankHeater(Power.FromKilowatts(9), Area.FromSquareMeters(0.6)),
                Temperature.FromDegreesCelsius(45)
            ),
            TrainStage.Until(new VacuumDehydration(unit)),
            TrainStage.Until(new FineFiltration(loop, filter, 1))
        );
        Console.WriteLine(TreatmentComparison.Of(job, train, new VacuumDehydration(unit)));
        foreach (var step in train.Run(job))
        {
            Console.WriteLine(step);
        } // what each stage hands on

        var check = EquipmentCheck.Of(plan, dischargePump, vacuumPump);
        if (!check.Passes)
        {
            Console.WriteLine(check);
        } // until when the chamber floods, what the vacuum pump does not bear
        foreach (var interlock in Interlock.Of(job, unit, vacuumPump, dischargePump))
        {
            Console.WriteLine(interlock);
        }

        var sizing = PlanSizing.Of(job, unit, within: TimeSpan.FromHours(48)); // flow, heater, vacuum, sweep air, the whole unit
        var cameIn = IngressEstimate.Of(history, oilDensity: Density.FromKilogramsPerCubicMeter(872), asOf); // litres a day between treatments

        train.Assess(job).MeetsTarget.ShouldBeTrue();
        sizing.Rows.Count.ShouldBe(5);
        cameIn.Count.ShouldBeGreaterThan(3);
    }

    /// <summary>Every outcome that a pump or an estimate can have is told on its page.</summary>
    [Fact]
    public void Every_outcome_of_equipment_has_its_word()
    {
        Missing<DischargePump.DrawOutcome>("equipment.md", one => $"`{one}`").ShouldBeEmpty();
        Missing<VacuumPump.LoadOutcome>("equipment.md", one => $"`{one}`").ShouldBeEmpty();
        Missing<VacuumPump.PumpKind>("equipment.md", one => $"`{one}`").ShouldBeEmpty();
        Missing<PlanSizing.SizingOutcome>("equipment.md", one => $"`{one}`").ShouldBeEmpty();
    }

    /// <summary>A single reading: above the target, and no more is known.</summary>
    [Fact]
    public void During_and_after_a_cleanup()
    {
        var plan = PurificationPlan.Create(Sump.Job(400, 100), Sump.Unit());
        var saturationCurve = plan.Job.Oil.SaturationCurve;
        var startedAt = asOf;
        var at = startedAt.AddHours(10);
        var warmFrom = Temperature.FromDegreesCelsius(45);
        var oilTemperature = Temperature.FromDegreesCelsius(60);
        var chamberPressure = Pressure.FromPascals(6510);
        var facts = new CleanupRunFacts(
            "HP-TGB1",
            new CleanupLoop(Volume.FromLiters(2000), VolumeFlow.FromLitersPerMinute(20)),
            Density.FromKilogramsPerCubicMeter(870),
            MassFraction.FromPartsPerMillion(400)
        );

        var dry = MassFraction.FromPartsPerMillion(60);
        var planned = PlannedPerformance.Of(plan);
        var options = CleanupMonitorOptions.WhileWarm(
            startedAt,
            new TreatmentTarget(dry),
            saturationCurve,
            TimeSpan.FromHours(4),
            warmFrom,
            planned: planned
        );
        var monitor = new CleanupMonitor(options);
        monitor.Take(CleanupReading.Sensor(at, Ratio.FromPercent(43.9), Temperature.FromDegreesCelsius(50)));

        var status = monitor.Status(); // Phase, Arrival, Curve, Contradiction, IsMet, ReboundAt
        var beside = status.BesidePlan;
        var why = StallDiagnosis.Of(status, RunConditions.Of(plan, oilTemperature, chamberPressure));
        var record = CleanupRecord.Of(status, facts, why); // ToText, ToJson

        status.Phase.ShouldBe(CleanupPhase.Falling);
        beside.ShouldBeNull();
        why.Verdict.ShouldBe(StallVerdict.NotDetermined);
        record.Verdict.ShouldBe(CleanupVerdict.NotReached);
    }

    [Fact]
    public void Series_and_limits()
    {
        var history = History("HP-TGB1");
        var charge = history.ChargeAt(asOf);
        var histories = TheStation.Machines.Select(one => one.History).ToList();

        var series = history.SampleSeries(Measurands.Iron, charge.Since, asOf); // suspect samples and other methods stand beside it
        var corrected = series.WithoutTopUps(history, asOf); // the slope is what the machine does to the oil
        var trend = SeriesTrend.Of(corrected); // trend.Assessment.Verdict, trend.Judged
        if (series.TryOnOilHours(out var byRunning))
        { /* the same over oil hours */
        }

        var limits = LimitSet.Parse(LimitSet.StarterJson(StarterEquipment.Turbine)); // save the text, edit it, then parse yours
        var evaluation = limits.Limits[^1].Evaluate(history.Machine.Oil, series); // State, Since, Pending, Figure, Reason
        var ofTheFleet = limits.WithFleet(histories); // percentiles become figures

        byRunning.ShouldBeNull();
        trend.Judged.Points.Count.ShouldBeGreaterThan(20);
        evaluation.Limit.Measurand.ShouldBe(Measurands.Iron);
        evaluation.State.ShouldBe(LimitState.Normal);
        ofTheFleet.Limits.Count.ShouldBe(limits.Limits.Count);
    }

    [Fact]
    public void Assessment_and_journal()
    {
        var (history, limits) = TheStation.Machines[0];
        var folder = Directory.CreateTempSubdirectory("page-tests-");
        try
        {
            var path = Path.Combine(folder.FullName, "journal.json");
            Journal(history, limits, path).ShouldBe(1);
            Journal(history, limits, path).ShouldBe(0);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void The_order_of_steps()
    {
        var folder = Directory.CreateTempSubdirectory("page-tests-");
        try
        {
            var path = Path.Combine(folder.FullName, "journal.json");
            var assessments = TheStation
                .Machines.Select(one => ConditionAssessor.Assess(one.History, one.Limits, new AssessmentOptions(asOf)))
                .ToList();
            string Deliver(JournalChange change) => $"WO for {change.Key}";

            var journal = AlertJournal.Load(path).Reconcile(assessments);
            journal.Save(path);
            foreach (var change in journal.Pending)
            {
                var workOrder = Deliver(change);
                journal = journal.Confirm(change.Id, workOrder);
                journal.Save(path);
            }

            AlertJournal.Load(path).Entries.ShouldAllBe(entry => entry.WorkOrder == $"WO for {entry.Key}");
            AlertJournal.Load(path).Pending.ShouldBeEmpty();
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static int Journal(OilHistory history, LimitSet limits, string path)
    {
        var raised = 0;
        string Deliver(JournalChange change)
        {
            raised += change.Kind == JournalChangeKind.Raised ? 1 : 0;
            return "";
        }

        var assessment = ConditionAssessor.Assess(history, limits, new AssessmentOptions(asOf));
        var journal = AlertJournal.Load(path).Reconcile(assessment);
        journal.Save(path);
        foreach (var change in journal.Pending)
        {
            var workOrder = Deliver(change);
            journal = journal.Confirm(change.Id, workOrder);
            journal.Save(path);
        }

        return raised;
    }

    [Fact]
    public void Documents_without_the_library()
    {
        var (records, limitSet) = TheStation.Machines[0];
        var assessment = ConditionAssessor.Assess(records, limitSet, new AssessmentOptions(asOf));

        var json = assessment.ToJson();
        var document = JsonSerializer.Deserialize(json, ContractJson.Default.AssessmentDocument)!; // OilCondition.Contracts, nothing else
        foreach (var finding in document.Problems.SelectMany(problem => problem.Findings))
        {
            Console.WriteLine($"{finding.Code} {finding.Side} {finding.Reading?.Value} {finding.Reading?.Unit}");
        }

        var history = OilHistory.Parse(records.ToJson()); // nothing is lost, the issues included
        var limits = LimitSet.Parse(limitSet.ToJson()); // every figure to its last digit

        document.Problems.Sum(problem => problem.Findings.Count).ShouldBe(assessment.Findings.Count);
        ConditionAssessor.Assess(history, limits, new AssessmentOptions(asOf)).ToJson().ShouldBe(json);
    }

    [Fact]
    public void Every_evidence_id_is_on_the_page_and_no_other()
    {
        var named = EvidenceIds()
            .Matches(SourceOf("src", "OilCondition"))
            .Select(match => match.Groups["id"].Value)
            .Concat(["chance-10-percent-by", "chance-50-percent-by", "chance-90-percent-by"])
            .Distinct();
        var listed = RepositoryFiles.Read("docs", "contract.md").Split("## Evidence ids")[1].Split("\n\n")[2];
        Words().Matches(listed).Select(word => word.Value).ShouldBe(named.Order(StringComparer.Ordinal));
    }

    [GeneratedRegex(
        """(EvidenceItem\s*\.(Number|Figure|Reading|Word|Date|Moment)|\bPpm|\bAssumed|\sAdd)\(\s*"(?<id>[a-z0-9-]+)"\s*,""",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex EvidenceIds();

    [GeneratedRegex("[a-z0-9-]+", RegexOptions.None, 1000)]
    private static partial Regex Words();

    private static string SourceOf(params string[] folder) =>
        string.Concat(
            Directory
                .EnumerateFiles(RepositoryFiles.PathOf(folder), "*.cs", SearchOption.AllDirectories)
                .Where(file => !file.Contains("/obj/") && !file.EndsWith("CleanupOptions.cs", StringComparison.Ordinal))
                .Select(File.ReadAllText)
        );

    [Fact]
    public void Backtests()
    {
        var histories = TheStation.Machines.Select(one => one.History).ToList();
        var limitsOf = TheStation.Machines.ToDictionary(one => one.History.Machine.Id, one => one.Limits);
        var (from, to) = (asOf.AddDays(-400), asOf);
        var limits = TheStation.Machines[0].Limits;
        var told = new Counted();

        Replay(histories, limits, from, to).DayCount.ShouldBe(6 * 14);
        Replay(histories, limitsOf, from, to, told).DayCount.ShouldBe(6 * 14);
        told.Count.ShouldBe(6 * 14);
    }

    private static Backtest Replay(
        IReadOnlyList<OilHistory> histories,
        LimitSet limits,
        DateTimeOffset from,
        DateTimeOffset to
    )
    {
        var backtest = Backtest.Of(histories, limits, new BacktestOptions(from, to));
        Console.WriteLine(backtest);
        foreach (var crossing in backtest.Crossings.Where(one => one.IsSilent))
        {
            Console.WriteLine(crossing); // a limit that was crossed and nobody was told
        }

        return backtest;
    }

    private static Backtest Replay(
        IReadOnlyList<OilHistory> histories,
        Dictionary<string, LimitSet> limitsOf,
        DateTimeOffset from,
        DateTimeOffset to,
        IProgress<Ratio> progress,
        CancellationToken cancellationToken = default
    )
    {
        var options = new BacktestOptions(
            from,
            to,
            step: TimeSpan.FromDays(30),
            grace: TimeSpan.FromDays(45),
            assess: asOf => new AssessmentOptions(asOf, planningHorizon: TimeSpan.FromDays(120))
        );
        var backtest = Backtest.Of(histories, machine => limitsOf[machine.Id], options, progress, cancellationToken);
        var total = backtest.Total;
        var nobodyWasTold = total.Silent.Share; // null when no limit was crossed
        var mayBe = total.Silent.Interval.Upper; // and what the few crossings leave open

        _ = (nobodyWasTold, mayBe);
        return backtest;
    }

    [Fact]
    public void Mobile_unit_by_the_decisions()
    {
        var station = TheStation.Station;
        var assessments = TheStation
            .Machines.Select(one =>
                ConditionAssessor.Assess(one.History, one.Limits, new AssessmentOptions(TheStation.AsOf))
            )
            .ToList();

        var work = UnitTasks.Of(TreatmentDecision.Of(assessments, station), station, "HP-VDU", place: "workshop");
        var outcome = UnitSchedule.Plan(work.Tasks, work.Unit, new SchedulingOptions(asOf));

        outcome.ByDueDate.ShouldNotBeNull();
        work.Unit.Name.ShouldBe("HP-VDU");
    }

    [Fact]
    public void Mobile_unit()
    {
        var travel = new TravelTimes([
            ("workshop", "hall", TimeSpan.FromHours(1)),
            ("hall", "dam", TimeSpan.FromHours(2)),
            ("workshop", "dam", TimeSpan.FromHours(2)),
        ]);
        var unit = new MobileUnit("VDU-1", "workshop", travel, crewHours: WorkWindow.Daily(asOf, asOf.AddHours(9), 60));
        UnitTask[] tasks =
        [
            new UnitTask(
                "HP-TGB1",
                "hall",
                asOf,
                due: asOf.AddDays(3),
                process: TimeSpan.FromHours(40),
                weight: 5,
                connect: TimeSpan.FromHours(2),
                heatUp: TimeSpan.FromHours(4),
                disconnect: TimeSpan.FromHours(1)
            ),
            new UnitTask(
                "HP-GOV2",
                "dam",
                asOf,
                due: asOf.AddDays(2),
                process: TimeSpan.FromHours(16),
                connect: TimeSpan.FromHours(2),
                disconnect: TimeSpan.FromHours(1),
                windows: [new WorkWindow(asOf.AddDays(1), asOf.AddDays(5))]
            ),
        ];
        var outcome = UnitSchedule.Plan(tasks, unit, new SchedulingOptions(asOf));
        if (outcome is ScheduleOutcome.Planned planned)
        {
            Console.WriteLine(planned); // next machine, proof, rules beside it, table
            Console.WriteLine(planned.Schedule.ToCalendar()); // a line a machine, six hours a letter
        }
        else if (outcome is ScheduleOutcome.DoesNotFit misfit)
        {
            Console.WriteLine(misfit); // which machine, by how many hours, and the nearest plan
        }

        outcome.ShouldBeOfType<ScheduleOutcome.Planned>().Schedule.Next!.Task.Id.ShouldBe("HP-TGB1");
        Missing<MisfitReason>("planning.md", reason => $"| `{reason}` |").ShouldBeEmpty();
    }

    private sealed class Counted : IProgress<Ratio>
    {
        public int Count { get; private set; }

        public void Report(Ratio value) => Count++;
    }

    /// <summary>Files of one folder by the names of the page.</summary>
    private sealed class FileIn(string folder)
    {
        public string ReadAllText(string name) => System.IO.File.ReadAllText(Path.Combine(folder, name));

        public void WriteAllText(string name, string text) =>
            System.IO.File.WriteAllText(Path.Combine(folder, name), text);
    }

    /// <summary>Code without remarks, blanks and line ends, and without the commas that only a layout needs.</summary>
    private static string Bare(string code) => Blank().Replace(Remark().Replace(code, ""), "");

    [GeneratedRegex(@"//[^\n]*|/\*.*?\*/", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Remark();

    [GeneratedRegex(@"\s+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Blank();
}
