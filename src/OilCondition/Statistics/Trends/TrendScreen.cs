namespace OilCondition.Statistics;

/// <summary>Looks for sudden changes of level and for wild readings: which readings a trend may rest on. Indexes are by time.</summary>
internal sealed class TrendScreen
{
    /// <summary>Below it a wild reading cannot be told from scatter.</summary>
    private const int LeastForOutliers = 6;

    private readonly TrendSeries series;
    private readonly TrendOptions options;
    private readonly List<TrendAssessment.LevelChange> changes = [];

    private TrendScreen(TrendSeries series, TrendOptions options)
    {
        this.series = series;
        this.options = options;
    }

    public IReadOnlyList<int> Kept { get; private set; } = [];

    public IReadOnlyList<int> Outliers { get; private set; } = [];

    public IReadOnlyList<TrendAssessment.LevelChange> Changes => changes;

    public static TrendScreen Of(TrendSeries series, TrendOptions options)
    {
        var screen = new TrendScreen(series, options);
        var first = 0;
        while (screen.NextStart(first) is > 0 and var next)
        {
            first = next;
        }

        return screen;
    }

    /// <summary>Screens the readings from one on; where a change of level is found, the first reading after it, else 0.</summary>
    private int NextStart(int first)
    {
        var all = new int[series.Times.Length - first];
        for (var i = 0; i < all.Length; i++)
        {
            all[i] = first + i;
        }

        Kept = all;
        Outliers = [];
        if (series.Censoring.Length > 0)
        {
            return 0;
        }

        if (FirstAfterChange(all) is > 0 and var early)
        {
            return early;
        }

        Outliers = Wild(all);
        if (Outliers.Count == 0)
        {
            return 0;
        }

        var wild = new HashSet<int>(Outliers);
        Kept = Array.FindAll(all, i => !wild.Contains(i));
        return FirstAfterChange(Kept);
    }

    private int FirstAfterChange(IReadOnlyList<int> readings)
    {
        if (options.ChangeSignificance is not { } significance)
        {
            return 0;
        }

        var step = LineStep.Find(
            TrendSeries.Picked(series.Times, readings),
            TrendSeries.Picked(series.Values, readings)
        );
        if (step.PValue >= significance || step.BendExplainsAsMuch)
        {
            return 0;
        }

        var after = readings[step.FirstAfter];
        changes.Add(
            new TrendAssessment.LevelChange(
                series.Order[readings[step.FirstAfter - 1]],
                series.Order[after],
                step.Step,
                step.PValue
            )
        );
        return after;
    }

    private List<int> Wild(int[] readings)
    {
        var wild = new List<int>();
        if (options.OutlierSignificance is not { } significance || readings.Length < LeastForOutliers)
        {
            return wild;
        }

        var times = TrendSeries.Picked(series.Times, readings);
        var values = TrendSeries.Picked(series.Values, readings);
        var fit = TheilSen.Fit(times, values);
        if (fit.Status != LineStatus.Determined)
        {
            return wild;
        }

        // What rounding leaves of a perfect line is no scatter.
        var residuals = new double[values.Length];
        double size = 0;
        for (var i = 0; i < values.Length; i++)
        {
            residuals[i] = values[i] - fit.ValueAt(times[i]);
            size = Math.Max(size, Math.Abs(values[i]));
        }

        for (var i = 0; i < values.Length; i++)
        {
            residuals[i] = Math.Abs(residuals[i]) < 1e-12 * size ? 0 : residuals[i];
        }

        foreach (var i in GeneralisedEsd.Find(residuals, readings.Length / 6, significance).Outliers)
        {
            wild.Add(readings[i]);
        }

        wild.Sort();
        return wild.Count > 0 ? WithoutBend(readings, wild, significance) : wild;
    }

    /// <summary>
    /// The end of a bent trend lies far from its line without being wild. Where the readings that are left bend by themselves, only those are wild
    /// that lie far from the curve as well.
    /// </summary>
    private List<int> WithoutBend(int[] readings, List<int> wild, double significance)
    {
        if (!IsBent(Array.FindAll(readings, i => !wild.Contains(i)), out _) || !IsBent(readings, out var residuals))
        {
            return wild;
        }

        var far = new HashSet<int>();
        foreach (var i in GeneralisedEsd.Find(residuals, readings.Length / 6, significance).Outliers)
        {
            far.Add(readings[i]);
        }

        return wild.FindAll(far.Contains);
    }

    private bool IsBent(int[] readings, out double[] residuals)
    {
        var times = TrendSeries.Picked(series.Times, readings);
        var values = TrendSeries.Picked(series.Values, readings);
        var line = StraightLine.Fit(times, values);
        var curvature = line.Status == LineStatus.Determined ? Curvature.Of(times, values, line) : null;
        residuals = curvature?.Residuals ?? [];
        return curvature?.IsBent ?? false;
    }
}
