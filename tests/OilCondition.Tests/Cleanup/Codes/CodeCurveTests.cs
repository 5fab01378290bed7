using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.Statistics;

namespace OilCondition.Tests.Cleanup.Codes;

public class CodeCurveTests
{
    /// <summary>10 000/2500/320 per mL down to 400/80/5 at 0.6, 0.8 and 1.0 per hour, scatter in proportion.</summary>
    private static CodeCurve Codes(double scatter = 0, int seed = 1, double span = 6)
    {
        var random = new Random(seed);
        var hours = Runs.Evenly(12, span);
        double[] Counts(double start, double floor, double rate) =>
            [.. hours.Select(t => Runs.Exponential(t, start, floor, rate) * Math.Exp(scatter * Runs.Normal(random)))];
        return CodeCurve.Fit(Runs.Moments(hours), Counts(10_000, 400, 0.6), Counts(2500, 80, 0.8), Counts(320, 5, 1.0));
    }

    [Fact]
    public void Codes_over_time_are_those_of_the_counts()
    {
        // By ISO 4406: 10 000 is 20, 2500 is 18, 320 is 15, each the upper limit, inclusive. At 2 h: 3291, 568.6, 47.6 → 19/16/13.
        Codes().TryCodeAt(Runs.At(2), 0.9, out var point).ShouldBeTrue();
        point!.Code.ToString().ShouldBe("19/16/13");
        point.Lowest.ShouldBe(point.Code);
        point.Highest.ShouldBe(point.Code);
        point.IsExtrapolated.ShouldBeFalse();
        // The floors: 400 is 16, 80 is 13, 5 is 9; just above them after a long time 16/14/10.
        var over = Codes().CodesOver(Runs.At(0.01), Runs.At(60.01), TimeSpan.FromHours(6));
        over.Count.ShouldBe(11);
        over[0].Code.ToString().ShouldBe("20/18/15");
        over[1].IsExtrapolated.ShouldBeTrue();
        over[5].At.ShouldBe(Runs.At(30.01), TimeSpan.FromMilliseconds(1));
        over[5].Code.At4.Number.ShouldBe(16);
    }

    [Fact]
    public void The_size_that_is_last_rules_the_time_to_a_code()
    {
        // 17/15/12 is 1300, 320, 40 per mL: ln(9600/900)/0.6 = 3.945 h, ln(2420/240)/0.8 = 2.889 h, ln(315/35)/1 = 2.197 h. By hand.
        var codes = Codes();
        var target = CleanlinessCode.Parse("17/15/12");
        codes.RulingSize(target).ShouldBe(CodeSize.At4);
        var passed = codes.TimeTo(target).ShouldBeOfType<Arrival<DateTimeOffset>.Already>();
        (passed.At - Runs.At(0)).TotalHours.ShouldBe(3.945, 1e-3);
        codes.TryCurve(CodeSize.At6, out var six).ShouldBeTrue();
        (six!.TimeTo(320).Estimate() - Runs.At(0)).TotalHours.ShouldBe(2.889, 1e-3);

        // -/13/11 asks nothing at 4 µm and 80 per mL, the very floor, at 6 µm.
        var never = CleanlinessCode.Parse("-/12/11");
        codes = Codes(0.02);
        codes.TimeTo(never).ShouldBeOfType<Arrival<DateTimeOffset>.Never>();
        codes.RulingSize(never).ShouldBe(CodeSize.At6);
        codes.TryCurve(CodeSize.At6, out six).ShouldBeTrue();
        six!.Floor.ShouldBe(80, 8);
    }

    /// <summary>16/13/10 and 17/14/11 are 640/80/10 and 1300/160/20 per mL (ISO 4406).</summary>
    [Fact]
    public void The_whole_has_the_latest_end_and_an_early_end_that_shares_the_uncertainty()
    {
        var codes = Codes(0.06, 4, 3.8);
        var whole = codes.TimeTo(CleanlinessCode.Parse("16/13/10"), 0.9);
        whole.ShouldBeOfType<Arrival<DateTimeOffset>.NotBefore>().Earliest.ShouldBeGreaterThan(Runs.At(3));

        var near = CleanlinessCode.Parse("17/14/11");
        var expected = codes.TimeTo(near, 0.9).ShouldBeOfType<Arrival<DateTimeOffset>.Expected>();
        Arrival<DateTimeOffset>.Expected Alone(CodeSize size, double limit) =>
            codes.TryCurve(size, out var one)
                ? one.TimeTo(limit, 0.9).ShouldBeOfType<Arrival<DateTimeOffset>.Expected>()
                : throw new KeyNotFoundException();
        var (four, six) = (Alone(CodeSize.At4, 1300), Alone(CodeSize.At6, 160));
        codes.RulingSize(near, 0.9).ShouldBe(CodeSize.At6);
        six.Estimate.ShouldBeGreaterThan(four.Estimate);
        four.Latest.ShouldBeGreaterThan(six.Latest);
        expected.Latest.ShouldBe(four.Latest);
        expected.Estimate.ShouldBe(six.Estimate);
        expected.Earliest.ShouldBeLessThan(six.Earliest);

        // 5 % at the early end, a third of it for each size: the early end of two sides at 1 − 2 · 0.05/3.
        codes.TryCurve(CodeSize.At6, out var curve).ShouldBeTrue();
        expected.Earliest.ShouldBe(
            curve!.TimeTo(160, 1 - 0.1 / 3).ShouldBeOfType<Arrival<DateTimeOffset>.Expected>().Earliest,
            TimeSpan.FromSeconds(1)
        );
    }

