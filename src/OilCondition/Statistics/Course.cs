using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>How a mean moves over the time that was seen and beyond: its share of the rise over that time, as a clock that the rise follows.</summary>
/// <remarks>
/// u = (t − first)/(last − first). Every clock reads 0 at the first reading and 1 at the last, so that all courses share one unit of rise.
/// Straight: u. Quadratic: (u² + 2 v u)/(1 + 2 v), which has stood still at u = −v. Exponential: (e^(c u) − 1)/(e^c − 1), accelerating for c above
/// 0, first-order towards a final level below 0. Runaway: u (T − 1)/(T − u), the solution of dy/dt ∝ (y − a)², which has no end at u = T. In the order
/// named, dy/dt grows with the power 0, 1/2, 1 and 2 of what has grown.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Course
{
    /// <summary>
    /// As good as without end: ten thousand times what has risen so far is beyond every limit. More would lift the rounding of readings that do not
    /// move at all over one.
    /// </summary>
    public const double Farthest = 1e4;

    /// <summary>Powers of e beyond it are as good as without end.</summary>
    private const double LargestPower = 30;

    private Course(CourseShape shape, double parameter, double scale)
    {
        Shape = shape;
        Parameter = parameter;
        Scale = scale;
    }

    /// <summary>How far the course is from a straight one, in a figure that may be divided evenly: the rate of an exponential one, one over the end of a runaway.</summary>
    public double Bend => Shape == CourseShape.Runaway ? 1 / Parameter : Parameter;

    public static Course Straight => default;

    public CourseShape Shape { get; }

    public double Parameter { get; }

    /// <summary>What brings the clock to 1 at the last reading, worked out once; 0 for a straight one.</summary>
    public double Scale { get; }

    public static Course Quadratic(double standstill) =>
        new(CourseShape.Quadratic, standstill, 1 / (1 + 2 * standstill));

    public static Course Exponential(double rate) => new(CourseShape.Exponential, rate, 1 / (Math.Exp(rate) - 1));

    public static Course Runaway(double end) => new(CourseShape.Runaway, end, end - 1);

    /// <summary>A course of the same shape with another bend.</summary>
    public Course Bent(double bend) =>
        Shape switch
        {
            CourseShape.Exponential => Exponential(bend),
            CourseShape.Runaway => Runaway(1 / bend),
            _ => this,
        };

    /// <summary>The clock at u, never falling.</summary>
    public double At(double u) =>
        Shape switch
        {
            CourseShape.Quadratic => (u + 2 * Parameter) * u * Scale,
            CourseShape.Exponential when Parameter * u > LargestPower => Farthest,
            CourseShape.Exponential => Math.Min(Farthest, (Math.Exp(Parameter * u) - 1) * Scale),
            CourseShape.Runaway => u < Parameter ? Math.Min(Farthest, u * Scale / (Parameter - u)) : Farthest,
            _ => u,
        };
}
