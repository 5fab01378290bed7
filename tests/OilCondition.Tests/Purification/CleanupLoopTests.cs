using OilCondition.Purification;
using OilCondition.Tests.Reference;
using UnitsNet;

namespace OilCondition.Tests.Purification;

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
                    Duration.FromMinutes(row.Number("t_min"))
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
                ? time.Minutes
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
        ReferenceFolder
            .Cases(File)
            .Select(row => row.Quantity)
            .Where(quantity => ours.Any(start => quantity.StartsWith(start, StringComparison.Ordinal)))
            .Distinct()
            .Where(quantity =>
                !Mapped.ContainsKey(quantity)
                && !LeftOut.Keys.Any(start => quantity.StartsWith(start, StringComparison.Ordinal))
            )
            .ShouldBeEmpty();
    }

    [Fact]
    public void A_target_at_or_below_the_floor_is_never_reached_and_one_above_the_start_already_is()
    {
        var loop = new CleanupLoop(Volume.FromLiters(2000), VolumeFlow.FromLitersPerMinute(20));
        var eta = Ratio.FromPercent(80);

        loop.TryTimeTo(1000, 50, 50, eta, out _).ShouldBeFalse();
        loop.TryTimeTo(40, 50, 45, eta, out _).ShouldBeFalse();
        loop.TryTimeTo(100, 50, 200, eta, out var already).ShouldBeTrue();
        already.ShouldBe(Duration.Zero);
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

    private static CleanupLoop Loop(ReferenceCase row) =>
        new(Volume.FromLiters(row.Number("V_L")), VolumeFlow.FromLitersPerMinute(row.Number("Q_L_min")));

    private static Ratio Eta(ReferenceCase row) => Ratio.FromDecimalFractions(row.Number("eta"));
}
