using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The clocks of four courses at once, all of one shape; a straight one counts as a quadratic one.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct FourCourses
{
    private readonly CourseShape shape;
    private readonly Lanes first;
    private readonly Lanes second;

    /// <summary>Takes courses side by side.</summary>
    /// <param name="courses">One to four; the last one fills up.</param>
    public FourCourses(ReadOnlySpan<Course> courses)
    {
        shape = ShapeOf(courses[0]);
        Span<double> room = stackalloc double[2 * LaneMath.Width];
        for (var i = 0; i < LaneMath.Width; i++)
        {
            (room[i], room[LaneMath.Width + i]) = Figures(courses[Math.Min(i, courses.Length - 1)]);
        }

        first = LaneMath.Load(room, 0);
        second = LaneMath.Load(room, LaneMath.Width);
    }

    /// <summary>What courses must share to stand side by side.</summary>
    public static CourseShape ShapeOf(Course course) =>
        course.Shape == CourseShape.Straight ? CourseShape.Quadratic : course.Shape;

    /// <summary>The two figures of a course from which <see cref="At(CourseShape, Lanes, Lanes, Lanes)"/> makes its clock.</summary>
    public static (double First, double Second) Figures(Course course) =>
        course.Shape switch
        {
            CourseShape.Straight => (0, 1),
            CourseShape.Quadratic => (course.Scale, 2 * course.Parameter * course.Scale),
            _ => (course.Parameter, course.Scale),
        };

    /// <summary>The clocks at u: those of <see cref="Course.At"/>.</summary>
    public Lanes At(double u) => At(shape, first, second, LaneMath.Of(u));

    /// <summary>The clocks of four courses of one shape at u, from their figures.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes At(CourseShape shape, Lanes first, Lanes second, Lanes u)
    {
        var farthest = LaneMath.Of(Course.Farthest);
        return shape switch
        {
            CourseShape.Exponential => LaneMath.Min(farthest, (LaneMath.Exp(first * u) - LaneMath.Of(1)) * second),
            CourseShape.Runaway => LaneMath.WhereLess(
                u,
                first,
                LaneMath.Min(farthest, u * second / (first - u)),
                farthest
            ),
            _ => (first * u + second) * u,
        };
    }
}
