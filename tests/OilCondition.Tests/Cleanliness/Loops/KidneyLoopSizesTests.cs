using CsCheck;
using OilCondition.Cleanliness;
using OilCondition.Tests.Properties;
using UnitsNet;

namespace OilCondition.Tests.Cleanliness;

public class KidneyLoopSizesTests
{
    private static readonly Volume Tank = Volume.FromLiters(1000);
    private static readonly VolumeFlow Flow = VolumeFlow.FromLitersPerMinute(20);

    private static KidneyLoop Loop(double beta, double ingressionPerMinute) =>
        new(Tank, Flow, new FilterBeta(beta), ingressionPerMinute);

    private static readonly KidneyLoopSizes Loops = new(Loop(20, 2e7), Loop(100, 5e6), Loop(1000, 4e5));

    [Fact]
    public void The_code_it_tends_to_is_that_of_its_steady_counts() =>
        // 2e7/19000 = 1052.6, 5e6/19800 = 252.5, 4e5/19980 = 20.02 per mL: 17, 15, 12 by table 1.
        Loops.SteadyCode.ToString().ShouldBe("17/15/12");

    [Fact]
    public void The_slowest_size_rules_and_the_whole_code_is_there_then()
    {
        var target = CleanlinessCode.Parse("18/16/13");
        var (time, rulingSize) = Loops.TimeTo(CleanlinessCode.Parse("21/19/16"), target);

        // By hand, V/(Q·e) in min times ln((N0−N∞)/(N−N∞)) from 20000, 5000, 640 to 2500, 640, 80 per mL.
        double By(double e, double r, double n0, double n) =>
            1000 / (20 * e) * Math.Log((n0 - (r / (20000 * e))) / (n - (r / (20000 * e))));
        double[] minutes = [By(0.95, 2e7, 20000, 2500), By(0.99, 5e6, 5000, 640), By(0.999, 4e5, 640, 80)];
        var expected = Expected(time);
        expected.TotalMinutes.ShouldBe(minutes.Max(), 1e-6);
        rulingSize.ShouldBe((CodeSize)Array.IndexOf(minutes, minutes.Max()));
        Expected(Loops.At4.TimeTo(20000, 2500)).TotalMinutes.ShouldBe(minutes[0], 1e-6);
        Loops.At4.Turnovers(expected).ShouldBe(minutes.Max() * 20 / 1000, 1e-9);
        Loops.Holds(target).ShouldBeTrue();
        Worst(expected * 1.0001).ShouldBeLessThanOrEqualTo(0);
        Worst(expected * 0.999).ShouldBe(1);

        int Worst(TimeSpan after)
        {
            Loops.CodeAfter(20000, 5000, 640, after).TryWorstExcess(target, out var excess).ShouldBeTrue();
            return excess;
        }
    }

    [Fact]
    public void One_size_that_never_comes_there_is_enough()
    {
        // Steady at 4 µm(c): 1052.6 per mL, above 640 of scale number 16; at 6 µm(c) 252.5 per mL, above 160 of 14.
        var (never, rulingSize) = To("16/15/13");
        never.ShouldBeOfType<Arrival<TimeSpan>.Never>();
        rulingSize.ShouldBe(CodeSize.At4);
        Loops.Holds(CleanlinessCode.Parse("16/15/13")).ShouldBeFalse();

        // 1052.6/1300 holds, 252.5/160 = 1.58 does not: the farthest off rules.
        To("17/14/13").RulingSize.ShouldBe(CodeSize.At6);
        To("16/14/9").RulingSize.ShouldBe(CodeSize.At14); // 1.64, 1.58, 4.0

        static (Arrival<TimeSpan> Time, CodeSize RulingSize) To(string target) =>
            Loops.TimeTo(20000, 5000, 640, CleanlinessCode.Parse(target));
    }

    [Fact]
    public void A_size_that_the_target_leaves_out_does_not_count()
    {
        // With it, 4 µm(c) would never come to 16 (640 per mL).
        Loops
            .TimeTo(20000, 5000, 640, CleanlinessCode.Parse("16/16/13"))
            .Time.ShouldBeOfType<Arrival<TimeSpan>.Never>();
        var (time, rulingSize) = Loops.TimeTo(20000, 5000, 640, CleanlinessCode.Parse("-/16/13"));

        rulingSize.ShouldNotBe(CodeSize.At4);
        time.ShouldBeOfType<Arrival<TimeSpan>.Expected>();
    }

    [Fact]
    public void A_clean_tank_may_still_rise_above_its_target()
    {
        var target = CleanlinessCode.Parse("16/14/12");

        Loops.TimeTo(100, 50, 5, target).Time.ShouldBeOfType<Arrival<TimeSpan>.Already>();
        Loops.Holds(target).ShouldBeFalse();
        Loops.Holds(CleanlinessCode.Parse("18/16/13")).ShouldBeTrue();
    }

