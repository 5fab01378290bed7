using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>Movements on their way to a limit, worked out four at once: alike in the shape of their course, their degrees of freedom and whether they may return.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct PathGroup
{
    /// <summary>Beyond it the square of a distance may overflow; no chance is left there that a digit could show.</summary>
    private const double Farthest = 1e150;
    private const int Columns = 10;

    /// <summary>Figures of four paths.</summary>
    public const int Block = Columns * LaneMath.Width;

    // Block by block the figures of four paths: two of the course, weight, distance, drift, variance, walk.
    private readonly Memory<double> room;
    private readonly CourseShape shape;
    private readonly int degreesOfFreedom;
    private readonly StudentSeries student;
    private readonly PassageRule? rule;
    private readonly double span;
    private int count;

    /// <summary>Takes paths side by side.</summary>
    /// <param name="first">A path.</param>
    /// <param name="room">Room for the figures of all, one block for each four.</param>
    public PathGroup(in PassagePath first, Memory<double> room)
    {
        this.room = room;
        shape = FourCourses.ShapeOf(first.Course);
        degreesOfFreedom = first.DegreesOfFreedom;
        student = StudentSeries.For(degreesOfFreedom);
        rule = first.Rule;
        span = first.Span;
        Add(first);
    }

    /// <summary>How much of the room it takes.</summary>
    public readonly int Size => (count + LaneMath.Width - 1) / LaneMath.Width * Block;

    /// <summary>Whether a path may stand beside the others.</summary>
    public readonly bool IsAlike(in PassagePath path) =>
        path.DegreesOfFreedom == degreesOfFreedom && path.Rule == rule && FourCourses.ShapeOf(path.Course) == shape;

    /// <summary>Takes one more path, which is alike.</summary>
    public void Add(in PassagePath path)
    {
        var lane = count % LaneMath.Width;
        var block = room.Span.Slice(count / LaneMath.Width * Block, Block);
        var (one, other) = FourCourses.Figures(path.Course);

        // The first of a block fills it up, without a weight.
        for (var i = lane; i < (lane == 0 ? LaneMath.Width : lane + 1); i++)
        {
            block[i] = one;
            block[i + LaneMath.Width] = other;
            block[i + 2 * LaneMath.Width] = i == lane ? path.Weight : 0;
            block[i + 3 * LaneMath.Width] = Math.Max(-Farthest, Math.Min(Farthest, path.Distance));
            block[i + 4 * LaneMath.Width] = path.Drift;
            block[i + 5 * LaneMath.Width] = path.V0;
            block[i + 6 * LaneMath.Width] = path.C1;
            block[i + 7 * LaneMath.Width] = path.C2;
            block[i + 8 * LaneMath.Width] = path.C3;
            block[i + 9 * LaneMath.Width] = path.FreeWalk;
        }

        count++;
    }

    /// <summary>The weighted sum of their chances of being beyond at a time since the last reading, or of having been there and back.</summary>
    /// <param name="time">The time.</param>
    /// <param name="nearer">How much nearer the limit lies for a part of the state that is known beforehand, such as a season.</param>
    public readonly double Beyond(double time, double nearer)
    {
        var u = LaneMath.Of(1 + time / span);
        var near = LaneMath.Of(nearer);
        Lanes sum = default;
        for (ReadOnlySpan<double> rest = room.Span[..Size]; rest.Length > 0; rest = rest[Block..])
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
