using System.Globalization;
using System.Text.RegularExpressions;
using OilCondition.Statistics;
using OilCondition.Tests.Reference;

namespace OilCondition.Tests.Statistics;

/// <summary>trend.csv: published examples and figures of general statistics libraries, each with its source in the row.</summary>
public partial class TrendReferenceTests
{
    private const string File = "trend.csv";

    private static readonly Dictionary<string, string> LeftOut = new(StringComparer.Ordinal)
    {
        ["rise over run scaled to a standard interval"] =
            "a slope times an interval: plain arithmetic of the limits, not a statistic",
        ["repeatability limit r = z*sqrt(2)*s_r"] =
            "a test method states its own repeatability; nobody computes it from oil samples",
    };

    /// <summary>Quantities with figures in their names are told apart by patterns.</summary>
    private static readonly (Regex Pattern, Func<TrendCase, double> Answer)[] Quantities =
    [
        // Mann-Kendall and Theil-Sen. The rows without 'exact' are of the normal distribution.
        (Of("^Mann-Kendall S$"), c => c.Kendall.Score),
        (Of("^variance of S with tie correction$"), c => c.Kendall.Variance),
        (Of("^normal score with continuity correction$"), c => c.Kendall.NormalScore),
        (Of("^two-sided p$"), c => c.Kendall.PValue),
        (Of("^Kendall tau-a"), c => c.Kendall.TauA),
        (Of("^Kendall tau-b$"), c => c.Kendall.TauB),
        (Of("^all values equal: S$"), c => AllEqual(c).Score),
        (Of("^all values equal: variance$"), c => AllEqual(c).Variance),
        (
            Of(@"^exact one-sided P\(S>=(?<a>-?\d+)\), no ties$"),
            c => KendallDistribution.AtLeast((int)c.Number("n"), (int)c.A)
        ),
        (Of(@"^exact two-sided p"), c => MannKendall.Test(c.X, c.Y, default, 0, MannKendallMethod.Exact).PValue),
        (Of("^Theil-Sen slope$"), c => c.Line(0.95, TheilSenRankRule.Interpolated).Slope),
        (Of("^Conover intercept"), c => c.Line(0.95, TheilSenRankRule.Interpolated).Intercept),
        (
            Of("^(?<a>\\d+)% lower limit of slope, interpolated"),
            c => c.Line(c.A / 100, TheilSenRankRule.Interpolated).SlopeInterval.Lower
        ),
        (
            Of("^(?<a>\\d+)% upper limit of slope, interpolated"),
            c => c.Line(c.A / 100, TheilSenRankRule.Interpolated).SlopeInterval.Upper
        ),
        (
            Of("^(?<a>\\d+)% lower limit of slope, rounded"),
            c => c.Line(c.A / 100, TheilSenRankRule.Rounded).SlopeInterval.Lower
        ),
        (
            Of("^(?<a>\\d+)% upper limit of slope, rounded"),
            c => c.Line(c.A / 100, TheilSenRankRule.Rounded).SlopeInterval.Upper
        ),
        // The fourth slopes from either end. By the exact distribution they cover 97 %, so that they are the 95 % ones.
        (Of("^exact ~93% lower limit"), c => c.Line(0.95, TheilSenRankRule.Exact).SlopeInterval.Lower),
        (Of("^exact ~93% upper limit"), c => c.Line(0.95, TheilSenRankRule.Exact).SlopeInterval.Upper),
        // Straight line.
        (Of("^intercept$"), c => c.Straight.Intercept),
        (Of("^slope$"), c => c.Straight.Slope),
        (Of("^SE intercept$"), c => c.Straight.StandardErrorAt(0, CrossingOf.MeanLine)),
        (Of("^SE slope$"), c => c.Straight.SlopeStandardError),
        (Of("^residual SD$"), c => c.Straight.ResidualStandardDeviation),
        (Of("^R squared$"), c => c.Straight.RSquared),
        (Of("^two-sided p of slope$"), c => c.Straight.SlopePValue),
        (Of(@"^(?<a>\d+)% confidence interval limit \(lo\)"), c => c.Band(CrossingOf.MeanLine).Lower),
        (Of(@"^(?<a>\d+)% confidence interval limit \(hi\)"), c => c.Band(CrossingOf.MeanLine).Upper),
        (Of(@"^(?<a>\d+)% prediction interval limit \(lo\)"), c => c.Band(CrossingOf.NewReading).Lower),
        (Of(@"^(?<a>\d+)% prediction interval limit \(hi\)"), c => c.Band(CrossingOf.NewReading).Upper),
        (Of("^Durbin-Watson of residuals$"), c => SerialCorrelation.DurbinWatson(c.Residuals)),
        (Of("^x at which y reaches y0$"), c => c.Crossing(0.5)),
        (Of("^Fieller lower limit$"), c => c.Crossing((1 - c.Number("level")) / 2)),
        (Of("^Fieller upper limit$"), c => c.Crossing((1 + c.Number("level")) / 2)),
        (
            Of("^Fieller g = "),
            c => Math.Pow((c.Straight.SlopeInterval(c.Number("level")).Upper - c.Straight.Slope) / c.Straight.Slope, 2)
        ),
        (Of(@"^delta-method SE of x0 \(mean response\)"), c => c.CrossingError(CrossingOf.MeanLine)),
        (Of(@"^delta-method SE of x0 \(one new reading\)"), c => c.CrossingError(CrossingOf.NewReading)),
        (
            Of(@"^effective sample size, AR\(1\)"),
            c => SerialCorrelation.EffectiveCount((int)c.Number("n"), c.Number("rho"))
        ),
        // Charts.
        (
            Of(@"^EWMA after reading (?<a>\d+)$"),
            c => new EwmaChart(c.Number("start"), 1, c.Number("lambda")).Plot(c.Y)[(int)c.A - 1].Value
        ),
        (Of("^steady-state upper limit$"), c => c.Number("target") + c.Ewma(EwmaLimits.Steady).HalfWidthAt(1)),
        (Of("^steady-state lower limit$"), c => c.Number("target") - c.Ewma(EwmaLimits.Steady).HalfWidthAt(1)),
        (
            Of(@"^exact \(time-varying\) upper limit at reading (?<a>\d+)"),
            c => c.Number("target") + c.Ewma(EwmaLimits.Exact).HalfWidthAt((int)c.A)
        ),
        (
            Of(@"^exact \(time-varying\) lower limit at reading (?<a>\d+)"),
            c => c.Number("target") - c.Ewma(EwmaLimits.Exact).HalfWidthAt((int)c.A)
        ),
        (
            Of("^number of points outside the limits$"),
            c => c.Ewma(EwmaLimits.Steady).Plot(c.Y).Count(p => p.Signal != ChartSignal.None)
        ),
        (Of(@"^upper CUSUM after group (?<a>\d+)$"), c => c.Cusum[(int)c.A - 1].Upper),
        (Of(@"^lower CUSUM after group (?<a>\d+)$"), c => c.Cusum[(int)c.A - 1].Lower),
        (
            Of("^first group with upper CUSUM above h$"),
            c => c.Cusum.TakeWhile(p => p.Signal != ChartSignal.Above).Count() + 1
        ),
        (Of("^individuals chart centre$"), c => IndividualsChart.Of(c.Y).Mean),
        (Of("^mean moving range$"), c => IndividualsChart.Of(c.Y).MeanMovingRange),
        (Of("^UCL"), c => IndividualsChart.Of(c.Y).UpperLimit),
        (Of("^LCL"), c => IndividualsChart.Of(c.Y).LowerLimit),
        (
            Of(@"^two-sided CUSUM average run length, k=(?<a>[\d.]+) h=(?<b>[\d.]+), shift (?<c>[\d.]+) sigma"),
            c => CusumRunLength.TwoSided(c.C, c.A, c.B)
        ),
        (Of("^Siegmund approximation of the same$"), c => Siegmund(c.Row)),
        // Changes of level.
        (Of("^Pettitt K$"), c => Pettitt.Test(c.Y).Statistic),
        (Of("^last index before the change"), c => Pettitt.Test(c.Y).FirstAfter),
        (Of("^approximate two-sided p = 2exp"), c => Pettitt.Test(c.Y).PValue),
        (Of("^RSS, one mean$"), c => Segmentation.Of(c.Y, 1e200).ResidualSumOfSquares),
        (
            Of(@"^RSS, split after index (?<a>\d+)"),
            c =>
                Segmentation.Of(c.Y.AsSpan(0, (int)c.A), 1e200).ResidualSumOfSquares
                + Segmentation.Of(c.Y.AsSpan((int)c.A), 1e200).ResidualSumOfSquares
        ),
        (Of("^change points of min"), c => Segmentation.Of(c.Y, c.Number("beta")).Segments.Skip(1).Single().First),
        (Of("^minimum penalised cost"), c => Segmentation.Of(c.Y, c.Number("beta")).Cost),
        // Outliers.
        (Of("^Grubbs G$"), c => Grubbs.Test(c.Y).Statistic),
        (
            Of("critical value, one-sided alpha (?<a>[\\d.]+)"),
            c => Grubbs.CriticalValue((int)c.Number("n"), OutlierSide.Largest, c.A)
        ),
        (
            Of("critical value, two-sided alpha (?<a>[\\d.]+)"),
            c => Grubbs.CriticalValue((int)c.Number("n"), OutlierSide.Both, c.A)
        ),
        (Of("^modified z of (?<a>[\\d.]+)"), c => c.ModifiedZ(c.A)),
        (Of(@"^generalised ESD R(?<a>\d+)"), c => c.Esd.Steps[(int)c.A - 1].Statistic),
        (Of(@"^critical value lambda(?<a>\d+)"), c => Lambda((int)c.Number("n"), (int)c.A, c.Number("alpha"))),
        (Of("^number of outliers$"), c => c.Esd.Outliers.Count),
        // Charts for the eye, percentiles, tolerance limits.
        (Of(@"^LOWESS fit at sorted point (?<a>\d+)"), c => c.Smoothed()[(int)c.A - 1]),
        (
            Of(@"^quantile p=(?<a>[\d.]+), Hyndman-Fan type (?<b>\d)"),
            c => Quantiles.Of(c.Y, c.A, Enum.Parse<QuantileRule>($"Type{c.B}"))
        ),
        (Of("^mean$"), c => SampleSummary.Of(c.Y).Mean),
        (Of(@"^standard deviation \(n-1\)$"), c => SampleSummary.Of(c.Y).StandardDeviation),
        (Of("^median$"), c => SampleSummary.Of(c.Y).Median),
        (Of("^raw MAD$"), c => SampleSummary.Of(c.Y).MedianAbsoluteDeviation),
        (Of("^mean of ln$"), c => SampleSummary.Of(c.Y, ValueScale.Logarithmic).Mean),
        (Of("^sd of ln$"), c => SampleSummary.Of(c.Y, ValueScale.Logarithmic).StandardDeviation),
        (Of(@"^mean\+(?<a>\d)s$"), c => SampleSummary.Of(c.Y).ValueAt(c.A)),
        (Of(@"^exp\(mean ln \+ (?<a>\d) sd ln\)$"), c => SampleSummary.Of(c.Y, ValueScale.Logarithmic).ValueAt(c.A)),
        (
            Of(@"^one-sided normal tolerance factor, (?<a>[\d.]+) % content (?<b>[\d.]+) % confidence"),
            c => ToleranceLimits.NormalFactor((int)c.Number("n"), c.A / 100, c.B / 100)
        ),
        (
            Of("^smallest n for which the sample maximum"),
            c => ToleranceLimits.SmallestCount(c.Number("content"), c.Number("confidence"))
        ),
        (
            Of(@"^smallest n for the second largest value, (?<a>\d+)/(?<b>\d+)"),
            c => ToleranceLimits.SmallestCount(c.B / 100, c.A / 100, 2)
        ),
        (
            Of(@"^confidence that order statistics (?<a>\d+) and (?<b>\d+) bracket the (?<c>\d+)th percentile"),
            c => Quantiles.BracketConfidence((int)c.Number("n"), c.C / 100, (int)c.A, (int)c.B)
        ),
        // A rising exponential with all three parts free.
        (Of("^three-parameter fit, Cinf$"), _ => Misra().Floor),
        (Of("^three-parameter fit, C0$"), _ => Misra().ValueAt(0)),
        (Of("^three-parameter fit, k$"), _ => Misra().Rate),
        (Of("^RSS of that fit$"), _ => Misra().ResidualSumOfSquares),
    ];

