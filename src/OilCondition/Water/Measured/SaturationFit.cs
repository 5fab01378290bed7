using MathNet.Numerics.Distributions;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>A saturation curve fitted to three or more measurements of one oil, with its doubt.</summary>
/// <remarks>
/// Minimises Σ w (log10 S − A + B/T)², that is, relative errors of the saturation. Weights w are 1 where no measurement has a standard
/// error, and 1/u² with the relative standard errors u where all have one. s² = Σ w r² / (n − 2) is estimated from the scatter in both
/// cases, so that only the ratio of the standard errors counts; intervals use Student's t with n − 2 degrees of freedom.
/// Covers the span of the measured temperatures. Repeated readings of one sample do not make n larger: what the intervals count is
/// independent measurements.
/// </remarks>
/// <example>
/// <code>
/// var fit = SaturationFit.Fit("bearing oil, unit 2", measurements, Source.UserData("site laboratory"));
/// if (fit.Outcome == SaturationFitOutcome.Determined)
/// {
///     var band = fit.BandAt(Temperature.FromDegreesCelsius(15), 0.95, BandOf.Curve);
/// }
/// </code>
/// </example>
public sealed class SaturationFit
{
    private readonly SaturationCurve? _curve;
    private readonly WeightedLine? _line;

    private SaturationFit(
        SaturationFitOutcome outcome,
        IReadOnlyList<SaturationMeasurement> measurements,
        SaturationCurve? curve,
        WeightedLine? line
    )
    {
        Outcome = outcome;
        Measurements = measurements;
        _curve = curve;
        _line = line;
    }

    /// <summary>Whether there is a curve. If not, all members but this and <see cref="Measurements"/> throw.</summary>
    public SaturationFitOutcome Outcome { get; }

    /// <summary>The measurements, all of them used.</summary>
    public IReadOnlyList<SaturationMeasurement> Measurements { get; }

    /// <summary>The fitted curve.</summary>
    /// <exception cref="InvalidOperationException">The fit is not determined.</exception>
    public SaturationCurve Curve => _curve ?? throw NotDetermined();

    /// <summary>Standard error of A.</summary>
    /// <exception cref="InvalidOperationException">The fit is not determined.</exception>
    public double AStandardError =>
        Line.ResidualStandardDeviation * Math.Sqrt(1 / Line.Weight + Line.MeanX * Line.MeanX / Line.Sxx);

    /// <summary>Standard error of B, in kelvin.</summary>
    /// <exception cref="InvalidOperationException">The fit is not determined.</exception>
    public double BStandardErrorKelvin => Line.ResidualStandardDeviation / Math.Sqrt(Line.Sxx);

    /// <summary>Covariance of A and B, in kelvin. They nearly compensate each other: never use their errors as if independent.</summary>
    /// <exception cref="InvalidOperationException">The fit is not determined.</exception>
    public double CovarianceABKelvin =>
        Line.ResidualStandardDeviation * Line.ResidualStandardDeviation * Line.MeanX / Line.Sxx;

    /// <summary>
    /// Scatter about the curve, s: in decades of the saturation (0.01 is 2.3 %); with standard errors given, in units of those errors
    /// (as decades per relative error), so that 0.43 means they were stated rightly.
    /// </summary>
    /// <exception cref="InvalidOperationException">The fit is not determined.</exception>
    public double ResidualStandardDeviation => Line.ResidualStandardDeviation;

    /// <summary>Degrees of freedom, n − 2.</summary>
    public int DegreesOfFreedom => Measurements.Count - 2;

    private WeightedLine Line => _line ?? throw NotDetermined();

    /// <summary>Fits a curve.</summary>
    /// <param name="name">The oil, in words.</param>
    /// <param name="measurements">Measured saturations, in any order.</param>
    /// <param name="source">Who measured.</param>
    /// <returns>The fit, or the reason why there is none.</returns>
    /// <exception cref="ArgumentNullException">An argument, or one of the measurements, is null.</exception>
    /// <exception cref="ArgumentException">The name is blank, or some measurements have a standard error and others have none.</exception>
    public static SaturationFit Fit(string name, IEnumerable<SaturationMeasurement> measurements, Source source)
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

        if (points.Length < 3)
        {
            return new SaturationFit(SaturationFitOutcome.TooFewMeasurements, points, null, null);
        }

        var lowest = points.Min(m => m.Temperature.DegreesCelsius);
        var highest = points.Max(m => m.Temperature.DegreesCelsius);
        if (!(highest - lowest > 0.1))
        {
            return new SaturationFit(SaturationFitOutcome.OneTemperature, points, null, null);
        }

        var line = WeightedLine.Through(
            [.. points.Select(PerKelvin)],
            [.. points.Select(m => Math.Log10(m.Saturation.PartsPerMillion))],
            [.. points.Select(Weight)]
        );
        var lowestFitted = line.At(1 / (lowest + 273.15));
        var highestFitted = line.At(1 / (highest + 273.15));
        if (!(line.Slope < 0 && line.Slope >= -10_000 && lowestFitted > -3 && highestFitted < 6))
        {
            return new SaturationFit(SaturationFitOutcome.NotPlausible, points, null, null);
        }

