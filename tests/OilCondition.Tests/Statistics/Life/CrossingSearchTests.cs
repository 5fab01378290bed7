using CsCheck;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Tests.Prognosis;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Statistics.Life;

/// <summary>The time of a chance is where the chance is: searched by halving here, by interpolation there.</summary>
public class CrossingSearchTests
{
    private static readonly Gen<(double[] Times, double[] Values, double Limit)> Readings =
        from count in Gen.Int[5, 40]
        from gaps in Gen.Double[0.1, 1].Array[count]
        from scatter in Gen.Double[-1, 1].Array[count]
        from size in Gen.Int[0, 2].Select(i => new[] { 0, 0.03, 0.2 }[i])
        from far in Gen.Double[0.01, 3]
        select Make(gaps, scatter, size, far);

    private static (double[] Times, double[] Values, double Limit) Make(
        double[] gaps,
        double[] scatter,
        double size,
        double far
    )
    {
        var times = new double[gaps.Length];
        for (var i = 1; i < times.Length; i++)
        {
            times[i] = times[i - 1] + gaps[i] / gaps.Length;
        }

        double[] values = [.. times.Select((t, i) => t + size * scatter[i])];
        return (times, values, values[^1] + far);
    }

    [Fact]
    public void The_chance_at_the_time_found_is_the_chance_asked_for() =>
        Readings.Holds(
            run =>
            {
                var law = Degradation.Fit(run.Times, run.Values).Above(run.Limit);
                foreach (var intact in new[] { 0, 0.2 })
                {
                    // Where 'not crossed' contradicts the law its answer has few digits.
                    if (law.ChanceBefore(intact) > 0.999)
                    {
                        continue;
                    }

                    foreach (var chance in new[] { 0.02, 0.1, 0.5, 0.9 })
                    {
                        var found = law.TryTime(chance, intact, intact + 30, out var time);
                        found.ShouldBe(law.ChanceBefore(intact + 30, intact) >= chance);
                        if (found && time > intact + 1e-7)
                        {
                            var halved = Halved(law, chance, intact);
                            time.ShouldBe(halved, 3e-8 * (halved - intact));
                        }
                    }
                }
            },
            iter: 60
        );

    [Fact]
    public void Where_the_law_is_sure_of_a_crossing_that_has_not_come_nothing_is_not_a_number() =>
        Readings.Holds(
            run =>
            {
                var law = Degradation.Fit(run.Times, run.Values).Above(run.Limit);
                foreach (var intact in new[] { 1.0, 3, 10 })
                {
                    foreach (var chance in new[] { 0.1, 0.5, 0.9 })
                    {
                        law.TryTime(chance, intact, intact + 30, out var time);
                        double.IsFinite(time).ShouldBeTrue();
                        law.ChanceBefore(intact + 1, intact).ShouldBeInRange(0, 1);
                    }
                }
            },
            iter: 60
        );

    [Fact]
    public void Quantiles_found_together_are_those_found_alone()
    {
        var crosses = InventedSeries.Default(InventedSeries.Wandering(3), 0.5).ShouldBeOfType<RemainingLife.Crosses>();
        foreach (var (together, chance) in new[] { (crosses.P10, 0.1), (crosses.P50, 0.5), (crosses.P90, 0.9) })
        {
            crosses.Crossing.TryAt(chance, out var alone).ShouldBeTrue();
            (alone - together).Duration().ShouldBeLessThan(TimeSpan.FromSeconds(1));
            crosses.Crossing.ChanceBefore(together).ShouldBe(chance, 1e-7);
        }
    }

    private static double Halved(CrossingLaw law, double chance, double intact)
    {
        var (lower, upper) = (Math.Log(1e-9), Math.Log(30));
        for (var i = 0; i < 70; i++)
        {
            var middle = (lower + upper) / 2;
            if (law.ChanceBefore(intact + Math.Exp(middle), intact) >= chance)
            {
                upper = middle;
            }
            else
            {
                lower = middle;
            }
        }

        return intact + Math.Exp(upper);
    }
}
