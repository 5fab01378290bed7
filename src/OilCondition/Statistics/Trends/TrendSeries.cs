using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Readings by time, on the scale on which they scatter evenly.</summary>
internal sealed class TrendSeries
{
    private TrendSeries(
        NaturalScale scale,
        int[] all,
        int[] order,
        double[] times,
        double[] values,
        Censoring[] censoring,
        bool hasZeros,
        double lastDigit
    )
    {
        LastDigit = lastDigit;
        Scale = scale;
        All = all;
        Order = order;
        Times = times;
        Values = values;
        Censoring = censoring;
        HasZeros = hasZeros;
    }

    public NaturalScale Scale { get; }

    /// <summary>The indexes by time of all readings.</summary>
    public int[] All { get; }

    /// <summary>Where each reading stands in the caller's order; those of <see cref="All"/> where that is by time.</summary>
    public int[] Order { get; }

    public double[] Times { get; }

    public double[] Values { get; private init; }

    /// <summary>The unit of the last decimal that any reading carries, on the scale.</summary>
    private double LastDigit { get; }

    /// <summary>Empty if no reading is censored.</summary>
    public Censoring[] Censoring { get; }

    /// <summary>Whether readings of 0 were taken as below the smallest reading above 0.</summary>
    public bool HasZeros { get; }

    /// <summary>Takes readings.</summary>
    /// <param name="times">When readings were taken, in any order; the array belongs to the series from now on, as do the others.</param>
    /// <param name="values">What was read.</param>
    /// <param name="censoring">What is known of each; empty if none is censored.</param>
    /// <param name="scale">The scale on which they scatter evenly.</param>
    public static TrendSeries Of(double[] times, double[] values, Censoring[] censoring, NaturalScale scale)
    {
        MannKendall.Check(times, values, censoring, 0, TheilSen.LargestCount);
        var all = new int[times.Length];
        for (var i = 0; i < all.Length; i++)
        {
            all[i] = i;
        }

        var order = Numbers.AscendStrictly(times) ? all : InOrder(all, times, values);
        var lastDigit = Numbers.LastDigit(values);
        var hasZeros = false;
        if (scale == NaturalScale.Logarithmic && values.Length > 0)
        {
            lastDigit /= Math.Max(Numbers.Median(values), lastDigit);
            censoring = censoring.Length > 0 ? censoring : new Censoring[values.Length];
            hasZeros = TakeLogarithms(values, censoring);
        }

        return new TrendSeries(
            scale,
            all,
            order,
            InOrder(times, order, all),
            InOrder(values, order, all),
            TheilSen.AnyCensored(censoring) ? InOrder(censoring, order, all) : [],
            hasZeros,
            lastDigit
        );
    }

    /// <summary>By time; readings at one time by value, so that the caller's order never matters.</summary>
    private static int[] InOrder(int[] all, double[] times, double[] values)
    {
        var order = (int[])all.Clone();
        Array.Sort(
            order,
            (a, b) =>
                times[a].CompareTo(times[b]) is not 0 and var byTime ? byTime
                : values[a].CompareTo(values[b]) is not 0 and var byValue ? byValue
                : a.CompareTo(b)
        );
        return order;
    }

    private static T[] InOrder<T>(T[] one, int[] order, int[] all) => order == all ? one : Picked(one, order);

    /// <summary>The same readings less a cycle.</summary>
    public TrendSeries Without(SeasonalCycle? cycle) =>
        cycle is null
            ? this
            : new TrendSeries(Scale, All, Order, Times, Values, Censoring, HasZeros, LastDigit)
            {
                Values = [.. Values.Zip(Times.Select(cycle.At), (value, part) => value - part)],
            };

    /// <summary>The least scatter that readings may be taken to have: a last digit hides r/sqrt(12), and the test method has its own.</summary>
    public double LeastScatter(double readingError) => Math.Max(readingError, LastDigit / Math.Sqrt(12));

    /// <summary>Some of the readings, in their order; nothing is copied where they are all of them.</summary>
    public static T[] Subset<T>(T[] all, int[] ascending) =>
        ascending.Length == all.Length ? all : Picked(all, ascending);

    private static T[] Picked<T>(T[] all, int[] indexes)
    {
        if (indexes.Length == 0)
        {
            return [];
        }

        var picked = new T[indexes.Length];
        for (var i = 0; i < picked.Length; i++)
        {
            picked[i] = all[indexes[i]];
        }

        return picked;
    }

    /// <summary>Whether any reading was 0, which has no logarithm: 'nothing found' says 'below what can be found'.</summary>
    private static bool TakeLogarithms(double[] values, Censoring[] censoring)
    {
        var smallest = double.MaxValue;
        foreach (var value in values)
        {
            Guard.NotNegative(value, "", nameof(values));
            smallest = value > 0 ? Math.Min(smallest, value) : smallest;
        }

        // Nothing but zeros: any figure serves, none can be told from another.
        smallest = smallest < double.MaxValue ? smallest : 1;
        var hasZeros = false;
        for (var i = 0; i < values.Length; i++)
        {
            if (!(values[i] > 0) && censoring[i] == Statistics.Censoring.Above)
            {
                throw new ArgumentOutOfRangeException(
                    nameof(values),
                    "values holds a reading above 0 without a figure; allowed on the logarithmic scale: figures above 0."
                );
            }

            if (!(values[i] > 0))
            {
                hasZeros = true;
                censoring[i] = Statistics.Censoring.Below;
            }

            values[i] = Math.Log(values[i] > 0 ? values[i] : smallest);
        }

        return hasZeros;
    }
}
