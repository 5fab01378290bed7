extern alias charts;
using charts::OilCondition.Charts;

using HarrowPoint;
using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.ControlCharts;
using OilCondition.Limits;
using OilCondition.Planning;
using OilCondition.Tests.Architecture;
using OilCondition.Tests.Planning;
using OilCondition.Tests.Sampling;
using OilCondition.Tests.Treatment;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Charts;

/// <summary>Charts of every kind, of the invented station and of odd data.</summary>
internal static class AllCharts
{
    public const string Hostile = "pump <b>\"A\" & B</b> \u202Egnp.\u2066x\u2069\u0007]]> --> {0}";

    private static readonly StationRecords Station = StationRecords.Read(
        RepositoryFiles.PathOf("examples", "HarrowPoint", "Data")
    );

    private static readonly Lazy<IReadOnlyList<ConditionAssessment>> TheAssessments = new(() =>
        [
            .. Station.Machines.Select(one =>
                ConditionAssessor.Assess(one.History, one.Limits, new AssessmentOptions(Station.AsOf))
            ),
        ]
    );

    private static readonly Lazy<IReadOnlyList<TreatmentDecision>> TheDecisions = new(() =>
        Decisions.Of(Station, Assessments)
    );

    private static readonly Lazy<ScheduleOutcome> TheSchedule = new(() =>
        Decisions.Schedule(Station, TheDecisions.Value)
    );

    private static readonly Lazy<ConditionAssessment> FiveThousand = new(() =>
        Drawn.Assess(
            Measurands.WaterContent,
            Enumerable.Range(0, 5000).Select(i => (1.461 * i, new Reading(50 + i * 37 % 11))),
            [Drawn.Above(Measurands.WaterContent, 200, 500)]
        )
    );

    private static readonly string Long = string.Concat(Enumerable.Repeat("Wasserkraftmaschine ", 4));

    public static IReadOnlyList<ConditionAssessment> Assessments => TheAssessments.Value;

    public static IReadOnlyList<TreatmentDecision> Decided => TheDecisions.Value;

    /// <summary>The pictures of docs/charts.md.</summary>
    public static IReadOnlyList<(string Name, Chart Chart)> OfPage(ChartOptions? options = null) =>
        Pictures.Of(Station, Assessments, Decided, TheSchedule.Value, options);

    /// <summary>The charts of the invented station.</summary>
    public static IEnumerable<(string Name, Chart Chart)> OfStation(ChartOptions? options = null) =>
        Assessments
            .SelectMany(one =>
                AssessmentCharts.Of(one, options).Select((chart, i) => ($"{one.History.Machine.Id} {i}", chart))
            )
            .Concat(Decided.Select((one, i) => ($"hours {i}", OptionsChart.OfHours(one, options))))
            .Concat(Decided.Select((one, i) => ($"cost {i}", OptionsChart.OfCost(one, options))))
            .Concat(
                Assessments
                    .SelectMany(one => one.States)
                    .SelectMany(state => state.Lives)
                    .Select((life, i) => ($"life {i}", LifeChart.Of(life, options)))
            )
            .Concat(OfPage(options));

    /// <summary>Charts of data that is as odd as it comes.</summary>
    public static IEnumerable<(string Name, Chart Chart)> Odd(ChartOptions? options = null) =>
        OddTrends(options).Concat(OddOthers(options)).Select(one => ("odd " + one.Name, one.Chart));