    public static TheoryData<string, string, string> Rows() =>
        ReferenceFolder.Theory(File, row => !LeftOut.ContainsKey(row.Quantity));

    [Theory]
    [MemberData(nameof(Rows))]
    [Trait("Category", "Reference")]
    public void Trend_statistics_agree_with_their_sources(string file, string id, string description)
    {
        description.ShouldNotBeEmpty();
        var row = ReferenceFolder.Case(file, id);
        var (match, answer) = Quantities
            .Select(q => (Match: q.Pattern.Match(row.Quantity), q.Answer))
            .FirstOrDefault(q => q.Match.Success);
        answer.ShouldNotBeNull($"{id}: the quantity '{row.Quantity}' is neither mapped nor left out with a reason");
        var trendCase = new TrendCase(row, match);
        if (row.TryNumber(out _))
        {
            row.ShouldAgree(answer(trendCase));
        }
        else if (row.Value.StartsWith("none", StringComparison.Ordinal))
        {
            // "none (g>=1: unbounded)": the line's slope is lost in its scatter, and the late end is a named case, not a number.
            trendCase.TryCrossing((1 + row.Number("level")) / 2, out _).ShouldBeFalse(id);
        }
        else
        {
            // A list of indexes.
            row.Quantity.ShouldStartWith("change points");
            Segmentation
                .Of(trendCase.Y, row.Number("beta"))
                .Segments.Skip(1)
                .Select(s => s.First)
                .ShouldBe(
                    Digits().Matches(row.Value).Select(m => int.Parse(m.Value, CultureInfo.InvariantCulture)),
                    id
                );
        }
    }

