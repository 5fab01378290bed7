using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Readings seen through every member of the family from the straight line to the random walk, each with its weight.</summary>
internal sealed class DegradationFit
{
    // Members whose weight cannot move a chance by more than this are left out of a crossing law.
    private const double Negligible = 1e-4;

    private readonly RandomWalkMember[] members;
    private readonly double[] weights;

    private DegradationFit(int count, double lastTime, RandomWalkMember[] members, double[] weights)
    {
        Count = count;
        LastTime = lastTime;
        this.members = members;
        this.weights = weights;
    }

    /// <summary>Whether there are enough readings at different times. The other members are meaningful only if there are.</summary>
    public bool IsDetermined => members.Length > 0;

    /// <summary>Number of readings at different times.</summary>
    public int Count { get; }

    /// <summary>Time of the last reading.</summary>
    public double LastTime { get; }

    /// <summary>Weight of each of <see cref="DegradationPrior.Ratios"/> after the readings; together 1.</summary>
    public IReadOnlyList<double> Weights => weights;

    /// <summary>Mean drift, per time.</summary>
    public double Drift => Mean(member => member.Drift);

    /// <summary>Standard error of the drift: within the members and among them.</summary>
    public double DriftStandardError
    {
        get
        {
            var mean = Drift;
            return Math.Sqrt(
                Mean(member => member.DriftVariance * member.Scale2 + (member.Drift - mean) * (member.Drift - mean))
            );
        }
    }

    /// <summary>Mean state at the last reading.</summary>
    public double Level => Mean(member => member.Level);

    /// <summary>When the state first rises over a limit.</summary>
    /// <param name="limit">The limit, in the unit of the values.</param>
    /// <returns>The law, in time since <see cref="LastTime"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not finite.</exception>
    /// <exception cref="InvalidOperationException">The fit is not determined.</exception>
    public CrossingLaw Above(double limit) => Law(Guard.Finite(limit, ""), 1);

    /// <summary>When the state first falls under a limit.</summary>
    /// <param name="limit">The limit, in the unit of the values.</param>
    /// <returns>The law, in time since <see cref="LastTime"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not finite.</exception>
    /// <exception cref="InvalidOperationException">The fit is not determined.</exception>
    public CrossingLaw Below(double limit) => Law(Guard.Finite(limit, ""), -1);

    internal static DegradationFit Of(ReadOnlySpan<double> times, ReadOnlySpan<double> values, DegradationPrior prior)
    {
        var count = times.Length;
        if (count < Degradation.FewestReadings)
        {
            return new DegradationFit(count, count == 0 ? 0 : times[count - 1], [], []);
        }

        var filtered = new RandomWalkMember[DegradationPrior.Grid.Length];
        var logs = new double[filtered.Length];
        var interval = (times[count - 1] - times[0]) / (count - 1);
        var least = LeastSquares(values);
        for (var i = 0; i < filtered.Length; i++)
        {
            // The variances of the random walk over one mean interval and of a reading add up to 1: both ends of the family are finite.
            var share = DegradationPrior.Grid[i] / (1 + DegradationPrior.Grid[i]);
            filtered[i] = RandomWalkMember.Filter(times, values, share / interval, 1 - share, least);
            if (prior.KnowsDrift)
            {
                filtered[i] = filtered[i].With(prior.Drift, prior.DriftStandardDeviation);
            }

            logs[i] =
                prior.WeightOf(i) > 0
                    ? filtered[i].LogLikelihood + Math.Log(prior.WeightOf(i))
                    : double.NegativeInfinity;
        }

        return new DegradationFit(count, times[count - 1], filtered, Normalised(logs));
    }

    /// <summary>Sum of squares below which scatter is rounding: it keeps readings on an exact line from having an infinite likelihood.</summary>
    private static double LeastSquares(ReadOnlySpan<double> values)
    {
        double sum = 0;
        foreach (var value in values)
        {
            sum += value * value;
        }

        return 1e-18 * sum + 1e-290;
    }

    private static double[] Normalised(double[] logs)
    {
        var best = logs.Max();
        var sum = logs.Sum(log => Math.Exp(log - best));
        return [.. logs.Select(log => Math.Exp(log - best) / sum)];
    }

    private double Mean(Func<RandomWalkMember, double> of)
    {
        double sum = 0;
        for (var i = 0; i < members.Length; i++)
        {
            sum += weights[i] * of(members[i]);
        }

        return sum;
    }

    private MixtureLaw Law(double limit, int sign)
    {
        if (!IsDetermined)
        {
            throw new InvalidOperationException($"The fit is not determined: {Count} readings.");
        }

        var paths = new List<PassagePath>(MemberPaths.Most * members.Length);
        var freedom = Count - 2;
        var rule = new PassageRule(freedom);
        var given = new PassageRule(freedom + 1);
        for (var i = 0; i < members.Length; i++)
        {
            if (weights[i] >= Negligible)
            {
                MemberPaths.Add(paths, members[i], weights[i], sign * limit, sign, rule, given);
            }
        }

        return new MixtureLaw(paths, given);
    }
}
