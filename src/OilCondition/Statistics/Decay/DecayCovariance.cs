using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>Covariance of start, floor and ln(rate), (J'WJ)⁻¹ times a residual variance.</summary>
/// <remarks>
/// J has the columns ∂y/∂start = e, ∂y/∂floor = d and ∂y/∂ln k = (floor − start) x e with x = k (t − origin), e = exp(−x), d = 1 − e.
/// The third is split into its projection on the linear columns and the rest, which keeps the digits where they are nearly dependent.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct DecayCovariance(
    double Start,
    double Floor,
    double LogRate,
    double StartFloor,
    double StartLogRate,
    double FloorLogRate
)
{
    /// <summary>From the sums at the optimum, for a residual variance of 1, with the residual sum of squares taken anew from the residuals.</summary>
    public static DecayCovariance Of(
        in DecayColumns columns,
        in DecayShape shape,
        in DecayAtRate curve,
        in DecaySums sums,
        bool rateIsFree,
        out double residualSumOfSquares,
        out bool rateIsDetermined
    )
    {
        double weight = columns.Count;
        var mean = sums.D / weight;
        var floorIsFixed = shape.KnowsFloor || curve.AtBound;
        double start = 0;
        double floor = 0;
        double both = 0;
        double level = 0;
        double slope = 0;
        if (!floorIsFixed && !shape.KnowsStart)
        {
            var v = sums.DD - sums.D * mean;
            slope = (sums.DD1 / 2 - sums.D1 * mean) / v;
            level = sums.D1 / weight - slope * mean;
            start = 1 / weight + mean * mean / v;
            floor = 1 / weight + (1 - mean) * (1 - mean) / v;
            both = 1 / weight - mean * (1 - mean) / v;
        }
        else if (!floorIsFixed)
        {
            slope = sums.DD1 / 2 / sums.DD;
            floor = 1 / sums.DD;
        }
        else if (!shape.KnowsStart)
        {
            var v = weight - 2 * sums.D + sums.DD;
            level = (sums.D1 - sums.DD1 / 2) / v;
            slope = -level;
            start = 1 / v;
        }

        var change = curve.Floor - curve.Start;
        Rest(columns, curve, level, slope, out residualSumOfSquares, out var rest);

        // Rest of the rate's column against its own size, and a curve that moves at all.
        rateIsDetermined = rateIsFree && rest > 1e-18 * weight && change * change > 1e-24;
        if (!rateIsDetermined)
        {
            return new DecayCovariance(start, floor, 0, both, 0, 0);
        }

        var toFloor = level + slope;
        return new DecayCovariance(
            start + level * level / rest,
            floor + toFloor * toFloor / rest,
            1 / (change * change * rest),
            both + level * toFloor / rest,
            -level / (change * rest),
            -toFloor / (change * rest)
        );
    }

    /// <summary>Variance of any function of the curve from its derivatives by start, floor and ln k (delta method).</summary>
    public double VarianceOf(double byStart, double byFloor, double byLogRate) =>
        Math.Max(
            0,
            byStart * byStart * Start
                + byFloor * byFloor * Floor
                + byLogRate * byLogRate * LogRate
                + 2
                    * (
                        byStart * byFloor * StartFloor
                        + byStart * byLogRate * StartLogRate
                        + byFloor * byLogRate * FloorLogRate
                    )
        );

    /// <summary>For values in another unit and another residual variance.</summary>
    public DecayCovariance Scaled(double variance, double unit) =>
        new(
            Start * variance * unit * unit,
            Floor * variance * unit * unit,
            LogRate * variance,
            StartFloor * variance * unit * unit,
            StartLogRate * variance * unit,
            FloorLogRate * variance * unit
        );

    private static void Rest(
        in DecayColumns columns,
        in DecayAtRate curve,
        double level,
        double slope,
        out double residualSumOfSquares,
        out double rest
    )
    {
        var rate = LaneMath.Of(curve.ScaledRate);
        var one = LaneMath.Of(1);
        var start = LaneMath.Of(curve.Start);
        var change = LaneMath.Of(curve.Floor - curve.Start);
        var a = LaneMath.Of(level);
        var b = LaneMath.Of(slope);
        var shift = LaneMath.Of(curve.Shift);
        var halfShift = LaneMath.Of(0.5 * curve.Shift);
        Lanes residuals = default;
        Lanes remainders = default;
        for (var i = 0; i < columns.Times.Length; i += LaneMath.Width)
        {
            var d = LaneMath.Load(columns.Drops, i);
            var w = LaneMath.Load(columns.Weights, i);
            var x = LaneMath.Load(columns.Times, i) * rate;
            d += x * (one - d) * shift * (one - halfShift * (one + x));
            var residual = LaneMath.Load(columns.Values, i) - start - change * d;
            residuals = LaneMath.MultiplyAdd(w * residual, residual, residuals);
            var remainder = x * (one - d) - a - b * d;
            remainders = LaneMath.MultiplyAdd(w * remainder, remainder, remainders);
        }

        residualSumOfSquares = LaneMath.Sum(residuals);
        rest = LaneMath.Sum(remainders);
    }
}