    [Fact]
    public void Counts_never_rise_with_size_on_the_way() =>
        Gen.Select(Gen.Double[0, 1].Array[3], Gen.Double[0, 1].Array[3], Gen.Double[0, 1].Array[3], Gen.Double[0, 1000])
            .Holds(
                (starts, betas, ingressions, minutes) =>
                {
                    double[] n = [.. starts.OrderByDescending(x => x).Select(x => 1e6 * x * x * x)];
                    double[] b = [.. betas.Order().Select(x => 1.01 + (x * x * x * 5000))];
                    double[] r = [.. ingressions.OrderByDescending(x => x).Select(x => 1e8 * x * x * x)];
                    var loops = new KidneyLoopSizes(Loop(b[0], r[0]), Loop(b[1], r[1]), Loop(b[2], r[2]));

                    loops.CodeAfter(n[0], n[1], n[2], TimeSpan.FromMinutes(minutes)).ShouldNotBeNull();
                    loops.SteadyCode.ShouldNotBeNull();
                },
                iter: 500
            );

    [Fact]
    public void The_flow_for_a_code_is_that_of_its_most_demanding_size()
    {
        var target = CleanlinessCode.Parse("18/16/13");
        var start = CleanlinessCode.Parse("21/19/16");

        // R/(N·e): 2e7/(2500·0.95) = 8421, 5e6/(640·0.99) = 7892, 4e5/(80·0.999) = 5005 mL/min.
        Loops.TryFlowToHold(target, out var hold).ShouldBeTrue();
        hold.MillilitersPerMinute.ShouldBe(2e7 / (2500 * 0.95), 1e-6);

        Loops.TryFlowToReach(20000, 5000, 640, target, TimeSpan.FromHours(3), out var reach).ShouldBeTrue();
        KidneyLoop Resized(KidneyLoop loop) => new(Tank, reach, loop.Filter, loop.IngressionPerMinute);
        var resized = new KidneyLoopSizes(Resized(Loops.At4), Resized(Loops.At6), Resized(Loops.At14));
        Expected(resized.TimeTo(start, target).Time).TotalHours.ShouldBe(3, 1e-6);
        resized.Holds(target).ShouldBeTrue();
        new KidneyLoopSizes(Loop(20, 0), Loop(100, 0), Loop(1000, 0))
            .TryFlowToHold(target, out var none)
            .ShouldBeTrue();
        none.LitersPerMinute.ShouldBe(0);
    }

    private static TimeSpan Expected(Arrival<TimeSpan> time) =>
        time.ShouldBeOfType<Arrival<TimeSpan>.Expected>().Estimate;

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Should
            .Throw<ArgumentException>(() => new KidneyLoopSizes(Loop(200, 2e7), Loop(100, 5e6), Loop(1000, 4e5)))
            .Message.ShouldContain("loopAt6 has a filtration ratio of 100");
        Should.Throw<ArgumentException>(() => new KidneyLoopSizes(Loop(20, 2e7), Loop(100, 5e6), Loop(1000, 6e6)));
        Should
            .Throw<ArgumentException>(() =>
                new KidneyLoopSizes(
                    Loop(20, 2e7),
                    Loop(100, 5e6),
                    new KidneyLoop(Tank, Flow * 2, new FilterBeta(1000), 4e5)
                )
            )
            .Message.ShouldContain("loopAt14 has another oil volume or flow");
        new KidneyLoopSizes(
            Loop(20, 2e7),
            new KidneyLoop(Volume.FromCubicMeters(1), VolumeFlow.FromCubicMetersPerHour(1.2), new FilterBeta(100), 5e6),
            Loop(1000, 4e5)
        ).SteadyCode.ShouldBe(Loops.SteadyCode); // the same tank in other units
        Should
            .Throw<ArgumentException>(() => Loops.TimeTo(1, 1, 1, CleanlinessCode.Parse("*/16/13")))
            .Message.ShouldContain("'*' gives no limit At4");
        Should.Throw<ArgumentException>(() => Loops.TimeTo(1, 1, 1, CleanlinessCode.Parse(">28/16/13")));
        Should.Throw<ArgumentException>(() =>
            Loops.TimeTo(CleanlinessCode.Parse("16/13"), CleanlinessCode.Parse("18/16/13"))
        );
        Should.Throw<ArgumentException>(() => Loops.TimeTo(1, 2, 1, CleanlinessCode.Parse("18/16/13")));
        Should.Throw<ArgumentException>(() => Loops.CodeAfter(1, 1, 2, TimeSpan.Zero));
    }
}
