using System.Globalization;
using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using OilCondition.Cleanup;
using OilCondition.Statistics;
using OilCondition.Tests.Reference;
using UnitsNet;

namespace OilCondition.Tests.Cleanup.Curve;

/// <summary>What a curve leaves of each reading, and the errors of its parts, against certified values, another library and drawn runs.</summary>
public class CleanupResidualTests
{
    private static readonly double[] Hours = Runs.Evenly(14, 12);

    /// <summary>NIST StRD Misra1a, y = b1 (1 − exp(−b2 x)): a start of 0, certified values of its file, eleven digits.</summary>
    [Fact]
    [Trait("Category", "Reference")]
    public void Misra1a_has_its_certified_errors_and_residuals()
    {
        var rows = ReferenceFolder.Rows("nist/Misra1a.csv");
        double[] x = [.. rows.Select(row => Number(row["x"]))];
        double[] y = [.. rows.Select(row => Number(row["y"]))];
        var options = new CleanupOptions(DecayNoise.Constant, startedAt: Runs.At(0), start: 0);
        var curve = CleanupCurve.Fit(Runs.Moments(x), y, options);
        var errors = curve.Errors!;

        Agree(errors.Floor, 2.7070075241E+00);
        Agree(errors.RatePerHour, 7.2668688436E-06);
        errors.Start.ShouldBe(0);
        errors.CovarianceStartFloor.ShouldBe(0);
        errors.CovarianceStartRatePerHour.ShouldBe(0);
        Agree(curve.ResidualStandardDeviation, 1.0187876330E-01);
        curve.DegreesOfFreedom.ShouldBe(12);
        curve.FittedReadings.Count.ShouldBe(14);
        Agree(curve.FittedReadings.Sum(one => one.Residual!.Value * one.Residual.Value), 1.2455138894E-01);
        Agree(curve.FittedReadings.Sum(one => one.Standardised!.Value * one.Standardised.Value), 12);
        foreach (var (one, index) in curve.FittedReadings.Select((one, index) => (one, index)))
        {
            one.Reading.Value.ShouldBe(y[index]);
            Agree(one.Fitted, 2.3894212918E+02 * (1 - Math.Exp(-5.5015643181E-04 * x[index])));
        }
    }

    /// <summary>The errors of MathNet's Levenberg-Marquardt with 1/variance of each reading for weight, from its own derivatives.</summary>
    [Theory]
    [InlineData(DecayNoise.Constant)]
    [InlineData(DecayNoise.Proportional)]
    [InlineData(DecayNoise.TwoComponent)]
    public void Errors_and_covariances_are_those_of_another_library(DecayNoise noise)
    {
        var values = Drawn(Hours, new Random(7));
        var curve = CleanupCurve.Fit(Runs.Moments(Hours), values, new CleanupOptions(noise, detectSlowStart: false));
        var weights = Hours.Select(hour => Math.Pow(curve.ScatterAt(curve.ValueAt(Runs.At(hour))), -2)).ToList();
        var model = ObjectiveFunction.NonlinearModel(
            (p, x) => x.Map(hour => Runs.Exponential(hour, p[0], p[1], p[2])),
            Vector<double>.Build.Dense(Hours),
            Vector<double>.Build.Dense(values),
            Vector<double>.Build.DenseOfEnumerable(weights)
        );
        var peer = new LevenbergMarquardtMinimizer().FindMinimum(
            model,
            Vector<double>.Build.Dense([curve.Start, curve.Floor, curve.RatePerHour])
        );
        var errors = curve.Errors!;

        peer.MinimizingPoint[2].ShouldBe(curve.RatePerHour, 1e-5);
        errors.Start.ShouldBe(peer.StandardErrors[0], 1e-3 * errors.Start);
        errors.Floor.ShouldBe(peer.StandardErrors[1], 1e-3 * errors.Floor);
        errors.RatePerHour.ShouldBe(peer.StandardErrors[2], 1e-3 * errors.RatePerHour);
        Near(errors.CovarianceStartFloor, peer.Covariance[0, 1], errors.Start * errors.Floor);
        Near(errors.CovarianceStartRatePerHour, peer.Covariance[0, 2], errors.Start * errors.RatePerHour);
        Near(errors.CovarianceFloorRatePerHour, peer.Covariance[1, 2], errors.Floor * errors.RatePerHour);
    }

