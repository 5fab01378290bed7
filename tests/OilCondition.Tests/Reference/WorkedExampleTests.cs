using System.Globalization;
using OilCondition.Cleanup;
using OilCondition.Statistics;
using OilCondition.Thermal;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Reference;

/// <summary>worked-examples.csv: figures that others print, of the arithmetic behind treatments, cleanups and limits.</summary>
public class WorkedExampleTests
{
    private const string File = "worked-examples.csv";

    private static readonly Dictionary<string, Func<ReferenceCase, double>> Mapped = new(StringComparer.Ordinal)
    {
        ["content of a well-mixed volume"] = WellMixed,
        ["velocity of a sphere that sinks"] = Sinking,
        ["one-sided normal tolerance factor"] = row =>
            ToleranceLimits.NormalFactor((int)row.Number("n"), row.Number("content"), row.Number("confidence")),
        ["percentile by rank p (n + 1)"] = row =>
            Quantiles.Of(
                [
                    .. row.Arguments["readings"]
                        .Split(' ')
                        .Select(one => double.Parse(one, CultureInfo.InvariantCulture)),
                ],
                row.Number("p"),
                Quantiles.Rule.Type6
            ),
    };

    /// <summary>What the library makes of a row.</summary>
    internal static double Answer(ReferenceCase row) => Mapped[row.Quantity](row);

    public static TheoryData<string, string, string> Rows() => ReferenceFolder.Theory(File, _ => true);

    [Theory]
    [MemberData(nameof(Rows))]
    [Trait("Category", "Reference")]
    public void Agrees_with_its_source(string file, string id, string description)
    {
        description.ShouldNotBeEmpty();
        var row = ReferenceFolder.Case(file, id);
        row.ShouldAgree(Answer(row));
    }

    /// <summary>One unit an hour comes into one unit of volume that was clean.</summary>
    private static double WellMixed(ReferenceCase row)
    {
        var all = Ratio.FromPercent(100);
        var loop = new CleanupLoop(Volume.FromLiters(1), VolumeFlow.FromLitersPerHour(row.Number("changes_per_h")));
        return loop.ValueAfter(
            start: 0,
            loop.LevelWithIngress(floor: 0, ingressPerHour: 1, all),
            all,
            TimeSpan.FromMinutes(row.Number("t_min"))
        );
    }

    /// <summary>In millimetres a second; the liquid at 15 °C.</summary>
    private static double Sinking(ReferenceCase row)
    {
        var (cold, warm) = (Temperature.FromDegreesCelsius(15), Temperature.FromDegreesCelsius(60));
        var viscosity = KinematicViscosity.FromCentistokes(row.Number("viscosity_mm2_s"));
        var liquid = new TreatedOil(
            OilProperties.FromDensityAt15(Density.FromKilogramsPerCubicMeter(row.Number("rho_kg_m3"))),
            PublishedSaturationCurves.TransformerMineralOil,
            ViscosityTemperatureLine.FromTwoPoints(cold, viscosity, warm, viscosity / 2),
            warm
        );
        return 1000
            * DropletSettling.Stokes(liquid, cold, 1e-6 * row.Number("d_um"), row.Number("rho_sphere_kg_m3"), out _);
    }
}
