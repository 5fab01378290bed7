using CsCheck;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Statistics;

public class MannKendallTests
{
    private static readonly double[] Six = [0, 1, 2, 3, 4, 5];

    [Fact]
    public void Exact_chances_are_those_of_counting_every_order()
    {
        // Second route: all 720 orders of six values.
        var scores = Orders(6).Select(order => MannKendall.Test(Six, order).Score).ToList();
        for (var score = -16; score <= 16; score++)
        {
            KendallDistribution.AtLeast(6, score).ShouldBe(scores.Count(s => s >= score) / 720.0, 1e-14);
        }
    }

    [Fact]
    public void Exact_probability_agrees_with_R()
    {
        // R 4.2.2, cor.test(method = "kendall", exact = TRUE).
        var result = MannKendall.Test([1, 2, 3, 4, 5, 6, 7, 8, 9], [3, 1, 4, 2, 6, 5, 9, 8, 7]);
        result.Method.ShouldBe(MannKendallMethod.Exact);
        result.PValue.ShouldBe(0.0247409611993, 1e-12);
    }

    public static TheoryData<double[], double[], Censoring[]> Tied() =>
        new()
        {
            { Six, [3, 3, 5, 1, 5, 5], [] },
            { [0, 0, 1, 1, 2, 3], [4, 2, 2, 7, 7, 1], [] },
            {
                Six,
                [5, 5, 7, 3, 9, 8],
                [Censoring.Below, Censoring.None, Censoring.None, Censoring.None, Censoring.Above, Censoring.None]
            },
            {
                [0, 0, 0, 1, 2, 2],
                [5, 2, 7, 3, 4, 8],
                [Censoring.Below, Censoring.Below, Censoring.None, Censoring.None, Censoring.None, Censoring.None]
            },
        };

    [Theory]
    [MemberData(nameof(Tied))]
    public void Variance_is_that_over_all_orders_of_the_readings(double[] times, double[] values, Censoring[] censoring)
    {
        // Second route: the score of all 720 orders. Ties in time, in value, and censored readings alike.
        var scores = Orders(6)
            .Select(order => order.Select(place => (int)place).ToArray())
            .Select(order =>
                MannKendall
                    .Test(
                        times,
                        [.. order.Select(i => values[i])],
                        censoring.Length == 0 ? [] : [.. order.Select(i => censoring[i])]
                    )
                    .Score
            )
            .ToList();

        scores.Average().ShouldBe(0, 1e-12);
        MannKendall.Test(times, values, censoring).Variance.ShouldBe(scores.Average(s => (double)s * s), 1e-10);
    }

    [Fact]
    public void Pairs_of_censored_readings_count_only_where_their_order_is_known()
    {
        // <5, 5, 7, <6, >8: known rises are <5 to 5, 7, >8; 5 to 7, >8; 7 to >8; <6 to >8. Known falls: 7 to <6. Open: <5 to <6, 5 to <6.
        var result = MannKendall.Test(
            [0, 1, 2, 3, 4],
            [5, 5, 7, 6, 8],
            [Censoring.Below, Censoring.None, Censoring.None, Censoring.Below, Censoring.Above]
        );
        result.Score.ShouldBe(7 - 1);
        result.Method.ShouldBe(MannKendallMethod.Normal);
    }

    [Theory]
    [InlineData(1.0, 0.05)]
    [InlineData(0.2, 0.01)]
    public void A_detection_limit_that_falls_with_time_feigns_no_trend(double laterLimit, double level)
    {
        // The older method sees nothing below 1, the newer one nothing below the later limit; the values are the same throughout.
        var random = new Random(20260401);
        const int Runs = 4000;
        var alarms = 0;
        double[] times = [.. Enumerable.Range(0, 14).Select(i => (double)i)];
        for (var run = 0; run < Runs; run++)
        {
            var values = new double[14];
            var censoring = new Censoring[14];
            for (var i = 0; i < 14; i++)
            {
                var limit = i < 7 ? 1 : laterLimit;
                values[i] = Math.Exp(DecayNoiseSource.Normal(random));
                if (values[i] < limit)
                {
                    (values[i], censoring[i]) = (limit, Censoring.Below);
                }
            }

            alarms += MannKendall.Test(times, values, censoring).PValue < level ? 1 : 0;
        }

        // Above 1.5 times the level a binomial count of this size would be beyond four standard errors for either level.
        (alarms / (double)Runs).ShouldBeLessThan(1.5 * level + 0.001);
    }

