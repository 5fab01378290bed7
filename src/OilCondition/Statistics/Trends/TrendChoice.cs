namespace OilCondition.Statistics;

/// <summary>Chooses the method for a trend and lets it speak.</summary>
internal static class TrendChoice
{
    /// <summary>A mean correlation that is worth a word.</summary>
    private const double ClearCorrelation = 0.2;

    public static TrendLine Line(
        TrendSeries series,
        int[] kept,
        SeasonalCycle? cycle,
        TrendOptions options,
        List<TrendReason> reasons,
        RiseDesigns designs
    )
    {
        var times = TrendSeries.Subset(series.Times, kept);
        var values = TrendSeries.Subset(series.Values, kept);
        var censoring = series.Censoring.Length > 0 ? TrendSeries.Subset(series.Censoring, kept) : [];
        if (times.Length < options.MinimumCount)
        {
            reasons.Add(TrendReason.TooFewReadings);
            return TrendLine.None(IntervalOutcome.TooFewReadings, options.Confidence);
        }

        if (StraightLine.Fit(times, values).Status != LineStatus.Determined)
        {
            reasons.Add(TrendReason.SameTime);
            return TrendLine.None(IntervalOutcome.NotDetermined, options.Confidence);
        }

        if (censoring.Length > 0)
        {
            reasons.Add(TrendReason.CensoredReadings);
            return Ranks(times, values, censoring, options, reasons);
        }

        if (AllEqual(values))
        {
            return Ranks(times, values, [], options, reasons);
        }

        reasons.Add(TrendReason.EnoughReadings);
        return LeastSquares(times, values, cycle, series.LeastScatter(0), options, reasons, designs);
    }

    private static bool AllEqual(double[] values) => LaneMath.AreWithin(values, values[0], values[0]);

    private static TrendLine LeastSquares(
        double[] times,
        double[] values,
        SeasonalCycle? cycle,
        double leastScatter,
        TrendOptions options,
        List<TrendReason> reasons,
        RiseDesigns designs
    )
    {
        var confidence = options.Confidence;
        var span = times[times.Length - 1] - times[0];
        Span<double> room = stackalloc double[CorrelatedRise.Room];
        var design = designs.Of(times, cycle?.Period);
        var rise = CorrelatedRise.Of(design, values, leastScatter, room);

        // Half a cycle looks like a trend. Where there is none to be doubted, there is no need to ask.
        var chance = rise.TwoSidedChance;
        if (
            cycle is null
            && chance < 1 - confidence
            && options.Cycle is { } one
            && span < SeasonalCycle.CyclesNeeded * one
        )
        {
            rise = CorrelatedRise.Of(design.InDoubtOf(one), values, leastScatter, room);
            chance = rise.TwoSidedChance;
        }

        var isCorrelated = rise.Correlation > ClearCorrelation;
        if (isCorrelated)
        {
            reasons.Add(TrendReason.CorrelatedResiduals);
        }

        return new TrendLine(
            TrendMethod.StraightLine,
            rise.Rise / span,
            Interval.Between(
                rise.Quantile(0.5 - confidence / 2) / span,
                rise.Quantile(0.5 + confidence / 2) / span,
                confidence,
                IntervalSide.Both,
                coverageInDoubt: isCorrelated
            ),
            chance,
            rise.Correlation,
            rise.Scatter
        );
    }

    private static TrendLine Ranks(
        double[] times,
        double[] values,
        Censoring[] censoring,
        TrendOptions options,
        List<TrendReason> reasons
    )
    {
        var test = MannKendall.Test(times, values, censoring);

        // The interval by the same distribution as the test, so that the two never contradict each other.
        var rule = test.Method == MannKendallMethod.Exact ? TheilSenRankRule.Exact : TheilSenRankRule.Interpolated;
        var fit = TheilSen.Fit(times, values, censoring, options.Confidence, rule);
        if (test.Method == MannKendallMethod.NoVariation)
        {
            reasons.Add(TrendReason.NothingVaries);
        }

        return new TrendLine(
            TrendMethod.TheilSen,
            fit.Slope,
            fit.SlopeInterval,
            test.PValue,
            0,
            censoring.Length > 0 ? 0 : Scatter(times, values, fit)
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
