using System.Globalization;
using OilCondition.Cleanliness;
using OilCondition.Statistics;
using OilCondition.Tests.Architecture;
using OilCondition.Tests.Reference;
using OilCondition.Thermal;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Examples;

/// <summary>Under 'Published figures' a page has what others print, from the reference files by its row, and what the library makes of it.</summary>
public class PublishedFigureTests
{
    private static readonly Dictionary<string, Func<string>> Water = new(StringComparer.Ordinal)
    {
        ["WTR-007"] = () => Saturation(0),
        ["WTR-009"] = () => Saturation(20),
        ["WTR-011"] = () => Saturation(40),
        ["WTR-013"] = () => Saturation(60),
        ["WTR-015"] = () => Saturation(80),
        ["WTR-017"] = () => Saturation(100),
    };

    private static readonly Dictionary<string, Func<string>> Viscosities = new(StringComparer.Ordinal)
    {
        ["VIS-001"] = () => Index(73.30, 8.86),
        ["VIS-002"] = () => Index(22.83, 5.05),
        ["VIS-004"] = () => Index(73.50, 8.86),
    };

    private static readonly Dictionary<string, Func<string>> Codes = new(StringComparer.Ordinal)
    {
        ["CLN-005"] = () => Text(Iso4406.ScaleNumber(640), "0"),
        ["CLN-007"] = () => Text(Iso4406.ScaleNumber(650), "0"),
        ["CLN-039"] = () => CleanlinessCode.FromCounts(30000, 2000, 60).ToString(),
        ["CLN-040"] = () => CleanlinessCode.FromCounts(100, 30, 1).ToString(),
    };

    private static readonly Dictionary<string, Func<string>> Heat = new(StringComparer.Ordinal)
    {
        ["HT-016"] = () => VolumeFactor(341.0957, 0, 946.918739324112, -27.7),
        ["HT-017"] = () => VolumeFactor(341.0957, 0, 1163.463078189300, 301.93),
        ["HT-018"] = () => VolumeFactor(103.8720, 0.2701, 936.784387011266, 48.04),
    };

    private static readonly Dictionary<string, Func<string>> Trends = new(StringComparer.Ordinal)
    {
        ["MK1.S"] = () => Text(MannKendall.Test(DataSet("MK1").X, DataSet("MK1").Y).Score, "0"),
        ["MK1.z"] = () => Text(MannKendall.Test(DataSet("MK1").X, DataSet("MK1").Y).NormalScore, "0.00000"),
        ["MK1.slope"] = () => Text(TheilSen.Fit(DataSet("MK1").X, DataSet("MK1").Y).Slope, "0.00000"),
        ["MK3.slope"] = () => Text(TheilSen.Fit(DataSet("MK3").X, DataSet("MK3").Y).Slope, "0"),
    };

    [Fact]
    public void The_pages_show_published_figures_and_ours_beside_them()
    {
        Compare("water.md", "water.csv", Water);
        Compare("viscosity.md", "viscosity.csv", Viscosities);
        Compare("cleanliness.md", "cleanliness.csv", Codes);
        Compare("thermal.md", "heat.csv", Heat);
        Compare("statistics-trends.md", "trend.csv", Trends);
    }

    private static void Compare(string page, string file, Dictionary<string, Func<string>> figures)
    {
        var rows = RepositoryFiles
            .Read("docs", page)
            .Split("\n## Published figures\n")[1]
            .Split("\n## ")[0]
            .Split('\n')
            .Where(line => line.StartsWith("| ", StringComparison.Ordinal))
            .Skip(1)
            .Select(line => line.Split('|', StringSplitOptions.TrimEntries))
            .ToList();

        rows.Select(cells => cells[1]).ShouldBe(figures.Keys, page);
        foreach (var cells in rows)
        {
            cells[3].ShouldBe(ReferenceFolder.Case(file, cells[1]).Value, $"{page}, published: {cells[1]}");
            cells[4].ShouldBe(figures[cells[1]](), $"{page}, here: {cells[1]}");
        }
    }

    private static string Text(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    private static string Saturation(double celsius) =>
        Text(
            PublishedSaturationCurves
                .TransformerMineralOil.SaturationAt(Temperature.FromDegreesCelsius(celsius))
                .Content.PartsPerMillion,
            "0.0"
        );

    private static string Index(double at40, double at100) =>
        Text(
            ViscosityIndex
                .FromViscosities(KinematicViscosity.FromCentistokes(at40), KinematicViscosity.FromCentistokes(at100))
                .Reported,
            "0"
        );

    private static string VolumeFactor(double k0, double k1, double densityAt60, double fahrenheit) =>
        Text(
            VolumeCorrection
                .Api2004(
                    ThermalExpansion.FromConstants(
                        k0,
                        k1,
                        0,
                        Density.FromKilogramsPerCubicMeter(610.6),
                        Density.FromKilogramsPerCubicMeter(1163.5),
                        new Source(SourceKind.Standard, "API MPMS 11.1-2004", "11.1.6.1")
                    ),
                    Density.FromKilogramsPerCubicMeter(densityAt60),
                    Temperature.FromDegreesFahrenheit(fahrenheit)
                )
                .Factor.DecimalFractions,
            "0.000000000000"
        );

    private static (double[] X, double[] Y) DataSet(string name)
    {
        var rows = ReferenceFolder.Rows("trend-data.csv").Where(row => row["dataset"] == name).ToList();
        return (Column("x"), Column("y"));

        double[] Column(string column) =>
            [.. rows.Select(row => double.Parse(row[column], CultureInfo.InvariantCulture))];
    }
}
