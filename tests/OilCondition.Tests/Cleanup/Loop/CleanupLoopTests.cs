using CsCheck;
using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Reference;
using UnitsNet;

namespace OilCondition.Tests.Cleanup.Loop;

/// <summary>The rows of water.csv that the Water room leaves to purification, and closed forms worked by hand.</summary>
public class CleanupLoopTests
{
    private const string File = "water.csv";

    private static readonly Dictionary<string, Func<ReferenceCase, double>> Mapped = new(StringComparer.Ordinal)
    {
        ["kidney-loop concentration"] = row =>
            Loop(row)
                .ValueAfter(
                    row.Number("C0_ppm"),
                    row.Number("Cinf_ppm"),
                    Eta(row),
                    AnySpan.Minutes(row.Number("t_min"))
                ),
        ["kidney-loop time to target"] = row =>
            Loop(row)
                .TryTimeTo(
                    row.Number("C0_ppm"),
                    row.Number("Cinf_ppm"),
                    row.Number("C_target_ppm"),
                    Eta(row),
                    out var time
                )
                ? time.TotalMinutes
                : throw new ArgumentException("never reached", nameof(row)),
        ["kidney-loop steady state with ingress"] = row =>
            Loop(row).LevelWithIngress(row.Number("Cinf_ppm"), row.Number("ingress_ppm_per_h"), Eta(row)),
        ["fraction removed after N turnovers"] = row =>
            CleanupLoop.FractionRemoved(row.Number("N"), Eta(row)).DecimalFractions,
        ["turnovers for 99 % removal"] = row => CleanupLoop.TurnoversFor(Ratio.FromPercent(99), Eta(row)),
    };

    /// <summary>Beginnings of the names of quantities that belong to purification and that no call answers.</summary>
    private static readonly Dictionary<string, string> LeftOut = new(StringComparer.Ordinal)
    {
        ["outlet after n single passes"] = "transfer from tank to tank is no kidney loop",
    };

    public static TheoryData<string, string, string> Rows() =>
        ReferenceFolder.Theory(File, row => Mapped.ContainsKey(row.Quantity) && row.Tolerance != "guide");

    [Theory]
    [MemberData(nameof(Rows))]
    [Trait("Category", "Reference")]
    public void Agrees_with_its_source(string file, string id, string description)
    {
        description.ShouldNotBeEmpty();
        var row = ReferenceFolder.Case(file, id);
        if (row.TryNumber(out _))
        {
            row.ShouldAgree(Mapped[row.Quantity](row));
        }
        else
        {
            Should.Throw<ArgumentException>(() => Mapped[row.Quantity](row), $"{id}: {row.Value}");
        }
    }

    [Fact]
    public void Every_quantity_that_water_leaves_to_purification_is_mapped_or_left_out_with_a_reason()
    {
        string[] ours = ["kidney-loop", "fraction removed", "turnovers for", "outlet after n single passes"];
        ReferenceFolder.ShouldAnswerFor(
            File,
            quantity =>
                !ours.Any(start => quantity.StartsWith(start, StringComparison.Ordinal))
                || Mapped.ContainsKey(quantity)
                || LeftOut.Keys.Any(start => quantity.StartsWith(start, StringComparison.Ordinal))
        );
    }

    [Fact]
    public void A_target_at_or_below_the_floor_is_never_reached_and_one_above_the_start_already_is()
    {
        var loop = new CleanupLoop(Volume.FromLiters(2000), VolumeFlow.FromLitersPerMinute(20));
        var eta = Ratio.FromPercent(80);

        loop.TryTimeTo(1000, 50, 50, eta, out _).ShouldBeFalse();
        loop.TryTimeTo(40, 50, 45, eta, out _).ShouldBeFalse();
        loop.TryTimeTo(100, 50, 200, eta, out var already).ShouldBeTrue();
        already.ShouldBe(TimeSpan.Zero);
    }

    [Fact]
    public void Bad_input_is_named()
    {
        var loop = new CleanupLoop(Volume.FromLiters(2000), VolumeFlow.FromLitersPerMinute(20));

        Should
            .Throw<ArgumentOutOfRangeException>(() => new CleanupLoop(Volume.Zero, loop.Flow))
            .ParamName.ShouldBe("charge");
        Should.Throw<ArgumentOutOfRangeException>(() => loop.RatePerHour(Ratio.FromPercent(101)));
        Should.Throw<ArgumentOutOfRangeException>(() =>
            CleanupLoop.TurnoversFor(Ratio.FromPercent(100), Ratio.FromPercent(50))
        );
    }

