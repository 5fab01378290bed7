using System.Globalization;
using System.Reflection;
using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>How to read a laboratory's CSV files: separators, dates, and which column is what.</summary>
public sealed class ColumnMap
{
    internal ColumnMap(
        IReadOnlyList<string> machine,
        IReadOnlyList<string> sampleNumber,
        IReadOnlyList<string> takenAt,
        IReadOnlyList<LabColumn> columns,
        IReadOnlyList<string> dateFormats,
        TimeSpan offsetFromUtc,
        char decimalSeparator,
        char? delimiter
    )
    {
        Machine = machine;
        SampleNumber = sampleNumber;
        TakenAt = takenAt;
        Columns = columns;
        DateFormats = dateFormats;
        OffsetFromUtc = offsetFromUtc;
        DecimalSeparator = decimalSeparator;
        Delimiter = delimiter;
    }

    /// <summary>A sensible map for files with plain English headers, ISO dates and decimal points.</summary>
    public static ColumnMap Default { get; } = ReadDefault();

    /// <summary>Names of the column with the machine's id.</summary>
    public IReadOnlyList<string> Machine { get; }

    /// <summary>Names of the column with the sample number.</summary>
    public IReadOnlyList<string> SampleNumber { get; }

    /// <summary>Names of the column with the date and time of sampling.</summary>
    public IReadOnlyList<string> TakenAt { get; }

    /// <summary>The columns with readings.</summary>
    public IReadOnlyList<LabColumn> Columns { get; }

    /// <summary>Date formats besides ISO 8601, which is always understood.</summary>
    public IReadOnlyList<string> DateFormats { get; }

    /// <summary>Offset from UTC of dates that state none.</summary>
    public TimeSpan OffsetFromUtc { get; }

    /// <summary>Point or comma.</summary>
    public char DecimalSeparator { get; }

    /// <summary>Field delimiter; null to take the most frequent of comma, semicolon and tab in the header.</summary>
    public char? Delimiter { get; }

    /// <summary>Reads a column map from JSON.</summary>
    /// <remarks>
    /// <c>{ "delimiter": ";", "decimalSeparator": ",", "dateFormats": ["dd.MM.yyyy"], "offsetFromUtc": "+01:00",
    /// "machine": ["…"], "sampleNumber": ["…"], "takenAt": ["…"],
    /// "columns": [ { "names": ["…"], "measurand": "water-content", "unit": "ppm", "detectionLimit": 10 } ] }</c>.
    /// What is left out is taken from <see cref="Default"/>; given columns come before the default ones.
    /// </remarks>
    /// <param name="json">The text.</param>
    /// <param name="catalog">The measurands that may be named; null for the built-in ones.</param>
    /// <returns>The map.</returns>
    /// <exception cref="FormatException">The text is not a column map; the message lists every fault with its place.</exception>
    public static ColumnMap Parse(string json, MeasurandCatalog? catalog = null) =>
        ColumnMapReader.Read(Guard.NotNull(json), catalog ?? MeasurandCatalog.BuiltIn, Default);

    internal bool TryParseDate(string text, out DateTimeOffset at)
    {
        const DateTimeStyles Styles = DateTimeStyles.AllowWhiteSpaces;
        foreach (var format in IsoFormats.Concat(DateFormats))
        {
            if (format[^1] == 'K')
            {
                if (
                    DateTimeOffset.TryParseExact(
                        text,
                        format,
                        CultureInfo.InvariantCulture,
                        Styles | DateTimeStyles.AssumeUniversal,
                        out at
                    )
                    && HasOffset(text)
                    && Guard.IsMoment(at.DateTime)
                )
                {
                    return true;
                }
            }
            else if (
                DateTime.TryParseExact(text, format, CultureInfo.InvariantCulture, Styles, out var local)
                && Guard.IsMoment(local)
            )
            {
                at = new DateTimeOffset(DateTime.SpecifyKind(local, DateTimeKind.Unspecified), OffsetFromUtc);
                return true;
            }
        }

        at = default;
        return false;
    }

    private static readonly string[] IsoFormats =
    [
        "yyyy-MM-dd",
        "yyyy-MM-ddTHH:mm",
        "yyyy-MM-dd HH:mm",
        "yyyy-MM-ddTHH:mm:ss",
        "yyyy-MM-dd HH:mm:ss",
        "yyyy-MM-ddTHH:mmK",
        "yyyy-MM-ddTHH:mm:ssK",
        "yyyy-MM-ddTHH:mm:ss.FFFFFFFK",
    ];

    private static bool HasOffset(string text) =>
        text.TrimEnd().EndsWith("Z", StringComparison.OrdinalIgnoreCase) || text.LastIndexOfAny(['+', '-']) > 9;

    private static ColumnMap ReadDefault()
    {
        using var stream =
            Assembly.GetExecutingAssembly().GetManifestResourceStream("default-columns.json")
            ?? throw new InvalidOperationException("The default column map is missing from the assembly.");
        using var reader = new StreamReader(stream);
        return ColumnMapReader.Read(reader.ReadToEnd(), MeasurandCatalog.BuiltIn, basis: null);
    }
}
