using System.Globalization;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>What results print, against texts written by hand.</summary>
public class StatisticsTextTests
{
    private static readonly double[] Six = [0, 1, 2, 3, 4, 5];
    private static readonly double[] Twice = [0, 2, 4, 6, 8, 10];

    /// <summary>100 + 900/2^t.</summary>
    private static readonly double[] Halving = [1000, 550, 325, 212.5, 156.25, 128.125];

    private static readonly Dictionary<string, object> Results = new(StringComparer.Ordinal)
    {
        ["1.2 to 5.7 (90 %)"] = Interval.Between(1.234, 5.678, 0.9),
        ["1.2 to 5.7 (90 %), covers less often than stated"] = Interval.Between(1.234, 5.678, 0.9).InDoubt(),
        ["at least 1.5 (95 %)"] = Interval.Between(1.5, null, 0.95),
        ["at most 1234 (97.5 %)"] = Interval.Between(null, 1234.4, 0.975, IntervalSide.Upper),
        ["not determined"] = Interval.Between(null, null, 0.9),
        ["too few readings"] = Interval.Without(IntervalOutcome.TooFewReadings, 0.9, IntervalSide.Both),
        ["0.12 (given)"] = Interval.Fixed(0.12, 0.9, IntervalSide.Both),
        ["slope 1.6 ± 0.141, level 1.1 at 0, 4 points"] = StraightLine.Fit([0, 1, 2, 3], [1, 3, 4, 6]),
        ["too few readings: 2"] = StraightLine.Fit([0, 1], [1, 3]),
        ["slope 2, interval 2 to 2 (95 %), 6 readings"] = TheilSen.Fit(Six, Twice),
        ["same position: 3"] = TheilSen.Fit([1, 1, 1], [1, 2, 3]),
        ["S = 15, tau = 1, p = 0.00278, 6 readings"] = MannKendall.Test(Six, Twice),
        ["rising, 2 per unit of time, p = 0.00278, 6 readings, median slope"] = TrendAssessment.Of(
            Six,
            Twice,
            [Censoring.Below, Censoring.None, Censoring.None, Censoring.None, Censoring.None, Censoring.None]
        ),
        ["too few readings: 3"] = TrendAssessment.Of([1, 2, 3], [1, 2, 3]),
        ["step of -3.2 between readings 4 and 5, p = 0.0004"] = new TrendAssessment.LevelChange(
            4,
            5,
            -3.2,
            0.0004,
            IsToBetter: true
        ),
        ["1000 to 100 at 0.693 per unit of time, 6 readings"] = ExponentialDecay.Fit(Six, Halving),
        ["too few readings: 1"] = ExponentialDecay.Analyze([1], [5]),
        // Shape 1.72 with error 0.50, scale 607 with error 125 (row WB1 of life.csv).
        ["shape 1.7, scale 600, 10 failures, 10 in service"] = WeibullLife.Fit(
            [54, 187, 216, 240, 244, 335, 361, 373, 375, 386],
            [500, 500, 500, 500, 500, 500, 500, 500, 500, 500]
        ),
        ["too few failures: 1"] = WeibullLife.Fit([5], [6, 7]),
    };

    public static TheoryData<string> Texts() => [.. Results.Keys];

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_result_prints_itself_the_same_in_every_culture(string text)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = WithComma();
            Results[text].ToString().ShouldBe(text);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static CultureInfo WithComma()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        return culture;
    }
}
