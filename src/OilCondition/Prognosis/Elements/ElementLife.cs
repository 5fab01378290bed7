using OilCondition.Statistics;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Prognosis;

/// <summary>When a filter element is spent, from the rise of its pressure drop.</summary>
/// <remarks>
/// Each reading gives the share of the dirt capacity that is used (<see cref="FilterElement.ShareUsed"/>), which rises in a straight line where dirt
/// comes in evenly. Below a share of 0.3 the drop has risen by less than 3 % of its span, and the scatter of a gauge hides it: those readings are not
/// used. The line is carried on to 1, with its interval. A change of bypass, of oil or of the dirt that comes in breaks the line.
/// </remarks>
/// <example>
/// <code>
/// var life = ElementLife.Of(element, readings, asOf);
/// if (life.Outcome == ElementLife.ElementOutcome.Rising) { /* life.Arrival: expected between two ends */ }
/// </code>
/// </example>
public sealed class ElementLife
{
    private const double LeastShare = 0.3;
    private const int Fewest = 3;

    private ElementLife(ElementOutcome outcome, Arrival<DateTimeOffset> arrival, Ratio used, int count)
    {
        Outcome = outcome;
        Arrival = arrival;
        ShareUsed = used;
        Count = count;
    }

    /// <summary>What the readings tell.</summary>
    public ElementOutcome Outcome { get; }

    /// <summary>When the terminal drop is reached at rated flow and viscosity.</summary>
    public Arrival<DateTimeOffset> Arrival { get; }

    /// <summary>Share of the dirt capacity that is used by the last reading; 0 where there is none.</summary>
    public Ratio ShareUsed { get; }

    /// <summary>Readings that the line rests on.</summary>
    public int Count { get; }

    /// <summary>Judges the readings of one element since it was fitted.</summary>
    /// <param name="element">The element.</param>
    /// <param name="readings">Its readings, in any order.</param>
    /// <param name="asOf">Now: later readings are not looked at.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>When it is spent, or why that cannot be told.</returns>
    /// <exception cref="ArgumentNullException">The element, the readings or one of them is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static ElementLife Of(
        FilterElement element,
        IEnumerable<ElementReading> readings,
        DateTimeOffset asOf,
        double confidence = 0.9
    )
    {
        Guard.NotNull(element);
        Guard.Moment(asOf);
        Guard.OpenUnitInterval(confidence);
        var known = Guard
            .NotNull(readings)
            .Select(reading => Guard.NotNull(reading, nameof(readings)))
            .Where(reading => reading.At <= asOf)
            .OrderBy(reading => reading.At)
            .ToList();
        var shares = known.ConvertAll(reading => element.ShareUsed(reading).DecimalFractions);
        var used = Ratio.FromDecimalFractions(shares.Count > 0 ? shares[shares.Count - 1] : 0);
        ElementLife Told(ElementOutcome outcome, Arrival<DateTimeOffset> arrival, int count) =>
            new(outcome, arrival, used, count);

        if (used.DecimalFractions >= 1)
        {
            var first = shares.FindIndex(share => share >= 1);
            return Told(ElementOutcome.Spent, new Arrival<DateTimeOffset>.Already(known[first].At), known.Count);
        }

        var rows = Enumerable.Range(0, known.Count).Where(i => shares[i] >= LeastShare).ToList();
        if (rows.Count < Fewest)
        {
            return Told(
                known.Count < Fewest || rows.Count > 0 ? ElementOutcome.TooFewReadings : ElementOutcome.NoRiseShown,
                new Arrival<DateTimeOffset>.NotDetermined(),
                rows.Count
            );
        }

        double[] days = [.. rows.Select(i => (known[i].At - asOf).TotalDays)];
        var line = StraightLine.Fit(days, [.. rows.Select(i => shares[i])]);
        if (!line.IsDetermined)
        {
            return Told(ElementOutcome.TooFewReadings, new Arrival<DateTimeOffset>.NotDetermined(), rows.Count);
        }

        return When(line, asOf, confidence) is { } when
            ? Told(ElementOutcome.Rising, when, rows.Count)
            : Told(ElementOutcome.NoRiseShown, new Arrival<DateTimeOffset>.NotDetermined(), rows.Count);
    }

    /// <summary>The life in one line.</summary>
    /// <returns>For example <c>62 % used, rising: spent on 2026-09-01 (2026-08-10 to 2026-10-02)</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(ShareUsed.Percent)} % used, {PlainText.Spaced(Outcome)}"
        + Arrival switch
        {
            Arrival<DateTimeOffset>.Already it => $" on {PlainText.Date(it.At)}",
            Arrival<DateTimeOffset>.Expected it =>
                $": spent on {PlainText.Date(it.Estimate)} ({PlainText.Date(it.Earliest)} to {PlainText.Date(it.Latest)})",
            Arrival<DateTimeOffset>.NotBefore it => $": not before {PlainText.Date(it.Earliest)}",
            _ => "",
        };

    /// <summary>Where the line crosses 1; null where its slope may be none.</summary>
    private static Arrival<DateTimeOffset>? When(StraightLine line, DateTimeOffset asOf, double confidence)
    {
        var below = (1 - confidence) / 2;
        if (
            !(line.SlopeInterval(confidence).Lower > 0)
            || !line.TryCrossing(1, 0.5, BandKind.Mean, out var middle)
            || !line.TryCrossing(1, below, BandKind.Mean, out var early)
            || !(MomentAt(asOf, middle) is { } estimate)
        )
        {
            return null;
        }

        var earliest = MomentAt(asOf, Math.Min(early, middle)) ?? asOf;
        return line.TryCrossing(1, 1 - below, BandKind.Mean, out var late) && MomentAt(asOf, late) is { } latest
            ? new Arrival<DateTimeOffset>.Expected(earliest, estimate, latest, confidence)
            : new Arrival<DateTimeOffset>.NotBefore(earliest, confidence);
    }

    /// <summary>A moment ahead, not before now; null where no calendar reaches so far.</summary>
    private static DateTimeOffset? MomentAt(DateTimeOffset asOf, double days) =>
        days > 365.25 * (Guard.LastYear - asOf.Year) ? null : asOf + Elapsed.FromDays(Math.Max(0, days));

    /// <summary>What the readings of an element tell.</summary>
    public enum ElementOutcome
    {
        /// <summary>It fills: see when.</summary>
        Rising,

        /// <summary>The terminal drop is reached.</summary>
        Spent,

        /// <summary>No rise stands out from the scatter.</summary>
        NoRiseShown,

        /// <summary>Fewer than three readings that show a rise.</summary>
        TooFewReadings,
    }
}
