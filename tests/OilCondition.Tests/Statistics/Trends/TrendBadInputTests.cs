using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>Every door of trends, outliers and percentiles names the field that is wrong; NaN passes none.</summary>
public class TrendBadInputTests
{
    private static readonly double[] Good = [1, 2, 4, 3, 5, 6, 7];

    private static readonly Dictionary<string, (string Field, Action Call)> Doors = new(StringComparer.Ordinal)
    {
        ["line"] = ("values", () => StraightLine.Fit(Good, Bad(double.NaN))),
        ["line position"] = ("positions", () => StraightLine.Fit(Bad(1e101), Good)),
        ["line residuals"] = ("residuals", () => StraightLine.Fit(Good, Good).Residuals(Good, Good, new double[2])),
        ["line band"] = ("confidence", () => StraightLine.Fit(Good, Good).BandAt(1, BandKind.Mean, double.NaN)),
        ["kendall"] = ("times", () => MannKendall.Test(Bad(double.PositiveInfinity), Good)),
        ["kendall lengths"] = ("values", () => MannKendall.Test(Good, [1])),
        ["kendall censoring"] = ("censoring", () => MannKendall.Test(Good, Good, new Censoring[2])),
        ["kendall correlation"] = ("correlation", () => MannKendall.Test(Good, Good, default, double.NaN)),
        ["kendall count"] = ("times", () => MannKendall.Test(new double[20_001], new double[20_001])),
        ["kendall distribution"] = ("count", () => KendallDistribution.AtLeast(101, 3)),
        ["theil-sen"] = ("values", () => TheilSen.Fit(Good, Bad(double.NaN))),
        ["theil-sen confidence"] = ("confidence", () => TheilSen.Fit(Good, Good, default, 1)),
        ["theil-sen count"] = ("times", () => TheilSen.Fit(new double[5001], new double[5001])),
        ["theil-sen time"] = ("time", () => TheilSen.Fit(Good, Good).ValueAt(double.NaN)),
        ["step order"] = ("times", () => LineStep.Find([3, 2, 1], [1, 2, 3])),
        ["assessor"] = ("values", () => TrendAssessment.Of(Good, Bad(double.NaN))),
        ["options confidence"] = ("confidence", () => new TrendOptions(confidence: double.NaN)),
        ["options count"] = ("minimumCount", () => new TrendOptions(minimumCount: 4)),
        ["options outliers"] = ("outlierSignificance", () => new TrendOptions(outlierSignificance: double.NaN)),
        ["options change"] = ("changeSignificance", () => new TrendOptions(changeSignificance: 0)),
        ["options smallest"] = ("smallestChange", () => new TrendOptions(smallestChange: -1)),
        ["esd"] = ("maximum", () => GeneralisedEsd.Find(Good, 6)),
        ["quantile"] = ("probability", () => Quantiles.Of(Good, double.NaN)),
        ["quantile empty"] = ("values", () => Quantiles.Of([], 0.5)),
        ["bracket"] = ("upperOrder", () => Quantiles.BracketConfidence(10, 0.5, 5, 5)),
        ["order interval"] = ("confidence", () => Quantiles.IntervalOf(Good, 0.5, 0)),
        ["factor"] = ("count", () => ToleranceLimits.NormalFactor(1, 0.9, 0.9)),
        ["factor content"] = ("content", () => ToleranceLimits.NormalFactor(5, double.NaN, 0.9)),
        ["tolerance order"] = ("orderFromEnd", () => ToleranceLimits.SmallestCount(0.9, 0.9, 0)),
    };

    public static TheoryData<string> Names() => [.. Doors.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Wrong_input_is_named(string door)
    {
        var (field, call) = Doors[door];
        Should.Throw<ArgumentException>(call).ParamName.ShouldBe(field);
    }

    private static double[] Bad(double value) => [1, 2, value, 3, 5, 6, 7];
}
