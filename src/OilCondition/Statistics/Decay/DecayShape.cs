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
    private readonly double perWeight;
    private readonly double mean;

    public DecayShape(in DecayColumns columns, double? start, double? floor, double lowestFloor)
    {
        weight = columns.Count;
        sumY = columns.SumY;
        sumYY = columns.SumYY;
        perWeight = 1 / weight;
        mean = sumY * perWeight;
        KnowsStart = start.HasValue;
        KnowsFloor = floor.HasValue;
        Start = start.HasValue ? columns.Scaled(start.Value) : 0;
        Floor = floor.HasValue ? columns.Scaled(floor.Value) : 0;
        Lead = KnowsStart ? 0 : columns.Lead;
        LowestFloor = floor.HasValue ? double.NegativeInfinity : columns.Scaled(lowestFloor);
    }

    /// <summary>Sum of squares of the values about their mean.</summary>
    public double Total => sumYY - sumY * mean;

    /// <summary>How long before the first reading the curve begins at a start that nobody knows, in spans.</summary>
    public double Lead { get; }

    public bool KnowsStart { get; }
    public bool KnowsFloor { get; }
    public double Start { get; }
    public double Floor { get; }
    public double LowestFloor { get; }

    /// <summary>The best curve for the rate of the sums.</summary>
    public DecayAtRate Best(in DecaySums sums, double scaledRate, double shift = 0)
    {
        if (KnowsFloor)
        {
            return WithFloor(sums, scaledRate, Floor, atBound: false, shift);
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
            var share = sums.D * perWeight;
            var c = sums.DY - sums.D * mean;
            var v = sums.DD - sums.D * share;
            change = v > 0 ? c / v : 0;
            start = mean - change * share;
            rss = Total - change * c;
        }

        return start + change < LowestFloor
            ? WithFloor(sums, scaledRate, LowestFloor, atBound: true, shift)
            : new DecayAtRate(scaledRate, start, start + change, rss, atBound: false, shift);
    }

    /// <summary>The residual sums of squares at four rates, one a lane, with the lowest floor and without it.</summary>
    public Lanes LeastSquares(Lanes d, Lanes dd, Lanes dy, out Lanes free)
    {
        free = Free(d, dd, dy, out var start, out var change);
        return double.IsInfinity(LowestFloor)
            ? free
            : LaneMath.WhereLess(
                start + change,
                LaneMath.Of(LowestFloor),
                WithFloor(d, dd, dy, LowestFloor, out _, out _),
                free
            );
    }

    /// <summary>The residual sums of squares of the best curves without a lowest floor, at four rates.</summary>
    public Lanes Free(Lanes d, Lanes dd, Lanes dy, out Lanes start, out Lanes change)
    {
        if (KnowsFloor)
        {
            return WithFloor(d, dd, dy, Floor, out start, out change);
        }

        if (KnowsStart)
        {
            start = LaneMath.Of(Start);
            var c = dy - start * d;
            change = Ratio(c, dd);
            return LaneMath.Of(About(Start)) - change * c;
        }
        else
        {
            var level = LaneMath.Of(mean);
            var c = dy - level * d;
            var share = d * LaneMath.Of(perWeight);
            change = Ratio(c, dd - share * d);
            start = level - change * share;
            return LaneMath.Of(Total) - change * c;
        }
    }

    /// <summary>
    /// First and second derivative by ln κ of what the search makes as large as possible. Written with as few divisions, one after the other, as can be:
    /// they take most of the time of a short series.
    /// </summary>
    /// <returns>Whether the floor is at its bound.</returns>
    public bool Slope(in DecaySums sums, out double first, out double second)
    {
        if (KnowsFloor)
        {
            SlopeWithFloor(sums, Floor, out first, out second);
            return false;
        }

        if (KnowsStart)
        {
            var c = sums.DY - Start * sums.D;
            if (c < (LowestFloor - Start) * sums.DD)
            {
                SlopeWithFloor(sums, LowestFloor, out first, out second);
                return true;
            }

            LogRatio(
                c,
                sums.DY1 - Start * sums.D1,
                sums.DY2 - Start * sums.D2,
                sums.DD,
                sums.DD1,
                sums.DD2,
                out first,
                out second
            );
            return false;
        }
        else
        {
            var share = sums.D * perWeight;
            var c = sums.DY - mean * sums.D;
            var v = sums.DD - sums.D * share;

            // start + change below the lowest floor, times v.
            if (c * (1 - share) < (LowestFloor - mean) * v)
            {
                SlopeWithFloor(sums, LowestFloor, out first, out second);
                return true;
            }

            LogRatio(
                c,
                sums.DY1 - mean * sums.D1,
                sums.DY2 - mean * sums.D2,
                v,
                sums.DD1 - 2 * share * sums.D1,
                sums.DD2 - 2 * (sums.D1 * sums.D1 * perWeight + share * sums.D2),
                out first,
                out second
            );
            return false;
        }
    }

    /// <summary>First and second derivative of the least residual sum of squares by ln κ.</summary>
    /// <param name="sums">The sums at a rate.</param>
    /// <param name="squares">That least sum.</param>
    /// <param name="first">The first.</param>
    /// <param name="second">The second.</param>
    public void SlopeOfSquares(in DecaySums sums, double squares, out double first, out double second)
    {
        var isAtBound = Slope(sums, out var rise, out var bend);
        var knowsFloor = KnowsFloor || isAtBound;

        // The search makes as large as possible what the curve explains: itself where start and floor are known, else its logarithm.
        var explained =
            KnowsStart && knowsFloor ? 1
            : KnowsStart ? About(Start) - squares
            : knowsFloor ? About(isAtBound ? LowestFloor : Floor) - squares
            : Total - squares;
        first = -explained * rise;
        second = -explained * (KnowsStart && knowsFloor ? bend : bend + rise * rise);
    }

    private void SlopeWithFloor(in DecaySums sums, double floor, out double first, out double second)
    {
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
        var perC = 1 / c;
        var perV = 1 / v;
        var relativeC = c1 * perC;
        var relativeV = v1 * perV;
        first = 2 * relativeC - relativeV;
        second = 2 * (c2 * perC - relativeC * relativeC) - (v2 * perV - relativeV * relativeV);
    }

    private Lanes WithFloor(Lanes d, Lanes dd, Lanes dy, double floor, out Lanes start, out Lanes change)
    {
        if (KnowsStart)
        {
            start = LaneMath.Of(Start);
            change = LaneMath.Of(floor - Start);
            return LaneMath.Of(About(Start)) - change * (LaneMath.Of(2) * (dy - start * d) - change * dd);
        }

        var c = LaneMath.Of(sumY - weight * floor) - dy + LaneMath.Of(floor) * d;
        var amplitude = Ratio(c, LaneMath.Of(weight) - d - d + dd);
        start = LaneMath.Of(floor) + amplitude;
        change = LaneMath.Of(0) - amplitude;
        return LaneMath.Of(About(floor)) - amplitude * c;
    }

    /// <summary>x/y, or 0 where y is not above 0.</summary>
    private static Lanes Ratio(Lanes x, Lanes y) => LaneMath.WhereLess(default, y, x / y, default);

    private DecayAtRate WithFloor(in DecaySums sums, double scaledRate, double floor, bool atBound, double shift)
    {
        if (KnowsStart)
        {
            var change = floor - Start;
            var both = About(Start) - 2 * change * (sums.DY - Start * sums.D) + change * change * sums.DD;
            return new DecayAtRate(scaledRate, Start, floor, both, atBound, shift);
        }

        var c = sumY - weight * floor - (sums.DY - floor * sums.D);
        var v = weight - 2 * sums.D + sums.DD;
        var amplitude = v > 0 ? c / v : 0;
        return new DecayAtRate(scaledRate, floor + amplitude, floor, About(floor) - amplitude * c, atBound, shift);
    }

    /// <summary>Sum of squares of the values about a level.</summary>
    private double About(double level) => sumYY - 2 * level * sumY + weight * level * level;
}
