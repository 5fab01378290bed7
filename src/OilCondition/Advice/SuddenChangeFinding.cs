using OilCondition.Limits;
using OilCondition.Statistics;

namespace OilCondition;

/// <summary>A measurand that changed at once to the worse: a leak, a failure, another method, or a wrong sample.</summary>
internal sealed class SuddenChangeFinding : Finding
{
    /// <summary>
    /// Readings at the new level from which on it is the usual one, and its own history and limits judge it: as many as an own-history limit needs.
    /// </summary>
    private const int Usual = OwnHistoryLimit.FewestReadings;

    /// <summary>
    /// So clear a step comes by independent scatter less than once in a hundred machine-years of ten measurands and monthly samples; scatter that follows itself
    /// shows more. (Chosen on invented healthy machines that docs/quality.md does not report on.)
    /// </summary>
    private const double SureChance = 2e-5;

    private SuddenChangeFinding(
        MeasurandState state,
        TrendAssessment.LevelChange change,
        int readings,
        (double Before, double After) levels,
        Severity severity
    )
        : base(FindingCode.SuddenChange, severity, state.Measurand)
    {
        State = state;
        Change = change;
        Readings = readings;
        (Before, After) = levels;
    }

    /// <summary>The measurand with its trend.</summary>
    public MeasurandState State { get; }

    /// <summary>The change.</summary>
    public TrendAssessment.LevelChange Change { get; }

    /// <summary>Readings since then.</summary>
    public int Readings { get; }

    /// <summary>Median of the readings before the change.</summary>
    public double Before { get; }

    /// <summary>Median of the readings since.</summary>
    public double After { get; }

    /// <summary>Whether one reading alone tells of it.</summary>
    public bool IsUnconfirmed => Readings == 1;

    /// <summary>The first reading after it.</summary>
    public SeriesPoint First => State.Trend.Series.Points[Change.FirstAfter];

    internal override LimitSide Side => Change.Step > 0 ? LimitSide.Upper : LimitSide.Lower;

    /// <inheritdoc/>
    public override IReadOnlyList<EvidenceItem> Evidence =>
        [
            EvidenceItem.Number("usual-before", Before, Measurand.Unit),
            EvidenceItem.Number("usual-since", After, Measurand.Unit),
            EvidenceItem.Date("first-read-at", First.At),
            EvidenceItem.Number("readings-since-change", Readings, ""),
            EvidenceItem.Number("chance-of-such-a-change-by-scatter", Change.PValue, ""),
        ];

    /// <summary>The latest change to the worse of a measurand; null where there is none that still is news.</summary>
    public static SuddenChangeFinding? Of(MeasurandState state) =>
        state.Trend.Assessment.Changes.Count == 0 ? null : Clearest(state);

    private static SuddenChangeFinding? Clearest(MeasurandState state)
    {
        var trend = state.Trend.Assessment;
        var series = state.Trend.Series;
        var points = trend.Used.Select(i => series.Points[i]).ToList();

        // The clearest of those that still are news: a level that has stood for long is the usual one.
        var news = trend
            .Changes.Where(change => !change.IsToBetter)
            .Select(change =>
                (Change: change, Since: Values(points, one => one.At >= series.Points[change.FirstAfter].At))
            )
            .Where(one => one.Since.Length is > 0 and < Usual && one.Since.Length < points.Count)
            .OrderBy(one => one.Change.PValue)
            .ToList();
        if (news.Count == 0)
        {
            return null;
        }

        var (latest, since) = news[0];
        var before = Values(points, one => one.At < series.Points[latest.FirstAfter].At);
        var isSure =
            since.Length > 1 && latest.PValue < SureChance && Math.Abs(latest.Step) > 2.8 * series.ReadingError;
        return new SuddenChangeFinding(
            state,
            latest,
            since.Length,
            (Numbers.Median(before), Numbers.Median(since)),
            isSure ? Severity.Alert : Severity.Information
        );
    }

    private static double[] Values(List<SeriesPoint> points, Func<SeriesPoint, bool> which) =>
        [.. points.Where(which).Select(point => point.Reading.Value)];

    internal override string Said(Sentences sentences) => sentences.Change(this);
}