    private static IEnumerable<(string Name, Chart Chart)> OddTrends(ChartOptions? options)
    {
        var acid = Measurands.AcidNumber;
        Limit[] acidLimits = [Drawn.Above(acid, 0.3, 0.4)];
        Chart Trend(
            Measurand measurand,
            IEnumerable<(double, Reading)> readings,
            IReadOnlyList<Limit> limits,
            double? now = null,
            Machine? machine = null,
            params OilEvent[] events
        ) => TrendChart.Of(Drawn.Assess(measurand, readings, limits, now, machine, events), measurand, options);

        yield return ("no readings", Trend(acid, [], acidLimits));
        yield return ("one reading", Trend(acid, [(0, new Reading(0.12))], acidLimits));
        yield return (
            "all censored",
            Trend(
                acid,
                Series(9, i => new Reading(0.05, i % 2 == 0 ? Qualifier.LessThan : Qualifier.GreaterThan)),
                acidLimits
            )
        );
        yield return ("all equal", Trend(acid, Series(9, _ => new Reading(0.1)), acidLimits));
        yield return ("all 0", Trend(acid, Series(9, _ => new Reading(0)), [Drawn.Above(acid, 0.3, null)]));
        yield return (
            "counts of 0",
            Trend(
                Measurands.Particles4,
                Series(9, i => new Reading(i % 3 == 0 ? 0 : 100 * i)),
                [Drawn.Above(Measurands.Particles4, 640, 1300)]
            )
        );
        yield return (
            "600 readings in an hour",
            Trend(
                Measurands.WaterContent,
                Enumerable.Range(0, 600).Select(i => (i / 14_400.0, new Reading(50 + i % 7))),
                [Drawn.Above(Measurands.WaterContent, 200, 500)]
            )
        );
        yield return ("5000 readings in 20 years", TrendChart.Of(FiveThousand.Value, Measurands.WaterContent, options));
        yield return (
            "limits far off",
            Trend(
                acid,
                Series(9, i => new Reading(0.1 + 0.0001 * i)),
                [Drawn.Above(acid, 40, 50), Drawn.Below(acid, 0, null)]
            )
        );
        yield return (
            "many limits at one place",
            Trend(
                acid,
                Series(9, i => new Reading(0.1 + 0.01 * (i % 3))),
                [.. Enumerable.Range(0, 8).Select(i => Drawn.Above(acid, 0.2 + 0.0001 * i, 0.3 + 0.0001 * i))]
            )
        );
        foreach (var (name, size) in new[] { ("huge", 1e11), ("small", 1e-9) })
        {
            var odd = new Measurand("odd", "odd " + name, "u", LimitSide.Upper, NaturalScale.Linear, 0, 1e12);
            yield return (
                name + " values",
                Trend(odd, Series(12, i => new Reading(size * (1 + 0.1 * i))), [Drawn.Above(odd, 3 * size, 5 * size)])
            );
            yield return (
                name + " values, hardly apart",
                Trend(odd, Series(12, i => new Reading(size * (1 + 1e-7 * i))), [Drawn.Above(odd, 3 * size, 5 * size)])
            );
        }

        yield return (
            "name of 80 characters",
            TrendChart.Of(Drawn.Rising(machine: Drawn.Machine("M-80", Long)), acid, options)
        );
        yield return (
            "one word of 200 characters",
            TrendChart.Of(Drawn.Rising(machine: Drawn.Machine("M-200", new string('W', 200))), acid, options)
        );
        yield return (
            "hostile names",
            TrendChart.Of(Drawn.Rising(machine: Drawn.Machine("M&<1>", Hostile)), acid, options)
        );
        yield return ("crossed already", TrendChart.Of(Drawn.Rising(alarm: 0.2), acid, options));
        yield return ("crosses soon", TrendChart.Of(Drawn.Rising(alarm: 0.24), acid, options));
        yield return ("crosses late", TrendChart.Of(Drawn.Rising(alarm: 1.5), acid, options));
        yield return ("never crosses", Trend(acid, Series(30, i => new Reading(0.1 + 0.004 * (i % 2))), acidLimits));
        yield return (
            "both sides",
            Trend(
                Measurands.Viscosity40,
                Series(20, i => new Reading(46 + 0.1 * i)),
                [Drawn.Above(Measurands.Viscosity40, 48.3, 50.6), Drawn.Below(Measurands.Viscosity40, 43.7, 41.4)]
            )
        );
        yield return (
            "many events",
            TrendChart.Of(
                Drawn.Rising(
                    events:
                    [
                        .. Enumerable
                            .Range(1, 40)
                            .Select(i => (OilEvent)new TopUp(Invented.Start.AddDays(9 * i), Volume.FromLiters(5))),
                        new OilChange(Invented.Start.AddDays(100)),
                        new OilChange(Invented.Start.AddDays(101)),
                        new TreatmentRun(
                            Invented.Start.AddDays(200),
                            Invented.Start.AddDays(203),
                            TreatmentKind.FineFiltration,
                            acid,
                            0.1
                        ),
                    ]
                ),
                acid,
                options
            )
        );
        yield return (
            "from after all readings",
            TrendChart.Of(Drawn.Rising(), acid, options, from: Invented.Start.AddDays(3000))
        );
        yield return ("trend alone", TrendChart.Of(Drawn.Rising().States[0].Trend, options));
        foreach (var count in new[] { 0, 1, 2, 40 })
        {
            yield return (
                $"trend alone of {count} readings",
                TrendChart.Of(
                    SeriesTrend.Of(
                        Values(
                            Measurands.Particles4,
                            [.. Enumerable.Range(0, count).Select(i => i % 9 == 0 ? 0 : Math.Exp(i / 4.0))]
                        )
                    ),
                    options
                )
            );
        }
    }

