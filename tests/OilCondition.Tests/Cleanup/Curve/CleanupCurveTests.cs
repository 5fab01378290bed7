using OilCondition.Cleanup;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Cleanup.Curve;

public class CleanupCurveTests
{
    private static DateTimeOffset[] Hours(params double[] hours) =>
        [.. hours.Select(hour => Invented.Start.AddHours(hour))];

    [Fact]
    public void An_exact_exponential_reaches_its_target_when_the_formula_says()
    {
        // t = ln((1000 − 50) / (100 − 50)) / 0.1 = 29.444 h, worked by hand.
        double[] hours = [0, 2, 4, 8, 12, 16, 20];
        var curve = CleanupCurve.Fit(Hours(hours), [.. hours.Select(t => 50 + 950 * Math.Exp(-0.1 * t))]);
        var time = curve.TimeTo(100).ShouldBeOfType<Arrival<DateTimeOffset>.Expected>();

        (time.Estimate - Invented.Start).TotalHours.ShouldBe(29.444, 0.01);
        curve.RatePerHour.ShouldBe(0.1, 1e-5);
        curve.Floor.ShouldBe(50, 0.05);
    }

    [Fact]
    public void Order_of_readings_changes_nothing()
    {
        double[] hours = [0, 2, 5, 9, 14, 20];
        double[] values = [810, 655, 470, 325, 221, 140];
        var one = CleanupCurve.Fit(Hours(hours), values);
        var other = CleanupCurve.Fit([.. Hours(hours).Reverse()], [.. values.Reverse()]);

        other.RatePerHour.ShouldBe(one.RatePerHour);
        other.ValueAt(Invented.Start.AddHours(30)).ShouldBe(one.ValueAt(Invented.Start.AddHours(30)));
    }

    [Fact]
    public void The_named_cases()
    {
        double[] hours = [0, 2, 4, 8, 12, 16, 24, 40];
        double[] values = [.. hours.Select((t, i) => 150 + 850 * Math.Exp(-0.3 * t) + (i % 2 == 0 ? 2 : -2))];
        var curve = CleanupCurve.Fit(Hours(hours), values);

        curve.TimeTo(1200).ShouldBeOfType<Arrival<DateTimeOffset>.Already>();
        curve.TimeTo(300).ShouldBeOfType<Arrival<DateTimeOffset>.Already>();
        curve.TimeTo(60).ShouldBeOfType<Arrival<DateTimeOffset>.Never>();
        curve.Floor.ShouldBe(150, 2);
        CleanupCurve.Fit(Hours(0, 1, 2), [3, 2, 1]).TimeTo(0.5).ShouldBeOfType<Arrival<DateTimeOffset>.NotDetermined>();
        CleanupCurve.Fit([], Array.Empty<double>()).TimeTo(0.5).ShouldBeOfType<Arrival<DateTimeOffset>.NotDetermined>();
    }

    [Fact]
    public void A_run_that_rises_past_its_target_is_not_done()
    {
        double[] hours = [0, 2, 4, 8, 12, 16];
        var curve = CleanupCurve.Fit(Hours(hours), [.. hours.Select(t => 200 - 140 * Math.Exp(-0.3 * t))]);

        curve.TimeTo(80).ShouldBeOfType<Arrival<DateTimeOffset>.Never>();
        curve.Floor.ShouldBe(200, 1);
        curve.TimeTo(300).ShouldBeOfType<Arrival<DateTimeOffset>.Already>();
    }

    [Fact]
    public void A_short_noisy_run_does_not_claim_what_it_cannot_know()
    {
        var curve = CleanupCurve.Fit(Hours(0, 1, 2, 3, 4, 5), [900, 860, 841, 790, 771, 735]);

        curve
            .TimeTo(100)
            .ShouldBeOfType<Arrival<DateTimeOffset>.NotBefore>()
            .Earliest.ShouldBeGreaterThan(Invented.Start.AddHours(5));
    }
}
