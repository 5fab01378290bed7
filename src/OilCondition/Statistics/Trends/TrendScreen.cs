namespace OilCondition.Statistics;

/// <summary>Looks for sudden changes of level and for wild readings: which readings a trend may rest on. Indexes are by time.</summary>
/// <remarks>
/// A change to the better is a treatment or an oil change that nobody recorded: what lay before it tells nothing of the future. A change to the worse is what a plant wants
/// to know, and the latest readings on that side are never set aside: neither may be hidden by the search for it.
/// </remarks>
internal sealed class TrendScreen
{
    /// <summary>Below it a wild reading cannot be told from scatter.</summary>
    private const int LeastForOutliers = 6;

    /// <summary>Readings that a jump of the latest ones is judged against, at least.</summary>
    private const int LeastBeforeJump = 5;

    /// <summary>Readings that may be the latest ones; a level that has stood for longer is found as a step.</summary>
    private const int MostLate = 7;

    /// <summary>A jump of the latest readings: seldom enough by chance for a machine with ten measurands that is sampled each month.</summary>
    private const double JumpLevel = 0.001;

    /// <summary>Readings on either side of a gap that tell their level: as many as a step needs.</summary>
    private const int ReadingsOfALevel = 3;

    /// <summary>Usual intervals that make a gap in which a machine may have stood still (ours).</summary>
    private const double GapIntervals = 3;

    private const int MostOnStack = 128;

    /// <summary>Distance, in the scatter that a reading has by its method and last digit alone, below which none is wild.</summary>
    private const double ScattersOfWild = 4;

    private readonly TrendSeries series;
    private readonly TrendOptions options;

    private TrendScreen(TrendSeries series, TrendOptions options)
    {
        this.series = series;
        this.options = options;
    }

    public int[] Kept { get; private set; } = [];

    public int[] Outliers { get; private set; } = [];

    /// <summary>By time. Seldom more than none: no list is made for that.</summary>
    public TrendAssessment.LevelChange[] Changes { get; private set; } = [];

    public bool LatestIsWild { get; private set; }

    /// <summary>Whether the search for outliers ended at the most that it looks for.</summary>
    public bool MoreOutliersPossible { get; private set; }

    public static TrendScreen Of(TrendSeries series, TrendOptions options)
    {
        var screen = new TrendScreen(series, options);
        screen.Screen();
        return screen;
    }

    private void Screen()
    {
        var all = series.All;
        Kept = all;
        if (series.Censoring.Length > 0)
        {
            return;
        }

        // Wild readings are judged within one level, and a step is seen better without them: steps first, then again where readings were wild.
        var from = Changed(all);
        var since = Since(all, from);
        var wild = Wild(since);
        if (wild.Count > 0)
        {
            from = Math.Max(from, Changed(Without(since, wild)));
            since = Since(since, from);
            wild = [.. wild.Where(since.Contains)];
        }

        KeepLatestOnWorseSide(since, wild);
        Outliers = [.. wild];
        MoreOutliersPossible &= wild.Count > 0;
        Kept = Without(since, wild);
        if (LatestJump() is { } jump)
        {
            Add(jump);
        }

        // Of two at one moment the first says in which zone it is told.
        Changes = Changes.Length > 1 ? [.. Changes.OrderBy(PlaceInTime)] : Changes;
    }

    /// <summary>Adds a jump of the latest readings; the search for steps may have found it as well, less clearly.</summary>
    private void Add(TrendAssessment.LevelChange jump)
    {
        Changes = [.. Changes.Where(one => one.FirstAfter != jump.FirstAfter), jump];
    }

    /// <summary>Those of some readings, by time, that are not before one.</summary>
    private static int[] Since(int[] readings, int first)
    {
        var before = 0;
        while (before < readings.Length && readings[before] < first)
        {
            before++;
        }

        return before == 0 ? readings : readings.AsSpan(before).ToArray();
    }

    private static int[] Without(int[] readings, List<int> wild) =>
        wild.Count == 0 ? readings : Array.FindAll(readings, i => !wild.Contains(i));

    private int PlaceInTime(TrendAssessment.LevelChange change) => Array.IndexOf(series.Order, change.FirstAfter);

