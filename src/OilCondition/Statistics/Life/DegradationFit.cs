using System.Buffers;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Readings seen through every movement of the family, each with its weight.</summary>
internal sealed class DegradationFit
{
    // Movements whose weight cannot move a chance by more than this are left out of a crossing law.
    private const double Negligible = 2e-3;
    private const int MostOnStack = 128;

    /// <summary>A walk with less than this part beside the error of the method is told by the smaller ratios of the family.</summary>
    private const double LeastForWalk = 3;
    private const double MostForError = 100;

    /// <summary>A course that is likelier than one of its neighbours by more than this logarithm lies among points that the family has too far apart.</summary>
    private const double TooFarApart = 3;

    /// <summary>Courses less likely than the likeliest movement by this logarithm are not looked at more closely.</summary>
    private const double Unlikely = 3;

    /// <summary>Beyond such a difference three points do not tell how high the way between them leads.</summary>
    private const double TooSteep = 100;
    private const int PointsBetween = 8;
    private const int MostRounds = 12;

    private readonly double[] positions;
    private readonly double[] values;
    private readonly DegradationPrior prior;
    private readonly double readingError;
    private readonly double[] weights;

    /// <summary>Courses between those of the family, with the weight that theirs holds.</summary>
    private readonly List<(int Index, Movement Movement, double Weight)> between = [];

    private DegradationFit(
        double lastTime,
        double span,
        double[] positions,
        double[] values,
        DegradationPrior prior,
        double readingError
    )
    {
        LastTime = lastTime;
        Span = span;
        this.positions = positions;
        this.values = values;
        this.prior = prior;
        this.readingError = readingError;
        weights = span > 0 ? Weighted() : [];
    }

    /// <summary>Whether there are enough readings at different times. The other members are meaningful only if there are.</summary>
    public bool IsDetermined => weights.Length > 0;

    /// <summary>Number of readings at different times.</summary>
    public int Count => values.Length;

    /// <summary>Time of the last reading.</summary>
    public double LastTime { get; }

    /// <summary>Time from the first reading to the last.</summary>
    public double Span { get; }

    /// <summary>Weight of each movement of <see cref="DegradationPrior.Family"/> after the readings; together 1.</summary>
    public IReadOnlyList<double> Weights => weights;

    /// <summary>Mean drift, per time: the rise of a course over the time that was seen, the latest drift of one that walks.</summary>
    public double Drift
    {
        get
        {
            double sum = 0;
            for (var m = 0; m < weights.Length; m++)
            {
                sum += weights[m] > 0 ? weights[m] * Member(m).Drift : 0;
            }

            return sum / Span;
        }
    }

    /// <summary>When the state first rises over a limit, in time since <see cref="LastTime"/>.</summary>
    /// <param name="limit">The limit, in the unit of the values.</param>
    /// <param name="latest">How far to look.</param>
    /// <param name="cycle">A cycle that was taken out of the values and goes on; null for none.</param>
    public CrossingLaw Above(double limit, double latest, SeasonalCycle? cycle = null) =>
        Law(Guard.Finite(limit, ""), 1, latest, cycle);

    /// <summary>When the state first falls under a limit, in time since <see cref="LastTime"/>.</summary>
    /// <param name="limit">The limit, in the unit of the values.</param>
    /// <param name="latest">How far to look.</param>
    /// <param name="cycle">A cycle that was taken out of the values and goes on; null for none.</param>
    public CrossingLaw Below(double limit, double latest, SeasonalCycle? cycle = null) =>
        Law(Guard.Finite(limit, ""), -1, latest, cycle);

    internal static DegradationFit Of(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        DegradationPrior prior,
        double readingError
    )
    {
        var count = times.Length;
        var isEnough = count >= (prior.Lesson is null ? Degradation.FewestReadings : Degradation.FewestWithFleet);
        var span = isEnough ? times[count - 1] - times[0] : 0;
        var parts = new double[isEnough ? count : 0];
        for (var i = 0; i < parts.Length; i++)
        {
            parts[i] = (times[i] - times[0]) / span;
        }

        return new DegradationFit(
            count == 0 ? 0 : times[count - 1],
            span,
            parts,
            values.ToArray(),
            prior,
            readingError
        );
    }

