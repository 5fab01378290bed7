using OilCondition.Text;

namespace OilCondition;

/// <summary>Everything known about the oil of one machine: samples, sensor readings and events, in order of time.</summary>
/// <remarks>
/// Immutable, and the same whatever order the records came in. One number and one moment is one bottle: reports of it are put together, and
/// readings in which they contradict each other are set aside, all of them. Samples without a number are one bottle when they are of one moment.
/// Laboratories begin their numbers anew, so a number that comes back half a year (182 days) later or more is another sample. Sooner, or with the
/// same two readings or more, it is a report under another date, and is set aside. These, implausible readings and suspect samples are
/// reported in <see cref="Issues"/> with their readings, so that nothing is lost. A sensor row that is there twice counts once, and so do two oil changes of one moment.
/// </remarks>
public sealed class OilHistory
{
    private readonly HashSet<OilSample> suspect;

    private OilHistory(
        Machine machine,
        IReadOnlyList<OilSample> samples,
        IReadOnlyList<SensorReading> sensorReadings,
        IReadOnlyList<OilEvent> events,
        IReadOnlyList<HistoryIssue> issues,
        IEnumerable<OilSample> suspect
    )
    {
        Machine = machine;
        Samples = samples;
        SensorReadings = sensorReadings;
        Events = events;
        Issues = issues;
        this.suspect = [.. suspect];
    }

    /// <summary>The machine.</summary>
    public Machine Machine { get; }

    /// <summary>Laboratory samples in order of time, suspect ones included.</summary>
    public IReadOnlyList<OilSample> Samples { get; }

    /// <summary>Sensor readings in order of time.</summary>
    public IReadOnlyList<SensorReading> SensorReadings { get; }

    /// <summary>Events in order of time.</summary>
    public IReadOnlyList<OilEvent> Events { get; }

    /// <summary>What is wrong with the records, in order of time.</summary>
    public IReadOnlyList<HistoryIssue> Issues { get; }

    /// <summary>Brings the records of one machine into order.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="samples">Its laboratory samples, in any order.</param>
    /// <param name="sensorReadings">Its sensor readings, in any order.</param>
    /// <param name="events">What was done to its oil, in any order.</param>
    /// <returns>The history.</returns>
    public static OilHistory Create(
        Machine machine,
        IEnumerable<OilSample> samples,
        IEnumerable<SensorReading> sensorReadings,
        IEnumerable<OilEvent> events
    )
    {
        Guard.NotNull(machine);
        var issues = new List<HistoryIssue>();
        var plausible = RecordOrder
            .Samples(Guard.NotNull(samples), issues)
            .ConvertAll(sample => WithoutImplausible(sample, issues));
        var sensors = RecordOrder
            .Rows(Guard.NotNull(sensorReadings))
            .ConvertAll(reading => WithoutImplausible(reading, issues));
        return Screened(machine, plausible, sensors, RecordOrder.Events(Guard.NotNull(events)), issues);
    }

    private static OilHistory Screened(
        Machine machine,
        List<OilSample> samples,
        List<SensorReading> sensors,
        List<OilEvent> events,
        List<HistoryIssue> issues
    )
    {
        var suspects = ChargesOf(samples, events).SelectMany(SampleScreen.Suspects).ToList();
        issues.AddRange(suspects.Select(sample => new HistoryIssue(HistoryIssueKind.SuspectSample, sample)));
        return new OilHistory(machine, samples, sensors, events, [.. issues.OrderBy(issue => issue.At)], suspects);
    }

