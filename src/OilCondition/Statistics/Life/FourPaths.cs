namespace OilCondition.Statistics;

/// <summary>Up to four movements on their way to a limit at once, alike in the shape of their course, their degrees of freedom and whether they may return.</summary>
internal sealed class FourPaths
{
    /// <summary>Those that may return, each by itself; empty where none may.</summary>
    private readonly PassagePath[] returning;
    private readonly FourCourses courses;
    private readonly StudentSeries student;
    private readonly double span;
    private readonly Lanes weights;
    private readonly Lanes distance;
    private readonly Lanes drift;
    private readonly Lanes v0;
    private readonly Lanes c1;
    private readonly Lanes c2;
    private readonly Lanes c3;

    /// <summary>Takes paths side by side.</summary>
    /// <param name="paths">One to four that are alike.</param>
    public FourPaths(ReadOnlySpan<PassagePath> paths)
    {
        returning = paths[0].MayReturn ? paths.ToArray() : [];
        span = paths[0].Span;
        student = StudentSeries.For(paths[0].DegreesOfFreedom);
        Span<Course> shapes = stackalloc Course[paths.Length];
        Span<double> room = stackalloc double[7 * LaneMath.Width];
        for (var i = 0; i < LaneMath.Width; i++)
        {
            // The last one fills up, without a weight.
            ref readonly var path = ref paths[Math.Min(i, paths.Length - 1)];
            room[i] = i < paths.Length ? path.Weight : 0;
            room[LaneMath.Width + i] = path.Distance;
            room[2 * LaneMath.Width + i] = path.Drift;
            room[3 * LaneMath.Width + i] = path.V0;
            room[4 * LaneMath.Width + i] = path.C1;
            room[5 * LaneMath.Width + i] = path.C2;
            room[6 * LaneMath.Width + i] = path.C3;
            if (i < paths.Length)
            {
                shapes[i] = path.Course;
            }
        }

        courses = new FourCourses(shapes);
        (weights, distance) = (LaneMath.Load(room, 0), LaneMath.Load(room, LaneMath.Width));
        (drift, v0) = (LaneMath.Load(room, 2 * LaneMath.Width), LaneMath.Load(room, 3 * LaneMath.Width));
        (c1, c2) = (LaneMath.Load(room, 4 * LaneMath.Width), LaneMath.Load(room, 5 * LaneMath.Width));
        c3 = LaneMath.Load(room, 6 * LaneMath.Width);
    }

    public static bool AreAlike(in PassagePath one, in PassagePath other) =>
        one.DegreesOfFreedom == other.DegreesOfFreedom
        && one.MayReturn == other.MayReturn
        && FourCourses.ShapeOf(one.Course) == FourCourses.ShapeOf(other.Course);

    /// <summary>The weighted sum of their chances of being beyond at a time since the last reading, or of having been there and back.</summary>
    /// <param name="time">The time.</param>
    /// <param name="nearer">How much nearer the limit lies for a part of the state that is known beforehand, such as a season.</param>
    public double Beyond(double time, double nearer)
    {
        Lanes zero = default;
        var x = courses.At(1 + time / span) - LaneMath.Of(1);
        var gap = distance - LaneMath.Of(nearer) - drift * x;
        var variance = LaneMath.MultiplyAdd(LaneMath.MultiplyAdd(LaneMath.MultiplyAdd(c3, x, c2), x, c1), x, v0);
        var far = LaneMath.WhereLess(zero, gap, LaneMath.Of(double.MinValue), LaneMath.Of(double.MaxValue));
        var beyond = student.Below(LaneMath.WhereLess(zero, variance, (zero - gap) / LaneMath.Sqrt(variance), far));
        return returning.Length > 0 ? WithReturns(beyond, x, nearer) : LaneMath.Sum(weights * beyond);
    }

    private double WithReturns(Lanes beyond, Lanes x, double nearer)
    {
        double sum = 0;
        for (var i = 0; i < returning.Length; i++)
        {
            ref readonly var path = ref returning[i];
            sum += path.Weight * path.WithReturn(LaneMath.At(beyond, i), LaneMath.At(x, i), nearer);
        }

        return sum;
    }
}
