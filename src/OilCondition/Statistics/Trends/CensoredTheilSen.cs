namespace OilCondition.Statistics;

/// <summary>Theil-Sen with readings of the kind '&lt; L': see the remarks of <see cref="TheilSen"/>.</summary>
/// <remarks>
/// S(b), the Kendall score of the readings taken along slope b, only falls as b rises: by 2 at the slope of a pair of plain readings, by 1 at the
/// bounding slope of a pair whose order is known on one side of it. With these drops halved as weights, S(b) = S(−∞) − 2 W(b), and any
/// score is found by a weighted rank.
/// </remarks>
internal static class CensoredTheilSen
{
    public static TheilSen Fit(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<Censoring> censoring,
        KendallSums sums,
        double confidence,
        double correlation
    )
    {
        var slopes = new double[(int)sums.TimePairs];
        var weights = new double[slopes.Length];
        var count = 0;
        double scoreAtLowest = 0;
        for (var i = 0; i < times.Length; i++)
        {
            for (var j = 0; j < times.Length; j++)
            {
                var span = times[j] - times[i];
                if (
                    !(span > 0) || Weight(censoring[i], censoring[j], out var risesAtLowest) is not (> 0 and var weight)
                )
                {
                    continue;
                }

                slopes[count] = (values[j] - values[i]) / span;
                weights[count++] = weight;
                scoreAtLowest += risesAtLowest ? 1 : 0;
            }
        }

        Array.Sort(slopes, weights, 0, count);
        var half = TheilSen.ScoreHalfWidth(sums, confidence, correlation);
        var slope = AtRank(slopes, weights, count, scoreAtLowest / 2 + 0.5);
        if (!slope.HasValue)
        {
            return TheilSen.Without(LineStatus.NotDetermined, times.Length, confidence, TheilSenRankRule.Interpolated);
        }

        return new TheilSen(
            LineStatus.Determined,
            times.Length,
            count,
            slope.Value,
            Interval.Between(
                AtRank(slopes, weights, count, (scoreAtLowest - half) / 2),
                AtRank(slopes, weights, count, (scoreAtLowest + half) / 2 + 1),
                confidence,
                IntervalSide.Both,
                coverageInDoubt: false
            ),
            Numbers.Median(times),
            CensoredMedian(values, censoring),
            TheilSenRankRule.Interpolated
        );
    }

    /// <summary>1 for two plain readings; one half where the pair bounds the slope on one side; 0 where it says nothing.</summary>
    private static double Weight(Censoring earlier, Censoring later, out bool risesAtLowest)
    {
        // Along a very low slope the later reading is raised: does the pair then rise for certain?
        risesAtLowest = earlier != Censoring.Above && later != Censoring.Below;
        var fallsAtHighest = earlier != Censoring.Below && later != Censoring.Above;
        return ((risesAtLowest ? 1 : 0) + (fallsAtHighest ? 1 : 0)) / 2.0;
    }

    /// <summary>The slope of a weighted rank, interpolated; for weights of 1 the plain rank. Nothing beyond the first and last slope.</summary>
    private static double? AtRank(double[] slopes, double[] weights, int count, double rank)
    {
        double before = 0;
        double lastRank = 0;
        for (var i = 0; i < count; i++)
        {
            var own = before + (weights[i] + 1) / 2;
            if (own >= rank)
            {
                return i == 0
                    ? (own - rank <= 1e-9 ? slopes[0] : null)
                    : slopes[i - 1] + (slopes[i] - slopes[i - 1]) * (rank - lastRank) / (own - lastRank);
            }

            before += weights[i];
            lastRank = own;
        }

        return null;
    }

    /// <summary>The median if every value that the censored readings may have gives the same.</summary>
    private static double? CensoredMedian(ReadOnlySpan<double> values, ReadOnlySpan<Censoring> censoring)
    {
        var lowest = values.ToArray();
        var highest = values.ToArray();
        for (var i = 0; i < lowest.Length; i++)
        {
            lowest[i] = censoring[i] == Censoring.Below ? double.MinValue : lowest[i];
            highest[i] = censoring[i] == Censoring.Above ? double.MaxValue : highest[i];
        }

        var low = Selection.Median(lowest);
        return low.Equals(Selection.Median(highest)) ? low : null;
    }
}
