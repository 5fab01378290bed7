namespace OilCondition.Statistics;

/// <summary>Movements on their way to a limit, worked out four at once: alike in the shape of their course, their degrees of freedom and whether they may return.</summary>
internal sealed class PathGroup
{
    /// <summary>Beyond it the square of a distance may overflow; no chance is left there that a digit could show.</summary>
    private const double Farthest = 1e150;
    private const int Columns = 10;

    /// <summary>Figures of four paths.</summary>
    public const int Block = Columns * LaneMath.Width;

    // Block by block the figures of four paths: two of the course, weight, distance, drift, variance, walk.
    private readonly ReadOnlyMemory<double> figures;
    private readonly CourseShape shape;
    private readonly StudentSeries student;
    private readonly PassageRule? rule;
    private readonly double span;

    /// <summary>Takes paths side by side.</summary>
    /// <param name="paths">One or more that are alike.</param>
    /// <param name="room">Room for their figures, one block for each four.</param>
    public PathGroup(ReadOnlySpan<PassagePath> paths, Memory<double> room)
    {
        shape = FourCourses.ShapeOf(paths[0].Course);
        student = StudentSeries.For(paths[0].DegreesOfFreedom);
        rule = paths[0].Rule;
        span = paths[0].Span;
        var used = room[..((paths.Length + LaneMath.Width - 1) / LaneMath.Width * Block)];
        figures = used;
        var blocks = used.Span;
        for (var i = 0; i < blocks.Length / Columns; i++)
        {
            // The last one fills up, without a weight.
            ref readonly var path = ref paths[Math.Min(i, paths.Length - 1)];
            var (first, second) = FourCourses.Figures(path.Course);
            var at = i / LaneMath.Width * Block + i % LaneMath.Width;
            blocks[at] = first;
            blocks[at += LaneMath.Width] = second;
            blocks[at += LaneMath.Width] = i < paths.Length ? path.Weight : 0;
            blocks[at += LaneMath.Width] = Math.Max(-Farthest, Math.Min(Farthest, path.Distance));
            blocks[at += LaneMath.Width] = path.Drift;
            blocks[at += LaneMath.Width] = path.V0;
            blocks[at += LaneMath.Width] = path.C1;
            blocks[at += LaneMath.Width] = path.C2;
            blocks[at += LaneMath.Width] = path.C3;
            blocks[at + LaneMath.Width] = path.FreeWalk;
        }
    }

    /// <summary>How much of the room it takes.</summary>
    public int Size => figures.Length;

    public static bool AreAlike(in PassagePath one, in PassagePath other) =>
        one.DegreesOfFreedom == other.DegreesOfFreedom
        && one.MayReturn == other.MayReturn
        && FourCourses.ShapeOf(one.Course) == FourCourses.ShapeOf(other.Course);

    /// <summary>The weighted sum of their chances of being beyond at a time since the last reading, or of having been there and back.</summary>
    /// <param name="time">The time.</param>
    /// <param name="nearer">How much nearer the limit lies for a part of the state that is known beforehand, such as a season.</param>
    public double Beyond(double time, double nearer)
    {
        var u = LaneMath.Of(1 + time / span);
        var near = LaneMath.Of(nearer);
        Lanes sum = default;
        for (var rest = figures.Span; rest.Length > 0; rest = rest[Block..])
        {
            var block = rest[..Block];
            var x =
                FourCourses.At(shape, LaneMath.Load(block, 0), LaneMath.Load(block, LaneMath.Width), u)
                - LaneMath.Of(1);
            var away = LaneMath.Load(block, 3 * LaneMath.Width) - near;
            var drift = LaneMath.Load(block, 4 * LaneMath.Width);
            var gap = away - drift * x;
            var c2 = LaneMath.Load(block, 7 * LaneMath.Width);
            var variance = LaneMath.MultiplyAdd(LaneMath.Load(block, 8 * LaneMath.Width), x, c2);
            variance = LaneMath.MultiplyAdd(variance, x, LaneMath.Load(block, 6 * LaneMath.Width));
            variance = LaneMath.MultiplyAdd(variance, x, LaneMath.Load(block, 5 * LaneMath.Width));
            var beyond = student.Beyond(gap, variance);
            if (rule is not null)
            {
                var walk = LaneMath.Load(block, 9 * LaneMath.Width);
                beyond += rule.Returned(away, drift, x, walk, c2);
                beyond = LaneMath.Min(LaneMath.Of(1), beyond);
            }

            sum = LaneMath.MultiplyAdd(LaneMath.Load(block, 2 * LaneMath.Width), beyond, sum);
        }

        return LaneMath.Sum(sum);
    }
}
