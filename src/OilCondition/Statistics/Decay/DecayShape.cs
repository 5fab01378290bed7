using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>Which parts of the curve are fixed, in scaled values, and what the sums at one rate then say.</summary>
/// <remarks>
/// y = start + (floor − start) d is linear for a fixed rate. With one free column of sums c (column by value) and v (column by
/// column) the residual sum of squares is S − c²/v; which column it is depends on what is fixed:
/// nothing: d about its mean; start: d; floor, or the floor at its lowest allowed value: e = 1 − d; both: none.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly struct DecayShape
{
    private readonly double weight;
    private readonly double sumY;
    private readonly double sumYY;

    public DecayShape(in DecayColumns columns, double? start, double? floor, double lowestFloor)
    {
        weight = columns.Count;
        sumY = columns.SumY;
        sumYY = columns.SumYY;
        KnowsStart = start.HasValue;
        KnowsFloor = floor.HasValue;
        Start = start.HasValue ? columns.Scaled(start.Value) : 0;
        Floor = floor.HasValue ? columns.Scaled(floor.Value) : 0;
        LowestFloor = floor.HasValue ? double.NegativeInfinity : columns.Scaled(lowestFloor);
    }

    private DecayShape(in DecayShape bounded)
    {
        this = bounded;
        LowestFloor = double.NegativeInfinity;
    }

    /// <summary>The same without a lowest floor.</summary>
    public DecayShape Unbounded => new(this);

    public bool KnowsStart { get; }
    public bool KnowsFloor { get; }
    public double Start { get; }
    public double Floor { get; }
    public double LowestFloor { get; }

    /// <summary>The best curve for the rate at which the sums were taken.</summary>
    public DecayAtRate Best(in DecaySums sums, double scaledRate)
    {
        if (KnowsFloor)
        {
            return WithFloor(sums, scaledRate, Floor, atBound: false);
        }

        double start;
        double change;
        double rss;
        if (KnowsStart)
        {
            start = Start;
            var c = sums.DY - start * sums.D;
            change = sums.DD > 0 ? c / sums.DD : 0;
            rss = About(start) - change * c;
        }
        else
        {
            var c = sums.DY - sums.D * sumY / weight;
            var v = sums.DD - sums.D * sums.D / weight;
            change = v > 0 ? c / v : 0;
            start = (sumY - change * sums.D) / weight;
            rss = sumYY - sumY * sumY / weight - change * c;
        }

        return start + change < LowestFloor
            ? WithFloor(sums, scaledRate, LowestFloor, atBound: true)
            : new DecayAtRate(scaledRate, start, start + change, rss, atBound: false);
    }

    /// <summary>First and second derivative by ln κ of what the search makes as large as possible.</summary>
    public void Slope(in DecaySums sums, bool atBound, out double first, out double second)
    {
        if (KnowsFloor || atBound)
        {
            var floor = KnowsFloor ? Floor : LowestFloor;
            if (KnowsStart)
            {
                var change = floor - Start;
                first = 2 * change * (sums.DY1 - Start * sums.D1) - change * change * sums.DD1;
                second = 2 * change * (sums.DY2 - Start * sums.D2) - change * change * sums.DD2;
                return;
            }

            LogRatio(
                sumY - weight * floor - (sums.DY - floor * sums.D),
                floor * sums.D1 - sums.DY1,
                floor * sums.D2 - sums.DY2,
                weight - 2 * sums.D + sums.DD,
                sums.DD1 - 2 * sums.D1,
                sums.DD2 - 2 * sums.D2,
                out first,
                out second
            );
        }
        else if (KnowsStart)
        {
            LogRatio(
                sums.DY - Start * sums.D,
                sums.DY1 - Start * sums.D1,
                sums.DY2 - Start * sums.D2,
                sums.DD,
                sums.DD1,
                sums.DD2,
                out first,
                out second
            );
        }
        else
        {
            var mean = sumY / weight;
            LogRatio(
                sums.DY - mean * sums.D,
                sums.DY1 - mean * sums.D1,
                sums.DY2 - mean * sums.D2,
                sums.DD - sums.D * sums.D / weight,
                sums.DD1 - 2 * sums.D * sums.D1 / weight,
                sums.DD2 - 2 * (sums.D1 * sums.D1 + sums.D * sums.D2) / weight,
                out first,
                out second
            );
        }
    }

    /// <summary>Derivatives of ln(c²/v): nearly a parabola in ln κ, so that Newton's step lands close.</summary>
    private static void LogRatio(
        double c,
        double c1,
        double c2,
        double v,
        double v1,
        double v2,
        out double first,
        out double second
    )
    {
        var relativeC = c1 / c;
        var relativeV = v1 / v;
        first = 2 * relativeC - relativeV;
        second = 2 * (c2 / c - relativeC * relativeC) - (v2 / v - relativeV * relativeV);
    }

    private DecayAtRate WithFloor(in DecaySums sums, double scaledRate, double floor, bool atBound)
    {
        if (KnowsStart)
        {
            var change = floor - Start;
            var both = About(Start) - 2 * change * (sums.DY - Start * sums.D) + change * change * sums.DD;
            return new DecayAtRate(scaledRate, Start, floor, both, atBound);
        }

        var c = sumY - weight * floor - (sums.DY - floor * sums.D);
        var v = weight - 2 * sums.D + sums.DD;
        var amplitude = v > 0 ? c / v : 0;
        return new DecayAtRate(scaledRate, floor + amplitude, floor, About(floor) - amplitude * c, atBound);
    }

    /// <summary>Sum of squares of the values about a level.</summary>
    private double About(double level) => sumYY - 2 * level * sumY + weight * level * level;
}
