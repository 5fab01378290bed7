using System.Diagnostics.CodeAnalysis;
using OilCondition.Statistics;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>A saturation curve fitted to three or more measurements of one oil, with its uncertainty.</summary>
/// <remarks>
/// Minimises Σ w (log10 S − A + B/T)², that is, relative errors of the saturation. Weights w are 1 where no measurement has a standard
/// error, and 1/u² with the relative standard errors u where all have one. s² = Σ w r² / (n − 2) is estimated from the scatter in both
/// cases, so that only the ratio of the standard errors counts; intervals use Student's t with n − 2 degrees of freedom.
/// Covers the span of the measured temperatures. Repeated readings of one sample do not make n larger: what the intervals count is
/// independent measurements.
/// </remarks>
/// <example>
/// <code>
/// if (SaturationFit.TryFit("bearing oil, unit 2", measurements, Source.UserData("site laboratory"), out var fit, out var reason))
/// {
///     var band = fit.BandAt(Temperature.FromDegreesCelsius(15), 0.95, BandKind.Mean);
/// }
/// </code>
/// </example>
public sealed class SaturationFit
{
    private readonly WeightedLine line;

    private SaturationFit(IReadOnlyList<SaturationMeasurement> measurements, SaturationCurve curve, WeightedLine line)
    {
        Measurements = measurements;
        Curve = curve;
        this.line = line;
    }

    /// <summary>The measurements, all of them used.</summary>
    public IReadOnlyList<SaturationMeasurement> Measurements { get; }

    /// <summary>The fitted curve.</summary>
    public SaturationCurve Curve { get; }

    /// <summary>Standard error of A.</summary>
    public double AStandardError =>
        line.ResidualStandardDeviation * Math.Sqrt(1 / line.Weight + line.MeanX * line.MeanX / line.Sxx);

    /// <summary>Standard error of B, in kelvin.</summary>
    public double BStandardErrorKelvin => line.ResidualStandardDeviation / Math.Sqrt(line.Sxx);

    /// <summary>Covariance of A and B, in kelvin. They nearly compensate each other: never use their errors as if independent.</summary>
    public double CovarianceABKelvin =>
        line.ResidualStandardDeviation * line.ResidualStandardDeviation * line.MeanX / line.Sxx;

    /// <summary>
    /// Scatter about the curve, s: in decades of the saturation (0.01 is 2.3 %); with standard errors given, in units of those errors
    /// (as decades per relative error), so that 0.43 means they were stated rightly.
    /// </summary>
    public double ResidualStandardDeviation => line.ResidualStandardDeviation;

    /// <summary>Degrees of freedom, n − 2.</summary>
    public int DegreesOfFreedom => Measurements.Count - 2;

    /// <summary>Fits a curve.</summary>
    /// <param name="name">The oil, in words.</param>
    /// <param name="measurements">Measured saturations, in any order.</param>
    /// <param name="source">Who measured.</param>
    /// <param name="fit">The fit.</param>
    /// <param name="reason">
    /// Why there is none: fewer than three measurements, so that the scatter is unknown; all at one temperature (within 0.1 K); or a saturation that
    /// does not rise with temperature, or so steeply that B exceeds 10 000 K.
    /// </param>
    /// <returns>Whether there is a fit.</returns>
    /// <exception cref="ArgumentNullException">An argument, or one of the measurements, is null.</exception>
    /// <exception cref="ArgumentException">The name is blank, or some measurements have a standard error and others have none.</exception>
    public static bool TryFit(
        string name,
        IEnumerable<SaturationMeasurement> measurements,
        Source source,
        [NotNullWhen(true)] out SaturationFit? fit,
        [NotNullWhen(false)] out string? reason
    )
    {
        Guard.NotBlank(name);
        Guard.NotNull(source);
        var points = Guard
            .NotNull(measurements, nameof(measurements))
            .Select(m => Guard.NotNull(m, nameof(measurements)))
            .ToArray();
        var withError = points.Count(m => m.HasStandardError);
        if (withError != 0 && withError != points.Length)
        {
            throw new ArgumentException(
                $"measurements: {withError} of {points.Length} have a standard error; give one to all or to none.",
                nameof(measurements)
            );
        }

        (fit, reason) = Of(name, points, source);
        return fit is not null;
    }

