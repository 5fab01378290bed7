namespace OilCondition.Statistics;

/// <summary>A straight line that rises to a limit: the band of the line itself or of a new reading, turned into times by Fieller's inversion.</summary>
internal sealed class LineLaw
{
    private readonly StraightLine line;
    private readonly double limit;
    private readonly double lastPosition;
    private readonly BandKind of;
    private readonly double atStart;

    public LineLaw(StraightLine line, double limit, double lastPosition, BandKind of)
    {
        this.line = line;
        this.limit = limit;
        this.lastPosition = lastPosition;
        this.of = of;
        atStart = line.ChanceAbove(lastPosition, limit, of);
    }

    /// <summary>The chance by a time since the last reading.</summary>
    public double Passed(double time)
    {
        var chance = line.ChanceAbove(lastPosition + time, limit, of);
        return atStart < 1 ? Math.Max(0, (chance - atStart) / (1 - atStart)) : 0;
    }
}
