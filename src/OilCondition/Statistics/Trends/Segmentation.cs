using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Cuts a series into runs of constant level by least squares with a penalty for each change.</summary>
/// <remarks>
/// Least Σ (y − mean of its run)² + penalty × changes, exactly, by optimal partitioning with pruning (Jackson and others 2005; Killick,
/// Fearnhead and Eckley 2012, PELT). The penalty decides: 2 σ² ln n, with σ the scatter about the levels, is the usual one
/// (Schwarz's criterion, two parts a change). It assumes independent values; those that follow one another give too many changes.
/// </remarks>
public static class Segmentation
{
    /// <summary>Cuts at the least cost.</summary>
    /// <param name="values">Values in the order of time, one or more.</param>
    /// <param name="penalty">Price of a change, in the square of the unit of the values, 0 or more; see <see cref="SuggestedPenalty"/>.</param>
    /// <param name="minimumLength">Least number of values in a run, 1 or more.</param>
    /// <returns>The runs, with penalty and cost.</returns>
    /// <exception cref="ArgumentException">There are no values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static SegmentationResult Of(ReadOnlySpan<double> values, double penalty, int minimumLength = 1)
    {
        Numbers.AtLeast(values.Length, 1, nameof(values));
        Numbers.Check(values, nameof(values));
        Guard.InRange(penalty, 0, 1e200, "");
        Numbers.InRange(minimumLength, 1, int.MaxValue, nameof(minimumLength));
        var sums = new RunSums(values);
        var starts = BestStarts(sums, values.Length, penalty, minimumLength);
        var segments = new List<Segment>();
        double residual = 0;
        for (var end = values.Length; end > 0; end = starts[end])
        {
            var run = values.Slice(starts[end], end - starts[end]);
            var mean = Numbers.Mean(run);
            segments.Add(new Segment(starts[end], run.Length, mean));
            residual += Numbers.SumOfSquaresAbout(run, mean);
        }

        segments.Reverse();
        return new SegmentationResult(segments, penalty, residual + penalty * (segments.Count - 1), residual);
    }

    /// <summary>2 σ² ln n, with σ from the differences of neighbours, which a few changes of level hardly touch.</summary>
    /// <remarks>σ = 1.4826/sqrt(2) × median |y_(i+1) − y_i|, which is right for independent normal scatter.</remarks>
    /// <param name="values">Values in the order of time, three or more.</param>
    /// <returns>The penalty, in the square of the unit of the values; 0 where most neighbours are equal, so that it says nothing.</returns>
    /// <exception cref="ArgumentException">There are fewer than three values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite or beyond 1e100.</exception>
    public static double SuggestedPenalty(ReadOnlySpan<double> values)
    {
        Numbers.AtLeast(values.Length, 3, nameof(values));
        Numbers.Check(values, nameof(values));
        var steps = new double[values.Length - 1];
        for (var i = 0; i < steps.Length; i++)
        {
            steps[i] = Math.Abs(values[i + 1] - values[i]);
        }

        var sigma = 1.4826 / Math.Sqrt(2) * Selection.Median(steps);
        return 2 * sigma * sigma * Math.Log(values.Length);
    }

    /// <summary>For every end the start of the last run of the cheapest cut up to there.</summary>
    private static int[] BestStarts(RunSums sums, int count, double penalty, int minimumLength)
    {
        var cost = new double[count + 1];
        var starts = new int[count + 1];
        cost[0] = -penalty;
        var candidates = new List<int>();
        for (var end = 1; end <= count; end++)
        {
            cost[end] = double.MaxValue;
            if (end >= minimumLength && (end == minimumLength || cost[end - minimumLength] < double.MaxValue))
            {
                candidates.Add(end - minimumLength);
            }

            foreach (var start in candidates)
            {
                var total = cost[start] + sums.Cost(start, end) + penalty;
                if (total < cost[end])
                {
                    cost[end] = total;
                    starts[end] = start;
                }
            }

            // A start that already costs more without the price of a change can never win later. Only safe to judge after a full run.
            var least = cost[end];
            if (minimumLength == 1)
            {
                candidates.RemoveAll(start => cost[start] + sums.Cost(start, end) > least);
            }
        }

        if (cost[count] >= double.MaxValue)
        {
            starts[count] = 0;
        }

        return starts;
    }

    /// <summary>Sums of squares of any run from running sums of the centred values.</summary>
    private sealed class RunSums
    {
        private readonly double[] sums;
        private readonly double[] squares;

        public RunSums(ReadOnlySpan<double> values)
        {
            var mean = Numbers.Mean(values);
            sums = new double[values.Length + 1];
            squares = new double[values.Length + 1];
            for (var i = 0; i < values.Length; i++)
            {
                var d = values[i] - mean;
                sums[i + 1] = sums[i] + d;
                squares[i + 1] = squares[i] + d * d;
            }
        }

        public double Cost(int start, int end)
        {
            var sum = sums[end] - sums[start];
            return Math.Max(0, squares[end] - squares[start] - sum * sum / (end - start));
        }
    }
}
