using MathNet.Numerics.Integration;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

public class WeibullTests
{
    private static readonly double[] Failures = [54, 187, 216, 240, 244, 335, 361, 373, 375, 386];
    private static readonly double[] Suspensions = [.. Enumerable.Repeat(500.0, 10)];

    [Fact]
    public void No_neighbour_on_a_grid_has_a_higher_likelihood()
    {
        // Second route: the likelihood written out and searched.
        var fit = WeibullLife.Fit(Failures, Suspensions);
        double Log(double shape, double scale) =>
            Failures.Sum(t => Math.Log(shape / scale) + (shape - 1) * Math.Log(t / scale))
            - Failures.Concat(Suspensions).Sum(t => Math.Pow(t / scale, shape));
        Log(fit.Shape, fit.Scale).ShouldBe(fit.LogLikelihood, 1e-9);
        var best = (Shape: 0.0, Scale: 0.0, Log: double.NegativeInfinity);
        for (var i = 0; i < 200; i++)
        {
            for (var j = 0; j < 200; j++)
            {
                var (shape, scale) = (1 + 0.01 * i, 400 + 2.0 * j);
                var log = Log(shape, scale);
                best = log > best.Log ? (shape, scale, log) : best;
            }
        }

        best.Log.ShouldBeLessThanOrEqualTo(fit.LogLikelihood);
        fit.Shape.ShouldBe(best.Shape, 0.011);
        fit.Scale.ShouldBe(best.Scale, 2.2);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(300)]
    [InlineData(2500)]
    [InlineData(20000)]
    public void Mean_residual_life_is_the_integral_of_the_conditional_reliability(double age)
    {
        var fit = WeibullLife.Fit(Failures, Suspensions);
        var far = 30 * fit.Scale;
        var integral = 0.0;
        for (var i = 0; i < 600; i++)
        {
            integral += GaussLegendreRule.Integrate(
                d => fit.ConditionalReliability(age, d),
                far * i / 600,
                far * (i + 1) / 600,
                12
            );
        }

        fit.MeanResidualLife(age).ShouldBe(integral, 1e-6 * integral);
    }

    [Fact]
    public void Ages_and_reliability_are_inverse_to_one_another()
    {
        var fit = WeibullLife.Fit(Failures, Suspensions);
        foreach (var fraction in new[] { 0.01, 0.1, 0.5, 0.9 })
        {
            fit.Reliability(fit.AgeAt(fraction)).ShouldBe(1 - fraction, 1e-12);
            var interval = fit.AgeInterval(fraction, 0.9);
            interval.Lower.ShouldBeLessThan(fit.AgeAt(fraction));
            interval.Upper.ShouldBeGreaterThan(fit.AgeAt(fraction));
        }
    }

    [Fact]
    public void The_unit_of_age_changes_nothing_but_the_unit()
    {
        var hours = WeibullLife.Fit(Failures, Suspensions);
        var days = WeibullLife.Fit([.. Failures.Select(t => t / 24)], [.. Suspensions.Select(t => t / 24)]);
        days.Shape.ShouldBe(hours.Shape, 1e-9);
        days.Scale.ShouldBe(hours.Scale / 24, 1e-9);
        days.ShapeStandardError.ShouldBe(hours.ShapeStandardError, 1e-8);
        days.ScaleInterval(0.9).Upper.ShouldBe(hours.ScaleInterval(0.9).Upper / 24, 1e-8);
    }

    [Fact]
    public void A_longer_wait_of_the_survivors_never_shortens_the_life()
    {
        var longer = WeibullLife.Fit(Failures, [.. Suspensions.Select(t => t + 200)]);
        longer.AgeAt(0.5).ShouldBeGreaterThan(WeibullLife.Fit(Failures, Suspensions).AgeAt(0.5));
    }

    [Fact]
    public void What_cannot_be_fitted_is_named()
    {
        WeibullLife.Fit([5], [6, 7]).Status.ShouldBe(WeibullStatus.TooFewFailures);
        WeibullLife.Fit([], []).Status.ShouldBe(WeibullStatus.TooFewFailures);
        WeibullLife.Fit([5, 5, 5], [3]).Status.ShouldBe(WeibullStatus.NoSpread);
        WeibullLife.Fit([5, 5, 5], [8]).Status.ShouldBe(WeibullStatus.Determined);
        Should.Throw<InvalidOperationException>(() => WeibullLife.Fit([5], []).AgeAt(0.1));
        Should.Throw<ArgumentOutOfRangeException>(() => WeibullLife.Fit([0, 1], [])).ParamName.ShouldBe("failures");
        Should
            .Throw<ArgumentOutOfRangeException>(() => WeibullLife.Fit([1, 2], [-1]))
            .ParamName.ShouldBe("suspensions");
    }
}
