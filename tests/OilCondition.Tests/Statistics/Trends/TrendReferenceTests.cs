using System.Globalization;
using System.Text.RegularExpressions;
using OilCondition.ControlCharts;
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
        ["Pettitt K"] = "changes of level are found as steps on a line (LineStep), which a steady trend does not fool",
        ["last index before the change (1-based)"] = "as above",
        ["approximate two-sided p = 2exp(-6K^2/(n^3+n^2))"] = "as above",
        [
            "change points of min sum(RSS)+beta*(number of changes), (index of last point of each segment but the final one)"
        ] = "as above",
        ["minimum penalised cost (RSS + beta per change)"] = "as above",
        ["modified z of 245.57 = 0.6745(x-median)/MAD"] = "wild readings are found by the generalised ESD test",
        ["LOWESS fit at sorted point 1"] = "a smooth line for the eye is drawn by whoever draws the chart",
        ["LOWESS fit at sorted point 50"] = "as above",
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
            c => c.Line(c.A / 100, TheilSenRankRule.Interpolated).SlopeInterval.Lower!.Value
        ),
        (
            Of("^(?<a>\\d+)% upper limit of slope, interpolated"),
            c => c.Line(c.A / 100, TheilSenRankRule.Interpolated).SlopeInterval.Upper!.Value
        ),
        (
            Of("^(?<a>\\d+)% lower limit of slope, rounded"),
            c => c.Line(c.A / 100, TheilSenRankRule.Rounded).SlopeInterval.Lower!.Value
        ),
        (
            Of("^(?<a>\\d+)% upper limit of slope, rounded"),
            c => c.Line(c.A / 100, TheilSenRankRule.Rounded).SlopeInterval.Upper!.Value
        ),
        // The fourth slopes from either end. By the exact distribution they cover 97 %, so that they are the 95 % ones.
        (Of("^exact ~93% lower limit"), c => c.Line(0.95, TheilSenRankRule.Exact).SlopeInterval.Lower!.Value),
        (Of("^exact ~93% upper limit"), c => c.Line(0.95, TheilSenRankRule.Exact).SlopeInterval.Upper!.Value),
        // Straight line.
        (Of("^intercept$"), c => c.Straight.Intercept),
        (Of("^slope$"), c => c.Straight.Slope),
        (Of("^SE intercept$"), c => c.Straight.StandardErrorAt(0, BandKind.Mean)),
        (Of("^SE slope$"), c => c.Straight.SlopeStandardError),
        (Of("^residual SD$"), c => c.Straight.ResidualStandardDeviation),
        (Of("^R squared$"), c => c.Straight.RSquared),
        (Of("^two-sided p of slope$"), c => c.Straight.SlopePValue),
        (Of(@"^(?<a>\d+)% confidence interval limit \(lo\)"), c => c.Band(BandKind.Mean).Lower!.Value),
        (Of(@"^(?<a>\d+)% confidence interval limit \(hi\)"), c => c.Band(BandKind.Mean).Upper!.Value),
        (Of(@"^(?<a>\d+)% prediction interval limit \(lo\)"), c => c.Band(BandKind.NewReading).Lower!.Value),
        (Of(@"^(?<a>\d+)% prediction interval limit \(hi\)"), c => c.Band(BandKind.NewReading).Upper!.Value),
        (Of("^Durbin-Watson of residuals$"), c => c.DurbinWatson()),
        (Of("^x at which y reaches y0$"), c => c.Crossing(0.5)),
        (Of("^Fieller lower limit$"), c => c.Crossing((1 - c.Number("level")) / 2)),
        (Of("^Fieller upper limit$"), c => c.Crossing((1 + c.Number("level")) / 2)),
        (
            Of("^Fieller g = "),
            c =>
                Math.Pow(
                    (c.Straight.SlopeInterval(c.Number("level")).Upper!.Value - c.Straight.Slope) / c.Straight.Slope,
                    2
                )
        ),
        (Of(@"^delta-method SE of x0 \(mean response\)"), c => c.CrossingError(BandKind.Mean)),
        (Of(@"^delta-method SE of x0 \(one new reading\)"), c => c.CrossingError(BandKind.NewReading)),
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
        (Of("^RSS, one mean$"), c => SquaresAboutMean(c.Y)),
        (
            Of(@"^RSS, split after index (?<a>\d+)"),
            c => SquaresAboutMean(c.Y.AsSpan(0, (int)c.A)) + SquaresAboutMean(c.Y.AsSpan((int)c.A))
        ),
        // Outliers.
        // Grubbs' test is the first step of the generalised one.
        (Of("^Grubbs G$"), c => GeneralisedEsd.Find(c.Y, 1).Steps[0].Statistic),
        (
            Of("critical value, one-sided alpha (?<a>[\\d.]+)"),
            c => GeneralisedEsd.CriticalValue((int)c.Number("n"), c.A / c.Number("n"))
        ),
        (
            Of("critical value, two-sided alpha (?<a>[\\d.]+)"),
            c => GeneralisedEsd.CriticalValue((int)c.Number("n"), c.A / (2 * c.Number("n")))
        ),
        (Of(@"^generalised ESD R(?<a>\d+)"), c => c.Esd.Steps[(int)c.A - 1].Statistic),
        (Of(@"^critical value lambda(?<a>\d+)"), c => Lambda((int)c.Number("n"), (int)c.A, c.Number("alpha"))),
        (Of("^number of outliers$"), c => c.Esd.Outliers.Count),
        // Percentiles, tolerance limits.
        (
            Of(@"^quantile p=(?<a>[\d.]+), Hyndman-Fan type (?<b>\d)"),
            c => Quantiles.Of(c.Y, c.A, Enum.Parse<Quantiles.Rule>($"Type{c.B}"))
        ),
        (Of("^mean$"), c => c.MeanOf()),
        (Of(@"^standard deviation \(n-1\)$"), c => c.Deviation()),
        (Of("^median$"), c => Numbers.Median(c.Y)),
        (Of("^raw MAD$"), c => Numbers.MedianAbsoluteDeviation(c.Y, Numbers.Median(c.Y))),
        (Of("^mean of ln$"), c => c.MeanOf(NaturalScale.Logarithmic)),
        (Of("^sd of ln$"), c => c.Deviation(NaturalScale.Logarithmic)),
        (Of(@"^mean\+(?<a>\d)s$"), c => c.MeanOf() + c.A * c.Deviation()),
        (
            Of(@"^exp\(mean ln \+ (?<a>\d) sd ln\)$"),
            c =>
                Scales.Back(
                    c.MeanOf(NaturalScale.Logarithmic) + c.A * c.Deviation(NaturalScale.Logarithmic),
                    NaturalScale.Logarithmic
                )
        ),
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
        var (trendCase, answer) = Asked(row);
        if (row.TryNumber(out _))
        {
            row.ShouldAgree(answer(trendCase));
        }
        else
        {
            // "none (g>=1: unbounded)": the line's slope is lost in its scatter, and the late end is a named case, not a number.
            row.Value.ShouldStartWith("none");
            trendCase.TryCrossing((1 + row.Number("level")) / 2, out _).ShouldBeFalse(id);
        }
    }

    /// <summary>What the library makes of a row.</summary>
    internal static double Answer(ReferenceCase row)
    {
        var (trendCase, answer) = Asked(row);
        return answer(trendCase);
    }

    private static (TrendCase Case, Func<TrendCase, double> Answer) Asked(ReferenceCase row)
    {
        var (match, answer) = Quantities
            .Select(q => (Match: q.Pattern.Match(row.Quantity), q.Answer))
            .FirstOrDefault(q => q.Match.Success);
        answer.ShouldNotBeNull($"{row.Id}: the quantity '{row.Quantity}' is neither mapped nor left out with a reason");
        return (new TrendCase(row, match), answer);
    }

    private static double SquaresAboutMean(ReadOnlySpan<double> values) =>
        Numbers.SumOfSquaresAbout(values, Numbers.Mean(values));

    private static Regex Of(string pattern) => new(pattern, RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1));

    private static MannKendall AllEqual(TrendCase c)
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

    private static double Lambda(int count, int step, double alpha)
    {
        var steps = GeneralisedEsd.Find([.. Enumerable.Range(0, count).Select(i => (double)i)], step, alpha).Steps;
        return steps[step - 1].CriticalValue;
    }

    private static ExponentialDecay Misra()
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
