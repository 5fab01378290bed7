using CsCheck;
using OilCondition.Cleanliness;
using OilCondition.Tests.Properties;
using UnitsNet;

namespace OilCondition.Tests.Cleanliness;

public class KidneyLoopSizingTests
{
    private static readonly Volume Tank = Volume.FromLiters(1000);
    private static readonly FilterBeta Beta200 = new(200);

    [Fact]
    public void The_flow_that_holds_a_target_has_it_for_its_steady_state()
    {
        // R/(N·e) by hand: 5e6/(640·0.995) = 7851.8 mL/min.
        KidneyLoop.TryFlowToHold(640, Beta200, 5e6, out var flow).ShouldBeTrue();

        flow.LitersPerMinute.ShouldBe(7.8518, 5e-5);
        new KidneyLoop(Tank, flow, Beta200, 5e6).SteadyPerMillilitre.ShouldBe(640, 1e-9);
    }

    [Fact]
    public void Without_ingression_a_fall_takes_its_logarithm_in_turnovers()
    {
        // ln 20 turnovers through a filter with e = 0.995 in 100 min of 1000 L: 29.957/0.995 L/min.
        var time = TimeSpan.FromMinutes(100);
        KidneyLoop.TryFlowToReach(20000, 1000, time, Tank, Beta200, 0, out var flow).ShouldBeTrue();

        flow.LitersPerMinute.ShouldBe(10 * Math.Log(20) / 0.995, 1e-9);
    }

    [Fact]
    public void The_flow_that_reaches_a_target_reaches_it_in_that_time() =>
        Gen.Select(Gen.Double[0.5, 8], Gen.Double[-2, 6], Gen.Double[1, 4], Gen.Double[2, 5000], Gen.Double[0, 9])
            .Holds(
                (fall, target, minutes, beta, ingression) =>
                {
                    var (n, t) = (Math.Pow(10, target), TimeSpan.FromMinutes(Math.Pow(10, minutes)));
                    var start = Math.Min(1e9, n * Math.Exp(fall));
                    var (filter, r) = (new FilterBeta(beta), Math.Pow(10, ingression) - 1);
                    var isFound = KidneyLoop.TryFlowToReach(start, n, t, Tank, filter, r, out var flow);
                    if (!isFound || flow.MillilitersPerMinute > 0.998e9)
                    {
                        // At the end of the range, where no thousandth more is allowed.
                        flow.MillilitersPerMinute.ShouldBe(1e9, 0.002e9);
                        return;
                    }

                    // Second route: the forward balance, and a thousandth more or less flow on either side of the target.
                    double After(double factor) => new KidneyLoop(Tank, flow * factor, filter, r).CountAfter(start, t);
                    After(0.999).ShouldBeGreaterThanOrEqualTo(n * (1 - 1e-9));
                    After(1.001).ShouldBeLessThanOrEqualTo(n * (1 + 1e-9));

                    // The filter that this flow needs is the one it was sized for.
                    KidneyLoop.TryBetaToReach(start, n, t, Tank, flow, r, out var ratio).ShouldBeTrue();
                    ratio.ShouldBe(beta, 1e-6 * beta * beta);
                },
                iter: 400
            );

    [Fact]
    public void A_start_below_the_target_still_needs_what_holds_it()
    {
        var time = TimeSpan.FromHours(8);
        KidneyLoop.TryFlowToReach(100, 640, time, Tank, Beta200, 5e6, out var reach).ShouldBeTrue();
        KidneyLoop.TryFlowToHold(640, Beta200, 5e6, out var hold).ShouldBeTrue();
        reach.ShouldBe(hold);
        KidneyLoop.TryFlowToReach(640, 640, time, Tank, Beta200, 0, out var none).ShouldBeTrue();
        none.LitersPerMinute.ShouldBe(0);
        KidneyLoop.TryFlowToHold(640, Beta200, 0, out none).ShouldBeTrue();
        none.LitersPerMinute.ShouldBe(0);
        KidneyLoop.TryBetaToHold(640, VolumeFlow.FromLitersPerMinute(20), 0, out var beta).ShouldBeTrue();
        beta.ShouldBe(1);
    }

