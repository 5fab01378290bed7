using CsCheck;
using MathNet.Numerics.Distributions;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Sampling;
using OilCondition.Tests.Statistics;

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
            ((Crossed(at) - Crossed(320)) / (1 - Crossed(320))).ShouldBe(chance, 2e-3); // between two points of the law's table
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
    [InlineData(Qualifier.GreaterThan, LimitSide.Upper, 20, true)] // but more than the limit is
    [InlineData(Qualifier.LessThan, LimitSide.Lower, 20, true)]
    [InlineData(Qualifier.Approximately, LimitSide.Upper, 20, false)]
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
        Gen.Select(Gen.Int[0, 100_000], Gen.Int[6, 14], Gen.Double[1.05, 3], Gen.Bool)
            .Holds(
                (seed, count, factor, itself) =>
                {
                    // Scatter that leaves the line as it is: what a straight line would fit to it is taken out of it first.
                    var random = new Random(seed);
                    double[] days = [.. Enumerable.Range(0, count).Select(i => 40.0 * i)];
                    double[] raw = [.. days.Select(_ => random.NextDouble() - 0.5)];
                    var fit = StraightLine.Fit(days, raw);
                    var model = itself ? LifeModel.LineItself : LifeModel.LineNewReading;
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

    [Theory]
    [InlineData(8, 0.9)]
    [InlineData(13, 0.02)]
    public void A_wild_reading_moves_the_early_date_by_little(int at, double wild)
    {
        // Rise 0.01 a month about a line, scatter 0.003: one bottle that was mixed up must not move the date to plan with.
        var random = new Random(21);
        double[] days = [.. Enumerable.Range(0, 18).Select(i => 30.0 * i)];
        double[] values = [.. days.Select(day => 0.1 + day / 3000 + 0.003 * DecayNoiseSource.Normal(random))];
        double Early(double[] readings)
        {
            var series = InventedSeries.Of(Measurands.AcidNumber, days, readings);
            var life = InventedSeries.Default(series, 0.5).ShouldBeAssignableTo<RemainingLife.Forecast>()!;
            life.Crossing.TryAt(0.1, out var p10).ShouldBeTrue();
            return (p10 - InventedSeries.End(series)).TotalDays;
        }

        var before = Early(values);
        values[at] = wild;
        Early(values).ShouldBe(before, 0.1 * before);
    }

    [Fact]
    public void A_change_to_the_better_ends_what_was_before()
    {
        // A treatment that nobody recorded brings 0.25 down to 0.1: what was before tells nothing.
        var random = new Random(5);
        double[] days = [.. Enumerable.Range(0, 20).Select(i => 30.0 * i)];
        double[] values =
        [
            .. days.Select((_, i) => 0.002 * i + (i < 8 ? 0.25 : 0.1) + 0.004 * DecayNoiseSource.Normal(random)),
        ];
        var whole = InventedSeries.Of(Measurands.AcidNumber, days, values);
        var since = InventedSeries.Of(Measurands.AcidNumber, days[8..], values[8..]);
        var life = InventedSeries.Default(whole, 0.3).ShouldBeAssignableTo<RemainingLife.Forecast>()!;
        var alone = InventedSeries.Default(since, 0.3).ShouldBeAssignableTo<RemainingLife.Forecast>()!;

        life.Series.Points.Count.ShouldBe(12);
        foreach (var years in new[] { 1, 3, 10 })
        {
            life.Crossing.ChanceBefore(InventedSeries.End(whole).AddYears(years))
                .ShouldBe(alone.Crossing.ChanceBefore(InventedSeries.End(since).AddYears(years)), 1e-3);
        }
    }

    [Fact]
    public void A_yearly_cycle_goes_on_ahead()
    {
        // Oxidation that swings by 4 about a slow rise, highest in the third month of each year of the series; the limit lies half a swing above
        // the line at the end, so that it is passed at a peak if at all.
        var random = new Random(9);
        double[] days = [.. Enumerable.Range(0, 37).Select(i => 365.25 / 12 * i)];
        double[] values =
        [
            .. days.Select(day =>
                20 + day / 365.25 + 4 * Math.Sin(2 * Math.PI * day / 365.25) + 0.3 * DecayNoiseSource.Normal(random)
            ),
        ];
        var series = InventedSeries.Of(Measurands.Oxidation, days, values);
        var life = InventedSeries.Default(series, 25).ShouldBeAssignableTo<RemainingLife.Forecast>()!;
        var end = InventedSeries.End(series);

        // A month after the last reading the swing is +2, at three months +4 on 23.2.
        life.Crossing.ChanceBefore(end.AddDays(25)).ShouldBeLessThan(0.1);
        life.Crossing.ChanceBefore(end.AddDays(85)).ShouldBeGreaterThan(0.9);

        // With a limit beyond this year's peak the trough says nothing new.
        var far = InventedSeries.Default(series, 28).ShouldBeAssignableTo<RemainingLife.Forecast>()!;
        var (peak, trough) = (far.Crossing.ChanceBefore(end.AddDays(91)), far.Crossing.ChanceBefore(end.AddDays(270)));
        trough.ShouldBe(peak, 0.02);
        far.Crossing.ChanceBefore(end.AddDays(456)).ShouldBeGreaterThan(peak + 0.1);
    }

    [Fact]
    public void Readings_that_do_not_move_do_not_approach()
    {
        // An acid number that the laboratory rounds to one digit: there is no scatter, and rounding must not become a growth. A last digit of 0.1 hides
        // 0.1/√12 = 0.029, so that 0.15 would not be far; 0.5 is fourteen of these.
        foreach (var count in new[] { 5, 8, 16 })
        {
            var flat = InventedSeries.Of(
                Measurands.AcidNumber,
                [.. Enumerable.Range(0, count).Select(i => 60.0 * i)],
                [.. Enumerable.Repeat(0.1, count)]
            );
            var life = InventedSeries.Default(flat, 0.5).ShouldBeAssignableTo<RemainingLife.Forecast>()!;
            life.Crossing.ChanceBefore(life.Crossing.AsOf.AddDays(60)).ShouldBeLessThan(0.02);
        }
    }

    [Fact]
    public void Scatter_is_not_taken_for_less_than_the_error_of_the_method()
    {
        // Two results of the method may differ by 0.1, so one has a standard deviation of 0.1/2.8 = 0.036. Seven readings that happen to agree say
        // that the level is known to 0.036/√7 = 0.0135: 0.135 is beyond 2.6 of them, 0.02 away when the readings scattered by 0.0001.
        double[] days = [.. Enumerable.Range(0, 7).Select(i => 60.0 * i)];
        double[] values = [0.1, 0.1001, 0.0999, 0.1, 0.1001, 0.1, 0.0999];
        RemainingLife.Forecast Life(double precision)
        {
            var measurand = new Measurand(
                "strong-acid",
                "strong acid",
                "mgKOH/g",
                LimitSide.Upper,
                NaturalScale.Linear,
                0,
                50,
                "invented",
                absolutePrecision: precision,
                precisionSource: precision > 0 ? Source.UserData("invented") : null
            );
            return InventedSeries
                .Default(InventedSeries.Of(measurand, days, values), 0.135)
                .ShouldBeAssignableTo<RemainingLife.Forecast>()!;
        }

        Life(0).Crossing.ChanceBefore(Invented.Start.AddDays(720)).ShouldBeLessThan(0.02);
        Life(0.1).Crossing.ChanceBefore(Invented.Start.AddDays(720)).ShouldBeInRange(0.04, 0.4);
    }

    [Fact]
    public void A_first_reading_long_ago_still_has_its_chances()
    {
        // Nothing was read for forty years: the chance of today is asked of a law that reaches so far.
        var series = InventedSeries.Wandering(5);
        var late = LifeForecast
            .Of(series, 0.5, LimitSide.Upper, InventedSeries.End(series).AddYears(40))
            .ShouldBeAssignableTo<RemainingLife.Forecast>()!;
        late.Crossing.ChanceUnseenBefore(late.Crossing.AsOf).ShouldBeGreaterThan(0.85);
        late.Crossing.ChanceBefore(late.Crossing.AsOf.AddYears(29)).ShouldBeInRange(0, 1);
        if (late.Crossing.TryAt(0.1, out var at))
        {
            at.ShouldBeLessThanOrEqualTo(late.Crossing.AsOf.AddDays(LifeForecast.HorizonDays + 1));
        }
    }

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
