using CsCheck;
using MathNet.Numerics.Distributions;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Statistics;

/// <summary>Readings below a limit: against least squares where none is, against the truth where many are, and by name where they are too few.</summary>
public class CensoredDecayTests
{
    private static readonly double[] Hours = [0, 1, 2, 3.5, 5, 8, 12, 18, 26, 36];
    private static readonly double[] Ppm = [812, 700, 640, 540, 455, 330, 240, 150, 112, 88];
    private static readonly bool[] LastTwo = [.. Enumerable.Range(0, 10).Select(i => i > 7)];

    [Fact]
    public void Proportional_scatter_without_readings_below_a_limit_is_the_iterated_fit()
    {
        var options = new ExponentialDecayOptions(DecayNoise.Proportional);
        var plain = ExponentialDecay.Analyze(Hours, Ppm, options);
        var censored = CensoredDecay.Fit(
            Hours,
            Ppm,
            new bool[10],
            new ExponentialDecayOptions(DecayNoise.Proportional)
        );
        censored.Options.Noise.ShouldBe(DecayNoise.Proportional);
        censored.Rate.ShouldBe(plain.Fit.Rate, 1e-7 * plain.Fit.Rate);
        censored.Floor.ShouldBe(plain.Fit.Floor, 1e-6 * plain.Fit.Floor);
        censored.StandardDeviation.ShouldBe(Math.Sqrt(plain.Fit.ResidualSumOfSquares / 10), 1e-7);
        censored.RateInterval(0.9).Lower.ShouldBe(plain.Rate(0.9).Lower, 1e-6);
        censored.RateInterval(0.9).Upper.ShouldBe(plain.Rate(0.9).Upper, 1e-6);
        censored.FloorInterval(0.9).Lower.ShouldBe(plain.Floor(0.9).Lower, 1e-3);
        censored.FloorInterval(0.9).Upper.ShouldBe(plain.Floor(0.9).Upper, 1e-3);
        censored.Reach(120, 0.9).Lower.ShouldBe(plain.Reach(120, 0.9).Lower, 1e-3);
        censored.Reach(120, 0.9).Upper.ShouldBe(plain.Reach(120, 0.9).Upper, 1e-3);
        censored.ResidualAutocorrelation.ShouldBe(plain.ResidualAutocorrelation, 1e-6);
    }

    [Theory]
    [InlineData(10, 5, 3, DecayNoise.Constant)]
    [InlineData(25, 5, 2, DecayNoise.Constant)]
    [InlineData(10, 5, 3, DecayNoise.Proportional)]
    public void Likelihood_has_hardly_a_bias_where_putting_the_limit_in_has_a_large_one(
        double limit,
        double floor,
        double scatter,
        DecayNoise noise
    )
    {
        // 200 falling to the floor over 5 time constants, 12 readings, a quarter to a half of them below the limit.
        var random = new Random(20260511);
        double[] times = [.. Enumerable.Range(0, 12).Select(i => 5.0 * i / 11)];
        var (likely, substituted, runs) = (0.0, 0.0, 0);
        for (var run = 0; run < 150; run++)
        {
            double[] values =
            [
                .. times.Select(t =>
                {
                    var y = floor + (200 - floor) * Math.Exp(-t);
                    return y + (noise == DecayNoise.Constant ? scatter : 0.05 * y) * DecayNoiseSource.Normal(random);
                }),
            ];
            bool[] below = [.. values.Select(y => y < limit)];
            double[] stated = [.. values.Select(y => Math.Max(y, limit))];
            var fit = CensoredDecay.Fit(times, stated, below, new ExponentialDecayOptions(noise, lowestFloor: null));
            if (fit.Status is not ExponentialDecayStatus.TooFewAboveLimit)
            {
                runs++;
                likely += fit.Rate - 1;
                substituted += ExponentialDecay.Fit(times, stated, new ExponentialDecayOptions(noise)).Rate - 1;
            }
        }

        runs.ShouldBeGreaterThan(100);
        (likely / runs).ShouldBeInRange(-0.015, 0.015);
        (substituted / runs).ShouldBeGreaterThan(0.02);
    }

    [Fact]
    public void Half_below_the_limit_still_covers()
    {
        // Nominal 90 %; only readings above the limit count as degrees of freedom. 300 runs: standard error 1.7 points.
        var random = new Random(20260512);
        double[] times = [.. Enumerable.Range(0, 12).Select(i => 5.0 * i / 11)];
        var (rate, runs) = (0, 0);
        for (var run = 0; run < 300; run++)
        {
            double[] values = [.. times.Select(t => 5 + 195 * Math.Exp(-t) + 2 * DecayNoiseSource.Normal(random))];
            bool[] below = [.. values.Select(y => y < 25)];
            var fit = CensoredDecay.Fit(
                times,
                [.. values.Select(y => Math.Max(y, 25))],
                below,
                new ExponentialDecayOptions(lowestFloor: null)
            );
            if (fit.Status is not ExponentialDecayStatus.TooFewAboveLimit)
            {
                runs++;
                rate += fit.RateInterval(0.9).Contains(1) ? 1 : 0;
            }
        }

        (100.0 * rate / runs).ShouldBeInRange(86, 97);
    }