    /// <summary>The saturation at a temperature with its uncertainty.</summary>
    /// <remarks>
    /// log10 S ± t s sqrt(1/Σw + (1/T − x̄)²/Sxx); for a new measurement of average weight n/Σw is added under the root.
    /// </remarks>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <param name="of">Confidence band of the curve, or prediction band of a new measurement.</param>
    /// <returns>The band, each end as a content (in mg/kg: its parts per million), flagged where the curve is extrapolated.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public Band<SaturationPoint> BandAt(Temperature temperature, double confidence, BandKind of)
    {
        Guard.OpenUnitInterval(confidence);
        var estimate = Curve.SaturationAt(temperature);
        var x = 1 / temperature.Kelvins;
        var newMeasurement = of == BandKind.NewReading ? Measurements.Count / line.Weight : 0;
        var spread = Math.Sqrt(newMeasurement + line.Leverage(x, 1));
        var halfWidth = Quantile(confidence) * line.ResidualStandardDeviation * spread;
        var centre = line.At(x);
        return new Band<SaturationPoint>(
            End(estimate, centre - halfWidth),
            estimate,
            End(estimate, centre + halfWidth),
            confidence
        );
    }

    /// <summary>The separation temperature of a water content with its uncertainty: the confidence band of the curve, inverted (Fieller).</summary>
    /// <param name="content">Water content, above 0 and at most 500 000 mg/kg.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>
    /// Coldest and warmest temperature that the measurements allow. Where the slope itself is too uncertain to bound them, both ends are
    /// those of the library's range.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public Band<SeparationPoint> SeparationBand(MassFraction content, double confidence)
    {
        Guard.OpenUnitInterval(confidence);
        var ppm = Guard.InRange(
            content.PartsPerMillion,
            double.Epsilon,
            PhysicalRange.PureWaterMgPerKg,
            "mg/kg",
            nameof(content)
        );
        var estimate = Curve.SeparationPoint(content);
        var scatter = Quantile(confidence) * line.ResidualStandardDeviation;
        var distance = Math.Log10(ppm) - line.MeanY;
        var a = line.Slope * line.Slope - scatter * scatter / line.Sxx;
        if (!(a > 0))
        {
            return new Band<SeparationPoint>(
                Curve.SeparationAtReciprocal(double.MaxValue),
                estimate,
                Curve.SeparationAtReciprocal(0),
                confidence
            );
        }

        // (b d − D)² = q² s² (1/Σw + d²/Sxx) with d = 1/T − x̄; the discriminant multiplied out, as nearly equal terms would cancel.
        var root = scatter * Math.Sqrt(a / line.Weight + distance * distance / line.Sxx);
        var middle = line.Slope * distance;
        return new Band<SeparationPoint>(
            Curve.SeparationAtReciprocal(line.MeanX + (middle + root) / a),
            estimate,
            Curve.SeparationAtReciprocal(line.MeanX + (middle - root) / a),
            confidence
        );
    }

    /// <summary>How hard a measurement pulls the curve, h = w (1/Σw + (1/T − x̄)²/Sxx).</summary>
    /// <remarks>
    /// The mean is 2/n; above 4/n a measurement pulls hard, and at 1 it alone supports the slope. What the curve would be without it, a fit to the others
    /// tells; its residual then is r / (1 − h).
    /// </remarks>
    /// <param name="measurement">One of the measurements.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="ArgumentNullException">The measurement is null.</exception>
    public double Leverage(SaturationMeasurement measurement) =>
        Math.Min(1, line.Leverage(PerKelvin(Guard.NotNull(measurement)), Weight(measurement)));

    /// <summary>A measured saturation over that of the curve.</summary>
    /// <param name="measurement">One of the measurements.</param>
    /// <returns>1 on the curve.</returns>
    /// <exception cref="ArgumentNullException">The measurement is null.</exception>
    public Ratio MeasuredOverCurve(SaturationMeasurement measurement) =>
        Ratio.FromDecimalFractions(Guard.NotNull(measurement).Saturation.PartsPerMillion / OfCurveMgPerKg(measurement));