    /// <summary>Reads the history of one machine from JSON.</summary>
    /// <remarks>
    /// <para>
    /// What <see cref="ToJson"/> wrote is read back as it was, its issues included. They say that the records have been put in order; which samples are
    /// suspect is judged anew. A document without <c>"issues"</c> is raw: its records are put in order as by <see cref="Create"/>.
    /// </para>
    /// <para>
    /// <c>{ "machine": { "id": "…", "name": "…", "oil": { "name": "…" }, "oilLitres": 900, "runningCelsius": 55, "standstillCelsius": 15 },
    /// "samples": [ { "sampleNumber": "…", "takenAt": "2026-03-14T06:15:00+01:00", "readings": [ { "measurand": "iron", "value": 10, "unit": "mg/kg",
    /// "qualifier": "less-than" } ] } ], "sensorReadings": [], "events": [ { "kind": "oil-change", "at": "…" } ] }</c>. Units as in
    /// <see cref="Measurand.TryConvert"/>. All faults are reported together.
    /// </para>
    /// </remarks>
    /// <param name="json">The text.</param>
    /// <param name="catalog">The measurands that may be named; null for the built-in ones.</param>
    /// <returns>The history.</returns>
    /// <exception cref="FormatException">The text is no history; the message lists every fault with its place.</exception>
    public static OilHistory Parse(string json, MeasurandCatalog? catalog = null) =>
        HistoryReader.Read(Guard.NotNull(json), catalog ?? MeasurandCatalog.BuiltIn);

    /// <summary>The history as JSON, with its issues: machine, oil and records to the last digit and tick.</summary>
    /// <returns>JSON as <see cref="Parse"/> reads it, the same bytes for the same history.</returns>
    public string ToJson() => HistoryJson.Of(this).ToString();

    /// <summary>Writes the document of <see cref="ToJson"/> in UTF-8 on one line, so that a file or a queue of many has one a line.</summary>
    /// <param name="stream">Where to; it is written to at once, line end and all, and stays open.</param>
    public void WriteJson(Stream stream) => HistoryJson.Of(this).WriteTo(stream);

    /// <summary>Records that have been put in order, with what was wrong with them; which samples are suspect is judged anew.</summary>
    internal static OilHistory Restored(
        Machine machine,
        IReadOnlyList<OilSample> samples,
        IReadOnlyList<SensorReading> sensors,
        IReadOnlyList<OilEvent> events,
        IEnumerable<HistoryIssue> issues
    ) =>
        Screened(
            machine,
            [.. samples],
            [.. sensors],
            [.. events],
            [.. issues.Where(issue => issue.Kind != HistoryIssueKind.SuspectSample)]
        );

    /// <summary>The same records as they were known at a moment: what came later is gone, and does not help to judge what came before.</summary>
    /// <param name="asOf">The moment; records of that moment are kept.</param>
    /// <returns>The history up to then; this one when nothing is later.</returns>
    public OilHistory Until(DateTimeOffset asOf) => EndsBy(asOf) ? this : CutAfter(asOf);

    private bool EndsBy(DateTimeOffset asOf) =>
        (Samples.Count == 0 || Samples[Samples.Count - 1].TakenAt <= asOf)
        && (SensorReadings.Count == 0 || SensorReadings[SensorReadings.Count - 1].At <= asOf)
        && (Events.Count == 0 || Events[Events.Count - 1].At <= asOf);

    private OilHistory CutAfter(DateTimeOffset asOf)
    {
        var samples = Samples.Where(sample => sample.TakenAt <= asOf).ToList();
        var sensors = SensorReadings.Where(reading => reading.At <= asOf).ToList();
        var events = Events.Where(one => one.At <= asOf).ToList();
        return Restored(Machine, samples, sensors, events, Issues.Where(issue => issue.At <= asOf));
    }

    /// <summary>A clock or a time zone may be wrong by a day without anybody's fault (our choice).</summary>
    private static readonly TimeSpan ClockTolerance = TimeSpan.FromHours(24);

    /// <summary>Whether a moment is later than another by more than a clock's error.</summary>
    internal static bool IsWrongDate(DateTimeOffset at, DateTimeOffset asOf) => at > asOf + ClockTolerance;

    /// <summary>The records up to a moment, with an issue for each sample that is dated later, and one for all sensor readings that are later than a clock's error.</summary>
    internal OilHistory JudgedAt(DateTimeOffset asOf) => EndsBy(asOf) ? this : JudgedAfter(asOf);

    private OilHistory JudgedAfter(DateTimeOffset asOf)
    {
        var known = CutAfter(asOf);
        var later = Samples
            .Where(sample => sample.TakenAt > asOf)
            .Select(sample => new HistoryIssue(HistoryIssueKind.DatedLater, sample))
            .Concat(
                SensorReadings
                    .Where(one => IsWrongDate(one.At, asOf))
                    .Take(1)
                    .Select(row => new HistoryIssue(HistoryIssueKind.DatedLater, row))
            )
            .ToList();
        return later.Count == 0
            ? known
            : new OilHistory(
                Machine,
                known.Samples,
                known.SensorReadings,
                known.Events,
                [.. known.Issues.Concat(later).OrderBy(issue => issue.At)],
                known.suspect
            );
    }

