namespace OilCondition.Statistics;

/// <summary>A straight line that rises to a limit: the band of the line itself or of a new reading, turned into times by Fieller's inversion.</summary>
internal sealed class LineLaw : CrossingLaw
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

    private protected override double Passed(double time)
    {
        var chance = line.ChanceAbove(lastPosition + time, limit, of);
        return atStart < 1 ? Math.Max(0, (chance - atStart) / (1 - atStart)) : 0;
    }

    private protected override int Times(ReadOnlySpan<double> wanted, double from, double latest, Span<double> times)
    {
        for (var i = 0; i < wanted.Length; i++)
        {
            var chance = atStart + wanted[i] * (1 - atStart);
            if (!(chance < 1) || !(chance > 0) || !line.TryCrossing(limit, chance, of, out var position))
            {
                return i;
            }

            times[i] = Math.Max(from, position - lastPosition);
            if (times[i] > latest)
            {
                times[i] = 0;
                return i;
            }
        }

        return wanted.Length;
    }
}
