using System.Buffers;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Readings seen through every movement of the family, each with its weight.</summary>
internal sealed class DegradationFit : IDisposable
{
    // Movements whose weight cannot move a chance by more than this are left out of a crossing law.
    private const double Negligible = 2e-3;

    /// <summary>A walk with less than this part beside the error of the method is told by the smaller ratios of the family.</summary>
    private const double LeastForWalk = 3;
    private const double MostForError = 100;

    /// <summary>A course that is likelier than one of its neighbours by more than this logarithm lies among points that the family has too far apart.</summary>
    private const double TooFarApart = 3;

    /// <summary>Courses less likely than the likeliest movement by this logarithm are not looked at more closely.</summary>
    private const double Unlikely = 3;

    /// <summary>By such a part of the largest difference between three sums of squares the least may lie below the parabola through them (ours, chosen on simulated series).</summary>
    private const double Miss = 0.1;
    private const int PointsBetween = 8;

    /// <summary>So many courses side by side that the likeliest leads by less than <see cref="TooFarApart"/> are fine enough.</summary>
    private const int FewestAlike = 4;
    private const int MostRounds = 12;

    private readonly double[] values;
    private readonly DegradationPrior prior;
    private readonly double readingError;
    private readonly double largestRatio;
    private readonly double least;

    /// <summary>What was read by each of <see cref="DegradationPrior.Fours"/> that is no drift that walks; by a design of its own where the error of the method changed a walk.</summary>
    private readonly (FourReadings Readings, bool IsOwn, FourDesign Own)[] read = [];
    private readonly FamilyDesigns? own;
    private readonly FamilyDesign? family;
    private readonly double[] weights = [];

    /// <summary>Courses between those of the family, with the weight that theirs holds.</summary>
    private readonly List<(int Index, Movement Movement, double Weight)> between = [];

    /// <summary>Reads the readings, where there are enough of them.</summary>
    /// <param name="times">When they were taken, each time once, ascending; made into parts of the whole.</param>
    /// <param name="values">What was read.</param>
    /// <param name="prior">What is believed beforehand.</param>
    /// <param name="readingError">Standard deviation of one reading by its test method; 0 where it is not known.</param>
    /// <param name="designs">Designs to be shared; null for its own.</param>
    public DegradationFit(
        Span<double> times,
        double[] values,
        DegradationPrior prior,
        double readingError,
        FamilyDesigns? designs
    )
    {
        this.values = values;
        this.prior = prior;
        this.readingError = readingError;
        largestRatio = LargestRatio(values, readingError);
        least = LeastSquares(values);
        LastTime = times.IsEmpty ? 0 : times[times.Length - 1];
        if (times.Length < (prior.Lesson is null ? Degradation.FewestReadings : Degradation.FewestWithFleet))
        {
            return;
        }

        var first = times[0];
        Span = LastTime - first;
        for (var i = 0; i < times.Length; i++)
        {
            times[i] = (times[i] - first) / Span;
        }

        own = designs is null ? new FamilyDesigns() : null;
        family = (designs ?? own!).Of(times);
        read = ArrayPool<(FourReadings, bool, FourDesign)>.Shared.Rent(DegradationPrior.Fours.Length);
        weights = ArrayPool<double>.Shared.Rent(DegradationPrior.Family.Length);
        Weigh(family, weights.AsSpan(0, DegradationPrior.Family.Length));
    }

    /// <summary>Whether there are enough readings at different times. The other members are meaningful only if there are.</summary>
    public bool IsDetermined => family is not null;

    /// <summary>Number of readings at different times.</summary>
    public int Count => values.Length;

    /// <summary>Time of the last reading.</summary>
    public double LastTime { get; }

    /// <summary>Time from the first reading to the last.</summary>
    public double Span { get; }

    /// <summary>Weight of each movement of <see cref="DegradationPrior.Family"/> after the readings; together 1.</summary>
    public IReadOnlyList<double> Weights => [.. weights.Take(DegradationPrior.Family.Length)];