    /// <summary>Looks for steps, each within the readings on one side of those that were found; returns the first reading after the last one to the better.</summary>
    private int Changed(int[] readings, double leastToBetter = 0)
    {
        if (options.ChangeSignificance is not { } significance)
        {
            return 0;
        }

        var times = TrendSeries.Subset(series.Times, readings);
        var values = TrendSeries.Subset(series.Values, readings);
        var step = LineStep.Find(times, values, series.LeastScatter(options.ReadingError));
        return step.PValue >= significance || LineStep.IsBend(times, values, step)
            ? 0
            : SinceStep(readings, step, leastToBetter);
    }

    private int SinceStep(int[] readings, LineStepResult step, double leastToBetter)
    {
        var after = readings[step.FirstAfter];
        var toBetter = options.Worse is { } worse && step.Step > 0 != (worse == TrendVerdict.Rising);
        if (toBetter && (Math.Abs(step.Step) < leastToBetter || IsStandstill(readings, step.FirstAfter, step.Step)))
        {
            return 0;
        }

        if (!Array.Exists(Changes, one => one.FirstAfter == series.Order[after]))
        {
            Changes = [.. Changes, Change(readings[step.FirstAfter - 1], after, step.Step, step.PValue, toBetter)];
        }

        // What only comes part of the way back from a step to the worse is no new beginning.
        var later = Changed(Since(readings, after), toBetter ? 0 : Math.Abs(step.Step) / 2);
        return toBetter ? Math.Max(after, later)
            : later > 0 ? later
            : Changed(Array.FindAll(readings, i => i < after), leastToBetter);
    }

    /// <summary>
    /// Whether a step lies in a long gap, and the readings behind it are no better than those before. A machine that stood still comes back where it was, and
    /// only the line has gone on: nothing got better, and what lay before still tells of the future.
    /// </summary>
    private bool IsStandstill(int[] readings, int first, double step)
    {
        var times = TrendSeries.Subset(series.Times, readings);
        var intervals = new double[times.Length - 1];
        for (var i = 0; i < intervals.Length; i++)
        {
            intervals[i] = times[i + 1] - times[i];
        }

        if (!(intervals[first - 1] > GapIntervals * Numbers.Median(intervals)))
        {
            return false;
        }

        var values = TrendSeries.Subset(series.Values, readings).AsSpan();
        var before = values[Math.Max(0, first - ReadingsOfALevel)..first];
        var after = values[first..Math.Min(values.Length, first + ReadingsOfALevel)];
        return !((Numbers.Median(after) - Numbers.Median(before)) * step > 0);
    }

    private TrendAssessment.LevelChange Change(int before, int after, double step, double chance, bool toBetter) =>
        new(series.Order[before], series.Order[after], step, chance, toBetter);

    private List<int> Wild(int[] readings)
    {
        List<int> wild = [];
        if (options.OutlierSignificance is not { } significance || readings.Length < LeastForOutliers)
        {
            return wild;
        }

        var times = TrendSeries.Subset(series.Times, readings);
        var values = TrendSeries.Subset(series.Values, readings);
        var fit = TheilSen.LineAlone(times, values);
        if (fit.Status != LineStatus.Determined)
        {
            return wild;
        }

        // What rounding leaves of a perfect line is no scatter.
        Span<double> residuals =
            values.Length <= MostOnStack ? stackalloc double[values.Length] : new double[values.Length];
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

        // Readings that all but one agree to the last digit do not make that one wild.
        var least = ScattersOfWild * series.LeastScatter(options.ReadingError);
        var found = GeneralisedEsd.Find(residuals, readings.Length / 6, significance);
        foreach (var i in found.Outliers)
        {
            if (Math.Abs(residuals[i]) > least)
            {
                wild.Add(readings[i]);
            }
        }

        wild.Sort();
        var all = wild.Count;
        wild = all > 0 ? WithoutBend(readings, wild, significance) : wild;

        // One that was found and is none leaves room for all that are farther out.
        MoreOutliersPossible = found.MorePossible && all == found.Outliers.Count && wild.Count == all;
        return wild;
    }

