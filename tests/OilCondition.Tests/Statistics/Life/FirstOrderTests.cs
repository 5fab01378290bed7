using MathNet.Numerics.Distributions;
using MathNet.Numerics.OdeSolvers;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

public class FirstOrderTests
{
    private static readonly double[] Times = [0, 90, 210, 260, 380, 450, 560];
    private static readonly double[] Values = [98, 91, 80, 79, 70, 66, 61];

    [Theory]
    [InlineData(100, 0.03, 0)]
    [InlineData(80, 0.03, 0.012)]
    [InlineData(20, 0.01, 0.05)]
    public void The_course_is_the_solution_of_the_balance(double start, double loss, double makeUp)
    {
        // Second route: dA/dt = −k A + m (100 − A) by Runge and Kutta.
        var course = FirstOrderCourse.WithMakeUp(start, 100, loss, makeUp);
        var path = RungeKutta.FourthOrder(start, 0, 40, 401, (_, a) => -loss * a + makeUp * (100 - a));
        course.ValueAt(40).ShouldBe(path[400], 1e-6);
        course.ValueAt(20).ShouldBe(path[200], 1e-6);
    }

    [Fact]
    public void Time_and_value_are_inverse_to_one_another_and_words_say_the_rest()
    {
        var course = FirstOrderCourse.WithMakeUp(100, 100, 0.03, 0.012);
        course.ValueAt(Estimate(course.TimeTo(60))).ShouldBe(60, 1e-10);
        course.TimeTo(course.LongRun).ShouldBeOfType<Arrival<double>.Never>();
        course.TimeTo(20).ShouldBeOfType<Arrival<double>.Never>();
        course.TimeTo(100).ShouldBeOfType<Arrival<double>.Already>();
        course.TimeTo(101).ShouldBeOfType<Arrival<double>.Already>();
        Estimate(new FirstOrderCourse(0, 100, 0.1).TimeTo(50)).ShouldBe(Math.Log(2) / 0.1, 1e-12);
        new FirstOrderCourse(50, 0, 0).TimeTo(20).ShouldBeOfType<Arrival<double>.Never>();
        new FirstOrderCourse(50, 50, 0.1).TimeTo(20).ShouldBeOfType<Arrival<double>.Never>();
        Should.Throw<ArgumentOutOfRangeException>(() => new FirstOrderCourse(1, 0, -1)).ParamName.ShouldBe("rate");
        Should.Throw<ArgumentOutOfRangeException>(() => course.ValueAt(-1)).ParamName.ShouldBe("time");
    }

    [Theory]
    [InlineData(0, 40)]
    [InlineData(0.0004, 45)]
    public void Chances_are_those_of_a_dense_grid_over_rate_and_start(double makeUp, double limit)
    {
        // Second route: rate and start on a plain grid, scatter integrated out (density SSE^(−n/2)), flat priors.
        var fit = FirstOrderLoss.Fit(Times, Values, 100, makeUp);
        var law = fit.Below(limit, 1e5);
        double[] whens = [100, 300, 600];
        var below = new double[whens.Length];
        double all = 0;
        double rates = 0;
        for (var i = 0; i <= 300; i++)
        {
            var loss = 0.003 * i / 300;
            for (var j = 0; j <= 300; j++)
            {
                var course = FirstOrderCourse.WithMakeUp(88 + 20.0 * j / 300, 100, loss, makeUp);
                var squares = Times.Zip(Values, (t, y) => Math.Pow(y - course.ValueAt(t), 2)).Sum();
                var weight = Math.Pow(squares, -0.5 * Times.Length);
                all += weight;
                rates += weight * loss;
                for (var k = 0; k < whens.Length; k++)
                {
                    below[k] += course.ValueAt(560 + whens[k]) < limit ? weight : 0;
                }
            }
        }

        fit.LossRate.ShouldBe(rates / all, 0.01 * rates / all);
        for (var k = 0; k < whens.Length; k++)
        {
            law.ChanceBefore(whens[k]).ShouldBe(below[k] / all, 0.01, $"{whens[k]}");
        }
    }

    [Fact]
    public void A_fit_of_exact_readings_finds_what_made_them()
    {
        var truth = FirstOrderCourse.WithMakeUp(100, 100, 0.002, 0.0005);
        var fit = FirstOrderLoss.Fit(Times, [.. Times.Select(truth.ValueAt)], 100, 0.0005);
        fit.LossRate.ShouldBe(0.002, 1e-7);
        fit.Start.ShouldBe(100, 1e-4);
        fit.Below(30, 1e5).TryTime(0.5, 0, out var time).ShouldBeTrue();
        time.ShouldBe(Estimate(truth.TimeTo(30)) - 560, 0.1);
        fit.ChanceEverBelow(15).ShouldBeLessThan(1e-6);
        fit.ChanceEverBelow(25).ShouldBeGreaterThan(1 - 1e-6);
    }

    [Fact]
    public void Make_up_that_is_not_told_makes_the_loss_look_smaller()
    {
        FirstOrderLoss
            .Fit(Times, Values, 100, 0.0004)
            .LossRate.ShouldBeGreaterThan(FirstOrderLoss.Fit(Times, Values).LossRate);
    }

    [Fact]
    public void What_cannot_be_fitted_is_named()
    {
        FirstOrderLoss.Fit([0, 1, 2], [3, 2, 1]).IsDetermined.ShouldBeFalse();
        FirstOrderLoss.Fit([1, 1, 1, 1], [3, 2, 1, 2]).IsDetermined.ShouldBeFalse();
        Should.Throw<InvalidOperationException>(() => FirstOrderLoss.Fit([], []).Below(1, 1e5));
        Should
            .Throw<ArgumentException>(() => FirstOrderLoss.Fit([1, 0, 2, 3], [4, 3, 2, 1]))
            .ParamName.ShouldBe("times");
        Should
            .Throw<ArgumentOutOfRangeException>(() => FirstOrderLoss.Fit(Times, Values, 100, -1))
            .ParamName.ShouldBe("makeUpRate");
    }

    [Fact]
    public void An_interval_of_the_loss_rate_holds_it_as_often_as_it_says()
    {
        var random = new Random(20260502);
        var inside = 0;
        const int Runs = 1000;
        for (var run = 0; run < Runs; run++)
        {
            double[] values = [.. Times.Select(t => 100 * Math.Exp(-0.001 * t) + 2 * DecayNoiseSource.Normal(random))];
            var chance = FirstOrderLoss.Fit(Times, values).Below(40, 1e5).ChanceBefore(Math.Log(2.5) / 0.001 - 560);
            inside += chance is >= 0.05 and <= 0.95 ? 1 : 0;
        }

        // Four standard errors of a binomial share of 90 % are 3.8 points.
        (100.0 * inside / Runs).ShouldBeInRange(86, 94);
    }

    private static double Estimate(Arrival<double> arrival) =>
        arrival.ShouldBeOfType<Arrival<double>.Expected>().Estimate;
}