    /// <summary>A measured saturation less that of the curve: the residual, which the fit makes small in log10 and not in mg/kg.</summary>
    /// <param name="measurement">One of the measurements.</param>
    /// <returns>0 on the curve; below 0 where less was measured.</returns>
    /// <exception cref="ArgumentNullException">The measurement is null.</exception>
    public MassFraction MeasuredLessCurve(SaturationMeasurement measurement) =>
        MassFraction.FromPartsPerMillion(ErrorMgPerKg(Guard.NotNull(measurement)));

    /// <summary>The greatest distance of a measurement from the curve, to either side.</summary>
    public MassFraction GreatestError =>
        MassFraction.FromPartsPerMillion(Measurements.Max(one => Math.Abs(ErrorMgPerKg(one))));

    /// <summary>Root of the mean squared distance of the measurements from the curve, over all n of them and without their weights.</summary>
    public MassFraction RootMeanSquareError =>
        MassFraction.FromPartsPerMillion(Math.Sqrt(Measurements.Average(one => ErrorMgPerKg(one) * ErrorMgPerKg(one))));

    /// <summary>The constants with their standard errors.</summary>
    /// <returns>For example <c>A 7.1 ± 0.2, B 1570 ± 60 K, 5 measurements</c>.</returns>
    public override string ToString()
    {
        string Number(double value, double error) =>
            $"{PlainText.Number(value, error)} ± {PlainText.Number(error, error)}";
        return $"A {Number(Curve.A, AStandardError)}, B {Number(Curve.BKelvin, BStandardErrorKelvin)} K, {Measurements.Count} measurements";
    }

    private static (SaturationFit? Fit, string? Reason) Of(string name, SaturationMeasurement[] points, Source source)
    {
        if (points.Length < 3)
        {
            return (null, $"{points.Length} measurements; at least 3 are needed, or the scatter is unknown.");
        }

        var lowest = points.Min(m => m.Temperature.DegreesCelsius);
        var highest = points.Max(m => m.Temperature.DegreesCelsius);
        if (!(highest - lowest > 0.1))
        {
            return (
                null,
                $"All measurements are at {PlainText.Tenths(lowest)} °C; two temperatures are needed for a slope."
            );
        }

        var fitted = WeightedLine.Through(
            [.. points.Select(PerKelvin)],
            [.. points.Select(m => Math.Log10(m.Saturation.PartsPerMillion))],
            [.. points.Select(Weight)]
        );
        var lowestFitted = fitted.At(1 / (lowest + 273.15));
        var highestFitted = fitted.At(1 / (highest + 273.15));
        if (!(fitted.Slope < 0 && fitted.Slope >= -10_000 && lowestFitted > -3 && highestFitted < 6))
        {
            return (
                null,
                "The saturation does not rise with temperature as that of an oil does; look at the measurements."
            );
        }

        var curve = SaturationCurve.FromFit(
            name,
            fitted.Intercept,
            -fitted.Slope,
            Temperature.FromDegreesCelsius(lowest),
            Temperature.FromDegreesCelsius(highest),
            source,
            points.Length
        );
        return (new SaturationFit(points, curve, fitted), null);
    }

    private static SaturationPoint End(SaturationPoint estimate, double exponent) =>
        new(
            estimate.Temperature,
            MassFraction.FromPartsPerMillion(Math.Pow(10, Math.Max(-300, Math.Min(6, exponent)))),
            estimate.IsExtrapolated,
            estimate.Source
        );

    private double OfCurveMgPerKg(SaturationMeasurement measurement) => Math.Pow(10, line.At(PerKelvin(measurement)));

    private double ErrorMgPerKg(SaturationMeasurement measurement) =>
        measurement.Saturation.PartsPerMillion - OfCurveMgPerKg(measurement);

    private static double PerKelvin(SaturationMeasurement measurement) => 1 / measurement.Temperature.Kelvins;

    private static double Weight(SaturationMeasurement measurement)
    {
        var error = measurement.RelativeStandardError.DecimalFractions;
        return error > 0 ? 1 / (error * error) : 1;
    }

    private double Quantile(double confidence) =>
        IntervalLevel.StudentQuantile(confidence, IntervalSide.Both, DegreesOfFreedom);
}
