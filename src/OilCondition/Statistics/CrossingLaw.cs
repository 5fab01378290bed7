using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>When a limit is crossed, as a chance that grows with time. Times count from the last reading, in its unit.</summary>
/// <remarks>
/// The chance is given that the limit is not crossed at the last reading. Given that it is not crossed at a later time n either, the chance
/// is (F(t) − F(n)) / (1 − F(n)). Where F(n) is 1 to nearly all digits, 'not crossed' contradicts the law, and the answer has few digits left.
/// </remarks>
internal abstract class CrossingLaw
{
    private protected CrossingLaw() { }

    /// <summary>The chance that the limit has been crossed by a time, F(t).</summary>
    /// <param name="time">Time since the last reading, 0 or more.</param>
    /// <returns>0 to 1, never falling.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite or below 0.</exception>
    public double ChanceBefore(double time) => Passed(Guard.NotNegative(time, ""));

    /// <summary>The chance that the limit has been crossed by a time, given that it has not been crossed by an earlier one.</summary>
    /// <param name="time">Time since the last reading, 0 or more.</param>
    /// <param name="intact">Time up to which the limit is known not to be crossed, 0 or more.</param>
    /// <returns>0 to 1; 0 up to that earlier time.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A time is not finite or below 0.</exception>
    public double ChanceBefore(double time, double intact)
    {
        Guard.NotNegative(time, "");
        return Given(time, Guard.NotNegative(intact, ""), Begun(intact));
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
        Guard.OpenUnitInterval(chance);
        Guard.NotNegative(intact, "");
        Guard.Positive(latest, "");
        Span<double> times = stackalloc double[1];
        var found = Times([chance], intact, Begun(intact), latest, times) == 1;
        time = times[0];
        return found;
    }

    /// <summary>The chance that the limit has been crossed by the time up to which it is known not to be.</summary>
    internal double Begun(double intact) => intact > 0 ? Passed(intact) : 0;

    /// <summary>The chance by a time given that it was not crossed by an earlier one, whose chance is known.</summary>
    internal double Given(double time, double intact, double begun) =>
        time > intact && begun < 1 ? Math.Max(0, Math.Min(1, (Passed(time) - begun) / (1 - begun))) : 0;

    /// <summary>The times of ascending chances, as for one; each costs less than alone.</summary>
    /// <param name="chances">Ascending, each above 0 and below 1.</param>
    /// <param name="intact">Time up to which the limit is known not to be crossed.</param>
    /// <param name="begun">The chance by that time.</param>
    /// <param name="latest">How far to look.</param>
    /// <param name="times">The times.</param>
    /// <returns>How many of the chances are reached.</returns>
    internal int Times(ReadOnlySpan<double> chances, double intact, double begun, double latest, Span<double> times)
    {
        if (!(intact < latest))
        {
            return 0;
        }

        Span<double> wanted = stackalloc double[chances.Length];
        var count = 0;
        while (count < chances.Length && begun + chances[count] * (1 - begun) is var value && value < 1)
        {
            wanted[count++] = value;
        }

        return count == 0 ? 0 : Times(wanted.Slice(0, count), intact, latest, times);
    }

    private protected abstract double Passed(double time);

    /// <summary>A time near those that are asked for; 0 where none is known.</summary>
    private protected virtual double TypicalTime => 0;

    /// <summary>Where the chance reaches ascending values.</summary>
    private protected virtual int Times(ReadOnlySpan<double> wanted, double from, double latest, Span<double> times)
    {
        Span<double> memory = stackalloc double[ChanceSearch.Memory];
        var search = new ChanceSearch(Passed, from, latest, TypicalTime, memory);
        var found = 0;
        while (found < wanted.Length && search.TryFind(wanted[found], out times[found]))
        {
            found++;
        }

        return found;
    }
}
