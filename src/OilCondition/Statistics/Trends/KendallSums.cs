#if NET
using System.Runtime.Intrinsics;

#endif
namespace OilCondition.Statistics;

/// <summary>
/// Kendall's score of values against time and its variance over all orders of the values. The variance is the one of the general
/// correlation coefficient (Daniels 1944; Kendall, Rank Correlation Methods, chapter 5): it holds for ties in either, and for pairs of
/// censored readings whose order is unknown, which score 0 like a tie.
/// </summary>
internal readonly ref struct KendallSums
{
    private const int OnStack = 256;

    private KendallSums(int count, int score, double timePairs, double valuePairs, double variance, bool anyTie)
    {
        Count = count;
        Score = score;
        TimePairs = timePairs;
        ValuePairs = valuePairs;
        Variance = variance;
        AnyTie = anyTie;
    }

    public int Count { get; }

    /// <summary>S: pairs that rise less pairs that fall.</summary>
    public int Score { get; }

    /// <summary>Pairs whose times differ.</summary>
    public double TimePairs { get; }

    /// <summary>Pairs whose values are known to differ.</summary>
    public double ValuePairs { get; }

    public double Variance { get; }

    /// <summary>Whether the order of any pair, in time or in value, is a tie or unknown.</summary>
    public bool AnyTie { get; }

    public static KendallSums Of(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<Censoring> censoring
    )
    {
        var n = times.Length;
#if NET
        if (censoring.IsEmpty && Numbers.AscendStrictly(times))
        {
            return OfAscending(values);
        }
#endif
        var timeRows = n <= OnStack ? stackalloc int[n] : new int[n];
        var valueRows = n <= OnStack ? stackalloc int[n] : new int[n];
        timeRows.Clear();
        valueRows.Clear();
        long timePairs = 0;
        long valuePairs = 0;
        var score = 0;
        for (var i = 0; i < n; i++)
        {
            var ownTime = 0;
            var ownValue = 0;
            for (var j = i + 1; j < n; j++)
            {
                var time = Sign(times[j], times[i]);
                var value = censoring.IsEmpty
                    ? Sign(values[j], values[i])
                    : Sign(values[j], censoring[j], values[i], censoring[i]);
                score += time * value;
                ownTime += time;
                ownValue += value;
                timeRows[j] -= time;
                valueRows[j] -= value;
                timePairs += time * time;
                valuePairs += value * value;
            }

            timeRows[i] += ownTime;
            valueRows[i] += ownValue;
        }

        return new KendallSums(
            n,
            score,
            timePairs,
            valuePairs,
            VarianceOf(n, Spread(timeRows, timePairs), Spread(valueRows, valuePairs), timePairs, valuePairs),
            timePairs + valuePairs < (long)n * (n - 1)
        );
    }

#if NET
    /// <summary>The same for times that ascend without ties, four pairs at once; the values are padded with NaN, which is neither larger nor smaller.</summary>
    private static KendallSums OfAscending(ReadOnlySpan<double> values)
    {
        var n = values.Length;
        var size = n + LaneMath.Width;
        var padded = n <= OnStack ? stackalloc double[size] : new double[size];
        var rows = n <= OnStack ? stackalloc long[size] : new long[size];
        values.CopyTo(padded);
        padded.Slice(n).Fill(double.NaN);
        rows.Clear();
        long score = 0;
        var unequal = Vector256<long>.Zero;
        for (var i = 0; i < n; i++)
        {
            var value = LaneMath.Of(padded[i]);
            var own = Vector256<long>.Zero;
            for (var j = i + 1; j < n; j += LaneMath.Width)
            {
                var later = LaneMath.Load(padded, j);
                var larger = Vector256.GreaterThan(later, value).AsInt64();
                var smaller = Vector256.LessThan(later, value).AsInt64();
                var sign = smaller - larger;
                own += sign;
                unequal -= larger | smaller;
                (Vector256.Create<long>(rows.Slice(j)) - sign).CopyTo(rows.Slice(j));
            }

            var rises = Vector256.Sum(own);
            rows[i] += rises;
            score += rises;
        }

        double squares = 0;
        foreach (var row in rows.Slice(0, n))
        {
            squares += (double)row * row;
        }

        // The rows of the times are n - 1, n - 3, ... 1 - n.
        var timePairs = n * (n - 1.0) / 2;
        double valuePairs = Vector256.Sum(unequal);
        return new KendallSums(
            n,
            (int)score,
            timePairs,
            valuePairs,
            VarianceOf(n, n * ((double)n * n - 1) / 3 - 2 * timePairs, squares - 2 * valuePairs, timePairs, valuePairs),
            valuePairs < timePairs
        );
    }
#endif

    /// <summary>1 if the first reading is known to be larger, −1 if smaller, 0 if equal or not known.</summary>
    private static int Sign(double first, Censoring firstIs, double second, Censoring secondIs)
    {
        var mayBeLarger = firstIs == Censoring.Above || secondIs == Censoring.Below;
        var maybeSmaller = firstIs == Censoring.Below || secondIs == Censoring.Above;
        if (mayBeLarger && maybeSmaller)
        {
            return 0;
        }

        // '< 5' is smaller than 5 as well as than 7.
        return mayBeLarger ? (first >= second ? 1 : 0)
            : maybeSmaller ? (first <= second ? -1 : 0)
            : Sign(first, second);
    }

    private static int Sign(double first, double second) => (first > second ? 1 : 0) - (first < second ? 1 : 0);

    private static double Spread(ReadOnlySpan<int> rows, long pairs)
    {
        double sum = 0;
        foreach (var row in rows)
        {
            sum += (double)row * row;
        }

        return sum - 2.0 * pairs;
    }

    private static double VarianceOf(int n, double timeSpread, double valueSpread, double timePairs, double valuePairs)
    {
        if (n < 2)
        {
            return 0;
        }

        var pairs = 2 * timePairs * valuePairs / ((double)n * (n - 1));
        return n < 3 ? pairs : pairs + timeSpread * valueSpread / ((double)n * (n - 1) * (n - 2));
    }
}