    [Fact]
    public void Residuals_are_over_the_scatter_that_was_fitted_for_each()
    {
        var values = Drawn(Hours, new Random(7));
        var curve = CleanupCurve.Fit(
            Runs.Moments(Hours),
            values,
            new CleanupOptions(DecayNoise.Proportional, detectSlowStart: false)
        );
        var logarithmic = CleanupCurve.Fit(Runs.Moments(Hours), values, CleanupOptions.ForCounts);

        for (var i = 0; i < values.Length; i++)
        {
            // In proportion, so that the part of the curve over s; of the logarithm, so that ln over s.
            var one = curve.FittedReadings[i];
            one.Residual!.Value.ShouldBe(values[i] - one.Fitted, 1e-9);
            one.Standardised!.Value.ShouldBe((values[i] / one.Fitted - 1) / curve.ResidualStandardDeviation, 1e-9);
            var other = logarithmic.FittedReadings[i];
            var expected = Math.Log(values[i] / other.Fitted) / logarithmic.ResidualStandardDeviation;
            other.Standardised!.Value.ShouldBe(expected, 1e-9);
        }
    }

    /// <summary>What the estimates of 2000 drawn runs scatter by is what each run says of its own, to the 1.6 % of so many runs and the weights' own error.</summary>
    [Fact]
    public void Drawn_runs_scatter_by_their_stated_errors()
    {
        var random = new Random(20);
        List<double[]> estimates = [];
        List<double[]> variances = [];
        double[] hours = Runs.Evenly(20, 14);
        for (var run = 0; run < 2000; run++)
        {
            var curve = CleanupCurve.Fit(
                Runs.Moments(hours),
                Drawn(hours, random),
                new CleanupOptions(detectSlowStart: false)
            );
            var errors = curve.Errors!;
            estimates.Add([curve.Start, curve.Floor, curve.RatePerHour]);
            variances.Add([Square(errors.Start), Square(errors.Floor), Square(errors.RatePerHour)]);
        }

        for (var part = 0; part < 3; part++)
        {
            var mean = estimates.Average(one => one[part]);
            var scattered = Math.Sqrt(estimates.Average(one => Square(one[part] - mean)));
            var stated = Math.Sqrt(variances.Average(one => one[part]));
            (stated / scattered).ShouldBeInRange(0.93, 1.07, $"part {part}");
        }
    }

    /// <summary>The likelihood written out, its second derivatives by differences, scaled by m/(m − 3) for the fitted parts.</summary>
    [Fact]
    public void Errors_with_readings_below_a_limit_are_those_of_the_likelihood()
    {
        double[] hours = [0, 2, 4, 6, 8, 12, 16, 20, 24, 28];
        Reading[] readings =
        [
            .. new double[] { 203, 134, 92, 60, 45, 25, 15, 13 }.Select(one => new Reading(one)),
            new(10, Qualifier.LessThan),
            new(10, Qualifier.LessThan),
        ];
        var curve = CleanupCurve.Fit(Runs.Moments(hours), readings, new CleanupOptions(DecayNoise.Constant));
        double[] at = [curve.Start, curve.Floor, curve.RatePerHour, Math.Log(curve.ResidualStandardDeviation)];
        var steps = at.Select(one => 1e-4 * Math.Abs(one)).ToArray();
        var information = Matrix<double>.Build.Dense(4, 4, (a, b) => -Second(hours, readings, at, steps, a, b));
        var covariance = information.Inverse() * (8 / 5.0);
        var errors = curve.Errors!;

        curve.DegreesOfFreedom.ShouldBe(5);
        curve.Floor.ShouldBeGreaterThan(0);
        errors.Start.ShouldBe(Math.Sqrt(covariance[0, 0]), 2e-3 * errors.Start);
        errors.Floor.ShouldBe(Math.Sqrt(covariance[1, 1]), 2e-3 * errors.Floor);
        errors.RatePerHour.ShouldBe(Math.Sqrt(covariance[2, 2]), 2e-3 * errors.RatePerHour);
        Near(errors.CovarianceFloorRatePerHour, covariance[1, 2], errors.Floor * errors.RatePerHour);
        Near(errors.CovarianceStartFloor, covariance[0, 1], errors.Start * errors.Floor);
        Near(errors.CovarianceStartRatePerHour, covariance[0, 2], errors.Start * errors.RatePerHour);
        curve.FittedReadings.Count(one => one.Residual is null && one.Standardised is null).ShouldBe(2);
        var first = curve.FittedReadings[0];
        first.Residual.ShouldBe(203 - curve.Start);
        first.Standardised!.Value.ShouldBe(
            (203 - curve.Start) / curve.ResidualStandardDeviation / Math.Sqrt(8 / 5.0),
            1e-9
        );
    }

