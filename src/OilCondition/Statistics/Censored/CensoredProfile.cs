namespace OilCondition.Statistics;

/// <summary>How far quantities reach among the curves whose likelihood is close enough to the largest. Everything is scaled.</summary>
internal sealed class CensoredProfile
{
    /// <summary>Far beyond the readings a crossing is that of the floor.</summary>
    private const double Far = 1e3;

    /// <summary>A curve of known start cannot have another value at once.</summary>
    private const double Soon = 1e-9;
    private const double Widest = 1e4;
    private const double FirstStep = 0.05;

    private readonly CensoredSeries series;
    private readonly CensoredLikelihood likelihood;
    private readonly CensoredPoint best;
    private readonly double bestLogRate;
    private readonly double room;
    private readonly double limit;

    /// <summary>Prepares the reach.</summary>
    /// <param name="series">The readings.</param>
    /// <param name="likelihood">Their likelihood.</param>
    /// <param name="best">The most likely curve.</param>
    /// <param name="bestLogRate">Its ln κ.</param>
    /// <param name="largest">ln of its likelihood.</param>
    /// <param name="room">How much less ln likelihood is close enough.</param>
    public CensoredProfile(
        CensoredSeries series,
        CensoredLikelihood likelihood,
        in CensoredPoint best,
        double bestLogRate,
        double largest,
        double room
    )
    {
        this.series = series;
        this.likelihood = likelihood;
        this.best = best;
        this.bestLogRate = bestLogRate;
        this.room = room;
        limit = largest - room;
    }

    /// <summary>ln κ, from 30 octaves below the slowest rate that differs from a straight line, to the step.</summary>
    public (double? Lower, double? Upper) LogRates(double step)
    {
        var none = CensoredCondition.None;
        var found = best;
        double Inside(double u) => likelihood.AtRate(u, none, ref found, out _, out _) - limit;
        var lower = Edge(Inside, bestLogRate, DecayScan.LogLowest - 30 * Math.Log(2), step);
        return (lower, Edge(Inside, bestLogRate, series.Top, step));
    }

    public (double? Lower, double? Upper) Floors(double step)
    {
        var here = best.Floor / best.InverseScatter;
        var bound = series.LowestFloor;
        var lower = double.IsInfinity(bound)
            ? Edge(Following(CensoredCondition.Floor), here, here - Widest, step)
            : Edge(Following(CensoredCondition.Floor), here, bound, step) ?? bound;
        return (lower, Edge(Following(CensoredCondition.Floor), here, here + Widest, step));
    }

    public (double? Lower, double? Upper) Values(double at, double here)
    {
        var (least, largest) = series.Known.ValuesAt(at, series.LowestFloor);
        Func<double, double> Inside() => Following(value => CensoredCondition.At(at, value));
        var lower = double.IsInfinity(least)
            ? Edge(Inside(), here, here - Widest, FirstStep)
            : Edge(Inside(), here, least, FirstStep) ?? least;
        var upper = double.IsInfinity(largest)
            ? Edge(Inside(), here, here + Widest, FirstStep)
            : Edge(Inside(), here, largest, FirstStep) ?? largest;
        return (lower, upper);
    }

    /// <summary>When curves come down to a target: the first and the last of them; no first where none does, no last where some never do.</summary>
    /// <param name="target">The value to reach.</param>
    /// <param name="start">Start of the best curve.</param>
    /// <param name="floor">Floor of the best curve.</param>
    /// <param name="reached">When the best curve reaches the target; null where it does not.</param>
    public (double? First, double? Last) Crossings(double target, double start, double floor, double? reached)
    {
        var known = series.Known;
        var already = start <= target;
        if (already && known.HasStart)
        {
            return (0, 0);
        }

        if (target < series.LowestFloor || (known.HasFloor && target <= known.Floor))
        {
            return (already ? 0 : null, null);
        }

        var never = floor >= target || (!known.HasFloor && Following(CensoredCondition.Floor)(target) >= 0);
        var from = already ? 0 : reached ?? Far;
        Func<double, double> Inside() => Following(time => CensoredCondition.At(time, target));
        if (!already && Inside()(from) < 0)
        {
            return (null, null);
        }

        // No curve is earlier than that of a known start and rate with the lowest floor.
        var earliest =
            known is { HasStart: true, HasRate: true } && !double.IsInfinity(series.LowestFloor)
                ? Math.Log((known.Start - series.LowestFloor) / (target - series.LowestFloor)) / Math.Exp(known.LogRate)
                : 0;
        return (
            already ? 0 : Edge(Inside(), from, Math.Max(earliest, Soon), FirstStep) ?? earliest,
            never ? null : Edge(Inside(), from, Far, FirstStep)
        );
    }

    private double? Edge(Func<double, double> inside, double from, double to, double step) =>
        CensoredReach.Edge(inside, room, from, to, step);

    /// <summary>ln of the likelihood under a condition less the limit; each call starts from where the last one ended.</summary>
    private Func<double, double> Following(Func<double, CensoredCondition> condition)
    {
        var (found, u) = (best, bestLogRate);
        return value =>
            CensoredSearch.Local(series, likelihood, condition(value), ref found, ref u, out _, 1e-7) - limit;
    }
}