    private static IEnumerable<(string Name, Chart Chart)> OddOthers(ChartOptions? options)
    {
        var (warm, cold) = (Temperature.FromDegreesCelsius(60), Temperature.FromDegreesCelsius(20));
        yield return ("curve without water", SaturationChart.Of(Invented.Curve, warm, cold, options: options));
        yield return (
            "curve and a flood",
            SaturationChart.Of(Invented.Curve, warm, cold, MassFraction.FromPercent(30), options)
        );
        yield return (
            "curve at one temperature",
            SaturationChart.Of(Invented.Curve, warm, warm, MassFraction.FromPartsPerMillion(400), options)
        );
        yield return (
            "standstill warmer than running",
            SaturationChart.Of(Invented.Curve, cold, warm, MassFraction.FromPartsPerMillion(200), options)
        );
        yield return (
            "ends of the range",
            SaturationChart.Of(
                Invented.Curve,
                Temperature.FromDegreesCelsius(200),
                Temperature.FromDegreesCelsius(-60),
                MassFraction.FromPartsPerMillion(200),
                options
            )
        );
        yield return (
            "fitted curve",
            SaturationChart.Of(Fit(), warm, cold, MassFraction.FromPartsPerMillion(180), options)
        );
        yield return ("fitted curve alone", SaturationChart.Of(Fit(), options));
        yield return (
            "no curve",
            SaturationChart.Of(
                Drawn.Assess(
                    Measurands.AcidNumber,
                    [],
                    [Drawn.Above(Measurands.AcidNumber, 1, 2)],
                    machine: Drawn.Machine(oil: new Oil("oil", new Dictionary<Measurand, Reading>()))
                ),
                options
            )
        );
        yield return ("no cleanup", CleanupChart.Of(Drawn.Rising(), options));
        foreach (var count in new[] { 0, 1, 3, 60 })
        {
            yield return ($"cleanup of {count} readings", Cleanup(count, options));
        }

        foreach (var count in new[] { 0, 1, 5, 400 })
        {
            yield return ($"curve of {count} readings", CleanupChart.Of(Curve(count), options));
        }

        yield return ("cleanup to a code", CodeCleanup(options));
        yield return ("no counts", CleanlinessChart.Of(Drawn.Rising(), options));
        yield return (
            "counts of nothing",
            CleanlinessChart.Of("oil", new ParticleLevels(0, 0, 0), CleanlinessCode.Parse("16/14/11"), options)
        );
        yield return (
            "clean and dirty",
            CleanlinessChart.Of("oil", new ParticleLevels(2_000_000, 40, 0.01), null, options)
        );
        yield return (
            "code only",
            CleanlinessChart.Of(Hostile, CleanlinessCode.Parse("20/18/15"), CleanlinessCode.Parse("18/16/13"), options)
        );
        yield return (
            "code with signs",
            CleanlinessChart.Of("oil", CleanlinessCode.Parse("*/18/-"), CleanlinessCode.Parse("-/16/13"), options)
        );
        yield return (
            "scale numbers 0 and 28",
            CleanlinessChart.Of("oil", CleanlinessCode.Parse("28/20/0"), CleanlinessCode.Parse("0/0/0"), options)
        );

        double[] sound = [4, 5, 6, 5, 4, 6, 5, 5, 4, 6];
        var series = Values(Measurands.Iron, [.. sound, 9, 12, 14]);
        yield return ("individuals", ControlChart.Of(IndividualsChart.Of(sound), series, "M1", options));
        yield return ("ewma", ControlChart.Of(new EwmaChart(5, 0.8), series, "M1", options));
        yield return ("cusum", ControlChart.Of(CusumChart.ForOneSigma(5, 0.8), series, "M1", options));
        yield return (
            "control chart of nothing",
            ControlChart.Of(IndividualsChart.Of(sound), Values(Measurands.Iron, []), "M1", options)
        );
        yield return (
            "control chart of one",
            ControlChart.Of(new EwmaChart(5, 0.8), Values(Measurands.Iron, [5]), null, options)
        );
        yield return (
            "control chart of equal readings",
            ControlChart.Of(IndividualsChart.Of([5, 5, 5]), Values(Measurands.Iron, [5, 5, 5]), null, options)
        );
        yield return (
            "temperatures",
            ControlChart.Of(
                IndividualsChart.Of([40, 41, 42]),
                Values(Measurands.OilTemperature, [40, 45, 60]),
                null,
                options
            )
        );

        yield return ("nothing compared", OptionsChart.OfHours(TreatmentComparison.Of(Sump.Job(900, 150)), options));
        yield return ("treatments compared", OptionsChart.OfHours(Compared(), options));
        yield return (
            "many visits",
            ScheduleChart.Of(
                "VDU-1",
                Plant
                    .Planned([
                        .. Enumerable
                            .Range(0, 14)
                            .Select(i => Plant.Task($"machine {i} with a name", 5 + i, due: 20 * i, connect: 1)),
                    ])
                    .Schedule.Visits,
                options: options
            )
        );
        yield return (
            "one visit, far due",
            ScheduleChart.Of(
                Hostile,
                Plant.Planned([Plant.Task(Hostile, 5, due: 5000)]).Schedule.Visits,
                [Hostile],
                options
            )
        );
    }