    [Fact]
    public void Beside_temperatures_the_curve_is_that_of_the_warming_oil()
    {
        // k doubles in 23.1 K at 0.03 a kelvin; the oil warms by 20 K in the first half.
        Temperature?[] oil =
        [
            .. Hours.Select(hour => Temperature.FromDegreesCelsius(30 + Math.Min(20, 20 * hour / 6))),
        ];
        var readings = Drawn(Hours, new Random(5)).Select(value => new Reading(value)).ToList();
        var curve = CleanupCurve.Fit(Runs.Moments(Hours), readings, oil);

        curve.RatePerKelvin.ShouldNotBeNull();
        foreach (var one in curve.FittedReadings)
        {
            one.Residual.ShouldBe(one.Reading.Value - curve.ValueAt(one.At));
            one.Standardised!.Value.ShouldBe(one.Residual!.Value / curve.ScatterAt(one.Fitted), 1e-6);
        }
    }

    [Fact]
    public void Positions_are_those_of_the_lists_that_were_given()
    {
        double[] hours = [9, 0, 5, 2, 14, 20, 25];
        double[] values = [325, 810, 470, 655, 221, 140, 99];
        var curve = CleanupCurve.Fit(Runs.Moments(hours), values, new CleanupOptions(startedAt: Runs.At(1)));

        curve.FittedReadings.Select(one => one.Position).ShouldBe([3, 2, 0, 4, 5, 6]);
        curve.FittedReadings.Select(one => one.Reading.Value).ShouldBe([655, 470, 325, 221, 140, 99]);
        curve.FittedReadings.Select(one => one.At).ShouldBe(Runs.Moments([2, 5, 9, 14, 20, 25]));
    }

    [Fact]
    public void What_is_known_has_no_error_and_no_curve_has_none_to_state()
    {
        var values = Drawn(Hours, new Random(3));
        var known = CleanupCurve.Fit(Runs.Moments(Hours), values, new CleanupOptions(floor: 60, ratePerHour: 0.4));
        known.Errors!.Start.ShouldBeGreaterThan(0);
        known.Errors.Floor.ShouldBe(0);
        known.Errors.RatePerHour.ShouldBe(0);
        known.DegreesOfFreedom.ShouldBe(known.Count - 1);

        var none = CleanupCurve.Fit(Runs.Moments([0, 1]), [3.0, 2]);
        none.Errors.ShouldBeNull();
        none.FittedReadings.ShouldBeEmpty();
        none.DegreesOfFreedom.ShouldBe(0);
    }

    [Fact]
    public void They_print_themselves()
    {
        double[] hours = [0, 1, 2, 3];
        double[] values = [.. hours.Select((hour, i) => 60 + 400 * Math.Exp(-0.4 * hour) + (i == 1 ? 3 : 0))];
        var options = new CleanupOptions(DecayNoise.Constant, start: 460, startedAt: Runs.At(0), floor: 60);
        var curve = CleanupCurve.Fit(Runs.Moments(hours), values, options);

        curve
            .FittedReadings[0]
            .ToString()
            .ShouldBe("2025-01-06 08:00: 460, curve 460, residual 0 (0 standard deviations)");
        curve.Errors!.ToString().ShouldStartWith("standard errors: start 0, floor 0, rate 0.00");
        new CleanupCurve.FittedReading(1, Runs.At(1), new Reading(10, Qualifier.LessThan), 8.25, null)
            .ToString()
            .ShouldBe("2025-01-06 09:00: <10, curve 8.25");
    }

    private static double[] Drawn(double[] hours, Random random) =>
        [
            .. hours.Select(hour =>
            {
                var truth = Runs.Exponential(hour, 900, 60, 0.4);
                return truth + Math.Sqrt(16 + Square(0.03 * truth)) * Runs.Normal(random);
            }),
        ];

    private static double Second(double[] hours, Reading[] readings, double[] at, double[] steps, int a, int b)
    {
        double Moved(int first, int second)
        {
            var moved = at.ToArray();
            moved[a] += first * steps[a];
            moved[b] += second * steps[b];
            return LogLikelihood(hours, readings, moved);
        }

        return (Moved(1, 1) - Moved(1, -1) - Moved(-1, 1) + Moved(-1, -1)) / (4 * steps[a] * steps[b]);
    }

    private static double LogLikelihood(double[] hours, Reading[] readings, double[] at)
    {
        var sigma = Math.Exp(at[3]);
        return hours
            .Select(
                (hour, i) =>
                {
                    var r = (readings[i].Value - Runs.Exponential(hour, at[0], at[1], at[2])) / sigma;
                    return readings[i].Qualifier == Qualifier.LessThan
                        ? Math.Log(SpecialFunctions.Erfc(-r / Math.Sqrt(2)) / 2)
                        : -r * r / 2 - at[3];
                }
            )
            .Sum();
    }

    private static void Agree(double value, double certified) => (value / certified).ShouldBe(1, 1e-8);

    private static void Near(double value, double expected, double size) => value.ShouldBe(expected, 2e-3 * size);

    private static double Square(double value) => value * value;

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
