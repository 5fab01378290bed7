namespace OilCondition;

/// <summary>Finds samples that were plainly taken from another oil, by what tells an oil's identity.</summary>
/// <remarks>
/// Common practice, no source: viscosity and additive elements belong to the oil and move slowly, whereas water, dirt and wear
/// can jump at any time. A sample is suspect when at least two of its identity measurands stand far from the samples around it,
/// or when one does and no second was measured but two other measurands jump as well.
/// 'Far' is ten times the usual scatter (from the median absolute deviation) and a fifth of the value; for an element also more than the
/// traces that a spectrometer finds in any oil.
/// </remarks>
internal static class SampleScreen
{
    private const int FewestSamples = 5;
    private const double ScatterMultiple = 10;
    private const double LeastRelativeJump = 0.2;
    private const double TracesMgPerKg = 5;

    public static IEnumerable<OilSample> Suspects(IReadOnlyList<OilSample> samples)
    {
        var jumps = samples
            .SelectMany(sample => sample.Readings.Keys)
            .Distinct()
            .SelectMany(measurand => Jumps(samples, measurand).Select(sample => (sample, measurand)))
            .ToLookup(pair => pair.sample, pair => pair.measurand);
        return samples.Where(sample => IsSuspect(sample, [.. jumps[sample]]));
    }

    private static bool IsSuspect(OilSample sample, IReadOnlyList<Measurand> jumped)
    {
        var identity = jumped.Count(measurand => measurand.TellsOilIdentity);
        var measured = sample.Readings.Keys.Count(measurand => measurand.TellsOilIdentity);
        return identity >= 2 || (identity == 1 && measured == 1 && jumped.Count >= 3);
    }

    private static IEnumerable<OilSample> Jumps(IReadOnlyList<OilSample> samples, Measurand measurand)
    {
        var measured = samples
            .Where(sample => sample.Readings.TryGetValue(measurand, out var reading) && !reading.IsCensored)
            .ToList();
        if (measured.Count < FewestSamples)
        {
            return [];
        }

        var values = measured.ConvertAll(sample => sample.Readings[measurand].Value);
        var around = values.Select((_, i) => MedianOfNeighbours(values, i)).ToList();
        var scatter = 1.4826 * Median(values.Select((value, i) => Math.Abs(value - around[i])));
        var least = measurand.TellsOilIdentity && measurand.Unit == "mg/kg" ? TracesMgPerKg : 0;
        return measured.Where(
            (_, i) =>
                Math.Abs(values[i] - around[i])
                > Math.Max(least, Math.Max(ScatterMultiple * scatter, LeastRelativeJump * Math.Abs(around[i])))
        );
    }

    private static double MedianOfNeighbours(List<double> values, int index)
    {
        var from = Math.Max(0, Math.Min(index - 2, values.Count - FewestSamples));
        return Median(values.Skip(from).Take(FewestSamples).Where((_, i) => from + i != index));
    }

    private static double Median(IEnumerable<double> values)
    {
        var ordered = values.OrderBy(value => value).ToList();
        var middle = ordered.Count / 2;
        return ordered.Count % 2 == 1 ? ordered[middle] : (ordered[middle - 1] + ordered[middle]) / 2;
    }
}