    [Fact]
    public void Units_the_order_of_rows_and_the_zero_of_the_clock_change_nothing() =>
        Gen.Select(Gen.Double[0.01, 100], Gen.Double[0.01, 100], Gen.Double[-1e3, 1e3], Gen.Int[0, 1000])
            .Holds(
                (unitOfTime, unitOfValue, shift, seed) =>
                {
                    var order = Enumerable.Range(0, 10).ToArray();
                    new Random(seed).Shuffle(order);
                    foreach (var noise in new[] { DecayNoise.Constant, DecayNoise.Proportional })
                    {
                        var fit = CensoredDecay.Fit(Hours, Ppm, LastTwo, new ExponentialDecayOptions(noise));
                        var other = CensoredDecay.Fit(
                            [.. order.Select(i => unitOfTime * Hours[i] + shift)],
                            [.. order.Select(i => unitOfValue * Ppm[i])],
                            [.. order.Select(i => LastTwo[i])],
                            new ExponentialDecayOptions(noise)
                        );
                        other.Rate.ShouldBe(fit.Rate / unitOfTime, 1e-6 * fit.Rate / unitOfTime);
                        other.Floor.ShouldBe(fit.Floor * unitOfValue, 1e-5 * fit.Start * unitOfValue);
                        other.ResidualAutocorrelation.ShouldBe(fit.ResidualAutocorrelation, 1e-5);
                        var (here, there) = (fit.RateInterval(0.9), other.RateInterval(0.9));
                        (there.Upper * unitOfTime).ShouldBe(here.Upper, 1e-5 * here.Upper);
                        var (ready, later) = (fit.Reach(200, 0.9), other.Reach(200 * unitOfValue, 0.9));
                        ((later.Upper - shift) / unitOfTime).ShouldBe(ready.Upper, 1e-4 * ready.Upper);
                    }
                },
                iter: 8
            );

    [Fact]
    public void Following_residuals_put_a_warning_on_every_interval()
    {
        double[] times = [.. Enumerable.Range(0, 40).Select(i => (double)i)];
        double[] values = [.. times.Select(t => 100 + 900 * Math.Exp(-0.1 * t) + 30 * Math.Sin(t / 2))];
        bool[] below = [.. values.Select(y => y < 105)];
        double[] stated = [.. values.Select(y => Math.Max(y, 105))];
        var fit = CensoredDecay.Fit(times, stated, below);
        below.Count(b => b).ShouldBeGreaterThan(2);
        fit.ResidualAutocorrelation.ShouldBeGreaterThan(0.3);
        fit.RateInterval(0.9).CoverageInDoubt.ShouldBeTrue();
        fit.FloorInterval(0.9).CoverageInDoubt.ShouldBeTrue();
        fit.Reach(200, 0.9).CoverageInDoubt.ShouldBeTrue();
        CensoredDecay.Fit(Hours, Ppm, LastTwo).RateInterval(0.9).CoverageInDoubt.ShouldBeFalse();
    }

    [Theory]
    [InlineData(DecayNoise.Constant)]
    [InlineData(DecayNoise.Proportional)]
    public void A_reading_below_its_limit_counts_among_the_residuals_with_the_mean_of_a_cut_normal(DecayNoise noise)
    {
        // Readings above and below the limit take turns: mean of a standard normal below r is −φ(r)/Φ(r)
        // (Johnson, Kotz and Balakrishnan 1994, section 13.10.1), here by the general distribution.
        bool[] below = [.. Enumerable.Range(0, 10).Select(i => i is 5 or 7 or 9)];
        var fit = CensoredDecay.Fit(Hours, Ppm, below, new ExponentialDecayOptions(noise));
        double[] residuals =
        [
            .. Hours.Select(
                (t, i) =>
                {
                    var curve = fit.ValueAt(t);
                    var scatter = fit.StandardDeviation * (noise == DecayNoise.Constant ? 1 : curve);
                    var r = (Ppm[i] - curve) / scatter;
                    return below[i] ? -Normal.PDF(0, 1, r) / Normal.CDF(0, 1, r) : r;
                }
            ),
        ];
        var lagOne = residuals.Zip(residuals.Skip(1), (a, b) => a * b).Sum() / residuals.Sum(r => r * r);
        fit.ResidualAutocorrelation.ShouldBe(lagOne, 1e-5);
        Math.Abs(lagOne).ShouldBeGreaterThan(0.01);
    }

    [Fact]
    public void One_side_spends_its_whole_doubt_there_and_logarithmic_scatter_is_refused()
    {
        var fit = CensoredDecay.Fit(Hours, Ppm, LastTwo);
        var done = fit.Reach(200, 0.95, IntervalSide.Upper);
        done.HasLower.ShouldBeFalse();
        done.Upper.ShouldBe(fit.Reach(200, 0.9).Upper, 1e-5);
        Should
            .Throw<ArgumentException>(() =>
                CensoredDecay.Fit(Hours, Ppm, LastTwo, new ExponentialDecayOptions(DecayNoise.Logarithmic))
            )
            .Message.ShouldContain("state Proportional noise");
        Should
            .Throw<ArgumentException>(() =>
                CensoredDecay.Fit(Hours, Ppm, LastTwo, new ExponentialDecayOptions(robust: true))
            )
            .Message.ShouldContain("leave those readings out");
    }
}
