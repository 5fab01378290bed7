using OilCondition.Text;

namespace OilCondition.Cleanup;

/// <summary>Sensor and samples of a run that contradict each other by more than their uncertainty.</summary>
/// <remarks>
/// Each reading of the one source is compared with the curve of the other at the same moment, where that curve runs. Mean difference
/// d = mean(sample − sensor); its standard uncertainty u² = mean((0.1 sample)²)/n + mean(s)² + a², with s: standard uncertainty of the curve,
/// a: accuracy of the sensor, which is the same for all its readings. A contradiction is |d| &gt; 2 u over two readings or more (coverage factor 2,
/// about 95 %). A sample repeats to some 10 % between laboratories and a moisture sensor is good to 0.02 of relative saturation (common
/// practice, no source); for a sensor of another measurand 10 % of its reading are taken (ours). The error of the saturation curve is not
/// in u: it is one of the usual causes, beside a sensor that drifts and water that is not dissolved.
/// </remarks>
public sealed class SourceContradiction
{
    internal SourceContradiction(
        Measurand measurand,
        double sampleMean,
        double sensorMean,
        double uncertainty,
        int count
    )
    {
        Measurand = measurand;
        SampleMean = sampleMean;
        SensorMean = sensorMean;
        Uncertainty = uncertainty;
        Count = count;
    }

    /// <summary>What is followed.</summary>
    public Measurand Measurand { get; }

    /// <summary>Mean by the samples, in the measurand's unit, at the moments that are compared.</summary>
    public double SampleMean { get; }

    /// <summary>Mean by the sensor at the same moments.</summary>
    public double SensorMean { get; }

    /// <summary>Samples less sensor: above 0 where the samples read higher.</summary>
    public double Difference => SampleMean - SensorMean;

    /// <summary>What the difference could be by curve and methods alone, 2 u.</summary>
    public double Uncertainty { get; }

    /// <summary>Readings compared.</summary>
    public int Count { get; }

    /// <summary>Which source reads higher, by how much, over how many readings.</summary>
    /// <returns>For example <c>samples read 35 ± 14 mg/kg higher than the sensor (4 readings)</c>.</returns>
    public override string ToString()
    {
        var by = PlainText.Number(Math.Abs(Difference), Uncertainty);
        return $"samples read {by} ± {PlainText.Number(Uncertainty, Uncertainty)} {Measurand.Unit}".TrimEnd()
            + $" {(Difference > 0 ? "higher" : "lower")} than the sensor ({Count} readings)";
    }
}
