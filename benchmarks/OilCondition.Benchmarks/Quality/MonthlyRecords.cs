using OilCondition.Limits;
using UnitsNet;

namespace OilCondition.Benchmarks.Quality;

/// <summary>Readings a month apart as a user would hand them over.</summary>
public static class MonthlyRecords
{
    public const double MonthDays = 365.25 / 12;

    private static readonly DateTimeOffset Start = new(2021, 3, 1, 8, 0, 0, TimeSpan.Zero);

    /// <summary>A measurand of which the library knows nothing.</summary>
    public static Measurand Invented { get; } =
        new("invented", "invented measurand", "units", LimitSide.Upper, NaturalScale.Linear, -1e9, 1e9);

    public static Machine Machine { get; } = Of(new Oil("invented oil", new Dictionary<Measurand, Reading>()));

    public static Machine Of(Oil oil) =>
        new(
            "M1",
            "invented machine",
            oil,
            Volume.FromLiters(1000),
            Temperature.FromDegreesCelsius(60),
            Temperature.FromDegreesCelsius(20)
        );

    public static DateTimeOffset At(double month) => Start.AddDays(MonthDays * month);

    public static OilHistory History(double[] values) => History(Machine, [(Invented, values)]);

    public static OilHistory History(Machine machine, IReadOnlyList<(Measurand Measurand, double[] Values)> columns) =>
        OilHistory.Create(
            machine,
            Enumerable
                .Range(0, columns[0].Values.Length)
                .Select(i => new OilSample(
                    $"S{i}",
                    At(i),
                    columns.ToDictionary(one => one.Measurand, one => new Reading(one.Values[i]))
                )),
            [],
            []
        );

    public static MeasurandSeries Series(double[] values) =>
        History(values).SampleSeries(Invented, At(0), At(values.Length - 1));

    /// <summary>The invented measurand with an alarm figure and nothing else.</summary>
    public static LimitSet Alarm(double figure) =>
        new(
            "invented",
            [
                new Limit(
                    Invented,
                    LimitKind.Absolute,
                    new LimitBand(null, figure),
                    null,
                    Source.CommonPractice("invented")
                ),
            ]
        );

    public static ConditionAssessment Assess(OilHistory history, LimitSet limits, int month) =>
        ConditionAssessor.Assess(history.Until(At(month)), limits, new AssessmentOptions(At(month)));

    /// <summary>Days from a month's reading to the next sample; below 0 where it is due earlier.</summary>
    public static double DaysToNextSample(ConditionAssessment assessment, double month) =>
        (assessment.NextSample!.At - At(month)).TotalDays;

    public static bool HasLifeAlert(ConditionAssessment assessment) =>
        assessment.Findings.Any(finding => finding.Code == FindingCode.RemainingLifeShort);
}
