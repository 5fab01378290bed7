namespace OilCondition.Statistics;

/// <summary>What is believed of a measurand's way before its own readings speak: which movements are how likely, and at which drift.</summary>
/// <remarks>
/// The weights were chosen by simulation on one set of processes and are measured on another; docs/prognosis.md names both. They lean to what costs a plant
/// most where it is missed: growth that feeds on itself, and a random walk taken for a line.
/// </remarks>
internal sealed class DegradationPrior
{
    internal static readonly Movement[] Family = [.. Weighted().Select(one => one.Movement)];

    /// <summary>The courses of a shape that are read without a walk, by their bend: growth, levelling off, runaway.</summary>
    internal static readonly int[][] ReadCourses =
    [
        ReadOf(course => course is { Shape: CourseShape.Exponential, Parameter: > 0 }),
        ReadOf(course => course is { Shape: CourseShape.Exponential, Parameter: < 0 }),
        ReadOf(course => course.Shape == CourseShape.Runaway),
    ];

    /// <summary>The family in groups of up to four that are read side by side; a drift that walks stands alone.</summary>
    internal static readonly int[][] Fours =
    [
        .. Enumerable
            .Range(0, Family.Length)
            .GroupBy(m =>
                Family[m].Kind == MovementKind.DriftWalks
                    ? (m, default)
                    : (Family[m].Ratio > 0 ? -1 : -2, FourCourses.ShapeOf(Family[m].Course))
            )
            .SelectMany(alike => alike.Select((m, i) => (m, i)).GroupBy(one => one.i / LaneMath.Width, one => one.m))
            .Select(four => four.ToArray()),
    ];

    /// <summary>The family in an order in which movements that are worked out together on their way to a limit follow one another: see <see cref="PathGroup"/>.</summary>
    internal static readonly int[] Alike =
    [
        .. Enumerable
            .Range(0, Family.Length)
            .OrderBy(m => Family[m].Kind == MovementKind.Still)
            .ThenBy(m => Family[m].Ratio == Movement.PureWalk)
            .ThenBy(m => FourCourses.ShapeOf(Family[m].Course)),
    ];

    private static readonly (int Group, int Place)[] Places =
    [
        .. Fours
            .SelectMany((four, group) => four.Select((m, place) => (m, At: (group, place))))
            .OrderBy(one => one.m)
            .Select(one => one.At),
    ];

    private readonly double[] weights;

    private DegradationPrior(double[] weights)
    {
        this.weights = weights;
        LogWeights = Array.ConvertAll(weights, Math.Log);
    }

    /// <summary>Nothing is known of the machine.</summary>
    public static DegradationPrior Default { get; } = new(Normalised([.. Weighted().Select(one => one.Weight)]));

    /// <summary>Only the random walk with drift, read without error.</summary>
    public static DegradationPrior RandomWalk { get; } =
        new([
            .. Family.Select(one =>
                one is { Kind: MovementKind.Moving, Ratio: Movement.PureWalk } && one.Course == Course.Straight
                    ? 1.0
                    : 0
            ),
        ]);

    /// <summary>The weight of each movement; together 1.</summary>
    public IReadOnlyList<double> Weights => weights;

    /// <summary>The logarithms of the weights.</summary>
    public double[] LogWeights { get; }

    /// <summary>What other machines of its kind taught; null without them.</summary>
    public FleetLesson? Lesson { get; private init; }

    /// <summary>Where a movement of the family stands in <see cref="Fours"/>.</summary>
    internal static (int Group, int Place) PlaceOf(int index) => Places[index];

    internal static DegradationPrior Learnt(double[] weights, FleetLesson lesson) => new(weights) { Lesson = lesson };

    private static int[] ReadOf(Func<Course, bool> isOf) =>
        [
            .. Enumerable
                .Range(0, Family.Length)
                .Where(m => Family[m] is { Kind: MovementKind.Moving, Ratio: 0 } && isOf(Family[m].Course))
                .OrderBy(m => Family[m].Course.Bend),
        ];

    private static double[] Normalised(double[] weights)
    {
        var sum = weights.Sum();
        return [.. weights.Select(one => one / sum)];
    }

    private static List<(Movement Movement, double Weight)> Weighted()
    {
        List<(Movement Movement, double Weight)> all =
        [
            (new Movement(MovementKind.Still, Course.Straight, 0), 0.24),
            (new Movement(MovementKind.Moving, Course.Straight, 0), 0.065),
            (new Movement(MovementKind.Moving, Course.Straight, 0.3), 0.065),
            (new Movement(MovementKind.Moving, Course.Straight, 3), 0.045),
            (new Movement(MovementKind.Moving, Course.Straight, Movement.PureWalk), 0.04),
            (new Movement(MovementKind.DriftWalks, Course.Exponential(1.5), 1000), 0.035),
            (new Movement(MovementKind.DriftWalks, Course.Runaway(2.5), 1000), 0.33),
        ];
        void Read(double weight, params Course[] courses) =>
            all.AddRange(courses.Select(course => (new Movement(MovementKind.Moving, course, 0), weight)));
        void Walked(double weight, params Course[] courses) =>
            all.AddRange(
                courses.Select(course => (new Movement(MovementKind.Moving, course, Movement.PureWalk), weight))
            );
        Course[] Exponential(params double[] rates) => Array.ConvertAll(rates, Course.Exponential);
        Course[] Runaway(params double[] ends) => Array.ConvertAll(ends, Course.Runaway);

        // Read without a walk, a course is told apart finely, so that the steps from one to the next must be fine.
        Read(0.004, Course.Quadratic(0.4), Course.Quadratic(0));
        Read(0.0024, Exponential(0.25, 0.5, 0.75, 1, 1.3));
        Read(0.0004, Exponential(1.7, 2.2, 2.8, 3.5, 4.5, 6, 8, 11));
        Read(0.0005, Exponential(-0.3, -0.6, -0.9, -1.2, -1.6, -2, -2.5, -3, -3.7, -4.5));
        Read(0.0024, Runaway(10, 5.9, 4.2, 3.3, 2.86));
        Read(0.0036, Runaway(2.5, 2.2, 2, 1.8, 1.67, 1.54, 1.43, 1.33, 1.25, 1.18, 1.11));
        Walked(0.026, Course.Exponential(0.7), Course.Runaway(4));
        Walked(0.012, Course.Quadratic(0), Course.Exponential(2), Course.Exponential(4.5));
        Walked(0.012, Course.Runaway(1.6), Course.Runaway(1.25));
        return all;
    }
}