    /// <summary>The readings seen through one movement that the error of the test method leaves room for.</summary>
    /// <param name="index">Which of <see cref="DegradationPrior.Family"/>, one with a weight above 0.</param>
    public DegradationMember Member(int index)
    {
        var movement = Readable(DegradationPrior.Family[index], LargestRatio(values, readingError))!.Value;
        var four = new DegradationMember[1];
        Members([index], [movement], LeastSquares(values), four);
        return four[0];
    }

    /// <summary>Only the weights are kept of all members: few of them matter, and those are soon worked out again.</summary>
    private double[] Weighted()
    {
        var family = DegradationPrior.Family;
        var logs = new double[family.Length];
        var least = LeastSquares(values);
        var largest = LargestRatio(values, readingError);
        logs.AsSpan().Fill(double.NegativeInfinity);
        var best = double.NegativeInfinity;
        var members = new DegradationMember[LaneMath.Width];
        Span<int> indexes = stackalloc int[LaneMath.Width];
        Span<Movement> movements = stackalloc Movement[LaneMath.Width];
        foreach (var four in DegradationPrior.Fours)
        {
            var count = 0;
            foreach (var m in four)
            {
                if (prior.Weights[m] > 0 && Readable(family[m], largest) is { } movement)
                {
                    (indexes[count], movements[count]) = (m, movement);
                    count++;
                }
            }

            Members(indexes[..count], movements[..count], least, members);
            for (var i = 0; i < count; i++)
            {
                logs[indexes[i]] = members[i].LogLikelihood + prior.LogWeights[indexes[i]];
                best = Math.Max(best, logs[indexes[i]]);
            }
        }

        foreach (var group in DegradationPrior.ReadCourses)
        {
            LookBetween(group, logs, best, least);
        }

        // A course between two of the family may be likelier than all of them by more than a number can hold.
        foreach (var one in between)
        {
            best = Math.Max(best, one.Weight);
        }

        double sum = 0;
        for (var m = 0; m < logs.Length; m++)
        {
            logs[m] = Math.Exp(logs[m] - best);
            sum += logs[m];
        }

        for (var i = 0; i < between.Count; i++)
        {
            between[i] = between[i] with { Weight = Math.Exp(between[i].Weight - best) };
            sum += between[i].Weight;
        }

        for (var m = 0; m < logs.Length; m++)
        {
            logs[m] /= sum;
        }

        for (var i = 0; i < between.Count; i++)
        {
            between[i] = between[i] with { Weight = between[i].Weight / sum };
            logs[between[i].Index] += between[i].Weight;
        }

        return logs;
    }

    /// <summary>
    /// Exact readings, or many, tell courses apart more finely than the family has them; the nearest of the family would then be believed although it is wrong. Its
    /// weight is spread over courses between its neighbours, and again around the likeliest of these, until neighbours are alike.
    /// </summary>
    private void LookBetween(int[] group, double[] logs, double best, double least)
    {
        var at = 0;
        for (var i = 1; i < group.Length; i++)
        {
            at = logs[group[i]] > logs[group[at]] ? i : at;
        }

        var index = group[at];
        var (before, after) = (Math.Max(0, at - 1), Math.Min(group.Length - 1, at + 1));
        var neighbour = Math.Min(logs[group[before]], logs[group[after]]);
        var family = DegradationPrior.Family;
        var (low, high) = (family[group[before]].Course.Bend, family[group[after]].Course.Bend);
        var summit = Summit(
            (low, logs[group[before]]),
            (family[index].Course.Bend, logs[index]),
            (high, logs[group[after]])
        );
        var steepness = logs[index] - neighbour;
        if (!(steepness > TooFarApart) || (steepness < TooSteep && !(summit > best - Unlikely)))
        {
            return;
        }

        var density = prior.LogWeights[index] - Math.Log((high - low) / 2);
        logs[index] = double.NegativeInfinity;
        Span<double> found = stackalloc double[PointsBetween];
        Span<Movement> movements = stackalloc Movement[LaneMath.Width];
        var members = new DegradationMember[LaneMath.Width];
        for (var round = 0; round < MostRounds; round++)
        {
            var step = (high - low) / PointsBetween;
            var likeliest = 0;
            for (var i = 0; i < PointsBetween; i++)
            {
                var bend = low + (i + 0.5) * step;
                movements[i % LaneMath.Width] = family[index] with { Course = family[index].Course.Bent(bend) };
                if (i % LaneMath.Width < LaneMath.Width - 1)
                {
                    continue;
                }

                Members([index, index, index, index], movements, least, members);
                for (var j = 0; j < LaneMath.Width; j++)
                {
                    var place = i - LaneMath.Width + 1 + j;
                    found[place] = members[j].LogLikelihood + density + Math.Log(step);
                    between.Add((index, movements[j], found[place]));
                    likeliest = found[place] > found[likeliest] ? place : likeliest;
                }
            }

            var (left, right) = (Math.Max(0, likeliest - 1), Math.Min(PointsBetween - 1, likeliest + 1));
            if (found[likeliest] - Math.Min(found[left], found[right]) < TooFarApart || round == MostRounds - 1)
            {
                return;
            }

            between.RemoveRange(between.Count - PointsBetween + left, right - left + 1);
            (low, high) = (low + left * step, low + (right + 1) * step);
        }
    }

