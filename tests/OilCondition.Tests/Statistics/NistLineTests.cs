using System.Globalization;
using System.Text.RegularExpressions;
using OilCondition.Statistics;
using OilCondition.Tests.Reference;

namespace OilCondition.Tests.Statistics;

/// <summary>NIST Statistical Reference Datasets, linear: every set whose model is a straight line, at 9 digits and more.</summary>
public partial class NistLineTests
{
    /// <summary>Models that are no straight line, and where they are met or why not.</summary>
    private static readonly Dictionary<string, string> LeftOut = new(StringComparer.Ordinal)
    {
        ["Pontius"] = "a parabola: no oil property is extrapolated by one",
        ["Filip"] = "a polynomial of degree 10",
        ["Longley"] = "several regressors",
        ["Wampler1"] = "a polynomial",
        ["Wampler2"] = "a polynomial",
        ["Wampler3"] = "a polynomial",
        ["Wampler4"] = "a polynomial",
        ["Wampler5"] = "a polynomial",
        ["NoInt1"] = "a line through zero: the new oil's value is itself a reading, not a known point",
        ["NoInt2"] = "a line through zero: the new oil's value is itself a reading, not a known point",
    };

    public static TheoryData<string> Sets() =>
        [
            .. Directory
                .GetFiles(Path.GetDirectoryName(ReferenceFolder.PathOf("nist/Norris.csv"))!, "*.csv")
                .Select(file => Path.GetFileNameWithoutExtension(file))
                .Where(name => !LeftOut.ContainsKey(name) && IsLinear(name))
                .Order(StringComparer.Ordinal),
        ];

    [Theory]
    [MemberData(nameof(Sets))]
    [Trait("Category", "Reference")]
    public void Certified_values_of_straight_lines_are_met(string set)
    {
        Comment(set, "model").ShouldBe("y = B0 + B1*x", $"{set} is neither a straight line nor left out with a reason");
        var rows = ReferenceFolder.Rows($"nist/{set}.csv");
        var fit = StraightLine.Fit(TrendCase.Column(rows, "x"), TrendCase.Column(rows, "y"));
        var intercept = Figures(set, "B0");
        var slope = Figures(set, "B1");

        Agree(fit.Intercept, intercept[0]);
        Agree(fit.StandardErrorAt(0, BandKind.Mean), intercept[1]);
        Agree(fit.Slope, slope[0]);
        Agree(fit.SlopeStandardError, slope[1]);
        Agree(fit.ResidualStandardDeviation, Figures(set, "certified_rsd")[0]);
        Agree(fit.RSquared, Figures(set, "certified_r_squared")[0]);
        Agree(fit.ResidualSumOfSquares, Figures(set, "certified_residual_df_ss_ms")[1]);
    }

    [Fact]
    public void At_least_one_set_was_read() => Sets().Count.ShouldBeGreaterThan(0);

    private static void Agree(double actual, double certified) =>
        Math.Abs(actual - certified)
            .ShouldBeLessThanOrEqualTo(1e-9 * Math.Abs(certified), $"{actual:R} against {certified:R}");

    /// <summary>The nonlinear sets have start values; the decay tests meet those that are a decay.</summary>
    private static bool IsLinear(string set) =>
        !Lines(set).Any(line => line.Contains("start", StringComparison.Ordinal));

    private static double[] Figures(string set, string name) =>
        [
            .. Number()
                .Matches(Comment(set, name))
                .Select(m => double.Parse(m.Value, NumberStyles.Float, CultureInfo.InvariantCulture)),
        ];

    private static string Comment(string set, string name) =>
        Lines(set).First(line => line.StartsWith($"# {name}:", StringComparison.Ordinal))[(name.Length + 3)..].Trim();

    private static IEnumerable<string> Lines(string set) =>
        File.ReadLines(ReferenceFolder.PathOf($"nist/{set}.csv")).TakeWhile(line => line.StartsWith('#'));

    [GeneratedRegex(@"(?<![A-Za-z\d])-?\d+\.?\d*([Ee][+-]?\d+)?", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Number();
}
