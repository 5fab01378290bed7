using CsCheck;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Statistics;

public class OutlierTests
{
    [Fact]
    public void Outliers_that_hide_each_other_are_found_together()
    {
        double[] values = [10, 10.4, 9.7, 10.1, 9.9, 10.3, 10.2, 9.8, 14, 14.1];
        GeneralisedEsd.Find(values, 1).Outliers.ShouldBeEmpty();
        GeneralisedEsd.Find(values, 4).Outliers.Order().ShouldBe([8, 9]);
    }

    [Fact]
    public void As_many_as_were_looked_for_may_not_be_all()
    {
        double[] values = [10, 10.4, 9.7, 10.1, 9.9, 10.3, 10.2, 9.8, 14, 14.1];
        GeneralisedEsd.Find(values, 2).MorePossible.ShouldBeTrue();
        GeneralisedEsd.Find(values, 3).MorePossible.ShouldBeFalse();
        GeneralisedEsd.Find(values, 1).MorePossible.ShouldBeFalse(); // none found: they hide each other
    }

    [Fact]
    public void Sound_samples_are_called_wild_as_rarely_as_stated()
    {
        var random = new Random(11);
        const int Runs = 4000;
        var esd = 0;
        for (var run = 0; run < Runs; run++)
        {
            double[] values = [.. Enumerable.Range(0, 30).Select(_ => DecayNoiseSource.Normal(random))];
            esd += GeneralisedEsd.Find(values, 5).Outliers.Count > 0 ? 1 : 0;
        }

        // Binomial standard error 0.35 points.
        (100.0 * esd / Runs).ShouldBeInRange(3.6, 6.6);
    }

    [Fact]
    public void Units_and_shifts_change_no_outlier_and_sides_are_mirrored() =>
        Gen.Int[-1000, 1000]
            .Array[6, 25]
            .Where(numbers => numbers.Distinct().Count() > 4)
            .Holds(numbers =>
            {
                // The small irrational part keeps two values from being equally far out, where either may come first.
                double[] values = [.. numbers.Select((v, i) => v / 7.0 + 0.001 * Math.Sqrt(i + 2))];
                var found = GeneralisedEsd.Find(values, 3);
                var other = GeneralisedEsd.Find([.. values.Select(v => 32 + 1.8 * v)], 3);
                other.Outliers.ShouldBe(found.Outliers);
                other.Steps[0].Statistic.ShouldBe(found.Steps[0].Statistic, 1e-9);
                GeneralisedEsd.Find([.. values.Select(v => -v)], 3).Outliers.ShouldBe(found.Outliers);
            });

    [Fact]
    public void Equal_values_hold_no_outlier()
    {
        GeneralisedEsd.Find([5, 5, 5, 5, 5], 2).Outliers.ShouldBeEmpty();
    }
}
