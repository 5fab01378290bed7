using CsCheck;
using MathNet.Numerics.Distributions;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Prognosis;

/// <summary>The straight line whose prediction band is inverted, and the cases that all models share.</summary>
public class LifeForecastTests
{
    private static readonly DateTimeOffset Now = Invented.Start.AddDays(320);

    private static RemainingLife Line(MeasurandSeries series, double limit, LimitSide side, DateTimeOffset asOf) =>
        LifeForecast.Of(series, limit, side, asOf, new LifeOptions(LifeModel.LineNewReading));

    private static MeasurandSeries Series(Measurand measurand, params double[] values) =>
        Invented
            .History(values.Select((value, i) => Invented.Sample(i, 40 * i, (measurand, new Reading(value)))))
            .SampleSeries(measurand, Invented.Start, Now);

    [Fact]
    public void The_median_lies_where_the_line_meets_the_limit_when_nothing_is_crossed_now()
    {
        // Slope 0.00025 per day by construction; symmetric scatter keeps the line near 0.1 + 0.00025 t.
        var series = Series(Measurands.AcidNumber, 0.101, 0.109, 0.121, 0.129, 0.141, 0.149, 0.161, 0.169, 0.180);
        var life = Line(series, 0.3, LimitSide.Upper, Now).ShouldBeOfType<RemainingLife.Crosses>();

        (life.P50 - Invented.Start).TotalDays.ShouldBe(800, 25);
        life.P10.ShouldBeLessThan(life.P50);
        life.P90.ShouldBeGreaterThan(life.P50);
    }

    [Fact]
    public void Each_date_has_the_chance_that_it_states_given_that_nothing_is_crossed_now()
    {
        // Second route: the conditional chance from Student's distribution, written out here.
        double[] values = [0.10, 0.13, 0.11, 0.16, 0.17, 0.16, 0.20, 0.24, 0.22];
        var series = Series(Measurands.AcidNumber, values);
        var life = Line(series, 0.3, LimitSide.Upper, Now).ShouldBeOfType<RemainingLife.Crosses>();

        double[] days = [.. values.Select((_, i) => 40.0 * i)];
        var xbar = days.Average();
        var sxx = days.Sum(x => (x - xbar) * (x - xbar));
        var slope = days.Zip(values, (x, y) => (x - xbar) * y).Sum() / sxx;
        var s = Math.Sqrt(days.Zip(values, (x, y) => Math.Pow(y - values.Average() - slope * (x - xbar), 2)).Sum() / 7);
        double Crossed(double x) =>
            StudentT.CDF(
                0,
                1,
                7,
                (values.Average() + slope * (x - xbar) - 0.3)
                    / (s * Math.Sqrt(1 + 1.0 / 9 + (x - xbar) * (x - xbar) / sxx))
            );
        foreach (var (quantile, chance) in new[] { (life.P10, 0.1), (life.P50, 0.5), (life.P90, 0.9) })
        {
            var at = (quantile - Invented.Start).TotalDays;
            ((Crossed(at) - Crossed(320)) / (1 - Crossed(320))).ShouldBe(chance, 1e-6);
        }
    }

    [Fact]
    public void A_falling_measurand_is_the_mirror_of_a_rising_one()
    {
        double[] falling = [900, 861, 842, 795, 770, 742, 700, 661, 640];
        var down = Line(Series(Measurands.Rpvot, falling), 225, LimitSide.Lower, Now)
            .ShouldBeOfType<RemainingLife.Crosses>();
        var up = Line(Series(Measurands.Rpvot, [.. falling.Select(value => 1000 - value)]), 775, LimitSide.Upper, Now)
            .ShouldBeOfType<RemainingLife.Crosses>();

        down.P10.ShouldBe(up.P10, TimeSpan.FromMinutes(1));
        down.P90.ShouldBe(up.P90, TimeSpan.FromMinutes(1));
        down.Trend.Slope.ShouldBeLessThan(0);
    }

    [Fact]
    public void Particles_grow_on_the_logarithmic_scale()
    {
        // Doubling every 80 days from 100: 640 is passed after 80 log2(6.4) = 214.2 days, worked by hand; now is before that.
        double[] values = [100, 141.4, 200, 282.8, 400.5];
        var series = Series(Measurands.Particles6, values);
        var life = Line(series, 640, LimitSide.Upper, Invented.Start.AddDays(161))
            .ShouldBeOfType<RemainingLife.Crosses>();

        (life.P50 - Invented.Start).TotalDays.ShouldBe(214.2, 0.5);
    }

    [Fact]
    public void The_named_cases()
    {
        Line(Series(Measurands.AcidNumber, 0.1, 0.2), 0.3, LimitSide.Upper, Now)
            .ShouldBeOfType<RemainingLife.TooFewReadings>()
            .Count.ShouldBe(2);
        Line(Series(Measurands.AcidNumber, 0.1, 0.2, 0.2, 0.3, 0.4), 0.3, LimitSide.Upper, Now)
            .ShouldBeOfType<RemainingLife.AlreadyCrossed>();
        Line(Series(Measurands.AcidNumber, 0.3, 0.25, 0.2, 0.15, 0.1), 0.5, LimitSide.Upper, Now)
            .ShouldBeOfType<RemainingLife.NotApproaching>();
        Line(Series(Measurands.AcidNumber, 0.2, 0.2, 0.2, 0.2, 0.2), 0.5, LimitSide.Upper, Now)
            .ShouldBeOfType<RemainingLife.NotApproaching>();
        Line(Series(Measurands.AcidNumber, 0.12, 0.20, 0.11, 0.19, 0.14, 0.18), 0.5, LimitSide.Upper, Now)
            .ShouldNotBeOfType<RemainingLife.Crosses>();
    }

