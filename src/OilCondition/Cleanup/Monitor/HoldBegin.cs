using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>When the hold of a part begins, counted from where its best curve crosses the target: readings scatter, and come one by one.</summary>
/// <remarks>P(begun by t_j) = Π Φ((target − c(t_i)) / s) over the readings i of the holding time from j on.</remarks>
internal sealed class HoldBegin
{
    private const int MostReadings = 2000;
    private const double FarAway = 5;

    private readonly double[] sums;
    private readonly double[] hours;
    private readonly int window;

    /// <param name="part">The part; its curve crosses the target.</param>
    /// <param name="from">The reading after which the next ones come, or the last that holds.</param>
    /// <param name="isHolding">Whether it holds since that moment or before.</param>
    /// <param name="crossing">When the best curve crosses.</param>
    /// <param name="holdHours">Holding time.</param>
    public HoldBegin(RunPart part, DateTimeOffset from, bool isHolding, DateTimeOffset crossing, double holdHours)
    {
        var gap = Math.Max(1.0 / 3600, part.UsualGapHours);

        // Long before the crossing no hold lasts: readings are laid out from where the curve stands some scatters above.
        var curve = part.Curve;
        var excess = Math.Max(0, curve.ValueAt(crossing) - curve.Floor);
        var speed = Math.Max(1e-12, curve.RatePerHour * excess);
        var reach = Math.Min(10 * holdHours + 100 * gap, FarAway * part.ScatterAt(part.Target) / speed);
        var begin = Math.Max(0, Math.Floor(((crossing - from).TotalHours - reach) / gap) - 1);
        var span = Math.Max(0, (crossing - from).TotalHours - begin * gap) + reach + holdHours + 2 * gap;
        var stride = Math.Max(1, (int)Math.Ceiling(span / gap / MostReadings));
        var count = (int)Math.Min(2.0 * MostReadings, Math.Ceiling(span / (gap * stride)) + 1);
        window = Math.Max(1, (int)Math.Ceiling(holdHours / (gap * stride)));
        hours = new double[count];
        sums = new double[count + window + 1];
        for (var i = 0; i < count + window; i++)
        {
            var hour = (begin + 1 + (double)i * stride) * gap;
            if (i < count)
            {
                hours[i] = hour;
            }

            var value = curve.ValueAt(from.AddHours(Math.Min(hour, 24 * 3650)));
            var scatter = part.ScatterAt(value);
            var chance =
                scatter > 0 ? NormalTail.Probability((part.Target - value) / scatter)
                : value <= part.Target ? 1
                : 0;
            sums[i + 1] = sums[i] + stride * Math.Log(Math.Max(1e-300, chance));
        }

        ChanceNow = isHolding ? Chance(0) : 0;
    }

    /// <summary>The chance that a hold that has begun is not broken.</summary>
    public double ChanceNow { get; }

    /// <summary>Hours from the moment given until the hold has begun with a chance; null where it never has such a chance. 0 where a hold that has begun does.</summary>
    public double? HoursTo(double chance)
    {
        if (ChanceNow >= chance)
        {
            return 0;
        }

        // The chance that it has begun by then does not fall with time; where the curve levels off close to the target it may never get so high.
        for (var i = 0; i < hours.Length; i++)
        {
            if (Chance(i) >= chance)
            {
                return hours[i];
            }
        }

        return null;
    }

    private double Chance(int from) => Math.Exp(sums[from + window] - sums[from]);
}
