namespace OilCondition.Statistics;

/// <summary>Chooses the method for a trend and lets it speak.</summary>
internal static class TrendChoice
{
    /// <summary>Residuals that look less normal than this are left to ranks.</summary>
    private const double NormalityLevel = 0.05;

    public static TrendLine Line(
        TrendSeries series,
        IReadOnlyList<int> kept,
        TrendOptions options,
        List<TrendReason> reasons
    )
    {
        var times = TrendSeries.Picked(series.Times, kept);
        var values = TrendSeries.Picked(series.Values, kept);
        var censoring = series.Censoring.Length > 0 ? TrendSeries.Picked(series.Censoring, kept) : [];
        if (times.Length < options.MinimumCount)
        {
            reasons.Add(TrendReason.TooFewReadings);
            return TrendLine.None(IntervalOutcome.TooFewReadings, options.Confidence);
        }

        var line = StraightLine.Fit(times, values);
        if (line.Status != LineStatus.Determined)
        {
            reasons.Add(TrendReason.SameTime);
            return TrendLine.None(IntervalOutcome.NotDetermined, options.Confidence);
        }

        if (censoring.Length > 0)
        {
            reasons.Add(TrendReason.CensoredReadings);
            return Ranks(times, values, censoring, 0, options, reasons);
        }

        if (times.Length < ResidualCorrelation.LeastCount)
        {
            reasons.Add(TrendReason.FewReadings);
            return Ranks(times, values, [], 0, options, reasons);
        }

        var residuals = new double[values.Length];
        line.Residuals(times, values, residuals);

        // A bent trend leaves residuals in long runs, which is no correlation of the scatter: that is judged about the curve.
        var curvature = Curvature.Of(times, values, line);
        var correlation = ResidualCorrelation.AllowedFor(curvature.Residuals, curvature.Degree + 1);
        if (correlation > 0)
        {
            reasons.Add(TrendReason.CorrelatedResiduals);
        }

        if (!(line.ValueSumOfSquares > 0))
        {
            return Ranks(times, values, [], correlation, options, reasons);
        }

        if (curvature.IsBent || ShapiroFrancia.PValue(residuals) < NormalityLevel)
        {
            reasons.Add(curvature.IsBent ? TrendReason.BentTrend : TrendReason.ResidualsNotNormal);
            return Ranks(times, values, [], correlation, options, reasons);
        }

        reasons.Add(TrendReason.NormalResiduals);
        return LeastSquares(line, correlation, options.Confidence);
    }

    /// <summary>The slope's Student test, error and degrees of freedom being those of n_eff readings.</summary>
    private static TrendLine LeastSquares(StraightLine line, double correlation, double confidence)
    {
        var inflation = (1 + correlation) / (1 - correlation);
        var error = line.SlopeStandardError * Math.Sqrt(inflation);
        var degrees = Math.Max(1, line.Count / inflation - 2);
        var half = error * StudentDistribution.Quantile(0.5 + confidence / 2, degrees);
        var pValue =
            error > 0 ? StudentDistribution.TwoSidedTail(line.Slope / error, degrees)
            : line.Slope == 0 ? 1
            : 0;
        return new TrendLine(
            TrendMethod.StraightLine,
            line.Slope,
            Interval.Between(
                line.Slope - half,
                line.Slope + half,
                confidence,
                IntervalSide.Both,
                coverageInDoubt: correlation > 0
            ),
            pValue,
            correlation,
            line.ResidualStandardDeviation,
            line.MeanPosition,
            line.MeanValue
        );
    }

    private static TrendLine Ranks(
        double[] times,
        double[] values,
        Censoring[] censoring,
        double correlation,
        TrendOptions options,
        List<TrendReason> reasons
    )
    {
        var test = MannKendall.Test(times, values, censoring, correlation);

        // The interval by the same distribution as the test, so that the two never contradict each other.
        var rule = test.Method == MannKendallMethod.Exact ? TheilSenRankRule.Exact : TheilSenRankRule.Interpolated;
        var fit = TheilSen.Fit(times, values, censoring, options.Confidence, rule, correlation);
        if (test.Method == MannKendallMethod.NoVariation)
        {
            reasons.Add(TrendReason.NothingVaries);
        }

        return new TrendLine(
            TrendMethod.TheilSen,
            fit.Slope,
            fit.SlopeInterval,
            test.PValue,
            correlation,
            censoring.Length > 0 ? 0 : Scatter(times, values, fit),
            fit.MedianTime,
            fit.HasIntercept ? fit.MedianValue : null
        );
    }

    /// <summary>1.4826 × median absolute residual, which is the standard deviation of normal scatter.</summary>
    private static double Scatter(double[] times, double[] values, TheilSen fit)
    {
        var residuals = new double[values.Length];
        for (var i = 0; i < values.Length; i++)
        {
            residuals[i] = values[i] - fit.ValueAt(times[i]);
        }

        return 1.4826 * Numbers.MedianAbsoluteDeviation(residuals, Numbers.Median(residuals));
    }
}
