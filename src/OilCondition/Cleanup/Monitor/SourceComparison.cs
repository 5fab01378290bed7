using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>Compares the readings of one source with the curve of the other.</summary>
internal static class SourceComparison
{
    private const int FewestReadings = 2;

    /// <summary>Coverage factor of the uncertainty: about 95 %.</summary>
    private const double Coverage = 2;

    /// <summary>What a sample repeats to between laboratories, relative (common practice, no source).</summary>
    private const double SampleError = 0.1;

    /// <summary>Relative saturation to which a moisture sensor is good (common practice, no source).</summary>
    private const double SaturationError = 0.02;

    /// <summary>Relative accuracy of a sensor of another measurand (ours).</summary>
    private const double SensorError = 0.1;

    /// <summary>The contradiction; null where there is none, or too little to compare.</summary>
    /// <param name="curve">The curve of the source that is followed.</param>
    /// <param name="others">The readings of the other source.</param>
    /// <param name="options">What is followed.</param>
    /// <param name="temperature">Latest oil temperature, for sensor readings that a curve stands for.</param>
    public static SourceContradiction? Of(
        CleanupCurve curve,
        IReadOnlyList<CleanupReading> others,
        CleanupMonitorOptions options,
        double? temperature
    )
    {
        if (!curve.HasCurve)
        {
            return null;
        }

        var isSample = others.Count > 0 && others[0].Source == ReadingSource.Sample;
        var pairs = new List<(double Sample, double Sensor, double OfCurve, double OfSensor)>();
        foreach (var other in others.Where(one => one.At >= curve.FirstReadingAt && one.At <= curve.LastReadingAt))
        {
            if (TargetMarks.Content(other, options) is not { IsCensored: false } content)
            {
                continue;
            }

            // Half a band of the delta method at 0.95, two-sided, is about two standard uncertainties.
            var band = curve.BandAt(other.At, BandKind.Mean, 0.95);
            var ofCurve = (band.Upper - band.Lower) / 4 ?? 0;
            var value = curve.ValueAt(other.At);
            var (sample, sensor) = isSample ? (content.Value, value) : (value, content.Value);
            pairs.Add((sample, sensor, ofCurve, AccuracyOf(other, sensor, options, temperature)));
        }

        if (pairs.Count < FewestReadings)
        {
            return null;
        }

        var scatter = pairs.Average(pair => Square(SampleError * pair.Sample)) / pairs.Count;
        var common = Square(pairs.Average(pair => pair.OfCurve)) + Square(pairs.Average(pair => pair.OfSensor));
        var found = new SourceContradiction(
            options.Measurand,
            pairs.Average(pair => pair.Sample),
            pairs.Average(pair => pair.Sensor),
            Coverage * Math.Sqrt(scatter + common),
            pairs.Count
        );
        return Math.Abs(found.Difference) > found.Uncertainty ? found : null;
    }

    private static double AccuracyOf(
        CleanupReading reading,
        double sensor,
        CleanupMonitorOptions options,
        double? temperature
    )
    {
        var celsius = reading.Temperature?.DegreesCelsius ?? temperature;
        return options is { IsWater: true, SaturationCurve: { } curve } && celsius is { } oil
            ? SaturationError * curve.SaturationAt(UnitsNet.Temperature.FromDegreesCelsius(oil)).Content.PartsPerMillion
            : SensorError * sensor;
    }

    private static double Square(double value) => value * value;
}