    /// <summary>Mean drift, per time: the rise of a course over the time that was seen, the latest drift of one that walks.</summary>
    public double Drift
    {
        get
        {
            double sum = 0;
            for (var m = 0; m < DegradationPrior.Family.Length; m++)
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

    /// <summary>The readings seen through one movement that the error of the test method leaves room for.</summary>
    /// <param name="index">Which of <see cref="DegradationPrior.Family"/>, one with a weight above 0.</param>
    public DegradationMember Member(int index)
    {
        var (group, place) = DegradationPrior.PlaceOf(index);
        return Member(group, place);
    }

    /// <summary>Gives back the room that the readings were read into; nothing can be asked any more. A fit that goes without it costs a little memory.</summary>
    public void Dispose()
    {
        if (IsDetermined)
        {
            ArrayPool<(FourReadings, bool, FourDesign)>.Shared.Return(read);
            ArrayPool<double>.Shared.Return(weights);
        }

        own?.Dispose();
    }

    private DegradationMember Member(int group, int place)
    {
        var index = DegradationPrior.Fours[group][place];
        ref readonly var movement = ref DegradationPrior.Family[index];
        var member =
            movement.Kind == MovementKind.DriftWalks
                ? family!.Drift(group).Read(values, least)
                : DesignOf(group).Member(read[group].Readings, place, movement.Course, least);
        return prior.Lesson is null && !(readingError > 0) ? member : Known(index, movement, member);
    }

    private ref readonly FourDesign DesignOf(int group)
    {
        if (read[group].IsOwn)
        {
            return ref read[group].Own;
        }

        return ref family!.Four(group);
    }

    /// <summary>Works out the weight of each movement, first as its logarithm.</summary>
    private void Weigh(FamilyDesign design, Span<double> logs)
    {
        logs.Fill(double.NegativeInfinity);
        for (var group = 0; group < DegradationPrior.Fours.Length; group++)
        {
            Read(design, group, logs);
        }

        var best = double.NegativeInfinity;
        foreach (var log in logs)
        {
            best = Math.Max(best, log);
        }

        foreach (var group in DegradationPrior.ReadCourses)
        {
            LookBetween(design, group, logs, best);
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
    }

    /// <summary>Reads one of <see cref="DegradationPrior.Fours"/>, and weighs each movement that was believed and that the error of the method leaves room for.</summary>
    private void Read(FamilyDesign design, int group, Span<double> logs)
    {
        var four = DegradationPrior.Fours[group];
        foreach (var m in four)
        {
            logs[m] = prior.LogWeights[m];
        }

        ref readonly var first = ref DegradationPrior.Family[four[0]];
        if (first.Kind == MovementKind.DriftWalks)
        {
            logs[four[0]] += IsBelieved(logs[four[0]]) ? Member(group, 0).LogLikelihood : 0;
            return;
        }

        Span<Movement> seen = stackalloc Movement[first.Ratio > 0 ? four.Length : 0];
        var isOwn = LimitWalks(four, seen, logs);
        var isAny = false;
        foreach (var m in four)
        {
            isAny |= IsBelieved(logs[m]);
        }

        if (!isAny)
        {
            return;
        }

        ref var found = ref read[group];
        found.IsOwn = isOwn;
        found.Readings = isOwn
            ? FourDesign.Read(seen, design.Positions, values, out found.Own)
            : design.Read(group, values);
        Span<double> likelihoods = stackalloc double[LaneMath.Width];
        LaneMath.Store(
            DesignOf(group).LogLikelihood(found.Readings, least, readingError * readingError),
            likelihoods,
            0
        );
        for (var i = 0; i < four.Length; i++)
        {
            if (IsBelieved(logs[four[i]]))
            {
                // What the fleet taught differs from movement to movement.
                logs[four[i]] += prior.Lesson is null ? likelihoods[i] : Member(group, i).LogLikelihood;
            }
        }
    }

    private static bool IsBelieved(double log) => log > double.NegativeInfinity;

    /// <summary>Limits walks to what the error of the method leaves room for, and says whether any is not that of the family; one without room is not believed.</summary>
    private bool LimitWalks(int[] four, Span<Movement> seen, Span<double> logs)
    {
        var isChanged = false;
        for (var i = 0; i < seen.Length; i++)
        {
            ref readonly var movement = ref DegradationPrior.Family[four[i]];
            var readable = Readable(movement, largestRatio);
            seen[i] = readable ?? movement;
            isChanged |= seen[i].Ratio != movement.Ratio;
            logs[four[i]] = readable is null ? double.NegativeInfinity : logs[four[i]];
        }

        return isChanged;
    }

    /// <summary>
    /// Exact readings, or many, tell courses apart more finely than the family has them; the nearest of the family would then be believed although it is wrong. Its
    /// weight is spread over courses between its neighbours, and again around the likeliest of these, until several of them are about as likely.
    /// </summary>
    private void LookBetween(FamilyDesign family, int[] group, Span<double> logs, double best)
    {
        var at = 0;
        for (var i = 1; i < group.Length; i++)
        {
            at = logs[group[i]] > logs[group[at]] ? i : at;
        }

        var index = group[at];
        var (before, after) = (Math.Max(0, at - 1), Math.Min(group.Length - 1, at + 1));
        var neighbour = Math.Min(logs[group[before]], logs[group[after]]);
        var all = DegradationPrior.Family;
        var (low, high) = (all[group[before]].Course.Bend, all[group[after]].Course.Bend);
        var steepness = logs[index] - neighbour;
        if (!(steepness > TooFarApart))
        {
            return;
        }

        var summit = Summit(
            (low, logs[group[before]]),
            (all[index].Course.Bend, logs[index]),
            (high, logs[group[after]])
        );
        if (!(summit > best - Unlikely))
        {
            return;
        }

        var density = prior.LogWeights[index] - Math.Log((high - low) / 2);
        logs[index] = double.NegativeInfinity;
        Span<double> found = stackalloc double[PointsBetween];
        Span<Movement> movements = stackalloc Movement[LaneMath.Width];
        for (var round = 0; round < MostRounds; round++)
        {
            var step = (high - low) / PointsBetween;
            for (var i = 0; i < PointsBetween; i++)
            {
                var bend = low + (i + 0.5) * step;
                movements[i % LaneMath.Width] = all[index] with { Course = all[index].Course.Bent(bend) };
                if (i % LaneMath.Width < LaneMath.Width - 1)
                {
                    continue;
                }

                var four = FourDesign.Read(movements, family.Positions, values, out var design);
                for (var j = 0; j < LaneMath.Width; j++)
                {
                    var place = i - LaneMath.Width + 1 + j;
                    var member = Known(index, movements[j], design.Member(four, j, movements[j].Course, least));
                    found[place] = member.LogLikelihood + density + Math.Log(step);
                    between.Add((index, movements[j], found[place]));
                }
            }

            // Not which of them is the likeliest: those within the error of a reading are equally likely, but for rounding.
            var (first, last) = Likeliest(found);
            if (last - first + 1 >= FewestAlike || round == MostRounds - 1)
            {
                return;
            }

            var (left, right) = (Math.Max(0, first - 1), Math.Min(PointsBetween - 1, last + 1));
            between.RemoveRange(between.Count - PointsBetween + left, right - left + 1);
            (low, high) = (low + left * step, low + (right + 1) * step);
        }
    }

    /// <summary>The first and the last that are about as likely as the likeliest.</summary>
    private static (int First, int Last) Likeliest(ReadOnlySpan<double> logs)
    {
        var highest = logs[0];
        foreach (var log in logs)
        {
            highest = Math.Max(highest, log);
        }

        var (first, last) = (0, logs.Length - 1);
        while (highest - logs[first] > TooFarApart)
        {
            first++;
        }

        while (highest - logs[last] > TooFarApart)
        {
            last--;
        }

        return (first, last);
    }

    /// <summary>
    /// The logarithm that a course between three may reach, whose middle one is highest: the sum of squares, exp(−2 ln L/(n − 1)), is about a parabola of the bend, and
    /// may come down to nothing. Where two of them are one there is no parabola, only what it may miss.
    /// </summary>
    private double Summit((double X, double Log) left, (double X, double Log) middle, (double X, double Log) right)
    {
        double Squares(double log) => Math.Exp(2 * (middle.Log - log) / (Count - 1));
        var (before, after) = (Squares(left.Log), Squares(right.Log));
        var lowest = 1 - Miss * (Math.Max(before, after) - 1);
        if (left.X < middle.X && middle.X < right.X)
        {
            var fall = (1 - before) / (middle.X - left.X);
            var bend = ((after - 1) / (right.X - middle.X) - fall) / (right.X - left.X);
            var slope = fall + bend * (middle.X - left.X);
            lowest -= bend > 0 ? slope * slope / (4 * bend) : 0;
        }

        return lowest > 0 ? middle.Log - 0.5 * (Count - 1) * Math.Log(lowest) : double.PositiveInfinity;
    }

    /// <summary>A member with what is known beside the readings: what the fleet taught, and the error of a reading.</summary>
    private DegradationMember Known(int index, in Movement movement, DegradationMember member)
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

        return member.AtLeast(readingError * readingError);
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
        if (family is null)
        {
            throw new InvalidOperationException($"The fit is not determined: {Count} readings.");
        }

        var ahead = cycle is null ? null : new CycleAhead(cycle, LastTime, sign);
        using var mixture = new MixtureLaw(DegradationPrior.Family.Length + between.Count, ahead);
        foreach (var index in DegradationPrior.Alike)
        {
            if (weights[index] >= Negligible && !IsLookedAtCloser(index))
            {
                mixture.Add(new PassagePath(Member(index), weights[index], limit, sign, Span));
            }
        }

        foreach (var (index, movement, weight) in between)
        {
            if (weight >= Negligible)
            {
                var four = FourDesign.Read([movement], family.Positions, values, out var design);
                var member = design.Member(four, 0, movement.Course, least);
                mixture.Add(new PassagePath(Known(index, movement, member), weight, limit, sign, Span));
            }
        }

        return CrossingLaw.Of(mixture.Passed, latest);
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