    /// <summary>The first moment of which anything is recorded; false when nothing is.</summary>
    /// <param name="at">The moment.</param>
    /// <returns>Whether there is any record.</returns>
    public bool TryFirstRecord(out DateTimeOffset at)
    {
        DateTimeOffset? sampled = Samples.Count > 0 ? Samples[0].TakenAt : null;
        DateTimeOffset? read = SensorReadings.Count > 0 ? SensorReadings[0].At : null;
        var first = read is null || sampled <= read ? sampled : read;
        at = first ?? default;
        return first is not null;
    }

    /// <summary>The charge that is in the machine at a moment: since the last oil change, or else since the first record.</summary>
    /// <param name="asOf">The moment.</param>
    /// <returns>The charge; undated and since the moment itself where nothing is recorded up to then.</returns>
    public OilCharge ChargeAt(DateTimeOffset asOf)
    {
        var starts = OilCharge.Starts(Events.Where(one => one.At <= asOf));
        return starts.Count > 0
            ? new OilCharge(starts[starts.Count - 1], isDated: true)
            : new OilCharge(TryFirstRecord(out var first) && first <= asOf ? first : asOf, isDated: false);
    }

    /// <summary>The samples of each charge that has any, in order of time.</summary>
    internal IEnumerable<IReadOnlyList<OilSample>> SamplesByCharge() => ChargesOf(Samples, Events);

    /// <summary>Whether a sample seems to belong to another oil.</summary>
    /// <param name="sample">A sample of this history.</param>
    /// <returns>True when it is reported as suspect.</returns>
    public bool IsSuspect(OilSample sample) => suspect.Count > 0 && suspect.Contains(sample);

    /// <summary>The laboratory readings of one measurand in a span of time.</summary>
    /// <remarks>
    /// Readings of suspect samples, and readings by another method than the latest one where both methods are known, are left out and
    /// stand beside the series: two methods on one oil can differ by more than the oil changes.
    /// </remarks>
    /// <param name="measurand">The measurand.</param>
    /// <param name="from">Start of the span, included; it is the origin of the time axis.</param>
    /// <param name="to">End of the span, included.</param>
    /// <returns>The series, with what was left out beside it.</returns>
    public MeasurandSeries SampleSeries(Measurand measurand, DateTimeOffset from, DateTimeOffset to)
    {
        Guard.NotNull(measurand);
        return SeriesOf(measurand, from, SamplesIn(from, to));
    }

    /// <summary>The samples of a span of time, both ends included.</summary>
    internal OilSample[] SamplesIn(DateTimeOffset from, DateTimeOffset to) =>
        [.. Samples.Where(sample => sample.TakenAt >= from && sample.TakenAt <= to)];

    /// <summary>The same of samples that are at hand, which series of several measurands share where all of them count.</summary>
    internal MeasurandSeries SeriesOf(Measurand measurand, DateTimeOffset from, OilSample[] samples)
    {
        var method = "";
        var areAllPoints = true;
        foreach (var sample in samples)
        {
            if (!sample.Readings.TryGetValue(measurand, out var reading) || IsSuspect(sample))
            {
                areAllPoints = false;
            }
            else if (reading.Method.Length > 0)
            {
                areAllPoints &= method.Length == 0 || IsSameMethod(reading.Method, method);
                method = reading.Method;
            }
        }

        return areAllPoints
            ? new MeasurandSeries(measurand, from, samples, [])
            : PointsOf(measurand, from, samples, method);
    }

