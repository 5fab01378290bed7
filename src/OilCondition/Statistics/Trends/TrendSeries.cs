using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Readings by time, on the scale on which they scatter evenly.</summary>
internal sealed class TrendSeries
{
    private TrendSeries(
        NaturalScale scale,
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
        Order = order;
        Times = times;
        Values = values;
        Censoring = censoring;
        HasZeros = hasZeros;
    }

    public NaturalScale Scale { get; }

    /// <summary>Where each reading stands in the caller's order.</summary>
    public int[] Order { get; }

    public double[] Times { get; }

    public double[] Values { get; private init; }

    /// <summary>The unit of the last decimal that any reading carries, on the scale.</summary>
    private double LastDigit { get; }

    /// <summary>Empty if no reading is censored.</summary>
    public Censoring[] Censoring { get; }

    /// <summary>Whether readings of 0 were taken as below the smallest reading above 0.</summary>
    public bool HasZeros { get; }

    public static TrendSeries Of(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<Censoring> censoring,
        NaturalScale scale
    )
    {
        MannKendall.Check(times, values, censoring, 0, TheilSen.LargestCount);
        var order = new int[times.Length];
        for (var i = 0; i < order.Length; i++)
        {
            order[i] = i;
        }

        // By time; readings at one time by value, so that the caller's order never matters.
        var t = times.ToArray();
        var y = values.ToArray();
        Array.Sort(
            order,
            (a, b) =>
                t[a].CompareTo(t[b]) is not 0 and var byTime ? byTime
                : y[a].CompareTo(y[b]) is not 0 and var byValue ? byValue
                : a.CompareTo(b)
        );
        var lastDigit = Numbers.LastDigit(y);
        if (scale == NaturalScale.Logarithmic && y.Length > 0)
        {
            lastDigit /= Math.Max(Numbers.Median(y), lastDigit);
        }

        var known = censoring.IsEmpty ? new Censoring[t.Length] : censoring.ToArray();
        var hasZeros = scale == NaturalScale.Logarithmic && TakeLogarithms(y, known);
        known = Picked(known, order);
        return new TrendSeries(
            scale,
            order,
            Picked(t, order),
            Picked(y, order),
            TheilSen.AnyCensored(known) ? known : [],
            hasZeros,
            lastDigit
        );
    }

    /// <summary>The same readings less a cycle.</summary>
    public TrendSeries Without(SeasonalCycle? cycle) =>
        cycle is null
            ? this
            : new TrendSeries(Scale, Order, Times, Values, Censoring, HasZeros, LastDigit)
            {
                Values = [.. Values.Select((value, i) => value - cycle.At(Times[i]))],
            };

    /// <summary>The least scatter that readings may be taken to have: a last digit hides r/sqrt(12), and the test method has its own.</summary>
    public double LeastScatter(double readingError) => Math.Max(readingError, LastDigit / Math.Sqrt(12));

    /// <summary>Some of the readings, in their order; nothing is copied where they are all of them.</summary>
    public static T[] Subset<T>(T[] all, IReadOnlyList<int> ascending) =>
        ascending.Count == all.Length ? all : Picked(all, ascending);

    private static T[] Picked<T>(T[] all, IReadOnlyList<int> indexes)
    {
        var picked = new T[indexes.Count];
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
