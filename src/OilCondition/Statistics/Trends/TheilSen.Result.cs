using System.Runtime.InteropServices;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>A Theil-Sen line with the interval of its slope.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly partial record struct TheilSen
{
    internal TheilSen(
        LineStatus status,
        int count,
        int slopeCount,
        double slope,
        Interval slopeInterval,
        double medianTime,
        double? medianValue,
        TheilSenRankRule rankRule
    )
    {
        Status = status;
        Count = count;
        SlopeCount = slopeCount;
        Slope = slope;
        SlopeInterval = slopeInterval;
        MedianTime = medianTime;
        HasIntercept = status == LineStatus.Determined && medianValue.HasValue;
        MedianValue = medianValue ?? 0;
        RankRule = rankRule;
    }

    /// <summary>Whether the slope is determined: not by fewer than two readings, at one time, or where censoring hides it. The other members are meaningful only if it is.</summary>
    public bool IsDetermined => Status == LineStatus.Determined;

    /// <summary>Why it is not.</summary>
    internal LineStatus Status { get; }

    /// <summary>Number of readings, n.</summary>
    public int Count { get; }

    /// <summary>Number of slopes between readings at different times, N; with censored readings those that bound the slope at least on one side.</summary>
    public int SlopeCount { get; }

    /// <summary>Median of the slopes.</summary>
    public double Slope { get; }

    /// <summary>Interval of the slope; an end is missing where there are too few readings for the confidence asked for.</summary>
    public Interval SlopeInterval { get; }

    /// <summary>Median of the times.</summary>
    public double MedianTime { get; }

    /// <summary>Median of the values; 0 where censoring hides it.</summary>
    public double MedianValue { get; }

    /// <summary>Whether the level of the line is known: not where so many readings are censored that their median is unknown.</summary>
    public bool HasIntercept { get; }

    /// <summary>Value of the line at time 0: median of the values − slope × median of the times (Conover 1980).</summary>
    public double Intercept => HasIntercept ? MedianValue - Slope * MedianTime : 0;

    /// <summary>The rule that gave the interval: the one asked for, or <see cref="TheilSenRankRule.Interpolated"/> where the exact one does not hold.</summary>
    internal TheilSenRankRule RankRule { get; }

    /// <inheritdoc/>
    public override string ToString() =>
        IsDetermined
            ? $"slope {PlainText.Number(Slope, (SlopeInterval.Upper - SlopeInterval.Lower) / 2)}, interval {SlopeInterval}, {Count} readings"
            : $"{PlainText.Spaced(Status)}: {Count}";

    /// <summary>The line at a time.</summary>
    /// <param name="time">Time.</param>
    /// <returns>The value.</returns>
    /// <exception cref="InvalidOperationException">The slope or the level of the line is not determined.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite or beyond 1e100.</exception>
    public double ValueAt(double time)
    {
        if (!HasIntercept)
        {
            throw new InvalidOperationException($"The line is not determined: {Status}, {Count} readings.");
        }

        return MedianValue + Slope * (Guard.InRange(time, -1e100, 1e100, "") - MedianTime);
    }
}
