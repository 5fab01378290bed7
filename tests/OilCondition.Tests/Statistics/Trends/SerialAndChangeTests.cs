using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

public class SerialAndChangeTests
{
    [Fact]
    public void Lag_one_correlation_agrees_with_R()
    {
        // R 4.2.2, acf(Nile): 0.498408184133. The Nile series is data set CP1 of the reference files (R datasets).
        double[] nile =
        [
            .. Reference
                .ReferenceFolder.Rows("trend-data.csv")
                .Where(r => r["dataset"] == "CP1")
                .Select(r => double.Parse(r["y"], System.Globalization.CultureInfo.InvariantCulture)),
        ];
        SerialCorrelation.LagOne(nile, nile.Average()).ShouldBe(0.498408184133, 1e-11);
    }

    [Fact]
    public void Nothing_that_varies_gives_no_correlation()
    {
        SerialCorrelation.LagOne([2, 2, 2], 2).ShouldBe(0);
        SerialCorrelation.EffectiveCount(30, 0).ShouldBe(30);
        SerialCorrelation.EffectiveCount(30, -0.5).ShouldBe(90);
    }

    [Fact]
    public void A_step_on_a_line_agrees_with_regression_in_R()
    {
        // R 4.2.2: lm(y ~ t + z) for every place of the step z; best place 6, its coefficient and t probability, times 7 places.
        double[] t = [.. Enumerable.Range(0, 12).Select(i => (double)i)];
        double[] y = [10, 11.2, 11.9, 13.1, 14.2, 14.8, 9.9, 11.3, 12.1, 12.8, 14.1, 15.2];
        var step = LineStep.Find(t, y);
        step.FirstAfter.ShouldBe(6);
        step.Step.ShouldBe(-5.94952380952, 1e-9);
        step.Correlation.ShouldBe((-0.231748745504 + 3 / 12.0) / (1 - 4 / 12.0), 1e-9);
        LineStep.IsBend(t, y, step).ShouldBeFalse();

        // That correlation of 0.027 divides F by 1.056; for t near 32 with 9 degrees of freedom the probability goes with t^−9, by about 1.28.
        step.PValue.ShouldBe(7 * 5.16957986585e-10 * 1.28, 0.05 * 7 * 5.17e-10);
    }

    [Fact]
    public void A_bend_is_no_step()
    {
        double[] t = [.. Enumerable.Range(0, 14).Select(i => (double)i)];
        foreach (var bent in new Func<double, double>[] { x => x * x, x => 100 * Math.Exp(-x / 5) })
        {
            double[] y = [.. t.Select(bent)];
            LineStep.IsBend(t, y, LineStep.Find(t, y)).ShouldBeTrue();
        }

        // So late a rise is nearer to a step than to a parabola.
        double[] times = [.. Enumerable.Range(0, 40).Select(i => (double)i)];
        double[] late = [.. times.Select(x => Math.Exp(x / 4))];
        LineStep.IsBend(times, late, LineStep.Find(times, late)).ShouldBeTrue();
        LineStep.Find([1, 2, 3], [1, 2, 3]).IsTried.ShouldBeFalse();
        LineStep.IsBend([1, 2, 3], [1, 2, 3], LineStep.Find([1, 2, 3], [1, 2, 3])).ShouldBeFalse();
        LineStep.Find([1, 2, 3], [1, 2, 3]).PValue.ShouldBe(1);
        LineStep.Find(t, [.. t.Select(x => 3 * x)]).PValue.ShouldBe(1);
    }
}