    /// <summary>One that is sure, one that gets by in some of the cases, one that does not reach the target, and one of a hostile name.</summary>
    public static TreatmentComparison Compared() =>
        TreatmentComparison.Of(
            Sump.Job(900, 90),
            new VacuumDehydration(Sump.Unit()),
            new DrainAndRefill(
                Ratio.FromPercent(10),
                Sump.Ppm(50),
                new ParticleLevels(1000, 200, 20),
                VolumeFlow.FromLitersPerMinute(30)
            ),
            new SettlingAndDraining(Length.FromMeters(1), Length.FromMicrometers(5)),
            new TreatmentTrain(Hostile, TrainStage.Until(new VacuumDehydration(Sump.Unit())))
        );

    private static CleanupCurve Curve(int count) =>
        CleanupCurve.Fit(
            [.. Enumerable.Range(0, count).Select(i => Invented.Start.AddHours(i))],
            [.. Enumerable.Range(0, count).Select(i => 50 + 550 * Math.Exp(-i / 8.0) + i * 7 % 5)]
        );

    public static MeasurandSeries Values(Measurand measurand, double[] values) =>
        MeasurandSeries.FromColumns(measurand, [.. values.Select((_, i) => Invented.Start.AddDays(7 * i))], values);

    public static SaturationFit Fit()
    {
        SaturationMeasurement At(double celsius, double ppm) =>
            SaturationMeasurement.Saturated(
                Temperature.FromDegreesCelsius(celsius),
                MassFraction.FromPartsPerMillion(ppm)
            );
        SaturationFit.TryFit(
            "invented oil",
            [At(15, 88), At(25, 118), At(40, 220), At(60, 395), At(75, 640)],
            Drawn.AnySource,
            out var fit,
            out _
        );
        return fit.ShouldNotBeNull();
    }

