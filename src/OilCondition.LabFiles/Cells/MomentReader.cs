using System.Globalization;
using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>Reads dates and times, and turns local ones into moments by the map's zone.</summary>
internal sealed class MomentReader(ColumnMap map)
{
    private const DateTimeStyles Styles = DateTimeStyles.AllowWhiteSpaces;

    /// <summary>What can only be read in one way: ISO 8601, and dates with the month's name.</summary>
    private static readonly string[] Understood =
    [
        "yyyy-MM-dd",
        "yyyy-MM-dd HH:mm",
        "yyyy-MM-dd HH:mm:ss",
        "yyyy-MM-ddTHH:mm",
        "yyyy-MM-ddTHH:mm:ss",
        "yyyy-MM-dd HH:mm:ss.FFFFFFF",
        "yyyy-MM-ddTHH:mm:ss.FFFFFFF",
        "yyyyMMdd",
        "yyyy/MM/dd",
        "yyyy/MM/dd HH:mm",
        "yyyy/MM/dd HH:mm:ss",
        "d-MMM-yyyy",
        "d-MMM-yyyy HH:mm",
        "d MMM yyyy",
        "d MMM yyyy HH:mm",
        "d MMMM yyyy",
        "MMM d, yyyy",
        "MMMM d, yyyy",
    ];

    private static readonly string[] WithOffset =
    [
        "yyyy-MM-ddTHH:mmK",
        "yyyy-MM-ddTHH:mm:ssK",
        "yyyy-MM-ddTHH:mm:ss.FFFFFFFK",
        "yyyy-MM-dd HH:mmK",
        "yyyy-MM-dd HH:mm:ssK",
        "yyyy-MM-dd HH:mm:ss.FFFFFFFK",
    ];

    private static readonly string[] Times =
    [
        "HH:mm",
        "HH:mm:ss",
        "HH:mm:ss.FFFFFFF",
        "H:mm",
        "H:mm:ss",
        "h:mm tt",
        "h:mm:ss tt",
    ];

    private readonly string[] formats = [.. map.DateFormats, .. Understood];
    private string lastText = "";
    private DateTime lastLocal;

    /// <summary>Each machine's moment before, by which the second pass through an hour that comes twice is told from the first.</summary>
    private readonly Dictionary<string, DateTimeOffset> before = new(StringComparer.Ordinal);

    /// <summary>Reads a date, and the time of day beside it where there is one.</summary>
    /// <param name="date">The date, or date and time.</param>
    /// <param name="time">The time of day; empty for none.</param>
    /// <param name="machineId">Whose record it is.</param>
    /// <param name="at">The moment.</param>
    /// <param name="remark">Why it is none, or what is to be said of it; empty for nothing.</param>
    public bool TryRead(
        ReadOnlySpan<char> date,
        string time,
        string machineId,
        out DateTimeOffset at,
        out string remark
    )
    {
        if (map.DateFormats.Count == 0 && TryDay(date, out var day))
        {
            return TryAdd(day, time, machineId, out at, out remark);
        }

        if (!date.SequenceEqual(lastText.AsSpan()))
        {
            var text = date.ToString();
            if (TryWithOffset(text, out at))
            {
                remark =
                    time.Length == 0 ? "" : $"the date states its time; '{PlainText.Cut(time.AsSpan())}' was not used";
                return true;
            }

            if (!TryLocal(text, out lastLocal))
            {
                lastText = "";
                at = default;
                remark = NoDate(text);
                return false;
            }

            lastText = text;
        }

        return TryAdd(lastLocal, time, machineId, out at, out remark);
    }

