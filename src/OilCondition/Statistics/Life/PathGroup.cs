using System.Runtime.InteropServices;
using static OilCondition.Statistics.PathBlock;

namespace OilCondition.Statistics;

/// <summary>Movements on their way to a limit, worked out four at once: alike in the shape of their course, their degrees of freedom and whether they may return.</summary>
[StructLayout(LayoutKind.Auto)]
internal struct PathGroup
{
    private readonly CourseShape shape;
    private readonly int degreesOfFreedom;
    private readonly PassageRule? rule;
    private readonly double span;
    private int count;

    /// <summary>How much nearer the limit was when what of a return does not depend on time was laid down.</summary>
    private double faced;

    /// <summary>Starts a group.</summary>
    /// <param name="first">A path, which is not yet taken.</param>
    /// <param name="start">Where its blocks start.</param>
    public PathGroup(in PassagePath first, int start)
    {
        Start = start;
        shape = FourCourses.ShapeOf(first.Course);
        degreesOfFreedom = first.DegreesOfFreedom;
        Student = StudentSeries.For(degreesOfFreedom);
        rule = first.Rule;
        span = first.Span;
    }

    /// <summary>The distribution of their states.</summary>
    public StudentSeries Student { get; }

    /// <summary>Where its blocks start.</summary>
    public int Start { get; }

    /// <summary>Where its blocks end.</summary>
    public readonly int End => Start + (count + LaneMath.Width - 1) / LaneMath.Width * Size;

    /// <summary>Whether a path may stand beside the others.</summary>
    public readonly bool IsAlike(in PassagePath path) =>
        path.DegreesOfFreedom == degreesOfFreedom && path.Rule == rule && FourCourses.ShapeOf(path.Course) == shape;

    /// <summary>Takes a path, which is alike.</summary>
    public void Add(Span<double> room, in PassagePath path)
    {
        var start = Start + count / LaneMath.Width * Size;
        Set(room.Slice(start, Size), count % LaneMath.Width, path);
        faced = double.NaN;
        count++;
    }

    /// <summary>Works out where each is at a time since the last reading.</summary>
    /// <param name="room">The blocks of all groups.</param>
    /// <param name="time">The time.</param>
    /// <param name="nearer">How much nearer the limit lies for a part of the state that is known beforehand, such as a season.</param>
    public readonly void Go(Span<double> room, double time, double nearer)
    {
        var u = LaneMath.Of(1 + time / span);
        var near = LaneMath.Of(nearer);
        for (var rest = room[Start..End]; rest.Length > 0; rest = rest[Size..])
        {
            var block = rest[..Size];
            var x = FourCourses.At(shape, Load(block, Column.First), Load(block, Column.Second), u) - LaneMath.Of(1);
            var variance = LaneMath.MultiplyAdd(Load(block, Column.C3), x, Load(block, Column.C2));
            variance = LaneMath.MultiplyAdd(variance, x, Load(block, Column.C1));
            variance = LaneMath.MultiplyAdd(variance, x, Load(block, Column.V0));
            Store(Load(block, Column.Distance) - near - Load(block, Column.Drift) * x, block, Column.Gap);
            Store(variance, block, Column.Variance);
            Store(x, block, Column.Clock);
        }
    }

    /// <summary>Adds to the chances of being beyond those of having been there and back.</summary>
    /// <param name="room">The blocks of all groups.</param>
    /// <param name="nearer">How much nearer the limit lies.</param>
    public void AddReturns(Span<double> room, double nearer)
    {
        if (rule is null)
        {
            return;
        }

        if (!nearer.Equals(faced))
        {
            Face(room, nearer);
        }

        for (var rest = room[Start..End]; rest.Length > 0; rest = rest[Size..])
        {
            var block = rest[..Size];
            var barrier = new PassageRule.Barrier(
                Load(block, Column.Distance) - LaneMath.Of(nearer),
                Load(block, Column.Drift),
                Load(block, Column.FreeWalk),
                Load(block, Column.C2),
                Load(block, Column.Turn),
                Load(block, Column.Bridge),
                Load(block, Column.Factor)
            );
            var chance = Load(block, Column.Chance) + rule.Returned(barrier, Load(block, Column.Clock));
            Store(LaneMath.Min(LaneMath.Of(1), chance), block, Column.Chance);
        }
    }

    /// <summary>Lays down what of a return does not depend on time.</summary>
    private void Face(Span<double> room, double nearer)
    {
        faced = nearer;
        for (var rest = room[Start..End]; rest.Length > 0; rest = rest[Size..])
        {
            var block = rest[..Size];
            var barrier = rule!.Facing(
                Load(block, Column.Distance) - LaneMath.Of(nearer),
                Load(block, Column.Drift),
                Load(block, Column.FreeWalk),
                Load(block, Column.C2)
            );
            Store(barrier.Turn, block, Column.Turn);
            Store(barrier.Bridge, block, Column.Bridge);
            Store(barrier.Factor, block, Column.Factor);
        }
    }
}
