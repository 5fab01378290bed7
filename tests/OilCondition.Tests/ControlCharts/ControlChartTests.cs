using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using OilCondition.ControlCharts;
using OilCondition.Tests.Statistics;

namespace OilCondition.Tests.ControlCharts;

public class ControlChartTests
{
    [Fact]
    public void Exact_limits_widen_to_the_steady_ones()
    {
        var exact = new EwmaChart(50, 2, 0.2, 3);
        var steady = new EwmaChart(50, 2, 0.2, 3, EwmaLimits.Steady);
        exact.HalfWidthAt(1).ShouldBe(3 * 2 * 0.2, 1e-12);
        exact.HalfWidthAt(2).ShouldBe(3 * 2 * Math.Sqrt(0.2 * 0.2 + 0.16 * 0.16), 1e-12);
        exact.HalfWidthAt(200).ShouldBe(steady.HalfWidthAt(1), 1e-12);
        new EwmaChart(50, 2, 1, 3).HalfWidthAt(1).ShouldBe(6, 1e-12);
    }

    [Fact]
    public void Average_sees_a_lasting_shift_that_single_readings_hide()
    {
        double[] values = [.. Enumerable.Repeat(11.5, 12)];
        new EwmaChart(10, 1, 0.2, 3).Plot(values).Count(p => p.Signal == ChartSignal.Above).ShouldBeGreaterThan(5);
        new EwmaChart(10, 1, 1, 3).Plot(values).ShouldAllBe(p => p.Signal == ChartSignal.None);
        new EwmaChart(-10, 1, 0.2, 3).Plot([.. values.Select(v => -v)])[^1].Signal.ShouldBe(ChartSignal.Below);
    }

    [Theory]
    [InlineData(0, 0.5, 5)]
    [InlineData(1, 0.5, 5)]
    [InlineData(0.5, 0.25, 8)]
    [InlineData(2, 0.5, 4)]
    public void Average_run_length_agrees_with_the_Markov_chain(double shift, double allowance, double interval) =>
        CusumRunLength
            .TwoSided(shift, allowance, interval)
            .ShouldBe(
                1 / (1 / Chain(shift - allowance, interval, 300) + 1 / Chain(-shift - allowance, interval, 300)),
                2e-3 * Chain(shift - allowance, interval, 300)
            );

    [Theory]
    [InlineData(0, 465)]
    [InlineData(0.5, 38.0)]
    [InlineData(1, 10.4)]
    [InlineData(1.5, 5.75)]
    [InlineData(2, 4.01)]
    [InlineData(3, 2.57)]
    public void Average_run_length_agrees_with_the_usual_table(double shift, double published) =>
        // Montgomery, Statistical Quality Control, table of two-sided CUSUM run lengths for k = 1/2, h = 5 (from memory).
        CusumRunLength.TwoSided(shift).ShouldBe(published, 0.006 * published);

    [Fact]
    public void Average_run_length_is_that_of_simulated_charts()
    {
        var random = new Random(31);
        var chart = CusumChart.ForOneSigma(0, 1);
        const int Runs = 2000;
        double total = 0;
        for (var run = 0; run < Runs; run++)
        {
            double[] values = [.. Enumerable.Range(0, 200).Select(_ => 1 + DecayNoiseSource.Normal(random))];
            total += chart.Plot(values).TakeWhile(p => p.Signal == ChartSignal.None).Count() + 1;
        }

        // Run lengths scatter by about 5: standard error 0.11.
        (total / Runs).ShouldBe(CusumRunLength.TwoSided(1), 0.45);
    }

    [Fact]
    public void Siegmund_is_smooth_through_zero_drift_and_near_the_exact_length()
    {
        CusumRunLength.Siegmund(0.5, 0.5, 5).ShouldBe(CusumRunLength.Siegmund(0.5 + 1e-7, 0.5, 5), 1e-4);
        CusumRunLength.Siegmund(0.5, 0.5, 5).ShouldBe(CusumRunLength.TwoSided(0.5, 0.5, 5), 0.4);
        double.IsFinite(CusumRunLength.Siegmund(0, 5, 50)).ShouldBeTrue();
        double.IsFinite(CusumRunLength.Siegmund(10, 5, 50)).ShouldBeTrue();
        CusumRunLength.TwoSided(8, 0.5, 5).ShouldBe(1, 0.01);
        Should.Throw<ArgumentOutOfRangeException>(() => CusumRunLength.TwoSided(0, 2, 20));
    }

    [Fact]
    public void Cumulative_sums_tell_direction_and_beginning()
    {
        double[] values = [10, 10, 10, 12, 12, 12, 12];
        var points = new CusumChart(10, 0.5, 4).Plot(values);
        points.Select(p => p.Upper).ShouldBe([0, 0, 0, 1.5, 3, 4.5, 6]);
        points[5].Signal.ShouldBe(ChartSignal.Above);
        points[5].UpperRun.ShouldBe(3);
        new CusumChart(10, 0.5, 4).Plot([.. values.Select(v => 20 - v)])[5].Signal.ShouldBe(ChartSignal.Below);
        new CusumChart(10, 0.5, 4).Plot([]).ShouldBeEmpty();
    }

    [Fact]
    public void Individuals_chart_takes_its_scale_from_neighbours_not_from_a_drift()
    {
        var chart = IndividualsChart.Of([10, 11, 10, 11, 20, 21, 20, 21]);
        chart.MeanMovingRange.ShouldBe(15.0 / 7, 1e-12);
        chart.UpperLimit.ShouldBe(chart.Mean + 3 * 15.0 / 7 / 1.128, 1e-12);
        chart.MovingRangeLimit.ShouldBe(3.267 * 15.0 / 7, 1e-12);
        chart.PlotMovingRange([10, 11, 20])[1].Signal.ShouldBe(ChartSignal.Above);
        chart
            .Plot([0.5, 15, 40])
            .Select(p => p.Signal)
            .ShouldBe([ChartSignal.Below, ChartSignal.None, ChartSignal.Above]);
    }

    /// <summary>One side after Brook and Evans 1972: the sum in steps of a grid, its mean first passage from 0.</summary>
    private static double Chain(double drift, double interval, int states)
    {
        var width = 2 * interval / (2 * states - 1);
        var system = Matrix<double>.Build.Dense(
            states,
            states,
            (i, j) =>
            {
                var to = Normal.CDF(drift, 1, (j - i + 0.5) * width);
                var from = j == 0 ? 0 : Normal.CDF(drift, 1, (j - i - 0.5) * width);
                return (i == j ? 1 : 0) - (to - from);
            }
        );
        return system.Solve(Vector<double>.Build.Dense(states, 1))[0];
    }
}