    [Fact]
    public void Five_readings_are_the_fewest()
    {
        double[] values = [0.10, 0.12, 0.13, 0.15, 0.16];
        var few = Line(Series(Measurands.AcidNumber, values[..4]), 0.3, LimitSide.Upper, Now)
            .ShouldBeOfType<RemainingLife.TooFewReadings>();

        (few.Count, few.Needed).ShouldBe((4, 5));
        Line(Series(Measurands.AcidNumber, values), 0.3, LimitSide.Upper, Now).ShouldBeOfType<RemainingLife.Crosses>();
    }

    [Theory]
    [InlineData(Qualifier.LessThan, LimitSide.Upper, 30, false)] // somewhere below 30
    [InlineData(Qualifier.GreaterThan, LimitSide.Upper, 30, true)]
    [InlineData(Qualifier.None, LimitSide.Upper, 20, false)] // on the limit is not beyond it
    [InlineData(Qualifier.GreaterThan, LimitSide.Lower, 10, false)]
    [InlineData(Qualifier.LessThan, LimitSide.Lower, 10, true)]
    public void A_bound_crosses_a_limit_only_from_its_own_side(
        Qualifier qualifier,
        LimitSide side,
        double value,
        bool expected
    )
    {
        var series = Invented
            .History([Invented.Sample(0, 0, (Measurands.Iron, new Reading(value, qualifier)))])
            .SampleSeries(Measurands.Iron, Invented.Start, Now);

        (LifeForecast.Of(series, 20, side, Now) is RemainingLife.AlreadyCrossed).ShouldBe(expected);
    }

    [Fact]
    public void The_interval_holds_at_least_what_it_claims_for_a_line_with_independent_scatter()
    {
        // Simulation, truth known: rise 10 to 20 over 400 days, scatter 1, limit 26 at day 640. 80 % between P10 and P90 of a new
        // reading; for the true line the interval is wider than needed, so that at least 80 % must hold.
        var random = new Random(7);
        var inside = 0;
        const int Runs = 300;
        for (var run = 0; run < Runs; run++)
        {
            var values = Enumerable
                .Range(0, 9)
                .Select(i =>
                    10
                    + 1.0 * i
                    + Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble())
                );
            var life = Line(Series(Measurands.Iron, [.. values]), 26, LimitSide.Upper, Now);
            if (life is RemainingLife.Crosses crosses)
            {
                var truth = Invented.Start.AddDays(640);
                inside += crosses.P10 <= truth && truth <= crosses.P90 ? 1 : 0;
            }
            else if (life is RemainingLife.NoLatestDate open)
            {
                inside += open.P10 <= Invented.Start.AddDays(640) ? 1 : 0;
            }
        }

        (100.0 * inside / Runs).ShouldBeInRange(78, 96, "seed 7");
    }

    [Fact]
    public void More_scatter_about_the_same_line_never_narrows_the_interval() =>
        Gen.Select(Gen.Int[0, 100_000], Gen.Int[6, 14], Gen.Double[1.05, 3], Gen.Int[0, 2])
            .Holds(
                (seed, count, factor, kind) =>
                {
                    // Scatter that leaves the line as it is: what a straight line would fit to it is taken out of it first.
                    var random = new Random(seed);
                    double[] days = [.. Enumerable.Range(0, count).Select(i => 40.0 * i)];
                    double[] raw = [.. days.Select(_ => random.NextDouble() - 0.5)];
                    var fit = StraightLine.Fit(days, raw);
                    var model = new[] { LifeModel.LineToRandomWalk, LifeModel.LineItself, LifeModel.LineNewReading }[
                        kind
                    ];
                    Interval(1, out var near).ShouldBeTrue();
                    if (Interval(factor, out var wide))
                    {
                        wide.ShouldBeGreaterThanOrEqualTo(near);
                    }

                    bool Interval(double scale, out double width)
                    {
                        var values = days.Select((day, i) => 10 + day / 40 + scale * (raw[i] - fit.ValueAt(day)));
                        var series = InventedSeries.Of(Measurands.Iron, days, [.. values]);
                        var life = LifeForecast.Of(
                            series,
                            10 + 2.5 * count,
                            LimitSide.Upper,
                            InventedSeries.End(series),
                            new LifeOptions(model)
                        );
                        width = life is RemainingLife.Crosses crosses ? (crosses.P90 - crosses.P10).TotalDays : 0;
                        return life is RemainingLife.Crosses;
                    }
                },
                iter: 150
            );

    [Fact]
    public void A_trend_line_comes_with_its_doubt()
    {
        var life = Line(Series(Measurands.Rpvot, 900, 861, 842, 795, 770), 225, LimitSide.Lower, Now)
            .ShouldBeOfType<RemainingLife.Crosses>();

        life.Trend.Status.ShouldBe(LineStatus.Determined);
        life.Trend.SlopePValue.ShouldBeLessThan(0.01);
        life.Trend.ResidualStandardDeviation.ShouldBeGreaterThan(0);
    }
}
