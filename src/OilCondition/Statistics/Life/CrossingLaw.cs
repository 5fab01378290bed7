using OilCondition.Guards;

namespace OilCondition.Statistics;

/// <summary>When a limit is crossed, as a chance that grows with time. Times count from the last reading, in its unit.</summary>
/// <remarks>
/// The chance is given that the limit is not crossed at the last reading. Given that it is not crossed at a later time n either, the chance
/// is (F(t) − F(n)) / (1 − F(n)). Where F(n) is 1 to nearly all digits, 'not crossed' contradicts the law, and the answer has few digits left.
/// </remarks>
public abstract class CrossingLaw
{
    // Chances nearer to 0 or 1 are within rounding of them.
    private const double SmallestChance = 1e-14;

    private protected CrossingLaw() { }

    /// <summary>The chance that the limit has been crossed by a time, F(t).</summary>
    /// <param name="time">Time since the last reading, 0 or more.</param>
    /// <returns>0 to 1, never falling.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite or below 0.</exception>
    public double ChanceBefore(double time) => Passed(Guard.NotNegative(time, "", nameof(time)));

    /// <summary>The chance that the limit has been crossed by a time, given that it has not been crossed by an earlier one.</summary>
    /// <param name="time">Time since the last reading, 0 or more.</param>
    /// <param name="intact">Time up to which the limit is known not to be crossed, 0 or more.</param>
    /// <returns>0 to 1; 0 up to that earlier time.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A time is not finite or below 0.</exception>
    public double ChanceBefore(double time, double intact)
    {
        Guard.NotNegative(intact, "", nameof(intact));
        return ChanceBefore(time) is var all && time > intact && Passed(intact) is var before && before < 1
            ? Math.Max(0, Math.Min(1, (all - before) / (1 - before)))
            : 0;
    }

    /// <summary>The time by which the limit has been crossed with a chance, given that it has not been crossed by an earlier time.</summary>
    /// <param name="chance">The chance, above 0 and below 1.</param>
    /// <param name="intact">Time up to which the limit is known not to be crossed, 0 or more.</param>
    /// <param name="latest">How far to look, above <paramref name="intact"/>.</param>
    /// <param name="time">The time since the last reading, or 0 where the chance is not reached by then.</param>
    /// <returns>Whether the chance is reached by the latest time.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The chance is not between 0 and 1, or a time is not finite or below 0.</exception>
    public bool TryTime(double chance, double intact, double latest, out double time)
    {
        Guard.OpenUnitInterval(chance, nameof(chance));
        Guard.NotNegative(intact, "", nameof(intact));
        Guard.Positive(latest, "", nameof(latest));
        var before = Passed(intact);
        var wanted = before + chance * (1 - before);
        time = 0;
        return wanted < 1 && intact < latest && TryPassed(wanted, intact, latest, out time);
    }

    private protected abstract double Passed(double time);

    /// <summary>Where the chance reaches a value, searched on the logarithm of the time since <paramref name="from"/>.</summary>
    private protected virtual bool TryPassed(double wanted, double from, double latest, out double time)
    {
        time = 0;
        var upper = latest - from;
        if (Passed(latest) < wanted)
        {
            return false;
        }

        // The way down by fours ends long before the smallest time that matters: a crossing that soon is one at once.
        var lower = upper;
        var atLower = Passed(from + lower);
        var atUpper = atLower;
        while (atLower >= wanted)
        {
            (upper, atUpper) = (lower, atLower);
            lower /= 4;
            if (lower < 1e-9 * latest)
            {
                time = from;
                return true;
            }

            atLower = Passed(from + lower);
        }

        time = from + Math.Exp(Root(wanted, from, Math.Log(lower), atLower, Math.Log(upper), atUpper));
        return true;
    }

    private static double Logit(double chance) =>
        Math.Log(Math.Max(chance, SmallestChance) / Math.Max(1 - chance, SmallestChance));

    /// <summary>
    /// False position after Anderson and Björck 1973 on the logit, which is nearly straight in the logarithm of time; every sixth step halves,
    /// for laws that jump.
    /// </summary>
    private double Root(double wanted, double from, double lower, double atLower, double upper, double atUpper)
    {
        var goal = Logit(wanted);
        var low = Logit(atLower) - goal;
        var high = Logit(atUpper) - goal;
        var wasEarly = false;
        for (var step = 1; upper - lower > 1e-10; step++)
        {
            var between = step % 6 == 0 ? 0.5 : low / (low - high);
            var middle = lower + (upper - lower) * between;
            var chance = Passed(from + Math.Exp(middle));
            var off = Logit(chance) - goal;
            if (Math.Abs(off) < 1e-8 || !(middle > lower && middle < upper))
            {
                return middle;
            }

            // An end that stays twice counts for less, so that the next step falls on its side.
            var isEarly = off < 0;
            var rest = 1 - off / (isEarly ? low : high);
            var weight =
                isEarly != wasEarly || step == 1 ? 1
                : rest > 0 ? rest
                : 0.5;
            wasEarly = isEarly;
            if (isEarly)
            {
                high *= weight;
                (lower, low) = (middle, off);
            }
            else
            {
                low *= weight;
                (upper, high) = (middle, off);
            }
        }

        return upper;
    }
}