    [Fact]
    public void A_filter_cannot_make_up_for_too_little_flow()
    {
        // 5e6/640 = 7812.5 mL/min must be wholly clean: at 7.8 L/min no filter does it, at 7.9 one of 90 (7900/87.5) does.
        KidneyLoop.TryBetaToHold(640, VolumeFlow.FromLitersPerMinute(7.8), 5e6, out var beta).ShouldBeFalse();
        beta.ShouldBe(1e7);
        KidneyLoop.TryFlowToHold(640, new FilterBeta(1e7), 5e6, out var perfect).ShouldBeTrue();
        perfect.MillilitersPerMinute.ShouldBe(7812.5, 1e-3);
        KidneyLoop.TryBetaToHold(640, VolumeFlow.FromLitersPerMinute(7.9), 5e6, out beta).ShouldBeTrue();
        beta.ShouldBe(7900 / 87.5, 1e-6);
        KidneyLoop.TryBetaToHold(1e6, VolumeFlow.FromLitersPerMinute(1e5), 1e-3, out beta).ShouldBeTrue();
        beta.ShouldBe(1.000001);
        KidneyLoop.TryFlowToHold(1e-6, Beta200, 1e15, out var end).ShouldBeFalse();
        end.MillilitersPerMinute.ShouldBe(1e9, 1);
        KidneyLoop
            .TryBetaToHold(640, VolumeFlow.FromMillilitersPerMinute(7812.5 * (1 + 1e-9)), 5e6, out _)
            .ShouldBeFalse();
    }

    /// <summary>Without ingression a fall by half takes ln 2 of V / (Q e): 10⁶ m³, as large as the reservoir of a treatment may be, at 900 m³/min.</summary>
    [Fact]
    public void A_tank_is_as_large_as_a_reservoir_may_be()
    {
        var (largest, flow) = (Volume.FromCubicMeters(1e6), VolumeFlow.FromCubicMetersPerMinute(900));
        var hours = Math.Log(2) * 1e6 / (900 * 0.995) / 60;
        var filter = new FilterBeta(200);

        new KidneyLoop(largest, flow, filter, 0).TimeTo(2000, 1000).TryEstimate(out var time).ShouldBeTrue();
        time.TotalHours.ShouldBe(hours, 1e-9);
        KidneyLoop.TryFlowToReach(2000, 1000, TimeSpan.FromHours(hours), largest, filter, 0, out var reach);
        reach.CubicMetersPerMinute.ShouldBe(900, 1e-6);

        var beyond = Volume.FromCubicMeters(1.001e6);
        Should
            .Throw<ArgumentOutOfRangeException>(() => new KidneyLoop(beyond, flow, filter, 0))
            .ParamName.ShouldBe("oilVolume");
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                KidneyLoop.TryFlowToReach(2000, 1000, TimeSpan.FromHours(1), beyond, filter, 0, out _)
            )
            .ParamName.ShouldBe("oilVolume");
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        var (flow, time) = (VolumeFlow.FromLitersPerMinute(20), TimeSpan.FromHours(1));
        Should.Throw<ArgumentOutOfRangeException>(() => KidneyLoop.TryFlowToHold(0, Beta200, 1, out _));
        Should.Throw<ArgumentOutOfRangeException>(() => KidneyLoop.TryFlowToHold(double.NaN, Beta200, 1, out _));
        Should.Throw<ArgumentOutOfRangeException>(() => KidneyLoop.TryFlowToHold(1, Beta200, -1, out _));
        Should.Throw<ArgumentNullException>(() => KidneyLoop.TryFlowToHold(1, null!, 1, out _));
        Should.Throw<ArgumentOutOfRangeException>(() =>
            KidneyLoop.TryFlowToReach(-1, 1, time, Tank, Beta200, 1, out _)
        );
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                KidneyLoop.TryFlowToReach(2, 1, TimeSpan.Zero, Tank, Beta200, 1, out _)
            )
            .Message.ShouldContain("time is 0 min");
        Should.Throw<ArgumentOutOfRangeException>(() =>
            KidneyLoop.TryBetaToReach(2, 1, time, Volume.Zero, flow, 1, out _)
        );
        Should.Throw<ArgumentOutOfRangeException>(() => KidneyLoop.TryBetaToHold(1, VolumeFlow.Zero, 1, out _));
    }
}