    /// <summary>A date that a cell holds as such.</summary>
    public bool TryRead(DateTime local, string time, string machineId, out DateTimeOffset at, out string remark)
    {
        if (Guard.IsMoment(local))
        {
            return TryAdd(DateTime.SpecifyKind(local, DateTimeKind.Unspecified), time, machineId, out at, out remark);
        }

        at = default;
        remark = NoDate(local.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        return false;
    }

    private bool TryAdd(DateTime local, string time, string machineId, out DateTimeOffset at, out string remark)
    {
        var isDay = local.TimeOfDay == TimeSpan.Zero;
        if (time.Length > 0)
        {
            if (
                !DateTime.TryParseExact(
                    time,
                    Times,
                    CultureInfo.InvariantCulture,
                    Styles | DateTimeStyles.NoCurrentDateDefault,
                    out var hours
                )
            )
            {
                at = default;
                remark =
                    $"'{PlainText.Cut(time.AsSpan())}' is not a time of day; expected is a form such as 06:15 or 6:15 PM";
                return false;
            }

            local = local.Date + hours.TimeOfDay;
            isDay = false;
        }

        at = InZone(local, isDay, machineId, out remark);
        if (map.TimeZone.SupportsDaylightSavingTime)
        {
            before[machineId] = at;
        }

        return true;
    }

    private DateTimeOffset InZone(DateTime local, bool isDay, string machineId, out string remark)
    {
        var zone = map.TimeZone;
        remark = "";
        if (!zone.SupportsDaylightSavingTime)
        {
            return new DateTimeOffset(local, zone.BaseUtcOffset);
        }

        if (zone.IsInvalidTime(local))
        {
            // The standard offset, in force before the clock went forward, makes it the moment that such a clock would have shown.
            var moment = TimeZoneInfo.ConvertTime(new DateTimeOffset(local, zone.GetUtcOffset(local)), zone);
            remark = isDay
                ? ""
                : $"{local:HH:mm} does not exist on this day in {zone.Id}, the clock goes forward; read as {moment:HH:mm}";
            return moment;
        }

        if (!zone.IsAmbiguousTime(local))
        {
            return new DateTimeOffset(local, zone.GetUtcOffset(local));
        }

        var passes = zone.GetAmbiguousTimeOffsets(local)
            .Select(offset => new DateTimeOffset(local, offset))
            .OrderBy(moment => moment.UtcTicks)
            .ToList();
        var isSecond = before.TryGetValue(machineId, out var last) && last >= passes[0] && last < passes[0].AddHours(2);
        remark = isDay
            ? ""
            : $"{local:HH:mm} comes twice on this day in {zone.Id}, the clock goes back; read as the {(isSecond ? "second" : "first")} one";
        return passes[isSecond ? 1 : 0];
    }

    /// <summary>A day as 2026-03-14, by far the most frequent form: a tenth of the time that the parser of all forms takes.</summary>
    private static bool TryDay(ReadOnlySpan<char> text, out DateTime day)
    {
        day = default;
        if (text.Length != 10 || text[4] != '-' || text[7] != '-')
        {
            return false;
        }

        var digits = 0;
        for (var i = 0; i < text.Length; i++)
        {
            if (i is 4 or 7)
            {
                continue;
            }

            if (text[i] is < '0' or > '9')
            {
                return false;
            }

            digits = 10 * digits + (text[i] - '0');
        }

        var (year, month, dayOfMonth) = (digits / 10_000, digits / 100 % 100, digits % 100);
        if (year is < Guard.FirstYear or > Guard.LastYear || month is < 1 or > 12)
        {
            return false;
        }

        if (dayOfMonth < 1 || dayOfMonth > DateTime.DaysInMonth(year, month))
        {
            return false;
        }

        day = new DateTime(year, month, dayOfMonth);
        return true;
    }

    private bool TryLocal(string text, out DateTime local) =>
        DateTime.TryParseExact(text, formats, CultureInfo.InvariantCulture, Styles, out local) && Guard.IsMoment(local);

    private static bool TryWithOffset(string text, out DateTimeOffset at)
    {
        at = default;
        return HasOffset(text)
            && DateTimeOffset.TryParseExact(
                text,
                WithOffset,
                CultureInfo.InvariantCulture,
                Styles | DateTimeStyles.AssumeUniversal,
                out at
            )
            && Guard.IsMoment(at.DateTime);
    }

    private static bool HasOffset(string text) =>
        text.Length > 10
        && (text[text.Length - 1] is 'Z' or 'z' || text.LastIndexOf('+') > 9 || text.LastIndexOf('-') > 9);

    private string NoDate(string text)
    {
        var forms = string.Join(", ", map.DateFormats.Prepend("ISO 8601 (2026-03-14, 2026-03-14 06:15)"));
        return $"'{PlainText.Cut(text.AsSpan())}' is not a date; expected: {forms}, in the years {Guard.FirstYear} to {Guard.LastYear}";
    }
}
