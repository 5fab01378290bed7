using MathNet.Numerics.Distributions;
using MathNet.Numerics.RootFinding;
using OilCondition.Statistics;
using OilCondition.Tests.Reference;

namespace OilCondition.Tests.Statistics;

/// <summary>cleanup/expected.csv: 50-digit solutions of the normal equations, with R nls, nlsLM, survreg and scipy beside them.</summary>
public class DecayReferenceTests
{
    private const string File = "cleanup/expected.csv";

    private static readonly Dictionary<string, string> LeftOut = new(StringComparer.Ordinal)
    {
        ["mean (constant model)"] = "a plain mean, which the library does not offer",
        ["RSS of the constant"] = "squares about a plain mean, which the library does not offer",
    };

    private static readonly Dictionary<string, Func<DecaySeries, ReferenceCase, double>> Quantities = new(
        StringComparer.Ordinal
    )
    {
        ["Cinf"] = (s, row) => IsCensored(row) ? Censored(s).Floor : s.Fit.Floor,
        ["C0"] = (s, row) => IsCensored(row) ? Censored(s).ValueAt(0) : s.Fit.ValueAt(0),
        ["k"] = (s, row) => IsCensored(row) ? Censored(s).Rate : s.Fit.Rate,
        ["standard error of Cinf"] = (s, _) => s.Fit.FloorStandardError,
        ["standard error of C0"] = (s, _) => s.Fit.StandardErrorAt(0, BandKind.Mean),
        ["standard error of k"] = (s, _) => s.Fit.RateStandardError,
        ["standard error of Cinf (observed information)"] = (s, _) => Censored(s).FloorStandardError,
        ["standard error of C0 (observed information)"] = (s, _) => Censored(s).StartStandardError,
        ["standard error of k (observed information)"] = (s, _) => Censored(s).RateStandardError,
        ["ML sigma (no df correction)"] = (s, _) => Censored(s).StandardDeviation,
        ["maximised log-likelihood"] = (s, _) => Censored(s).LogLikelihood,
        ["residual sum of squares"] = (s, _) => s.Fit.ResidualSumOfSquares,
        ["residual standard deviation"] = (s, _) => s.Fit.ResidualStandardDeviation,
        ["parameter correlation Cinf_C0"] = (s, _) => s.Fit.FloorCorrelationAt(0),
        ["parameter correlation Cinf_k"] = (s, _) => s.Fit.FloorRateCorrelation,
        ["parameter correlation C0_k"] = (s, _) => s.Fit.RateCorrelationAt(0),
        ["95% profile-likelihood limit of k (lo)"] = (s, _) => s.Analysis.Rate(0.95).Lower!.Value,
        ["95% profile-likelihood limit of k (hi)"] = (s, _) => s.Analysis.Rate(0.95).Upper!.Value,
        ["half-life ln2/k"] = (s, _) => s.Fit.HalfLife,
        ["run time to reach target"] = (s, row) => TimeTo(s.Fit, Target(row)),
        ["delta-method SE of that time"] = (s, row) =>
            s.Fit.TryStandardErrorOfTimeTo(Target(row), out var error) ? error : -1,
        ["95% inversion limit of that time (lo)"] = (s, row) => BandCrossing(s, row, upper: false),
        ["95% inversion limit of that time (hi)"] = (s, row) => BandCrossing(s, row, upper: true),
        ["predicted level"] = (s, row) => s.Fit.ValueAt(At(row)),
        ["SE of the fitted mean"] = (s, row) => s.Fit.StandardErrorAt(At(row), BandKind.Mean),
        ["half-width of the 95% prediction interval"] = (s, row) =>
            s.Fit.BandAt(At(row), BandKind.NewReading, 0.95).Upper!.Value - s.Fit.ValueAt(At(row)),
        ["straight-line slope"] = (s, _) => StraightLine.Fit(s.Times, s.Values).Slope,
        ["standard error of that slope"] = (s, _) => StraightLine.Fit(s.Times, s.Values).SlopeStandardError,
        ["two-sided p of that slope"] = (s, _) => StraightLine.Fit(s.Times, s.Values).SlopePValue,
        ["RSS of the straight line"] = (s, _) =>
            Math.Pow(StraightLine.Fit(s.Times, s.Values).ResidualStandardDeviation, 2) * (s.Times.Length - 2),

        // A decay has no negative rate; the library finds the wrong curvature as a decay of the mirrored series.
        ["k that minimises RSS when negative k is allowed"] = (s, _) =>
            s.Mirrored.Fit.ResidualSumOfSquares < s.Fit.ResidualSumOfSquares ? -s.Mirrored.Fit.Rate : s.Fit.Rate,
        ["RSS at that k"] = (s, _) => Math.Min(s.Mirrored.Fit.ResidualSumOfSquares, s.Fit.ResidualSumOfSquares),
        ["95% profile limit of k (lo)"] = (s, _) =>
            -s.Mirrored.Analysis.Rate(SignedConfidence(s.Mirrored, s)).Upper!.Value,
        ["95% profile limit of k (hi)"] = (s, _) => s.Analysis.Rate(SignedConfidence(s, s.Mirrored)).Upper!.Value,
    };

