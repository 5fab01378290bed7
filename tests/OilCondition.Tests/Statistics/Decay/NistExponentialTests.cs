using System.Globalization;
using OilCondition.Statistics;
using OilCondition.Tests.Reference;

namespace OilCondition.Tests.Statistics;

/// <summary>NIST Statistical Reference Datasets of the form y = b1 (1 − exp(−b2 x)): the cleanup law with a start of 0 at x = 0.</summary>
[Trait("Category", "Reference")]
public class NistExponentialTests
{
    private const string CleanupLaw = "y = b1*(1-exp(-b2*x))";

    /// <summary>Models of other sets, and why a fit of one decay has nothing to say about them.</summary>
    private static readonly Dictionary<string, string> OtherModels = new(StringComparer.Ordinal)
    {
        ["y = exp(-b1*x)/(b2+b3*x)"] = "not an exponential approach to a floor",
        ["y = b1*exp(-b2*x) + b3*exp(-b4*x) + b5*exp(-b6*x)"] = "three rates at once",
        ["y = b1 + b2*exp(-x*b4) + b3*exp(-x*b5)"] = "two rates at once",
        ["y = b1*(1-(1+b2*x/2)^(-2))"] = "a second-order law",
        ["y = B0 + B1*x"] = "a straight line: StraightLineTests",
        ["y = B0 + B1*x + B2*x^2"] = "a parabola",
        ["y = B0 + B1*x1 + B2*x2 + B3*x3 + B4*x4 + B5*x5 + B6*x6"] = "several variables",
    };

    public static TheoryData<string> Files()
    {
        var data = new TheoryData<string>();
        foreach (var path in Directory.GetFiles(Path.GetDirectoryName(ReferenceFolder.PathOf("nist/Misra1a.csv"))!))
        {
            data.Add("nist/" + Path.GetFileName(path));
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Certified_values_are_met_to_ten_digits_without_a_start_value(string file)
    {
        string[] header = [.. File.ReadAllLines(ReferenceFolder.PathOf(file)).Where(line => line.StartsWith('#'))];
        var model = header.Single(line => line.StartsWith("# model: ", StringComparison.Ordinal))["# model: ".Length..];
        if (model != CleanupLaw)
        {
            OtherModels.ShouldContainKey(model, $"{file} has a model that is neither fitted nor left out by name.");
            return;
        }

        var fit = Fit(file);
        Digits(fit.Floor, Of(header, "# b1:", "certified=")).ShouldBeGreaterThan(10);
        Digits(fit.Rate, Of(header, "# b2:", "certified=")).ShouldBeGreaterThan(10);
        Digits(fit.FloorStandardError, Of(header, "# b1:", "std_error=")).ShouldBeGreaterThan(10);
        Digits(fit.RateStandardError, Of(header, "# b2:", "std_error=")).ShouldBeGreaterThan(10);
        Digits(fit.ResidualSumOfSquares, Of(header, "# certified_rss:", " ")).ShouldBeGreaterThan(10);
        fit.DegreesOfFreedom.ShouldBe((int)Of(header, "# df:", " "));
    }

    /// <summary>What a set certifies of a parameter, such as <c>Misra1a b1</c>.</summary>
    internal static double Certified(string set, string parameter) =>
        Of(File.ReadAllLines(ReferenceFolder.PathOf($"nist/{set}.csv")), $"# {parameter}:", "certified=");

    internal static ExponentialDecay Fit(string file)
    {
        var (x, y) = Data(file);
        return ExponentialDecay.Fit(x, y, new ExponentialDecayOptions(start: 0, startTime: 0));
    }

    internal static (double[] X, double[] Y) Data(string file)
    {
        var rows = ReferenceFolder.Rows(file);
        return ([.. rows.Select(row => Number(row["x"]))], [.. rows.Select(row => Number(row["y"]))]);
    }

    private static double Digits(double value, double certified) => -Math.Log10(Math.Abs(value / certified - 1));

    private static double Of(string[] header, string line, string name)
    {
        var text = header.Single(one => one.StartsWith(line, StringComparison.Ordinal));
        return Number(text[(text.IndexOf(name, line.Length, StringComparison.Ordinal) + name.Length)..].Split(' ')[0]);
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