    /// <summary>
    /// The end of a bent trend lies far from its line without being wild. Where the readings that are left bend by themselves, only those are wild
    /// that lie far from the curve as well.
    /// </summary>
    private List<int> WithoutBend(int[] readings, List<int> wild, double significance)
    {
        if (!IsBent(Without(readings, wild), out _) || !IsBent(readings, out var residuals))
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
        var times = TrendSeries.Subset(series.Times, readings);
        var values = TrendSeries.Subset(series.Values, readings);
        var line = StraightLine.Fit(times, values);
        var curvature = line.Status == LineStatus.Determined ? Curvature.Of(times, values, line) : null;
        residuals = curvature?.Residuals ?? [];
        return curvature?.IsBent ?? false;
    }

    /// <summary>A wild reading at the end may be the beginning of something; on the worse side it stays.</summary>
    private void KeepLatestOnWorseSide(int[] readings, List<int> wild)
    {
        if (wild.Count == 0 || wild[wild.Count - 1] != readings[readings.Length - 1])
        {
            return;
        }

        var sound = Without(readings, wild);
        var level = TheilSen.LineAlone(
            TrendSeries.Subset(series.Times, sound),
            TrendSeries.Subset(series.Values, sound)
        );
        for (var i = readings.Length - 1; i >= 0 && wild.Contains(readings[i]); i--)
        {
            var reading = readings[i];
            var off =
                series.Values[reading]
                - (level.HasIntercept ? level.ValueAt(series.Times[reading]) : series.Values[sound[0]]);
            if (options.Worse is { } worse && off > 0 != (worse == TrendVerdict.Rising))
            {
                return;
            }

            wild.Remove(reading);
            LatestIsWild = true;
        }
    }

    /// <summary>
    /// The place from which on all of the last few readings lie further to the worse than a line through those before foretells: the clearest of them.
    /// Growth that the readings before show, or that explains all of them as well, is none.
    /// </summary>
    private TrendAssessment.LevelChange? LatestJump()
    {
        if (options.ChangeSignificance is null)
        {
            return null;
        }

        var times = TrendSeries.Subset(series.Times, Kept);
        var values = TrendSeries.Subset(series.Values, Kept);
        TrendAssessment.LevelChange? clearest = null;
        var before = new RunningLine();
        for (var first = 0; first < times.Length; first++)
        {
            if (
                first >= times.Length - MostLate
                && JumpOf(times, values, first, before.Line) is { } jump
                && jump.PValue <= (clearest?.PValue ?? JumpLevel)
            )
            {
                clearest = jump;
            }

            before.Add(times[first], values[first]);
        }

        if (clearest is not { } found || Kept.Length - PlaceOf(found) <= 2)
        {
            return clearest;
        }

        return LineStep.IsBend(times, values, LineStep.Find(times, values)) ? null : clearest;
    }

    private int PlaceOf(TrendAssessment.LevelChange change) =>
        Array.FindIndex(Kept, i => series.Order[i] == change.FirstAfter);

    private TrendAssessment.LevelChange? JumpOf(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        int first,
        in StraightLine before
    )
    {
        if (first < LeastBeforeJump || !(times[first] > times[first - 1]) || before.Status != LineStatus.Determined)
        {
            return null;
        }

        var late = times.Length - first;
        double off = 0;
        double at = 0;
        for (var i = first; i < times.Length; i++)
        {
            off += (values[i] - before.ValueAt(times[i])) / late;
            at += times[i] / late;
        }

        if (options.Worse is { } worse && off > 0 != (worse == TrendVerdict.Rising))
        {
            return null;
        }

        // All of them must have gone: else those that did speak alone.
        for (var i = first; i < times.Length; i++)
        {
            var one = values[i] - before.ValueAt(times[i]);
            if (!(one * Math.Sign(off) > Math.Abs(off) / 2))
            {
                return null;
            }
        }

        var away = at - before.MeanPosition;
        var scatter = Math.Max(before.ResidualStandardDeviation, series.LeastScatter(options.ReadingError));
        var error = scatter * Math.Sqrt(1.0 / late + 1.0 / first + away * away / before.PositionSumOfSquares);
        var tries = MostLate * (options.Worse is null ? 2 : 1);
        var chance = tries * StudentDistribution.Below(-Math.Abs(off) / error, first - 2);
        return chance < JumpLevel && !Curvature.Of(times[..first], values[..first], before).IsBent
            ? Change(Kept[first - 1], Kept[first], off, chance, toBetter: false)
            : null;
    }
}
