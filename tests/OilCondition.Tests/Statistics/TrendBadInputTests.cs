using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>Every door of trends, charts, outliers and percentiles names the field that is wrong; NaN passes none.</summary>
public class TrendBadInputTests
{
    private static readonly double[] Good = [1, 2, 4, 3, 5, 6, 7];

    private static readonly Dictionary<string, (string Field, Action Call)> Doors = new(StringComparer.Ordinal)
    {
        ["line"] = ("values", () => StraightLine.Fit(Good, Bad(double.NaN))),
        ["line position"] = ("positions", () => StraightLine.Fit(Bad(1e101), Good)),
        ["line residuals"] = ("residuals", () => StraightLine.Fit(Good, Good).Residuals(Good, Good, new double[2])),
        ["line band"] = ("confidence", () => StraightLine.Fit(Good, Good).BandAt(1, CrossingOf.MeanLine, double.NaN)),
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
        ["lag"] = ("values", () => SerialCorrelation.Lag1([1])),
        ["durbin"] = ("residuals", () => SerialCorrelation.DurbinWatson([1, double.NaN])),
        ["effective"] = ("correlation", () => SerialCorrelation.EffectiveCount(5, 1)),
        ["effective count"] = ("count", () => SerialCorrelation.EffectiveCount(0, 0)),
        ["francia"] = ("values", () => ShapiroFrancia.PValue([1, 2, 3, 4])),
        ["pettitt"] = ("values", () => Pettitt.Test([1])),
        ["segments"] = ("penalty", () => Segmentation.Of(Good, double.NaN)),
        ["segments length"] = ("minimumLength", () => Segmentation.Of(Good, 1, 0)),
        ["segments empty"] = ("values", () => Segmentation.Of([], 1)),
        ["step order"] = ("times", () => LineStep.Find([3, 2, 1], [1, 2, 3])),
        ["lowess share"] = ("share", () => Lowess.Smooth(Good, Good, new double[7], 0)),
        ["lowess order"] = ("times", () => Lowess.Smooth(Good, Good, new double[7])),
        ["assessor"] = ("values", () => TrendAssessor.Assess(Good, Bad(double.NaN))),
        ["options confidence"] = ("confidence", () => new TrendOptions(confidence: double.NaN)),
        ["options count"] = ("minimumCount", () => new TrendOptions(minimumCount: 4)),
        ["options outliers"] = ("outlierSignificance", () => new TrendOptions(outlierSignificance: double.NaN)),
        ["options change"] = ("changeSignificance", () => new TrendOptions(changeSignificance: 0)),
        ["options smallest"] = ("smallestChange", () => new TrendOptions(smallestChange: -1)),
        ["ewma sigma"] = ("sigma", () => new EwmaChart(1, 0)),
        ["ewma weight"] = ("weight", () => new EwmaChart(1, 1, double.NaN)),
        ["ewma weight high"] = ("weight", () => new EwmaChart(1, 1, 1.1)),
        ["ewma values"] = ("values", () => new EwmaChart(1, 1).Plot([double.NaN])),
        ["ewma count"] = ("count", () => new EwmaChart(1, 1).HalfWidthAt(0)),
        ["cusum interval"] = ("decisionInterval", () => new CusumChart(1, 1, double.NaN)),
        ["cusum allowance"] = ("allowance", () => new CusumChart(1, -1, 2)),
        ["cusum sigma"] = ("sigma", () => CusumChart.ForOneSigma(1, -1)),
        ["run length"] = ("shift", () => CusumRunLength.TwoSided(double.NaN)),
        ["run length interval"] = ("decisionInterval", () => CusumRunLength.Siegmund(0, 0.5, 0)),
        ["individuals"] = ("values", () => IndividualsChart.Of([1])),
        ["grubbs"] = ("values", () => Grubbs.Test([1, 2])),
        ["grubbs level"] = ("significance", () => Grubbs.CriticalValue(5, OutlierSide.Both, double.NaN)),
        ["esd"] = ("maximum", () => GeneralisedEsd.Find(Good, 6)),
        ["scores"] = ("scores", () => ModifiedZScore.TryScores(Good, new double[1])),
        ["summary"] = ("values", () => SampleSummary.Of([])),
        ["summary log"] = ("values", () => SampleSummary.Of([1, 0], ValueScale.Logarithmic)),
        ["summary multiple"] = ("multiple", () => SampleSummary.Of(Good).ValueAt(double.NaN)),
        ["quantile"] = ("probability", () => Quantiles.Of(Good, double.NaN)),
        ["quantile empty"] = ("values", () => Quantiles.Of([], 0.5)),
        ["bracket"] = ("upperOrder", () => Quantiles.BracketConfidence(10, 0.5, 5, 5)),
        ["order interval"] = ("confidence", () => Quantiles.Interval(Good, 0.5, 0)),
        ["factor"] = ("count", () => ToleranceLimits.NormalFactor(1, 0.9, 0.9)),
        ["factor content"] = ("content", () => ToleranceLimits.NormalFactor(5, double.NaN, 0.9)),
        ["tolerance"] = ("confidence", () => ToleranceLimits.DistributionFree(Good, 0.9, 1)),
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
