using CsCheck;
using OilCondition.Cleanliness;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Cleanliness;

public class SizeDistributionTests
{
    [Fact]
    public void Between_two_sizes_the_count_is_a_power_of_the_size()
    {
        var counts = new SizeDistribution([4, 8, 16], [3200, 400, 100]);

        counts.PerMillilitreAt(4).ShouldBe(3200);
        counts.PerMillilitreAt(8).ShouldBe(400);
        counts.PerMillilitreAt(16).ShouldBe(100);
        counts.PerMillilitreAt(Math.Sqrt(32)).ShouldBe(Math.Sqrt(3200.0 * 400), 1e-9); // geometric means by hand
        counts.PerMillilitreAt(Math.Sqrt(128)).ShouldBe(200, 1e-9);
    }

    [Fact]
    public void A_power_law_comes_back_at_any_size_and_in_any_unit() =>
        Gen.Select(Gen.Double[1.5, 4], Gen.Double[4, 14], Gen.Double[0.2, 5])
            .Holds(
                (slope, micrometres, unit) =>
                {
                    double Count(double d) => 5000 * Math.Pow(d / 4, -slope);
                    var counts = new SizeDistribution([4, 6, 14], [Count(4), Count(6), Count(14)]);
                    var scaled = new SizeDistribution([4 * unit, 6 * unit, 14 * unit], [Count(4), Count(6), Count(14)]);

                    counts.PerMillilitreAt(micrometres).ShouldBe(Count(micrometres), 1e-9 * Count(micrometres));
                    if (micrometres is > 4.001 and < 13.999)
                    {
                        scaled
                            .PerMillilitreAt(micrometres * unit)
                            .ShouldBe(Count(micrometres), 1e-9 * Count(micrometres));
                    }
                }
            );

    [Theory]
    [InlineData(3.9999)]
    [InlineData(14.001)]
    [InlineData(double.NaN)]
    public void Outside_the_counted_sizes_no_count_is_made_up(double micrometres) =>
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                new SizeDistribution([4, 6, 14], [2000, 500, 60]).PerMillilitreAt(micrometres)
            )
            .Message.ShouldContain("allowed: 4 to 14 µm");

    [Fact]
    public void What_is_no_distribution_is_refused()
    {
        Should.Throw<ArgumentException>(() => new SizeDistribution([4], [2000])).Message.ShouldContain("at least 2");
        Should.Throw<ArgumentException>(() => new SizeDistribution([4, 6], [2000]));
        Should.Throw<ArgumentException>(() => new SizeDistribution([6, 4], [2000, 500]));
        Should.Throw<ArgumentException>(() => new SizeDistribution([4, 4], [2000, 500]));
        Should
            .Throw<ArgumentException>(() => new SizeDistribution([4, 6], [500, 501]))
            .Message.ShouldContain("500 per mL at 4 µm is followed by 501 per mL at 6 µm");
        Should.Throw<ArgumentOutOfRangeException>(() => new SizeDistribution([4, 6], [500, 0]));
        Should.Throw<ArgumentOutOfRangeException>(() => new SizeDistribution([4, 6], [double.NaN, 1]));
        Should.Throw<ArgumentOutOfRangeException>(() => new SizeDistribution([0, 6], [500, 1]));
    }
}