        var curve = SaturationCurve.FromFit(
            name,
            line.Intercept,
            -line.Slope,
            Temperature.FromDegreesCelsius(lowest),
            Temperature.FromDegreesCelsius(highest),
            source
        );
        return new SaturationFit(SaturationFitOutcome.Determined, points, curve, line);
    }

    /// <summary>The saturation at a temperature with its doubt.</summary>
    /// <remarks>
    /// log10 S ± t s sqrt(1/Σw + (1/T − x̄)²/Sxx); for a new measurement of average weight n/Σw is added under the root.
    /// </remarks>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <param name="of">Confidence band of the curve, or prediction band of a new measurement.</param>
    /// <returns>The band, flagged where the curve is extrapolated.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    /// <exception cref="InvalidOperationException">The fit is not determined.</exception>
    public SaturationBand BandAt(Temperature temperature, double confidence, BandOf of)
    {
        Guard.OpenUnitInterval(confidence);
        var estimate = Curve.SaturationAt(temperature);
        var x = 1 / temperature.Kelvins;
        var newMeasurement = of == BandOf.NewMeasurement ? Measurements.Count / Line.Weight : 0;
        var spread = Math.Sqrt(newMeasurement + Line.Leverage(x, 1));
        var halfWidth = Quantile(confidence) * Line.ResidualStandardDeviation * spread;
        var centre = Line.At(x);
        return new SaturationBand(
            End(estimate, centre - halfWidth),
            estimate,
            End(estimate, centre + halfWidth),
            confidence,
            of
        );
    }

    /// <summary>The separation temperature of a water content with its doubt: the confidence band of the curve, inverted (Fieller).</summary>
    /// <param name="content">Water content, above 0 and at most 1 000 000 mg/kg.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>
    /// Coldest and warmest temperature that the measurements allow. Where the slope itself is too uncertain to bound them, both ends are
    /// those of the library's range.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    /// <exception cref="InvalidOperationException">The fit is not determined.</exception>
    public SeparationBand SeparationBand(MassFraction content, double confidence)
    {
        Guard.OpenUnitInterval(confidence);
        var ppm = Guard.InRange(content.PartsPerMillion, double.Epsilon, 1e6, "mg/kg", nameof(content));
        var estimate = Curve.SeparationPoint(content);
        var scatter = Quantile(confidence) * Line.ResidualStandardDeviation;
        var distance = Math.Log10(ppm) - Line.MeanY;
        var a = Line.Slope * Line.Slope - scatter * scatter / Line.Sxx;
        if (!(a > 0))
        {
            return new SeparationBand(
                Curve.SeparationAtReciprocal(double.MaxValue),
                estimate,
                Curve.SeparationAtReciprocal(0),
                confidence
            );
        }

        // (b d − D)² = q² s² (1/Σw + d²/Sxx) with d = 1/T − x̄; the discriminant multiplied out, as nearly equal terms would cancel.
        var root = scatter * Math.Sqrt(a / Line.Weight + distance * distance / Line.Sxx);
        var middle = Line.Slope * distance;
        return new SeparationBand(
            Curve.SeparationAtReciprocal(Line.MeanX + (middle + root) / a),
            estimate,
            Curve.SeparationAtReciprocal(Line.MeanX + (middle - root) / a),
            confidence
        );
    }

    /// <summary>What each measurement does to the curve, found by leaving it out; in the order of <see cref="Measurements"/>.</summary>
    /// <returns>One influence for each measurement.</returns>
    /// <exception cref="InvalidOperationException">The fit is not determined.</exception>
    public IReadOnlyList<SaturationInfluence> Influences() => [.. Measurements.Select(Influence)];

    private SaturationInfluence Influence(SaturationMeasurement measurement)
    {
        var x = PerKelvin(measurement);
        var weight = Weight(measurement);
        var fitted = Line.At(x);
        var residual = Math.Log10(measurement.Saturation.PartsPerMillion) - fitted;
        var leverage = Line.Leverage(x, weight);
        var isSoleSupport = !(1 - leverage > 1e-9);
        var deleted = isSoleSupport ? 0 : residual / (1 - leverage);
        var slope = Line.Slope - weight * (x - Line.MeanX) / Line.Sxx * deleted;
        var meanY = Line.MeanY - weight / Line.Weight * deleted;
        var without = Math.Min(6, fitted - leverage * deleted);
        return new SaturationInfluence(
            measurement,
            Math.Min(1, leverage),
            Math.Pow(10, residual),
            isSoleSupport,
            meanY - slope * Line.MeanX,
            -slope,
            MassFraction.FromPartsPerMillion(Math.Pow(10, without))
        );
    }

    private static SaturationPoint End(SaturationPoint estimate, double exponent) =>
        new(
            estimate.Temperature,
            MassFraction.FromPartsPerMillion(Math.Pow(10, Math.Max(-300, Math.Min(6, exponent)))),
            estimate.IsExtrapolated,
            estimate.Basis,
            estimate.Source
        );

    private static double PerKelvin(SaturationMeasurement measurement) => 1 / measurement.Temperature.Kelvins;

    private static double Weight(SaturationMeasurement measurement)
    {
        var error = measurement.RelativeStandardError.DecimalFractions;
        return error > 0 ? 1 / (error * error) : 1;
    }

    private double Quantile(double confidence) => StudentT.InvCDF(0, 1, DegreesOfFreedom, 0.5 + confidence / 2);

    private InvalidOperationException NotDetermined() =>
        new($"There is no fitted curve: {Outcome}, {Measurements.Count} measurements.");
}
