using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

public class CourseTests
{
    private static readonly (Course Course, double Power)[] Courses =
    [
        (Course.Straight, 0),
        (Course.Quadratic(0.4), 0.5),
        (Course.Quadratic(0), 0.5),
        (Course.Exponential(0.25), 1),
        (Course.Exponential(4.5), 1),
        (Course.Exponential(11), 1),
        (Course.Exponential(-0.3), 1),
        (Course.Exponential(-4.5), 1),
        (Course.Runaway(10), 2),
        (Course.Runaway(2.5), 2),
        (Course.Runaway(1.11), 2),
    ];

    public static TheoryData<int> All() => [.. Enumerable.Range(0, Courses.Length)];

    [Theory]
    [MemberData(nameof(All))]
    public void The_pace_grows_with_its_power_of_what_has_grown(int which)
    {
        // dy/dt = k (y − a)^p, so that (dy/dt)^(1/p) is a straight line in y, whatever k and a: numerical derivative against differences of y.
        var (course, power) = Courses[which];
        double[] us = [0.05, 0.3, 0.6, 0.9, 1.05];
        double Pace(double u) => (course.At(u + 1e-5) - course.At(u - 1e-5)) / 2e-5;
        double Straightened(double u) => power > 0 ? Math.Pow(Pace(u), 1 / power) : Pace(u);
        double Slope(double from, double to) =>
            power > 0
                ? (Straightened(to) - Straightened(from)) / (course.At(to) - course.At(from))
                : Straightened(to) - Straightened(from);
        for (var i = 2; i < us.Length; i++)
        {
            Slope(us[i - 1], us[i]).ShouldBe(Slope(us[0], us[1]), 1e-5 * Math.Abs(Slope(us[0], us[1])) + 1e-9);
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Every_clock_reads_0_at_the_first_reading_and_1_at_the_last_and_never_falls(int which)
    {
        var course = Courses[which].Course;
        course.At(0).ShouldBe(0);
        course.At(1).ShouldBe(1, 1e-12);
        var before = 0.0;
        for (var u = 0.01; u < 40; u *= 1.05)
        {
            var now = course.At(u);
            now.ShouldBeGreaterThanOrEqualTo(before);
            now.ShouldBeLessThanOrEqualTo(1e4);
            before = now;
        }
    }

    [Fact]
    public void What_has_no_end_is_as_good_as_beyond_every_limit()
    {
        Course.Runaway(1.11).At(1.11).ShouldBe(1e4);
        Course.Runaway(1.11).At(5).ShouldBe(1e4);
        Course.Exponential(11).At(1e6).ShouldBe(1e4);

        // First order: what is left to go shrinks by e each 1/2 of the time, so that 1/(1 − e⁻²) is never passed.
        Course.Exponential(-2).At(1e6).ShouldBe(1 / (1 - Math.Exp(-2)), 1e-12);
    }

    [Fact]
    public void The_solutions_by_hand()
    {
        Course.Quadratic(0).At(2).ShouldBe(4); // u²
        Course.Quadratic(0.5).At(2).ShouldBe(3); // (u² + u)/2
        Course.Exponential(Math.Log(2)).At(3).ShouldBe(7, 1e-12); // 2^u − 1
        Course.Runaway(2).At(1.5).ShouldBe(3); // u/(2 − u)
        Course.Straight.At(17).ShouldBe(17);
    }
}