    private static Regex Of(string pattern) => new(pattern, RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1));

    private static MannKendallResult AllEqual(TrendCase c)
    {
        var n = int.Parse(Digits().Match(c.Row.Arguments["n"]).Value, CultureInfo.InvariantCulture);
        var result = MannKendall.Test(
            [.. Enumerable.Range(0, n).Select(i => (double)i)],
            [.. Enumerable.Repeat(3.5, n)]
        );
        result.PValue.ShouldBe(1);
        result.NormalScore.ShouldBe(0);
        return result;
    }

    /// <summary>'The same' is the row with the same ending whose quantity states k.</summary>
    private static double Siegmund(ReferenceCase row)
    {
        var same = ReferenceFolder.Case(File, row.Id.Replace(".siegmund", "", StringComparison.Ordinal));
        var match = Quantities.Select(q => q.Pattern.Match(same.Quantity)).First(m => m.Success);
        var c = new TrendCase(same, match);
        return CusumRunLength.Siegmund(c.C, c.A, c.B);
    }

    /// <summary>The critical value of a step is Grubbs' for those left.</summary>
    private static double Lambda(int count, int step, double alpha)
    {
        var steps = GeneralisedEsd.Find([.. Enumerable.Range(0, count).Select(i => (double)i)], step, alpha).Steps;
        steps[step - 1].CriticalValue.ShouldBe(Grubbs.CriticalValue(count - step + 1, OutlierSide.Both, alpha), 1e-12);
        return steps[step - 1].CriticalValue;
    }

    private static ExponentialDecayFit Misra()
    {
        var rows = ReferenceFolder.Rows("nist/Misra1a.csv");
        return ExponentialDecay.Fit(
            TrendCase.Column(rows, "x"),
            TrendCase.Column(rows, "y"),
            default,
            new ExponentialDecayOptions(lowestFloor: null)
        );
    }

    [GeneratedRegex(@"\d+", RegexOptions.None, 1000)]
    private static partial Regex Digits();
}
