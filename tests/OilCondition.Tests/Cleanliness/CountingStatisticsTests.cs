using CsCheck;
using MathNet.Numerics.Distributions;
using OilCondition.Cleanliness;
using OilCondition.Tests.Properties;
using UnitsNet;

namespace OilCondition.Tests.Cleanliness;

public class CountingStatisticsTests
{
    private static readonly Volume TenMillilitres = Volume.FromMilliliters(10);

    /// <summary>Second route: at its ends the Poisson sum, term by term, gives the tail that the interval was made for.</summary>
    [Fact]
    public void The_ends_of_an_interval_leave_the_tails_of_the_Poisson_sum() =>
        Gen.Select(Gen.Int[1, 500], Gen.Double[0.5, 0.999])
            .Holds(
                (counted, confidence) =>
                {
                    var interval = new ParticleCount(counted, TenMillilitres).Interval(confidence);
                    var tail = (1 - confidence) / 2;

                    PoissonSum(interval.Upper!.Value, counted).ShouldBe(tail, 1e-8);
                    (1 - PoissonSum(interval.Lower!.Value, counted - 1)).ShouldBe(tail, 1e-8);
                },
                iter: 300
            );

    [Fact]
    public void None_counted_still_leaves_an_upper_end()
    {
        var interval = new ParticleCount(0, TenMillilitres).Interval(0.95);

        interval.Lower.ShouldBe(0);
        interval.Upper.ShouldBe(-Math.Log(0.025), 1e-9); // e^-λ = α/2
        Should.Throw<InvalidOperationException>(() => new ParticleCount(0, TenMillilitres).RelativeStandardDeviation);
    }

    [Fact]
    public void Dilution_widens_the_concentration_and_not_the_count()
    {
        var plain = new ParticleCount(7, TenMillilitres).Interval(0.95);
        var diluted = new ParticleCount(7, TenMillilitres, 100).Interval(0.95);

        diluted.Upper.ShouldBe(plain.Upper);
        new ParticleCount(7, TenMillilitres, 100).IntervalPerMillilitre(0.95).Upper.ShouldBe(10 * plain.Upper, 1e-8);
        new ParticleCount(7, TenMillilitres).ScaleNumbers(0.95).ToString().ShouldBe("5-8"); // 0.2814 to 1.4423 per mL, table 1 by eye
    }

    [Theory]
    [InlineData(10_000)]
    [InlineData(10_001)]
    [InlineData(1_000_000)]
    public void Large_counts_scatter_by_their_root(long counted)
    {
        var interval = new ParticleCount(counted, TenMillilitres).Interval(0.95);

        // m ∓ 1.96√m + (1.96² ∓ 1)/3 + 1/2 ± 1/2 ..., the Cornish-Fisher terms of the gamma quantile.
        var (z, root) = (1.959964, Math.Sqrt(counted));
        interval.Lower.ShouldBe(counted - (z * root) + (((z * z) - 1) / 3), 0.05);
        interval.Upper.ShouldBe(counted + 1 + (z * Math.Sqrt(counted + 1)) + (((z * z) - 1) / 3), 0.05);
    }

    [Fact]
    public void Two_counts_are_compared_by_the_binomial_sum()
    {
        // 4 against 12 in equal volumes: 2·(C(16,0)+…+C(16,4))/2^16 = 2·2517/65536.
        var equal = CountDifference.Between(new(4, TenMillilitres), new(12, TenMillilitres));
        equal.Chance.ShouldBe(2 * 2517 / 65536.0, 1e-12);
        equal.Z.ShouldBe(2, 1e-12);
        new ParticleCount(4, TenMillilitres).ChanceOfEqualOil(new(12, TenMillilitres)).ShouldBe(equal.Chance);

        // 1 of 5 in three times the volume: p = 3/4, chance of at most 1 = (1 + 15)/1024.
        CountDifference
            .Between(new(4, TenMillilitres), new(1, Volume.FromMilliliters(30)))
            .Chance.ShouldBe(2 * 16 / 1024.0, 1e-12);

        // The same as by dilution: a third of the oil in the first count.
        CountDifference
            .Between(new(4, TenMillilitres, 3), new(1, TenMillilitres))
            .Chance.ShouldBe(2 * 16 / 1024.0, 1e-12);
    }

    [Fact]
    public void Equal_counts_do_not_differ_and_order_does_not_matter()
    {
        CountDifference.Between(new(0, TenMillilitres), new(0, TenMillilitres)).Chance.ShouldBe(1);
        Gen.Select(Gen.Int[0, 20000], Gen.Int[0, 20000])
            .Holds(
                (a, b) =>
                {
                    var (first, second) = (new ParticleCount(a, TenMillilitres), new ParticleCount(b, TenMillilitres));
                    var there = CountDifference.Between(first, second);
                    var back = CountDifference.Between(second, first);

                    there.Chance.ShouldBe(back.Chance, 1e-9);
                    there.Z.ShouldBe(-back.Z, 1e-9);
                    there.Chance.ShouldBeInRange(0, 1);
                },
                iter: 500
            );
    }

    [Fact]
    public void The_normal_law_takes_over_without_a_step()
    {
        var below = CountDifference.Between(new(4900, TenMillilitres), new(5100, TenMillilitres)).Chance;
        var above = CountDifference.Between(new(4901, TenMillilitres), new(5101, TenMillilitres)).Chance;

        above.ShouldBe(below, 1e-4);
    }

    private static double PoissonSum(double mean, int atMost) =>
        Enumerable.Range(0, atMost + 1).Sum(k => Poisson.PMF(mean, k));
}
