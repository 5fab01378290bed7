using OilCondition.Cleanup;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Cleanup;

/// <summary>
/// Every public result prints itself, in invariant culture and with units: the texts are written by hand. The last reading of the run, at 30 h, is
/// 60 + 220 exp(−6) − 0.3 = 60.2 mg/kg.
/// </summary>
public class PrintedTests
{
    private static readonly CleanupStatus Stalled = CleanupMonitor
        .Of(LiveRuns.Warm(targetPpm: 50), LiveRuns.WholeRun())
        .Status();

    private static readonly CleanupStatus Met = CleanupMonitor.Of(LiveRuns.Warm(), LiveRuns.WholeRun()).Status();

    private static readonly CleanupRunFacts Facts = new(
        "HP-TGB1",
        LiveRuns.Loop,
        LiveRuns.Oil870,
        LiveRuns.Ppm(900),
        condensate: Volume.FromLiters(1.4)
    );

    private static readonly RunConditions Conditions = new(
        LiveRuns.Celsius(50),
        LiveRuns.Celsius(60),
        LiveRuns.Ppm(31),
        LiveRuns.Ppm(25)
    );

    public static TheoryData<string, string> Texts =>
        new()
        {
            { nameof(CleanupLoop), "2000 L at 1200 L/h, 0.6 turnovers per h" },
            { nameof(CleanupOptions), "two component scatter, from 2025-01-06 08:00, floor 20" },
            { nameof(CleanupCurve), "falls at 0.3 per h to 60 (41 readings, 20 of an initial phase not used)" },
            { "no curve", "too few readings (0 readings)" },
            { nameof(CodeCurve), "6 µm(c): too few readings (0 readings); 14 µm(c): too few readings (0 readings)" },
            { nameof(PlannedPerformance), "70 % removed per pass, floor 20 mg/kg, 50 g/h coming in, level 88.4 mg/kg" },
            { nameof(CleanupMonitor), "water content 100 mg/kg for 4 h, from 45 °C on; 0 readings kept" },
            { nameof(CleanupReading), "2025-01-06 09:00: 43.9 % by sensor, 50 °C" },
            { "titration", "2025-01-06 09:00: 115 by sample" },
            { nameof(CleanupStatus), "at target, 60.2 mg/kg: reached 2025-01-07 04:00" },
            { "stalled status", "stalled, 60.2 mg/kg: never as it runs: water content stays above its target" },
            { nameof(CleanupPart), "water content 100 mg/kg: reached 2025-01-07 04:00" },
            { nameof(CleanupRecord), "HP-TGB1: target met and held, 30 h, 18 turnovers" },
            {
                nameof(CleanupRunFacts),
                "HP-TGB1: 2000 L at 1200 L/h, 0.6 turnovers per h, 900 mg/kg before, 1.4 L collected"
            },
            { nameof(RunConditions), "oil at 50 °C, floor 31 mg/kg; planned 60 °C, floor 25 mg/kg" },
            { "no figure", "not determined" },
        };

    [Theory]
    [MemberData(nameof(Texts))]
    public void Results_print_themselves(string what, string text) => Of(what).ToString().ShouldBe(text);

    /// <summary>Figures of a fit: by their beginning, since the last figure of an interval is the fit's.</summary>
    [Fact]
    public void Comparison_and_diagnosis_print_one_line()
    {
        var beside = ObservedAgainstPlanned.Of(LiveRuns.Curve(0.7, 20, 50), LiveRuns.Planned(gramPerHour: 50));
        beside.ToString().ShouldStartWith("removal per pass 70 % (");
        beside.ToString().ShouldContain(", planned 70 %: agrees; water coming in 50");
        beside.ToString().ShouldEndWith("planned 88.4 mg/kg: agrees");

        var diagnosis = StallDiagnosis.Of(Stalled.Curve, LiveRuns.Ppm(50), LiveRuns.Planned(0.5), Conditions);
        diagnosis.ToString().ShouldStartWith("Stalled: it levels off above the target. Likeliest: ");
        diagnosis.ToString().ShouldNotContain("\n");
        diagnosis.Causes[0].ToString().ShouldContain(" % (observed level 60 mg/kg, ");
    }

    private static object Of(string what) =>
        what switch
        {
            nameof(CleanupLoop) => LiveRuns.Loop,
            nameof(CleanupOptions) => new CleanupOptions(startedAt: Invented.Start, floor: 20),
            nameof(CleanupCurve) => Met.Curve,
            "no curve" => CleanupCurve.Fit([], Array.Empty<double>()),
            nameof(CodeCurve) => new CodeCurve(
                null,
                CleanupCurve.Fit([], Array.Empty<double>()),
                CleanupCurve.Fit([], Array.Empty<double>())
            ),
            nameof(PlannedPerformance) => LiveRuns.Planned(gramPerHour: 50),
            nameof(CleanupMonitor) => new CleanupMonitor(LiveRuns.Warm()),
            nameof(CleanupReading) => CleanupReading.Sensor(Runs.At(1), Ratio.FromPercent(43.9), LiveRuns.Celsius(50)),
            "titration" => CleanupReading.Titration(Runs.At(1), LiveRuns.Ppm(115)),
            nameof(CleanupStatus) => Met,
            "stalled status" => Stalled,
            nameof(CleanupPart) => Met.Parts[0],
            nameof(CleanupRecord) => CleanupRecord.Of(Met, Facts),
            nameof(CleanupRunFacts) => Facts,
            nameof(RunConditions) => Conditions,
            _ => ObservedAgainstPlanned
                .Of(CleanupCurve.Fit([], Array.Empty<double>()), LiveRuns.Planned())
                .RemovalPerPass,
        };
}
