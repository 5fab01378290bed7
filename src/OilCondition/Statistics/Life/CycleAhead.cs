namespace OilCondition.Statistics;

/// <summary>A cycle that goes on after the last reading: how much nearer it brings a limit on one side.</summary>
internal sealed class CycleAhead(SeasonalCycle cycle, double lastTime, int sign)
{
    /// <summary>The nearest it brings the limit.</summary>
    public double Highest => cycle.Amplitude;

    /// <summary>How much nearer the limit is for it at a time since the last reading.</summary>
    public double NearerAt(double time) => sign * cycle.At(lastTime + time);

    /// <summary>The last time up to another one, since the last reading, at which it brought the limit nearest; null where there was none.</summary>
    public double? LastPeakBefore(double time)
    {
        var peak = cycle.PeakAt(sign) - lastTime;
        var last = peak + Math.Floor((time - peak) / cycle.Period) * cycle.Period;
        return last > 0 ? last : null;
    }
}
