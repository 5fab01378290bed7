using System.Globalization;

namespace OilCondition;

/// <summary>Brings records into one order whatever order they came in, and keeps each of them once.</summary>
internal static class RecordOrder
{
    /// <summary>
    /// Numbers that begin anew each year come back after about a year, whereas a mistyped date is mostly out by days or by day and month.
    /// Common practice, no source.
    /// </summary>
    private static readonly TimeSpan NumberIsFreeAgain = TimeSpan.FromDays(182);

    private static readonly Comparer<SensorReading> ByMomentAndContent = Comparer<SensorReading>.Create(
        (one, other) =>
        {
            // The content is spelt out only where two rows stand at one moment: logs are long.
            var byMoment = one.At.CompareTo(other.At);
            return byMoment != 0 ? byMoment : string.CompareOrdinal(Content(one.Readings), Content(other.Readings));
        }
    );

    /// <summary>The samples in order of time, each bottle once.</summary>
    public static List<OilSample> Samples(IEnumerable<OilSample> samples, List<HistoryIssue> issues)
    {
        var kept = new List<OilSample>();
        var byNumber = samples
            .GroupBy(sample => sample.IsNumbered ? sample.SampleNumber : "", StringComparer.Ordinal)
            .OrderBy(number => number.Key, StringComparer.Ordinal);
        foreach (var number in byNumber)
        {
            var bottles = number
                .GroupBy(sample => sample.TakenAt.UtcTicks)
                .OrderBy(moment => moment.Key)
                .Select(moment => OneBottle(moment, issues))
                .ToList();
            if (number.Key.Length == 0)
            {
                kept.AddRange(bottles);
                continue;
            }

            var believed = new List<OilSample>();
            foreach (var bottle in bottles)
            {
                if (believed.Exists(earlier => IsUnderAnotherDate(bottle, earlier)))
                {
                    issues.Add(new HistoryIssue(HistoryIssueKind.ConflictingSample, bottle));
                }
                else
                {
                    believed.Add(bottle);
                }
            }

            kept.AddRange(believed);
        }

        return
        [
            .. kept.OrderBy(sample => sample.TakenAt).ThenBy(sample => sample.SampleNumber, StringComparer.Ordinal),
        ];
    }

    /// <summary>Whether a bottle is an earlier one of the same number, reported again under another date.</summary>
    private static bool IsUnderAnotherDate(OilSample later, OilSample earlier) =>
        later.TakenAt - earlier.TakenAt < NumberIsFreeAgain
        || (later.Readings.Count >= 2 && Content(later.Readings) == Content(earlier.Readings));

    /// <summary>The rows in order of time; a row that is there twice, as in logs that overlap, counts once.</summary>
    public static List<SensorReading> Rows(IEnumerable<SensorReading> rows)
    {
        var kept = new List<SensorReading>();
        foreach (var row in rows.OrderBy(row => row, ByMomentAndContent))
        {
            if (kept.Count == 0 || ByMomentAndContent.Compare(kept[kept.Count - 1], row) != 0)
            {
                kept.Add(row);
            }
        }

        return kept;
    }

    /// <summary>The events in order of time; two oil changes of one moment are one.</summary>
    public static List<OilEvent> Events(IEnumerable<OilEvent> events)
    {
        var changes = new HashSet<DateTimeOffset>();
        return
        [
            .. events
                .OrderBy(one => one.At)
                .ThenBy(Words, StringComparer.Ordinal)
                .Where(one => one is not OilChange || changes.Add(one.At)),
        ];
    }

    /// <summary>
    /// One number and one moment is one bottle, however often it was reported: what the reports have between them is put together, and
    /// where two contradict each other neither is believed.
    /// </summary>
    private static OilSample OneBottle(IEnumerable<OilSample> reports, List<HistoryIssue> issues)
    {
        var ordered = reports
            .OrderBy(report => Content(report.Readings), StringComparer.Ordinal)
            .ThenBy(report => report.TakenAt.Offset)
            .ThenBy(report => Content(report.Texts), StringComparer.Ordinal)
            .ToList();
        if (ordered.Count == 1)
        {
            return ordered[0];
        }

        var together = new Dictionary<Measurand, Reading>();
        var contradicted = new HashSet<Measurand>();
        foreach (var pair in ordered.SelectMany(report => report.Readings))
        {
            if (!together.TryGetValue(pair.Key, out var other) || IsSameButForMethod(other, pair.Value))
            {
                together[pair.Key] = other.Method.Length > 0 ? other : pair.Value;
            }
            else if (other != pair.Value)
            {
                contradicted.Add(pair.Key);
            }
        }

        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var report in ordered)
        {
            var contradictions = report.Readings.Where(pair => contradicted.Contains(pair.Key)).ToList();
            var isCopy = !seen.Add(Content(report.Readings));
            if (contradictions.Count > 0 && !isCopy)
            {
                var aside = contradictions.ToDictionary(pair => pair.Key, pair => pair.Value);
                issues.Add(new HistoryIssue(HistoryIssueKind.ConflictingSample, report, aside));
            }
            else if (isCopy || (contradicted.Count == 0 && seen.Count > 1))
            {
                issues.Add(new HistoryIssue(HistoryIssueKind.RepeatedSample, report));
            }
        }

        var kept = together.Where(pair => !contradicted.Contains(pair.Key));
        return new OilSample(
            ordered[0].SampleNumber,
            ordered[0].TakenAt,
            kept.ToDictionary(pair => pair.Key, pair => pair.Value),
            TextsOf(ordered)
        );
    }

    /// <summary>Texts of all reports of a bottle; where two differ under one header, both are kept.</summary>
    private static Dictionary<string, string> TextsOf(IEnumerable<OilSample> reports) =>
        reports
            .SelectMany(report => report.Texts)
            .GroupBy(text => text.Key, StringComparer.Ordinal)
            .ToDictionary(
                header => header.Key,
                header =>
                    string.Join(
                        " | ",
                        header
                            .Select(text => text.Value)
                            .Distinct(StringComparer.Ordinal)
                            .OrderBy(text => text, StringComparer.Ordinal)
                    ),
                StringComparer.Ordinal
            );

    /// <summary>A report that names no method does not contradict one that does.</summary>
    private static bool IsSameButForMethod(Reading one, Reading other) =>
        one.Value.Equals(other.Value)
        && one.Qualifier == other.Qualifier
        && (one.Method.Length == 0 || other.Method.Length == 0);

    private static string Content(IReadOnlyDictionary<Measurand, Reading> readings) =>
        string.Join(
            "|",
            readings
                .OrderBy(pair => pair.Key.Id, StringComparer.Ordinal)
                .Select(pair => $"{pair.Key.Id} {Exact(pair.Value.Value)} {pair.Value.Qualifier} {pair.Value.Method}")
        );

    private static string Content(IReadOnlyDictionary<string, string> texts) =>
        string.Join(
            "|",
            texts.OrderBy(text => text.Key, StringComparer.Ordinal).Select(text => $"{text.Key} {text.Value}")
        );

    private static string Words(OilEvent one) =>
        one switch
        {
            TopUp topUp => "top-up " + Exact(topUp.Volume.Liters),
            TreatmentRun run => $"treatment {run.Measurand.Id} {run.Kind} {Exact(run.Target)} {run.EndedAt?.UtcTicks}",
            _ => "",
        };

    private static string Exact(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
