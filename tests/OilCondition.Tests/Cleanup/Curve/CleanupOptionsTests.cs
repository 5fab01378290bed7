using OilCondition.Cleanup;
using OilCondition.Statistics;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Cleanup.Curve;

public class CleanupOptionsTests
{
    private static readonly double[] Clock = [0, 2, 4, 6, 8, 12, 16, 20];

    private static DateTimeOffset[] Moments => [.. Clock.Select(hour => Invented.Start.AddHours(hour))];

    [Fact]
    public void Readings_before_the_given_start_are_not_used_and_the_used_ones_are_stated()
    {
        // Three readings of heat-up at 600, then 50 + 550 exp(−0.2 (t − 5)), whose value at 6 h is 50 + 550 exp(−0.2) = 500.3019.
        double[] values = [.. Clock.Select(t => t < 5 ? 600 : 50 + 550 * Math.Exp(-0.2 * (t - 5)))];
        var curve = CleanupCurve.Fit(Moments, values, new CleanupOptions(startedAt: Invented.Start.AddHours(5)));

        curve.UsedReadings.ShouldBe([3, 4, 5, 6, 7]);
        curve.Count.ShouldBe(5);
        curve.Origin.ShouldBe(Invented.Start.AddHours(6));
        curve.RatePerHour.ShouldBe(0.2, 1e-5);
        curve.Start.ShouldBe(500.3019, 0.01);
        CleanupCurve
            .Fit(Moments, values, new CleanupOptions(detectSlowStart: false))
            .RatePerHour.ShouldNotBeInRange(0.18, 0.22);
    }

    [Fact]
    public void A_known_start_holds_at_the_given_moment()
    {
        double[] values = [.. Clock.Select(t => 50 + 550 * Math.Exp(-0.2 * (t - 5)))];
        var options = new CleanupOptions(startedAt: Invented.Start.AddHours(5), start: 600);
        var curve = CleanupCurve.Fit(Moments, values, options);

        curve.Origin.ShouldBe(Invented.Start.AddHours(5));
        curve.ValueAt(Invented.Start.AddHours(5)).ShouldBe(600, 1e-9);
        curve.RatePerHour.ShouldBe(0.2, 1e-5);
    }

    [Fact]
    public void Known_floor_and_rate_are_kept_and_need_fewer_readings()
    {
        DateTimeOffset[] two = [Invented.Start, Invented.Start.AddHours(5)];
        var options = new CleanupOptions(floor: 20, ratePerHour: 0.1);
        var curve = CleanupCurve.Fit(two, [420, 20 + 400 * Math.Exp(-0.5)], options);

        curve.Floor.ShouldBe(20);
        curve.RateIntervalPerHour().Outcome.ShouldBe(IntervalOutcome.Known);
        curve.Start.ShouldBe(420, 1e-6);
        CleanupCurve
            .Fit([Invented.Start], [420], options)
            .TimeTo(100)
            .ShouldBeOfType<Arrival<DateTimeOffset>.NotDetermined>();
        options.FewestReadings.ShouldBe(2);
    }

    [Fact]
    public void Intervals_hold_the_truth_and_name_a_missing_end()
    {
        double[] values = [.. Clock.Select((t, i) => 50 + 950 * Math.Exp(-0.2 * t) + (i % 2 == 0 ? 3 : -3))];
        var curve = CleanupCurve.Fit(Moments, values);

        curve.RateIntervalPerHour().Outcome.ShouldBe(IntervalOutcome.Bounded);
        curve.RateIntervalPerHour().Contains(0.2).ShouldBeTrue();
        curve.RateIntervalPerHour().Contains(0.25).ShouldBeFalse();
        curve.FloorInterval().Contains(50).ShouldBeTrue();
        curve.FloorInterval().Contains(90).ShouldBeFalse();
        // ln 2 / 0.2 = 3.4657 h
        curve.HalfLifeIntervalHours().Contains(3.4657).ShouldBeTrue();
        curve.IntervalAt(Invented.Start.AddHours(10)).Contains(50 + 950 * Math.Exp(-2)).ShouldBeTrue();

        double[] nearlyFlat = [900, 880, 905, 870, 890, 880, 860, 885];
        CleanupCurve.Fit(Moments, nearlyFlat).RateIntervalPerHour().Lower.ShouldBeNull();
    }

    [Fact]
    public void An_outlier_is_flagged_by_its_place_in_the_given_list()
    {
        DateTimeOffset[] moments = [.. Enumerable.Range(0, 14).Select(i => Invented.Start.AddHours(26 - 2 * i))];
        double[] values =
        [
            .. Enumerable
                .Range(0, 14)
                .Select(i => i == 9 ? 900 : 50 + 950 * Math.Exp(-0.2 * (26 - 2 * i)) + (i % 2 == 0 ? 2 : -2)),
        ];

        var curve = CleanupCurve.Fit(moments, values, new CleanupOptions(robust: true));
        curve.FlaggedReadings.ShouldBe([9]);
        curve.MoreFlagsPossible.ShouldBeFalse();
        values[4] = 700;
        var most = CleanupCurve.Fit(moments, values, new CleanupOptions(robust: true));
        most.FlaggedReadings.ShouldBe([9, 4]); // by time, which runs backwards
        most.MoreFlagsPossible.ShouldBeTrue();
        most.ToString().ShouldEndWith(" (12 readings, 2 flagged, as many as are looked for)");
    }

    [Fact]
    public void Nothing_left_to_fit_and_numbers_out_of_range_are_refused()
    {
        Should.Throw<ArgumentException>(() => new CleanupOptions(start: 1, floor: 0, ratePerHour: 1));
        Should.Throw<ArgumentOutOfRangeException>(() => new CleanupOptions(ratePerHour: 0));
        Should.Throw<ArgumentOutOfRangeException>(() => new CleanupOptions(start: double.NaN));
        Should.Throw<ArgumentOutOfRangeException>(() => new CleanupOptions(floor: -1));
        Should.Throw<ArgumentOutOfRangeException>(() => new CleanupOptions(floor: 1e13)).ParamName.ShouldBe("floor");
        Should
            .Throw<ArgumentOutOfRangeException>(() => new CleanupOptions(ratePerHour: 1e7))
            .ParamName.ShouldBe("ratePerHour");
        Should
            .Throw<ArgumentOutOfRangeException>(() => new CleanupOptions(freeWaterAbove: 0))
            .ParamName.ShouldBe("freeWaterAbove");
        Should
            .Throw<ArgumentOutOfRangeException>(() => CleanupCurve.Fit(Moments, [.. Clock], CleanupOptions.ForCounts))
            .ParamName.ShouldBe("readings");
        Should
            .Throw<ArgumentOutOfRangeException>(() => CleanupCurve.Fit(Moments, [.. Clock.Select(t => 1e13 - t)]))
            .ParamName.ShouldBe("readings");
    }
}
