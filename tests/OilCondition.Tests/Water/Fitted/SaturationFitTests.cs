using OilCondition.Statistics;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Water;

public class SaturationFitTests
{
    private static readonly double[] AnyCelsius = [10, 22, 35, 48, 60];
    private static readonly double[] AnyPpm = [70, 101, 149, 231, 300];

    private static Temperature Celsius(double value) => Temperature.FromDegreesCelsius(value);

    private static MassFraction Ppm(double value) => MassFraction.FromPartsPerMillion(value);

    private static SaturationFit Fit(double[] celsius, double[] ppm) =>
        TryFit(celsius, ppm, out var fit, out var reason) ? fit! : throw new InvalidOperationException(reason);

    private static bool TryFit(double[] celsius, double[] ppm, out SaturationFit? fit, out string? reason) =>
        SaturationFit.TryFit("invented oil", Measurements(celsius, ppm), Source.UserData("test"), out fit, out reason);

    private static IEnumerable<SaturationMeasurement> Measurements(double[] celsius, double[] ppm) =>
        celsius.Zip(ppm, (t, s) => SaturationMeasurement.Saturated(Celsius(t), Ppm(s)));

    [Fact]
    public void Agrees_with_the_straight_line_of_the_other_room()
    {
        // Second route: StraightLine, which is held against NIST Norris.
        var fit = Fit(AnyCelsius, AnyPpm);
        var line = StraightLine.Fit([.. AnyCelsius.Select(t => 1 / (t + 273.15))], [.. AnyPpm.Select(Math.Log10)]);

        fit.Curve.BKelvin.ShouldBe(-line.Slope, 1e-7);
        fit.Curve.A.ShouldBe(line.Intercept, 1e-9);
        fit.BStandardErrorKelvin.ShouldBe(line.SlopeStandardError, 1e-7);
        fit.AStandardError.ShouldBe(line.StandardErrorAt(0, BandKind.Mean), 1e-9);
        var x = 1 / (15 + 273.15);
        var half = line.BandHalfWidthAt(x, BandKind.NewReading, 0.95);
        var band = fit.BandAt(Celsius(15), 0.95, BandKind.NewReading);
        Math.Log10(band.Upper.Content.PartsPerMillion).ShouldBe(line.ValueAt(x) + half, 1e-9);
        Math.Log10(band.Lower.Content.PartsPerMillion).ShouldBe(line.ValueAt(x) - half, 1e-9);
    }

    /// <summary>
    /// The level of a band, by the table of Student's t and not by the library's own quantile: with 4 degrees of freedom 2.776 on both sides of 95 % and 0.741 of 50 %
    /// (Abramowitz and Stegun 1964, table 26.10).
    /// </summary>
    [Theory]
    [InlineData(BandKind.Mean)]
    [InlineData(BandKind.NewReading)]
    public void The_level_of_a_band_is_that_of_students_table(BandKind of)
    {
        var fit = Fit([10, 20, 30, 40, 50, 60], [70, 96, 150, 205, 300, 390]);

        double HalfWidth(double confidence)
        {
            var band = fit.BandAt(Celsius(15), confidence, of);
            return Math.Log10(band.Upper.Content.PartsPerMillion / band.Lower.Content.PartsPerMillion) / 2;
        }

        (HalfWidth(0.95) / HalfWidth(0.5)).ShouldBe(2.776 / 0.741, 0.003);
    }

    [Fact]
    public void A_fit_to_the_others_shows_the_residual_that_the_leverage_predicts()
    {
        // Straight lines by least squares: without the measurement the residual is r / (1 − h); the leverages add to 2.
        var fit = Fit(AnyCelsius, AnyPpm);
        fit.Measurements.Sum(fit.Leverage).ShouldBe(2, 1e-9);
        for (var i = 0; i < AnyCelsius.Length; i++)
        {
            var others = Fit([.. AnyCelsius.Where((_, j) => j != i)], [.. AnyPpm.Where((_, j) => j != i)]).Curve;
            var without = others.SaturationAt(Celsius(AnyCelsius[i])).Content.PartsPerMillion;
            var one = fit.Measurements[i];
            var residual = Math.Log10(fit.MeasuredOverCurve(one).DecimalFractions);
            Math.Log10(AnyPpm[i] / without).ShouldBe(residual / (1 - fit.Leverage(one)), 1e-7);
        }
    }