    /// <summary>
    /// The logarithm that a course between three may reach, whose middle one is highest: the sum of squares, exp(−2 ln L/(n − 1)), is about a parabola of the bend, and
    /// may come down to nothing. That of the middle one where two of them are one.
    /// </summary>
    private double Summit((double X, double Log) left, (double X, double Log) middle, (double X, double Log) right)
    {
        if (!(left.X < middle.X) || !(middle.X < right.X))
        {
            return middle.Log;
        }

        double Squares(double log) => Math.Exp(2 * (middle.Log - log) / (Count - 1));
        var fall = (1 - Squares(left.Log)) / (middle.X - left.X);
        var bend = ((Squares(right.Log) - 1) / (right.X - middle.X) - fall) / (right.X - left.X);
        var slope = fall + bend * (middle.X - left.X);
        var least = bend > 0 ? 1 - slope * slope / (4 * bend) : 1;
        return least > 0 ? middle.Log - 0.5 * (Count - 1) * Math.Log(least) : double.PositiveInfinity;
    }

    /// <summary>The readings seen through movements that stand side by side.</summary>
    /// <param name="indexes">Which of the family, or the one that a movement stands for.</param>
    /// <param name="movements">Up to four movements, as readable; none is none.</param>
    /// <param name="least">Least sum of squares.</param>
    /// <param name="members">Room for as many.</param>
    private void Members(
        ReadOnlySpan<int> indexes,
        ReadOnlySpan<Movement> movements,
        double least,
        DegradationMember[] members
    )
    {
        if (movements.Length == 0)
        {
            return;
        }

        if (movements[0].Kind == MovementKind.DriftWalks)
        {
            Span<double> clock =
                values.Length <= MostOnStack ? stackalloc double[values.Length] : new double[values.Length];
            for (var i = 0; i < clock.Length; i++)
            {
                clock[i] = movements[0].Course.At(positions[i]);
            }

            members[0] = Known(
                indexes[0],
                movements[0],
                DegradationMember.Of(movements[0], clock, values, least),
                least
            );
            return;
        }

        Span<Course> courses = stackalloc Course[movements.Length];
        for (var i = 0; i < movements.Length; i++)
        {
            courses[i] = movements[i].Course;
        }

        var four = new FourCourses(courses);
        Span<Lanes> clocks = values.Length <= MostOnStack ? stackalloc Lanes[values.Length] : new Lanes[values.Length];
        for (var i = 0; i < clocks.Length; i++)
        {
            clocks[i] = four.At(positions[i]);
        }

        var readings = FourReadings.Of(movements, clocks, values);
        for (var i = 0; i < movements.Length; i++)
        {
            members[i] = Known(indexes[i], movements[i], readings.Member(i, movements[i], least), least);
        }
    }