    /// <summary>A sump of 60 °C that falls from 600 to 50 mg/kg with a time constant of eight hours; two titrations beside the sensor.</summary>
    public static Chart Cleanup(int count, ChartOptions? options = null)
    {
        var watched = CleanupMonitorOptions.WhileWarm(
            Invented.Start,
            new TreatmentTarget(MassFraction.FromPartsPerMillion(100)),
            Invented.Curve,
            TimeSpan.FromHours(4),
            Temperature.FromDegreesCelsius(45)
        );
        double Ppm(double hours) => 50 + 550 * Math.Exp(-hours / 8) + (hours % 1 > 0.4 ? 3 : -3);
        List<CleanupReading> readings =
        [
            .. Enumerable
                .Range(0, count)
                .Select(i =>
                    CleanupReading.Sensor(
                        Invented.Start.AddHours(i / 2.0),
                        Ratio.FromDecimalFractions(Math.Min(1, Ppm(i / 2.0) / 400)),
                        Temperature.FromDegreesCelsius(60)
                    )
                ),
            .. count < 20
                ? []
                : new[]
                {
                    CleanupReading.Titration(Invented.Start.AddHours(1), MassFraction.FromPartsPerMillion(530)),
                    CleanupReading.Titration(Invented.Start.AddHours(9), MassFraction.FromPartsPerMillion(226)),
                },
        ];
        return CleanupChart.Of("M1", CleanupMonitor.Of(watched, readings).Status(), readings, options);
    }

    /// <summary>The same sump that is cold for its first five hours, in which little happens.</summary>
    public static Chart WarmingCleanup()
    {
        var watched = CleanupMonitorOptions.WhileWarm(
            Invented.Start,
            new TreatmentTarget(MassFraction.FromPartsPerMillion(60)),
            Invented.Curve,
            TimeSpan.FromHours(4),
            Temperature.FromDegreesCelsius(45)
        );
        List<CleanupReading> readings =
        [
            .. Enumerable
                .Range(0, 40)
                .Select(i =>
                {
                    var (hours, celsius) = (i / 2.0, Math.Min(60, 20 + 8 * i / 2.0));
                    var ppm = 20 + 70 * Math.Exp(-Math.Max(0, hours - 5) / 8) + (i % 2 - 0.5);
                    var held = Invented
                        .Curve.SaturationAt(Temperature.FromDegreesCelsius(celsius))
                        .Content.PartsPerMillion;
                    return CleanupReading.Sensor(
                        Invented.Start.AddHours(hours),
                        Ratio.FromDecimalFractions(ppm / held),
                        Temperature.FromDegreesCelsius(celsius)
                    );
                }),
        ];
        return CleanupChart.Of("M1", CleanupMonitor.Of(watched, readings).Status(), readings);
    }

    private static Chart CodeCleanup(ChartOptions? options)
    {
        var (watched, readings) = CodeCleanup("16/14/11", 9000, 2500, 300);
        return CleanupChart.Of("M1", CleanupMonitor.Of(watched, readings).Status(), readings, options);
    }

    /// <summary>Counts that fall by a time constant of eight hours towards a code, watched while it is warm.</summary>
    public static (CleanupMonitorOptions Watched, List<CleanupReading> Readings) CodeCleanup(
        string code,
        double at4,
        double at6,
        double at14
    )
    {
        var watched = CleanupMonitorOptions.WhileWarm(
            Invented.Start,
            new TreatmentTarget(code: CleanlinessCode.Parse(code)),
            Invented.Curve,
            TimeSpan.FromHours(4),
            Temperature.FromDegreesCelsius(45)
        );
        var falls = Enumerable.Range(0, 12).Select(i => (At: Invented.Start.AddHours(2 * i), Left: Math.Exp(-i / 4.0)));
        return (
            watched,
            [
                .. falls.Select(one =>
                    CleanupReading.OfParticles(
                        one.At,
                        new ParticleLevels(at4 * one.Left, at6 * one.Left, at14 * one.Left)
                    )
                ),
            ]
        );
    }

    private static IEnumerable<(double, Reading)> Series(int count, Func<int, Reading> reading) =>
        Enumerable.Range(0, count).Select(i => (30.0 * i, reading(i)));
}
