using MathNet.Numerics.Distributions;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

public class MixtureLawTests
{
    private const double Year = 12;
    private static readonly double[] Months = [.. Enumerable.Range(0, 37).Select(i => (double)i)];

    // Highest a quarter of a year after the first reading, so in months 3, 15, 27, 39.
    private static readonly SeasonalCycle Cycle = SeasonalCycle
        .Find(Months, [.. Months.Select(t => 0.02 * t + 2 * Math.Sin(2 * Math.PI * t / Year))], Year)
        .ShouldNotBeNull();

    [Fact]
    public void A_cycle_goes_on_ahead()
    {
        // From month 35 the next peaks are months 39, 51, 63, 75.
        var up = new CycleAhead(Cycle, 35, 1);
        up.Highest.ShouldBe(2, 1e-9);
        up.NearerAt(4).ShouldBe(2, 1e-9);
        up.NearerAt(10).ShouldBe(-2, 1e-9);
        up.LastPeakBefore(3.9).ShouldBeNull();
        up.LastPeakBefore(4.1)!.Value.ShouldBe(4, 1e-6);
        up.LastPeakBefore(15.9)!.Value.ShouldBe(4, 1e-6);
        up.LastPeakBefore(41)!.Value.ShouldBe(40, 1e-6);

        // To a lower limit it is the trough that is near.
        var down = new CycleAhead(Cycle, 35, -1);
        down.NearerAt(10).ShouldBe(2, 1e-9);
        down.LastPeakBefore(20)!.Value.ShouldBe(10, 1e-6);
    }

    [Fact]
    public void The_limit_is_nearer_at_the_peak_and_what_passed_it_there_has_passed()
    {
        // A mean that stands: 8 readings 0, ±1 have s² = 8/7, and the mean of further ones variance s²/8. Chances by Student's distribution, written out.
        double[] clock = [.. Enumerable.Range(0, 8).Select(i => i / 7.0)];
        var member = DegradationMember.Of(
            new Movement(MovementKind.Still, Course.Straight, 0),
            clock,
            [1, -1, 1, -1, 1, -1, 1, -1],
            0
        );
        double Beyond(double distance) => StudentT.CDF(0, 1, 7, -distance / Math.Sqrt(8.0 / 7 / 8));
        MixtureLaw Law(CycleAhead? cycle) => PassagePathChance.Mixed(cycle, new PassagePath(member, 1, 2.5, 1, 36));
        double Given(double beyond) => (beyond - Beyond(2.5)) / (1 - Beyond(2.5));

        var law = Law(new CycleAhead(Cycle, 36, 1));
        law.Passed(1).ShouldBe(Given(Beyond(1.5)), 1e-9); // 2 sin 30° = 1
        law.Passed(3).ShouldBe(Given(Beyond(0.5)), 1e-9);
        law.Passed(9).ShouldBe(Given(Beyond(0.5)), 1e-9); // the trough undoes nothing
        law.Passed(21).ShouldBe(Given(Beyond(0.5)), 1e-9);
        Law(null).Passed(9).ShouldBe(0, 1e-9);
    }

    [Fact]
    public void Chances_are_weighted_and_given_that_nothing_is_crossed_at_the_last_reading()
    {
        double[] clock = [0, 1.0 / 3, 2.0 / 3, 1];
        double[] values = [1, 2, 2, 3];
        PassagePath Path(MovementKind kind, double weight) =>
            new(DegradationMember.Of(new Movement(kind, Course.Straight, 0), clock, values, 0), weight, 3.2, 1, 10);
        var (still, moving) = (Path(MovementKind.Still, 0.2), Path(MovementKind.Moving, 0.6));
        var law = PassagePathChance.Mixed(null, still, moving);
        foreach (var time in new[] { 0.5, 3, 20 })
        {
            // Weights that do not add up to 1, because the rest was negligible.
            double Mean(double one, double other) => (0.2 * one + 0.6 * other) / 0.8;
            var start = Mean(still.AtStart(0), moving.AtStart(0));
            start.ShouldBeGreaterThan(0.01);
            law.Passed(time).ShouldBe((Mean(still.At(time, 0), moving.At(time, 0)) - start) / (1 - start), 1e-12);
        }
    }

    [Fact]
    public void What_lies_beyond_the_limit_already_is_crossed_at_once()
    {
        double[] clock = [0, 0.5, 1];
        var walk = DegradationMember.Of(
            new Movement(MovementKind.Moving, Course.Straight, Movement.PureWalk),
            clock,
            [1, 2, 4],
            0
        );
        var law = PassagePathChance.Mixed(null, new PassagePath(walk, 1, 3.9, 1, 10));
        law.Passed(0).ShouldBe(0);
        law.Passed(1e-6).ShouldBe(1);
    }
}
