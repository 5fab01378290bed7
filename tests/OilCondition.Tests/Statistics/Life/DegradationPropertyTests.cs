using CsCheck;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Statistics;

public class DegradationPropertyTests
{
    // Beyond this chance of having crossed, 'not crossed yet' contradicts the law, and its digits are those of rounding.
    private const double Contradicted = 0.9999;

    // Readings on a line to the last digits have a chance that jumps from 0 to 1: they have a test of their own.
    private static readonly Gen<(double[] Times, double[] Values)> Series = (
        from gaps in Gen.Double[0.2, 3].Array[5, 14]
        from noise in Gen.Double[-1, 1].Array[gaps.Length]
        select (
            gaps.Select((_, i) => gaps.Take(i + 1).Sum()).ToArray(),
            noise.Select((e, i) => 0.5 * gaps.Take(i + 1).Sum() + e).ToArray()
        )
    ).Where(series => StraightLine.Fit(series.Item1, series.Item2).ResidualStandardDeviation > 0.02);

    [Fact]
    public void Units_and_clock_change_nothing_but_the_unit() =>
        Property.Holds(
            Gen.Select(Series, Gen.Double[0.01, 1000], Gen.Double[0.01, 1000], Gen.Double[-1000, 1000]),
            (series, time, unit, clock) =>
            {
                var limit = series.Values.Max() + 2;
                var law = Degradation.Fit(series.Times, series.Values).Above(limit, 1000);
                var other = Degradation
                    .Fit(
                        [.. series.Times.Select(t => time * (t + clock))],
                        [.. series.Values.Select(y => unit * (y + 7))]
                    )
                    .Above(unit * (limit + 7), 1000 * time);
                foreach (var t in new[] { 0.5, 2, 8, 50 })
                {
                    other.ChanceBefore(time * t).ShouldBe(law.ChanceBefore(t), 1e-5);
                }
            },
            iter: 200
        );

    [Fact]
    public void A_lower_limit_is_the_mirror_of_an_upper_one() =>
        Property.Holds(
            Series,
            series =>
            {
                var limit = series.Values.Max() + 1.5;
                var up = Degradation.Fit(series.Times, series.Values).Above(limit, 1000);
                var down = Degradation.Fit(series.Times, [.. series.Values.Select(y => -y)]).Below(-limit, 1000);
                down.ChanceBefore(4).ShouldBe(up.ChanceBefore(4), 1e-12);
            },
            iter: 100
        );

    [Fact]
    public void The_chance_never_falls_with_time_nor_rises_with_distance() =>
        Property.Holds(
            Gen.Select(Series, Gen.Double[0, 60], Gen.Double[0, 60]),
            (series, one, other) =>
            {
                // So far off that none is crossed now: 'not crossed' of a limit close by would tell that the level is low.
                var near = Degradation.Fit(series.Times, series.Values).Above(series.Values.Max() + 6, 1000);
                var far = Degradation.Fit(series.Times, series.Values).Above(series.Values.Max() + 8, 1000);
                var (early, late) = (Math.Min(one, other), Math.Max(one, other));

                near.ChanceBefore(early).ShouldBeLessThanOrEqualTo(near.ChanceBefore(late));
                far.ChanceBefore(late).ShouldBeLessThanOrEqualTo(near.ChanceBefore(late) + 5e-3); // what two tables may differ by
                near.ChanceBefore(late).ShouldBeInRange(0, 1);
            },
            iter: 300
        );

    [Fact]
    public void A_quantile_has_the_chance_that_it_was_asked_for_given_what_is_known_now() =>
        Property.Holds(
            Gen.Select(Series, Gen.Double[0.02, 0.9], Gen.Double[0, 5]),
            (series, chance, intact) =>
            {
                var law = Degradation.Fit(series.Times, series.Values).Above(series.Values.Max() + 1, 1000);
                if (law.ChanceBefore(intact) > Contradicted)
                {
                    return;
                }

                if (law.TryTime(chance, intact, out var time))
                {
                    law.ChanceBefore(time, intact).ShouldBe(chance, 1e-6);
                }
                else
                {
                    law.ChanceBefore(1000, intact).ShouldBeLessThan(chance);
                }
            },
            iter: 200
        );

    [Fact]
    public void Knowing_that_nothing_was_crossed_until_later_never_brings_a_date_forward() =>
        Property.Holds(
            Gen.Select(Series, Gen.Double[0, 5], Gen.Double[0.1, 5]),
            (series, intact, more) =>
            {
                var law = Degradation.Fit(series.Times, series.Values).Above(series.Values.Max() + 1, 1000);
                if (law.TryTime(0.5, intact, out var time) && law.TryTime(0.5, intact + more, out var later))
                {
                    later.ShouldBeGreaterThanOrEqualTo(time * (1 - 1e-6));
                }
            },
            iter: 200
        );
}
