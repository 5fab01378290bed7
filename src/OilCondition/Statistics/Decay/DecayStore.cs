namespace OilCondition.Statistics;

/// <summary>Memory of the intervals of one series, to be used again for the next; it grows to the longest one.</summary>
internal sealed class DecayStore
{
    /// <summary>For a longer series it would stay too large.</summary>
    private const int LongestKept = 1024;

    [ThreadStatic]
    private static DecayStore? ofThread;

    private double[] rows = [];
    private double[] times = [];
    private double[] values = [];
    private double[] working = [];
    private Lanes[] rates = [];
    private DecayEllipse[] ellipses = [];

    /// <summary>One for work on a series of so many readings that keeps nothing in it: that of the thread, unless the series is long.</summary>
    public static DecayStore ToWorkIn(int count) => count <= LongestKept ? ofThread ??= new() : new();

    /// <summary>For a design, filled with zeros.</summary>
    public double[] Rows(int length)
    {
        rows = AtLeast(rows, length);
        Array.Clear(rows, 0, length);
        return rows;
    }

    /// <summary>Readings in order of time.</summary>
    public (ArraySegment<double> Times, ArraySegment<double> Values) InOrder(
        ReadOnlySpan<double> givenTimes,
        ReadOnlySpan<double> givenValues
    )
    {
        var count = givenTimes.Length;
        times = AtLeast(times, count);
        values = AtLeast(values, count);
        givenTimes.CopyTo(times);
        givenValues.CopyTo(values);
        Array.Sort(times, values, 0, count);
        return (new ArraySegment<double>(times, 0, count), new ArraySegment<double>(values, 0, count));
    }

    /// <summary>For weights and working values.</summary>
    public double[] Working(int length) => working = AtLeast(working, length);

    public Lanes[] Rates(int length) => rates = AtLeast(rates, length);

    public DecayEllipse[] Ellipses(int length) => ellipses = AtLeast(ellipses, length);

    private static T[] AtLeast<T>(T[] has, int length) => has.Length >= length ? has : new T[length];
}
