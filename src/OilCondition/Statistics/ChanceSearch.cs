namespace OilCondition.Statistics;

/// <summary>When a chance that grows with time reaches given values; what has been evaluated for one of them serves the others.</summary>
/// <remarks>
/// Inverse interpolation of the logarithm of time by the logit, in which most laws are nearly straight, through up to four neighbours and within
/// a bracket that is halved where it does not shrink, for laws that jump.
/// </remarks>
internal ref struct ChanceSearch
{
    /// <summary>Doubles of memory that a search needs.</summary>
    public const int Memory = 2 * MostPoints;

    private const int MostPoints = 192;

    // Chances nearer to 0 or 1 are within rounding of them.
    private const double SmallestChance = 1e-14;
    private const double LargestLogit = 32;

    /// <summary>A crossing within this part of the time that is looked at is one at once.</summary>
    private const double SmallestPart = 1e-9;

    /// <summary>From here one interpolation leaves nothing.</summary>
    private const double CloseEnough = 1e-6;
    private const double NarrowEnough = 1e-10;
    private static readonly double Ln4 = Math.Log(4);

    private readonly Func<double, double> chanceAt;
    private readonly double from;
    private readonly double earliest;
    private readonly double atLatest;

    /// <summary>ln(time − from), ascending, and the logit of the chance there.</summary>
    private readonly Span<double> logs;
    private readonly Span<double> logits;
    private int count;

    /// <summary>Prepares a search.</summary>
    /// <param name="chanceAt">The chance by a time, never falling.</param>
    /// <param name="from">Where it begins.</param>
    /// <param name="latest">How far to look.</param>
    /// <param name="typical">A time near those sought, or 0.</param>
    /// <param name="memory"><see cref="Memory"/> doubles.</param>
    public ChanceSearch(Func<double, double> chanceAt, double from, double latest, double typical, Span<double> memory)
    {
        this.chanceAt = chanceAt;
        this.from = from;
        logs = memory.Slice(0, MostPoints);
        logits = memory.Slice(MostPoints, MostPoints);
        atLatest = chanceAt(latest);
        earliest = Math.Log(SmallestPart * latest);
        count = 1;
        logs[0] = Math.Log(latest - from);
        logits[0] = Logit(atLatest);
        var guess = Math.Log(Math.Max(typical - from, typical / 4));
        if (guess > earliest && guess < logs[0])
        {
            Evaluate(guess);
        }
    }

    /// <summary>Finds the time at which a chance is reached; not if that is later than the latest.</summary>
    public bool TryFind(double wanted, out double time)
    {
        time = 0;
        if (!(atLatest >= wanted))
        {
            return false;
        }

        var goal = Logit(wanted);
        while (logits[0] >= goal)
        {
            if (logs[0] - Ln4 < earliest)
            {
                time = from;
                return true;
            }

            Evaluate(logs[0] - Ln4);
        }

        time = from + Math.Exp(Root(goal));
        return true;
    }

    private static double Logit(double chance) =>
        Math.Log(Math.Max(chance, SmallestChance) / Math.Max(1 - chance, SmallestChance));

    private double Root(double goal)
    {
        var upper = Above(goal);
        var widthBefore = logs[upper] - logs[upper - 1];
        for (var step = 1; count < MostPoints; step++)
        {
            var (low, high) = (logs[upper - 1], logs[upper]);
            var width = high - low;
            if (width <= NarrowEnough)
            {
                break;
            }

            var halve = false;
            if (step % 6 == 0)
            {
                halve = width > widthBefore / 4;
                widthBefore = width;
            }

            var next = halve ? (low + high) / 2 : Interpolated(goal, upper);
            var at = Evaluate(next);
            upper = Above(goal);
            if (Math.Abs(logits[at] - goal) < CloseEnough)
            {
                return logits[at] == goal ? logs[at] : Interpolated(goal, upper);
            }
        }

        return logs[upper];
    }

    /// <summary>The first point that is not below; there is one before it.</summary>
    private readonly int Above(double goal)
    {
        var upper = 1;
        while (upper < count - 1 && logits[upper] < goal)
        {
            upper++;
        }

        return upper;
    }

    /// <summary>Within the bracket that ends at a point: the polynomial through the neighbours, else the chord, else the middle.</summary>
    private readonly double Interpolated(double goal, int upper)
    {
        var (low, high) = (logs[upper - 1], logs[upper]);
        if (Math.Abs(logits[upper - 1]) > LargestLogit || Math.Abs(logits[upper]) > LargestLogit)
        {
            return (low + high) / 2;
        }

        var first = upper >= 2 && Math.Abs(logits[upper - 2]) < LargestLogit ? upper - 2 : upper - 1;
        var last = upper + 1 < count && Math.Abs(logits[upper + 1]) < LargestLogit ? upper + 1 : upper;
        double sum = 0;
        for (var i = first; i <= last; i++)
        {
            var share = logs[i];
            for (var j = first; j <= last; j++)
            {
                share *= j == i ? 1 : (goal - logits[j]) / (logits[i] - logits[j]);
            }

            sum += share;
        }

        if (sum > low && sum < high)
        {
            return sum;
        }

        var chord = low + (high - low) * (goal - logits[upper - 1]) / (logits[upper] - logits[upper - 1]);
        return chord > low && chord < high ? chord : (low + high) / 2;
    }

    private int Evaluate(double log)
    {
        var logit = Logit(chanceAt(from + Math.Exp(log)));
        var at = count++;
        for (; at > 0 && logs[at - 1] > log; at--)
        {
            logs[at] = logs[at - 1];
            logits[at] = logits[at - 1];
        }

        logs[at] = log;
        logits[at] = logit;
        return at;
    }
}