    [Fact]
    public void Every_door_names_what_lies_outside_its_range()
    {
        var loop = new CleanupLoop(Volume.FromLiters(2000), VolumeFlow.FromLitersPerMinute(20));
        var eta = Ratio.FromPercent(80);
        void Refuses(string name, Func<object> call) =>
            Should.Throw<ArgumentOutOfRangeException>(call).ParamName.ShouldBe(name);

        foreach (var bad in new[] { double.NaN, -1, 1e13, double.PositiveInfinity })
        {
            Refuses("start", () => loop.ValueAfter(bad, 0, eta, TimeSpan.Zero));
            Refuses("floor", () => loop.ValueAfter(0, bad, eta, TimeSpan.Zero));
            Refuses("start", () => loop.TryTimeTo(bad, 0, 1, eta, out _));
            Refuses("floor", () => loop.TryTimeTo(2, bad, 1, eta, out _));
            Refuses("target", () => loop.TryTimeTo(2, 0, bad, eta, out _));
            Refuses("floor", () => loop.LevelWithIngress(bad, 1, eta));
            Refuses("ingressPerHour", () => loop.LevelWithIngress(1, bad, eta));
            Refuses("turnovers", () => CleanupLoop.FractionRemoved(bad, eta));
        }

        // A quantity of UnitsNet cannot be made of what is not a number.
        foreach (var bad in new[] { -1, 1e13 })
        {
            Refuses("time", () => loop.ValueAfter(0, 0, eta, AnySpan.Hours(bad)));
            Refuses("time", () => loop.Turnovers(AnySpan.Hours(bad)));
            Refuses("charge", () => new CleanupLoop(Volume.FromLiters(bad), loop.Flow));
            Refuses("flow", () => new CleanupLoop(loop.Charge, VolumeFlow.FromLitersPerHour(bad)));
            Refuses("removalPerPass", () => loop.RatePerHour(Ratio.FromDecimalFractions(bad)));
            Refuses("fractionRemoved", () => CleanupLoop.TurnoversFor(Ratio.FromDecimalFractions(bad), eta));
        }
    }

    [Fact]
    public void At_the_ends_of_every_range_the_answers_stay_finite()
    {
        var slow = new CleanupLoop(Volume.FromLiters(1e12), VolumeFlow.FromLitersPerHour(1e-6));
        var least = Ratio.FromDecimalFractions(1e-9);

        slow.TryTimeTo(1e12, 0, double.Epsilon, least, out var time).ShouldBeTrue();
        double.IsFinite(time.TotalHours).ShouldBeTrue();
        double.IsFinite(slow.LevelWithIngress(1e12, 1e12, least)).ShouldBeTrue();
        slow.ValueAfter(1e12, 0, least, TimeSpan.FromHours(1e8)).ShouldBe(1e12, 0.01);
        var fast = new CleanupLoop(Volume.FromLiters(1e-6), VolumeFlow.FromLitersPerHour(1e12));
        fast.ValueAfter(1e12, 5, Ratio.FromDecimalFractions(1), TimeSpan.FromHours(1e8)).ShouldBe(5);

        // To first order the share is η N; 1 − exp(−x) itself would keep no more than seven digits of it.
        CleanupLoop.FractionRemoved(1e-9, Ratio.FromPercent(50)).DecimalFractions.ShouldBe(5e-10, 1e-18);
    }

    [Fact]
    public void The_content_at_the_time_to_a_target_is_the_target_and_the_share_of_its_turnovers_is_gone() =>
        Gen.Select(Gen.Double[200, 5000], Gen.Double[0, 50], Gen.Double[51, 190], Gen.Double[0.05, 1])
            .Holds(
                (start, floor, target, removal) =>
                {
                    var loop = new CleanupLoop(Volume.FromLiters(1200), VolumeFlow.FromLitersPerMinute(15));
                    var eta = Ratio.FromDecimalFractions(removal);
                    loop.TryTimeTo(start, floor, target, eta, out var time).ShouldBeTrue();

                    loop.ValueAfter(start, floor, eta, time).ShouldBe(target, 1e-9 * start);
                    var share = CleanupLoop.FractionRemoved(loop.Turnovers(time), eta);
                    share.DecimalFractions.ShouldBe((start - target) / (start - floor), 1e-9);
                    CleanupLoop.TurnoversFor(share, eta).ShouldBe(loop.Turnovers(time), 1e-6 * loop.Turnovers(time));
                    loop.RatePerHour(eta).ShouldBe(removal * 0.75, 1e-12);
                }
            );

    /// <summary>The same balance by the other door: particles, a filter ratio and ingression.</summary>
    [Fact]
    public void A_kidney_loop_of_particles_is_the_same_balance() =>
        Gen.Select(Gen.Double[1000, 1e6], Gen.Double[1.5, 1000], Gen.Double[0, 1e7], Gen.Double[0, 300])
            .Holds(
                (start, beta, perMinute, minutes) =>
                {
                    var volume = Volume.FromLiters(800);
                    var flow = VolumeFlow.FromLitersPerMinute(25);
                    var filter = new FilterBeta(beta);
                    var kidney = new KidneyLoop(volume, flow, filter, perMinute);
                    var loop = new CleanupLoop(volume, flow);
                    var level = loop.LevelWithIngress(0, perMinute * 60 / volume.Milliliters, filter.Efficiency);

                    level.ShouldBe(kidney.SteadyPerMillilitre, 1e-9 * (1 + level));
                    loop.ValueAfter(start, level, filter.Efficiency, AnySpan.Minutes(minutes))
                        .ShouldBe(kidney.CountAfter(start, AnySpan.Minutes(minutes)), 1e-9 * start);
                }
            );

    private static CleanupLoop Loop(ReferenceCase row) =>
        new(Volume.FromLiters(row.Number("V_L")), VolumeFlow.FromLitersPerMinute(row.Number("Q_L_min")));

    private static Ratio Eta(ReferenceCase row) => Ratio.FromDecimalFractions(row.Number("eta"));
}
