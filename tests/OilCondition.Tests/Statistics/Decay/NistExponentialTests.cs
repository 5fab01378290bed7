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

        var rows = ReferenceFolder.Rows(file);
        Check(
            [.. rows.Select(row => Number(row["x"]))],
            [.. rows.Select(row => Number(row["y"]))],
            Of(header, "# b1:", "certified="),
            Of(header, "# b2:", "certified="),
            Of(header, "# b1:", "std_error="),
            Of(header, "# b2:", "std_error="),
            Of(header, "# certified_rss:", " ")
        );
    }

    [Fact]
    public void BoxBOD_is_met_to_ten_digits()
    {
        // NIST StRD BoxBOD (higher difficulty; Box, Hunter and Hunter 1978), data and certified values as in its file BoxBOD.dat.
        Check(
            [1, 2, 3, 5, 7, 10],
            [109, 149, 149, 191, 213, 224],
            2.1380940889E+02,
            5.4723748542E-01,
            1.2354515176E+01,
            1.0455993237E-01,
            1.1680088766E+03
        );
    }

    private static void Check(double[] x, double[] y, double b1, double b2, double error1, double error2, double rss)
    {
        var fit = ExponentialDecay.Fit(x, y, new ExponentialDecayOptions(start: 0, startTime: 0));
        Digits(fit.Floor, b1).ShouldBeGreaterThan(10);
        Digits(fit.Rate, b2).ShouldBeGreaterThan(10);
        Digits(fit.FloorStandardError, error1).ShouldBeGreaterThan(10);
        Digits(fit.RateStandardError, error2).ShouldBeGreaterThan(10);
        Digits(fit.ResidualSumOfSquares, rss).ShouldBeGreaterThan(10);
        fit.DegreesOfFreedom.ShouldBe(x.Length - 2);
    }

    private static double Digits(double value, double certified) => -Math.Log10(Math.Abs(value / certified - 1));

    private static double Of(string[] header, string line, string name)
    {
        var text = header.Single(one => one.StartsWith(line, StringComparison.Ordinal));
        return Number(text[(text.IndexOf(name, line.Length, StringComparison.Ordinal) + name.Length)..].Split(' ')[0]);
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