    public static TheoryData<string, string, string> Rows() =>
        ReferenceFolder.Theory(File, row => !LeftOut.ContainsKey(row.Quantity));

    [Theory]
    [MemberData(nameof(Rows))]
    [Trait("Category", "Reference")]
    public void Reference_series_are_met_at_the_digits_their_file_states(string file, string id, string description)
    {
        description.ShouldNotBeEmpty();
        var row = ReferenceFolder.Case(file, id);
        var series = DecaySeries.Of(row);
        if (row.Quantity.StartsWith("95% profile", StringComparison.Ordinal) && EveryRateIsCompatible(series))
        {
            // C07: even a constant has an RSS below the limit, so that no rate is excluded. The file's lower end of −0.717 1/h is where
            // exp(34) takes the digits of its double-precision regression, not an end of the profile.
            series.Analysis.Rate(0.95).Upper.ShouldBeNull();
            series.Mirrored.Analysis.Rate(0.95).Upper.ShouldBeNull();
        }
        else if (row.TryNumber(out _))
        {
            row.ShouldAgree(Quantities[row.Quantity](series, row));
        }
        else
        {
            Behaves(series, row).ShouldBeTrue($"{id}: {row.Quantity} should be '{row.Value}'");
        }
    }

    /// <summary>Rows whose value is a word.</summary>
    private static bool Behaves(DecaySeries series, ReferenceCase row) =>
        row.Quantity switch
        {
            "expected verdict" when row.Value == "exponential parameters not identifiable" => series
                .Analysis.Rate(0.95)
                .Outcome
                is IntervalOutcome.NoLowerEnd
                    or IntervalOutcome.NotDetermined,
            "95% profile limit of k (hi)" or "95% profile-likelihood limit of k (hi)" => series
                .Analysis.Rate(SignedConfidence(series, series.Mirrored))
                .Upper
                is null,
            "95% inversion limit of that time (hi)" => series
                .Fit.BandAt(series.Fit.StartTime + 1000 / series.Fit.Rate, BandKind.Mean, 0.95)
                .Upper > Target(row),
            _ => false,
        };

    /// <summary>A constant is the decay of any rate with no amplitude.</summary>
    private static bool EveryRateIsCompatible(DecaySeries s)
    {
        var mean = s.Values.Average();
        var least = Math.Min(s.Fit.ResidualSumOfSquares, s.Mirrored.Fit.ResidualSumOfSquares);
        var degrees = s.Times.Length - 3;
        return s.Values.Sum(y => (y - mean) * (y - mean))
            <= least * (1 + FisherSnedecor.InvCDF(1, degrees, 0.95) / degrees);
    }

    private static bool IsCensored(ReferenceCase row) => row.Inputs.Contains("left-censored", StringComparison.Ordinal);

    private static CensoredDecayFit Censored(DecaySeries s) =>
        CensoredDecay.Fit(s.Times, s.Values, s.BelowLimit, new ExponentialDecayOptions(lowestFloor: null));

    private static double Target(ReferenceCase row) => DecaySeries.Number(row.Arguments["target"]);

    private static double At(ReferenceCase row) => DecaySeries.Number(row.Arguments["t"]);

    private static double TimeTo(ExponentialDecay fit, double target)
    {
        fit.TryTimeTo(target, out var time).ShouldBeTrue();
        return time;
    }

    private static double BandCrossing(DecaySeries series, ReferenceCase row, bool upper)
    {
        var fit = series.Fit;
        var estimate = TimeTo(fit, Target(row));
        double Gap(double time)
        {
            var band = fit.BandAt(time, BandKind.Mean, 0.95);
            return (upper ? band.Upper : band.Lower)!.Value - Target(row);
        }

        return upper
            ? Brent.FindRoot(Gap, estimate, estimate + 3 / fit.Rate, 1e-9)
            : Brent.FindRoot(Gap, fit.StartTime, estimate, 1e-9);
    }

    /// <summary>
    /// The reference profile starts from the least RSS over rates of either sign, ours from that over positive ones: the confidence
    /// at which ours has the same limit.
    /// </summary>
    private static double SignedConfidence(DecaySeries series, DecaySeries mirrored)
    {
        var degrees = series.Times.Length - 3;
        var own = series.Fit.ResidualSumOfSquares;
        var least = Math.Min(own, mirrored.Fit.ResidualSumOfSquares);
        var limit = least * (1 + FisherSnedecor.InvCDF(1, degrees, 0.95) / degrees);
        return FisherSnedecor.CDF(1, degrees, (limit / own - 1) * degrees);
    }
}