    /// <summary>
    /// By hand to 40 digits from the normal equations, A 6.133885391606789 and B 1216.557430452416 K; the band at 20 °C with Student's t of 3 degrees of
    /// freedom, 3.182 (Abramowitz and Stegun 1964, table 26.10).
    /// </summary>
    [Fact]
    public void Errors_are_told_in_content_too()
    {
        var fit = Fit(AnyCelsius, AnyPpm);
        double[] byHand = [1.234091032, -1.815299065, -4.442724813, 9.304433651, -3.532134426];

        for (var i = 0; i < byHand.Length; i++)
        {
            fit.MeasuredLessCurve(fit.Measurements[i]).PartsPerMillion.ShouldBe(byHand[i], 1e-8);
        }

        fit.GreatestError.PartsPerMillion.ShouldBe(9.304433651, 1e-8);
        fit.RootMeanSquareError.PartsPerMillion.ShouldBe(4.972012757, 1e-8);
        var band = fit.BandAt(Celsius(20), 0.95, BandKind.Mean);
        band.Lower.Content.PartsPerMillion.ShouldBe(90.63888, 1e-3);
        band.Upper.Content.PartsPerMillion.ShouldBe(102.46111, 1e-3);
        fit.AStandardError.ShouldBe(0.1116058102525, 1e-9);
        fit.BStandardErrorKelvin.ShouldBe(34.21848666749, 1e-6);
        Should.Throw<ArgumentNullException>(() => fit.MeasuredLessCurve(null!));
    }

    [Fact]
    public void Separation_band_lies_where_the_confidence_band_has_the_content()
    {
        var fit = Fit(AnyCelsius, AnyPpm);
        var band = fit.SeparationBand(Ppm(120), 0.9);
        fit.BandAt(band.Lower.Temperature, 0.9, BandKind.Mean).Upper.Content.PartsPerMillion.ShouldBe(120, 1e-6);
        fit.BandAt(band.Upper.Temperature, 0.9, BandKind.Mean).Lower.Content.PartsPerMillion.ShouldBe(120, 1e-6);
        band.Lower.Temperature.ShouldBeLessThan(band.Upper.Temperature);
    }

    [Fact]
    public void Measurements_without_a_curve_are_named()
    {
        string? Reason(double[] celsius, double[] ppm)
        {
            TryFit(celsius, ppm, out var fit, out var reason).ShouldBeFalse();
            fit.ShouldBeNull();
            return reason;
        }

        Reason([20, 60], [50, 200]).ShouldBe("2 measurements; at least 3 are needed, or the scatter is unknown.");
        Reason([20, 20, 20], [50, 51, 52]).ShouldStartWith("All measurements are at 20 °C");
        Reason([20, 40, 60], [90, 80, 70]).ShouldStartWith("The saturation does not rise with temperature");
        Should.Throw<ArgumentException>(() =>
            SaturationMeasurement.FromSensor(Celsius(20), Ratio.FromDecimalFractions(1), Ppm(50))
        );
    }

    [Fact]
    public void A_sensor_at_saturation_gives_at_least_and_keeps_saying_so()
    {
        var curve = PublishedSaturationCurves.TransformerMineralOilSteeper;
        var state = curve.FromSensor(Ratio.FromPercent(100.4), Celsius(60));
        state.Knowledge.ShouldBe(WaterKnowledge.AtLeast);
        curve.Cool(state, Celsius(20)).After.Knowledge.ShouldBe(WaterKnowledge.AtLeast);
        curve.FromSensor(Ratio.FromPercent(60), Celsius(60)).Knowledge.ShouldBe(WaterKnowledge.Dissolved);
        Should.Throw<ArgumentOutOfRangeException>(() => curve.FromSensor(Ratio.FromPercent(101), Celsius(60)));
    }

    [Fact]
    public void Columns_agree_with_single_answers()
    {
        var curve = PublishedSaturationCurves.TransformerMineralOil;
        var celsius = Enumerable.Range(0, 261).Select(i => i - 60.0).ToArray();
        var saturations = new double[celsius.Length];
        curve.Saturations(celsius, saturations).ShouldBe(celsius.Count(t => t is < 0 or > 100));
        for (var i = 0; i < celsius.Length; i++)
        {
            var single = curve.SaturationAt(Celsius(celsius[i])).Content.PartsPerMillion;
            saturations[i].ShouldBe(single, 1e-12 * single);
        }

        var back = new double[celsius.Length];
        curve.SeparationTemperatures(saturations, back);
        back.Zip(celsius, (b, t) => Math.Abs(b - t)).Max().ShouldBeLessThan(1e-9);
        Should
            .Throw<ArgumentOutOfRangeException>(() => curve.Saturations([20, double.NaN], new double[2]))
            .Message.ShouldContain("temperaturesCelsius[1]");
    }
}