    /// <summary>The series of the samples that have the measurand, are sound and do not name another method.</summary>
    private MeasurandSeries PointsOf(Measurand measurand, DateTimeOffset from, OilSample[] samples, string method)
    {
        LeftOutReason? ReasonAgainst(OilSample sample) =>
            IsSuspect(sample) ? LeftOutReason.SuspectSample
            : sample.Readings[measurand].Method is { Length: > 0 } own && !IsSameMethod(own, method)
                ? LeftOutReason.OtherMethod
            : null;
        bool IsPoint(OilSample sample) => sample.Readings.ContainsKey(measurand) && ReasonAgainst(sample) is null;
        var leftOut =
            from sample in samples
            where sample.Readings.ContainsKey(measurand)
            let reason = ReasonAgainst(sample)
            where reason is not null
            select ((IPointSource)sample).PointOf(measurand).LeftOutBecause(reason.Value);
        return new MeasurandSeries(measurand, from, Array.FindAll(samples, IsPoint), leftOut.ToArray());
    }

    private static bool IsSameMethod(string one, string other) =>
        string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    /// <summary>The sensor readings of one measurand in a span of time.</summary>
    /// <remarks>
    /// Water content comes from relative saturation and oil temperature by the oil's saturation curve where no sensor reads it itself; at saturation it is a
    /// bound, 'more than'. Readings of one minute are not sixty samples an hour: state an interval, and of each that has any the middle reading by
    /// value stands for it (the lower of the two middle ones of an even number).
    /// </remarks>
    /// <param name="measurand">The measurand.</param>
    /// <param name="from">Start of the span, included; it is the origin of the time axis and of the intervals.</param>
    /// <param name="to">End of the span, included.</param>
    /// <param name="interval">Interval for which one reading stands, above 0; null for every reading.</param>
    /// <returns>The series; empty where no sensor reads the measurand.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The interval is not above 0.</exception>
    /// <example>
    /// <code>
    /// var daily = history.SensorSeries(Measurands.WaterContent, from, asOf, TimeSpan.FromDays(1));
    /// var trend = SeriesTrend.Of(daily);
    /// </code>
    /// </example>
    public MeasurandSeries SensorSeries(
        Measurand measurand,
        DateTimeOffset from,
        DateTimeOffset to,
        TimeSpan? interval = null
    )
    {
        var points = SensorPoints.Of(this, Guard.NotNull(measurand), from, to);
        if (interval is { } each)
        {
            Guard.Positive(each.TotalHours, "h", nameof(interval));
            points = SensorPoints.Thinned(points, from, each);
        }

        return new MeasurandSeries(measurand, from, [.. points], []);
    }

    private static OilSample WithoutImplausible(OilSample sample, List<HistoryIssue> issues)
    {
        var bad = Implausible(sample.Readings);
        if (bad.Count == 0)
        {
            return sample;
        }

        issues.Add(new HistoryIssue(HistoryIssueKind.ImplausibleReading, sample, bad));
        return sample.With(Without(sample.Readings, bad));
    }

    private static SensorReading WithoutImplausible(SensorReading reading, List<HistoryIssue> issues)
    {
        var bad = Implausible(reading.Readings);
        if (bad.Count == 0)
        {
            return reading;
        }

        issues.Add(new HistoryIssue(HistoryIssueKind.ImplausibleReading, reading, bad));
        return new SensorReading(reading.At, Without(reading.Readings, bad));
    }

    private static Dictionary<Measurand, Reading> Implausible(IReadOnlyDictionary<Measurand, Reading> readings) =>
        readings
            .Where(pair => !pair.Key.IsPlausible(pair.Value.Value))
            .ToDictionary(pair => pair.Key, pair => pair.Value);

    private static Dictionary<Measurand, Reading> Without(
        IReadOnlyDictionary<Measurand, Reading> readings,
        Dictionary<Measurand, Reading> bad
    ) => readings.Where(pair => !bad.ContainsKey(pair.Key)).ToDictionary(pair => pair.Key, pair => pair.Value);

    private static IEnumerable<IReadOnlyList<OilSample>> ChargesOf(
        IReadOnlyList<OilSample> samples,
        IReadOnlyList<OilEvent> events
    )
    {
        var starts = OilCharge.Starts(events);
        return samples.GroupBy(sample => starts.Count(at => at <= sample.TakenAt)).Select(group => group.ToList());
    }

    /// <summary>What is on record.</summary>
    /// <returns>For example <c>M1: 13 samples, 96 sensor readings, 2 events, 1 issues</c>.</returns>
    public override string ToString() =>
        $"{Machine.Id}: {Samples.Count} samples, {SensorReadings.Count} sensor readings, {Events.Count} events, {Issues.Count} issues";
}