    /// <summary>A member with what is known beside the readings: what the fleet taught, and the error of a reading.</summary>
    private DegradationMember Known(int index, Movement movement, DegradationMember member, double least)
    {
        if (prior.Lesson is { } lesson)
        {
            var (scale2, freedom) = lesson.Scatter[index];
            member = member.WithScatter(Math.Max(scale2, least), freedom);
            if (movement.Kind == MovementKind.Moving && movement.Course == Course.Straight)
            {
                member = member.WithDrift(lesson.Drift * Span, lesson.DriftStandardDeviation * Span);
            }
        }

        return member.AtLeast(readingError * readingError, movement.ReadingShare);
    }

    /// <summary>
    /// The largest part of a random walk that the error of the test method leaves room for: the mean square of the steps from one reading to the next is
    /// that of a step of the walk and of two errors.
    /// </summary>
    private static double LargestRatio(ReadOnlySpan<double> values, double readingError)
    {
        if (!(readingError > 0))
        {
            return Movement.PureWalk;
        }

        double steps = 0;
        for (var i = 1; i < values.Length; i++)
        {
            steps += (values[i] - values[i - 1]) * (values[i] - values[i - 1]);
        }

        return Math.Max(0, steps / (values.Length - 1) / (readingError * readingError) - 2);
    }

    /// <summary>The movement as it is seen with that error; null where there is no room for it.</summary>
    private static Movement? Readable(Movement movement, double largest)
    {
        // Beside a walk of this size the error of a reading does not show.
        if (movement.Kind == MovementKind.DriftWalks || movement.Ratio <= largest || largest > MostForError)
        {
            return movement;
        }

        return movement.Ratio == Movement.PureWalk && largest > LeastForWalk ? movement with { Ratio = largest } : null;
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

    private CrossingLaw Law(double limit, int sign, double latest, SeasonalCycle? cycle)
    {
        if (!IsDetermined)
        {
            throw new InvalidOperationException($"The fit is not determined: {Count} readings.");
        }

        var all = ThatMatter();
        var paths = ArrayPool<PassagePath>.Shared.Rent(all.Count);
        var members = new DegradationMember[LaneMath.Width];
        var least = LeastSquares(values);
        Span<int> indexes = stackalloc int[LaneMath.Width];
        Span<Movement> movements = stackalloc Movement[LaneMath.Width];
        Span<double> parts = stackalloc double[LaneMath.Width];
        for (var from = 0; from < all.Count; )
        {
            var count = 0;
            while (
                count < LaneMath.Width
                && from + count < all.Count
                && (count == 0 || FourReadings.AreAlike(movements[0], all[from + count].Movement))
            )
            {
                (indexes[count], movements[count], parts[count]) = all[from + count];
                count++;
            }

            Members(indexes[..count], movements[..count], least, members);
            for (var i = 0; i < count; i++)
            {
                paths[from + i] = new PassagePath(members[i], parts[i], limit, sign, Span);
            }

            from += count;
        }

        var law = new MixtureLaw(
            paths.AsSpan(0, all.Count),
            cycle is null ? null : new CycleAhead(cycle, LastTime, sign)
        );
        ArrayPool<PassagePath>.Shared.Return(paths);
        return CrossingLaw.Of(law.Passed, latest);
    }

    /// <summary>The movements whose weight can move a chance, those that are alike together.</summary>
    private List<(int Index, Movement Movement, double Weight)> ThatMatter()
    {
        var largest = LargestRatio(values, readingError);
        var all = new List<(int Index, Movement Movement, double Weight)>(32);
        foreach (var four in DegradationPrior.Fours)
        {
            foreach (var m in four)
            {
                if (weights[m] >= Negligible && !IsLookedAtCloser(m))
                {
                    all.Add((m, Readable(DegradationPrior.Family[m], largest)!.Value, weights[m]));
                }
            }
        }

        all.AddRange(between.FindAll(one => one.Weight >= Negligible));
        return all;
    }

    private bool IsLookedAtCloser(int index)
    {
        foreach (var one in between)
        {
            if (one.Index == index)
            {
                return true;
            }
        }

        return false;
    }
}
