using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.Statistics;
using OilCondition.Tests.Architecture;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Cleanup;

/// <summary>The snippets of docs/cleanup-curve.md are these, and they do what they say.</summary>
public class CleanupPageTests
{
    private static readonly DateTimeOffset[] moments = Runs.Moments(Runs.Evenly(12, 11));
    private static readonly double[] ppm =
    [
        .. Runs.Evenly(12, 11).Select((t, i) => 60 + 740 * Math.Exp(-0.35 * t) + 3 * (i % 3 - 1)),
    ];
    private static readonly DateTimeOffset asOf = moments[11];

    [Fact]
    public void Following_a_run()
    {
        // snippet
        var curve = CleanupCurve.Fit(moments, ppm);
        var ready = curve.TimeTo(100); // a case of Arrival: reached, expected between two ends, not before, never
        var leftOut = curve.LeftOutReadings; // positions; LeftOutReasons says why
        // end

        ready.ShouldBeOfType<Arrival<DateTimeOffset>.Already>();
        leftOut.ShouldBeEmpty();
    }

    [Fact]
    public void Every_answer()
    {
        var warmAndFreeWaterGone = moments[2];

        // snippet
        var options = new CleanupOptions(startedAt: warmAndFreeWaterGone);
        var curve = CleanupCurve.Fit(moments, ppm, options);
        var rate = curve.RateIntervalPerHour(0.9); // rate.Outcome names a missing end
        var next = curve.BandAt(asOf, BandKind.NewReading); // where the next sample should lie
        var ready = curve.TimeTo(100);
        var spanned = curve.ObservedTimeConstants; // below about two an open end is the right answer
        // end

        rate.Contains(0.35).ShouldBeTrue();
        next.Contains(ppm[11]).ShouldBeTrue();
        spanned.ShouldBe(0.35 * 9, 0.5);
    }

    [Fact]
    public void Residuals_and_errors()
    {
        var curve = CleanupCurve.Fit(moments, ppm);

        // snippet
        var leftOver = curve.FittedReadings; // Position, At, Reading, Fitted, Residual, Standardised
        var errors = curve.Errors!; // Start, Floor, RatePerHour and their covariances; null without a curve
        var scatter = curve.ScatterAt(curve.Floor); // of one reading there, with curve.DegreesOfFreedom
        // end

        leftOver.Count.ShouldBe(12);
        errors.Floor.ShouldBeInRange(0.5, 5);
        scatter.ShouldBeInRange(1, 5);
    }

    [Fact]
    public void Loop_and_plan()
    {
        var curve = CleanupCurve.Fit(moments, ppm);

        // snippet
        var loop = new CleanupLoop(Volume.FromLiters(2000), VolumeFlow.FromLitersPerMinute(20));
        var planned = new PlannedPerformance(
            loop,
            Density.FromKilogramsPerCubicMeter(870),
            Ratio.FromPercent(60), // removal per pass, from the nameplate
            MassFraction.FromPartsPerMillion(20) // physical floor without ingress
        );
        var beside = ObservedAgainstPlanned.Of(curve, planned);
        var perPass = beside.RemovalPerPass; // Estimate, Lower, Upper
        var ingress = beside.WaterIngress; // g/h above the physical floor
        // end

        perPass.Estimate!.Value.DecimalFractions.ShouldBe(0.35 / 0.6, 0.03);
        ingress.Estimate!.Value.GramsPerHour.ShouldBe(0.35 * 40 * 1.74, 4);
        beside.RemovalAgreement.ShouldBe(PlanAgreement.Agrees);
    }

    [Fact]
    public void Codes()
    {
        var (at4PerMl, at6PerMl, at14PerMl) = (Counts(20_000, 600), Counts(5000, 150), Counts(400, 12));

        // snippet
        var codes = CodeCurve.Fit(moments, at4PerMl, at6PerMl, at14PerMl);
        var over = codes.CodesOver(moments[0], asOf, TimeSpan.FromHours(1)); // code, lowest and highest code
        var target = CleanlinessCode.Parse("17/15/12");
        var clean = codes.TimeTo(target); // a case of Arrival
        var last = codes.RulingSize(target); // the size that is last
        // end

        over.Count.ShouldBe(12);
        over[11].Code.ToString().ShouldBe("17/15/11");
        clean.ShouldBeOfType<Arrival<DateTimeOffset>.Already>();
        // ln(19400/700)/0.5 = 6.64 h at 4 µm, ln(4850/170)/0.5 = 6.70 h at 6 µm, by hand
        last.ShouldBe(CodeSize.At6);

        static double[] Counts(double start, double floor) =>
            [
                .. Runs.Evenly(12, 11)
                    .Select((t, i) => Runs.Exponential(t, start, floor, 0.5) * (1 + 0.02 * (i % 3 - 1))),
            ];
    }

    [Fact]
    public void Qualifiers_and_series()
    {
        var takenAt = Runs.Moments([0, 2, 4, 6, 8, 10]);
        var startedAt = takenAt[0];
        var history = Invented.History(
            Enumerable
                .Range(0, 6)
                .Select(i => Invented.Sample(i, i / 12.0, (Measurands.WaterContent, new Reading(ppm[i]))))
        );

        // snippet
        Reading[] readings = [new(380), new(210), new(120), new(70), new(44), new(20, Qualifier.LessThan)];
        var curve = CleanupCurve.Fit(takenAt, readings); // '<20' by its likelihood, '>' ends an initial phase
        var water = CleanupCurve.Fit(history.SampleSeries(Measurands.WaterContent, startedAt, asOf));
        // end

        curve.AboveLimitCount.ShouldBe(5);
        water.Count.ShouldBe(6);
    }

    [Fact]
    public void The_page_shows_these_snippets()
    {
        var page = RepositoryFiles.Read("docs", "cleanup-curve.md");
        var lines = RepositoryFiles.Read("tests", "OilCondition.Tests", "Cleanup", "CleanupPageTests.cs").Split('\n');
        var shown = 0;
        for (var i = 0; i < lines.Length; i++)
        {
            if (lines[i].Trim() != "// snippet")
            {
                continue;
            }

            var code = lines.Skip(i + 1).TakeWhile(line => line.Trim() != "// end").ToList();
            Squeezed(page).ShouldContain(Squeezed(string.Join('\n', code)), Case.Sensitive);
            shown++;
        }

        shown.ShouldBe(6);
        page.Split("```csharp").Length.ShouldBe(shown + 1);

        // The formatter lays comments and broken lines out anew: only what is written counts.
        static string Squeezed(string text) => string.Concat(text.Where(character => !char.IsWhiteSpace(character)));
    }
}