    [Fact]
    public void Exact_and_normal_probabilities_meet_for_twenty_readings()
    {
        double[] times = [.. Enumerable.Range(0, 20).Select(i => (double)i)];
        double[] values = [.. times.Select(t => t + 9 * Math.Sin(5 * t))];
        var exact = MannKendall.Test(times, values);
        var normal = MannKendall.Test(times, values, default, 0, MannKendallMethod.Normal);

        exact.Method.ShouldBe(MannKendallMethod.Exact);
        exact.PValue.ShouldNotBe(normal.PValue);
        exact.PValue.ShouldBe(normal.PValue, 0.003);
    }

    [Fact]
    public void Order_of_rows_units_and_shifts_change_nothing_and_reversed_time_flips_the_sign() =>
        Series.Holds(series =>
        {
            var (t, y) = series;
            var plain = MannKendall.Test(t, y);
            MannKendall.Test([.. t.Reverse()], [.. y.Reverse()]).ShouldBe(plain);
            MannKendall.Test([.. t.Select(x => 8 * x + 3)], [.. y.Select(x => 4 * x - 16)]).ShouldBe(plain);
            var reversed = MannKendall.Test([.. t.Select(x => -x)], y);
            reversed.Score.ShouldBe(-plain.Score);
            reversed.RisingPValue.ShouldBe(plain.FallingPValue, 1e-12);
            reversed.PValue.ShouldBe(plain.PValue, 1e-12);
        });

    [Fact]
    public void Correlation_widens_as_fewer_readings_would()
    {
        double[] values = [1, 3, 2, 5, 4, 7, 6, 9, 8, 10, 12, 11];
        double[] times = [.. Enumerable.Range(0, 12).Select(i => (double)i)];
        var plain = MannKendall.Test(times, values, default, 0, MannKendallMethod.Normal);
        var correlated = MannKendall.Test(times, values, default, 0.5);

        correlated.Variance.ShouldBe(3 * plain.Variance, 1e-9);
        correlated.PValue.ShouldBeGreaterThan(plain.PValue);
    }

    [Fact]
    public void Nothing_to_tell_is_said_without_numbers_out_of_bounds()
    {
        MannKendall.Test([], []).Method.ShouldBe(MannKendallMethod.TooFewReadings);
        MannKendall.Test([1], [1]).PValue.ShouldBe(1);
        var level = MannKendall.Test([1, 2, 3], [4, 4, 4]);
        level.Method.ShouldBe(MannKendallMethod.NoVariation);
        (level.PValue, level.RisingPValue, level.TauA, level.TauB).ShouldBe((1, 1, 0, 0));
        MannKendall.Test([2, 2, 2], [1, 2, 3]).Method.ShouldBe(MannKendallMethod.NoVariation);
    }

    internal static Gen<(double[] Times, double[] Values)> Series { get; } =
        Gen.Int[5, 16]
            .SelectMany(n =>
                Gen.Select(Gen.Int[0, 30].Array[n], Gen.Int[0, 12].Array[n])
                    .Where((t, _) => t.Distinct().Count() > 2)
                    .Select((t, y) => (t.Select(x => (double)x).ToArray(), y.Select(x => (double)x).ToArray()))
            );

    private static IEnumerable<double[]> Orders(int count) =>
        count == 0
            ?
            [
                [],
            ]
            : Orders(count - 1)
                .SelectMany(order =>
                    Enumerable.Range(0, count).Select(at => (double[])[.. order[..at], count - 1, .. order[at..]])
                );
}