    /// <summary>Target 17/15/11 is last reached at 4 µm after 3.945 h, at 14 µm after ln(315/15) = 3.045 h.</summary>
    [Fact]
    public void The_time_to_a_code_holds_its_coverage()
    {
        var target = CleanlinessCode.Parse("17/15/11");
        var truth = Runs.At(Math.Log(9600 / 900.0) / 0.6);
        var early = 0;
        var late = 0;
        const int Cell = 400;
        for (var seed = 0; seed < Cell; seed++)
        {
            // Six readings up to 3 h: the target lies ahead.
            var random = new Random(seed);
            var hours = Runs.Evenly(8, 3);
            double[] Counts(double start, double floor, double rate) =>
                [.. hours.Select(t => Runs.Exponential(t, start, floor, rate) * Math.Exp(0.04 * Runs.Normal(random)))];
            var codes = CodeCurve.Fit(
                Runs.Moments(hours),
                Counts(10_000, 400, 0.6),
                Counts(2500, 80, 0.8),
                Counts(320, 5, 1.0)
            );
            var whole = codes.TimeTo(target);
            early += whole switch
            {
                Arrival<DateTimeOffset>.Expected it => it.Earliest > truth,
                Arrival<DateTimeOffset>.NotBefore it => it.Earliest > truth,
                Arrival<DateTimeOffset>.Never => true,
                _ => false,
            }
                ? 1
                : 0;
            late += whole is Arrival<DateTimeOffset>.Expected { Latest: var end } && end < truth ? 1 : 0;
        }

        // Nominal 5 % at each end; 400 runs have a standard error of 1.1 points.
        (100.0 * early / Cell).ShouldBeLessThan(7.5);
        (100.0 * late / Cell).ShouldBeLessThan(7.5);
        (early + late).ShouldBeGreaterThan(0);
    }

    [Fact]
    public void A_count_of_zero_changes_the_noise_of_its_size_alone_and_says_so()
    {
        var codes = CodeCurve.Fit(
            Runs.Moments([0, 1, 2, 3, 4, 5]),
            [5000, 2600, 1400, 800, 450, 300],
            [900, 480, 250, 140, 80, 50],
            [40, 18, 9, 4, 2, 0]
        );

        codes.TryCurve(CodeSize.At14, out var at14).ShouldBeTrue();
        at14!.Options.Noise.ShouldBe(DecayNoise.Proportional);
        codes.TryCurve(CodeSize.At4, out var at4).ShouldBeTrue();
        at4!.Options.Noise.ShouldBe(DecayNoise.Logarithmic);
        codes.TryCodeAt(Runs.At(20), 0.9, out var point).ShouldBeTrue();
        point!.Code.At14.HasNumber.ShouldBeTrue();
    }

    [Fact]
    public void Curves_that_cross_never_make_a_code_that_rises_with_size()
    {
        double[] hours = [0, 1, 2, 3, 4, 5];
        CleanupCurve Curve(double start, double floor, double rate) =>
            CleanupCurve.Fit(Runs.Moments(hours), [.. hours.Select(t => Runs.Exponential(t, start, floor, rate))]);
        var codes = new CodeCurve(Curve(5000, 10, 1), Curve(1000, 100, 0.5), Curve(100, 19, 0.5));
        codes.TryCodeAt(Runs.At(30), 0.9, out var point).ShouldBeTrue();

        // 10, 100 and 19 per mL: the smallest size takes the 100 of the middle one, which is 14.
        point!.Code.ToString().ShouldBe("14/14/11");
    }

    [Fact]
    public void A_microscope_count_has_two_sizes()
    {
        double[] hours = [0, 1, 2, 3, 4, 5];
        CleanupCurve Curve(double start, double floor) =>
            CleanupCurve.Fit(Runs.Moments(hours), [.. hours.Select(t => Runs.Exponential(t, start, floor, 0.5))]);
        var codes = new CodeCurve(null, Curve(1000, 90), Curve(100, 18));

        codes.TryCodeAt(Runs.At(0), 0.9, out var point).ShouldBeTrue();
        point!.Code.ToString().ShouldBe("-/17/14");
        codes.RulingSize(CleanlinessCode.Parse("16/12")).ShouldBe(CodeSize.At14);
        Should
            .Throw<ArgumentException>(() => codes.TimeTo(CleanlinessCode.Parse("18/16/12")))
            .ParamName.ShouldBe("target");
    }

    [Fact]
    public void Too_few_counts_and_bad_input_are_named()
    {
        var few = CodeCurve.Fit(Runs.Moments([0, 1, 2]), [900, 800, 700], [90, 80, 70], [9, 8, 7]);

        few.TryCodeAt(Runs.At(0), 0.9, out var none).ShouldBeFalse();
        none.ShouldBeNull();
        few.CodesOver(Runs.At(0), Runs.At(2), TimeSpan.FromHours(1)).ShouldBeEmpty();
        few.TimeTo(CleanlinessCode.Parse("16/14/11")).ShouldBeOfType<Arrival<DateTimeOffset>.NotDetermined>();
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                CodeCurve.Fit(Runs.Moments([0, 1]), [900, 800], [90, double.NaN], [9, 8])
            )
            .ParamName.ShouldBe("at6PerMillilitre");
        Should
            .Throw<ArgumentException>(() => CodeCurve.Fit(Runs.Moments([0, 1]), [900, 800], [90, 80], [9]))
            .ParamName.ShouldBe("at14PerMillilitre");
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                Codes().CodesOver(Runs.At(0), Runs.At(2), TimeSpan.FromMilliseconds(1))
            )
            .ParamName.ShouldBe("step");
        Should.Throw<ArgumentOutOfRangeException>(() => Codes().TryCodeAt(Runs.At(-1), 0.9, out _));
    }
}
