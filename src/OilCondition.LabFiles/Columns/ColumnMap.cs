using System.Reflection;
using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>How to read a laboratory's files: separators, dates, encoding, and which column is what.</summary>
/// <remarks>
/// Every list of names is compared without regard to case, blanks, brackets, hyphens and points. The ids and names of all measurands are known as
/// headers without being listed. <c>docs/files.md</c> has every field.
/// </remarks>
public sealed record ColumnMap
{
    private HeaderIndex? index;

    internal ColumnMap(MeasurandCatalog catalog) => Catalog = catalog;

    /// <summary>A map for files with English headers, unambiguous dates and decimal points.</summary>
    public static ColumnMap Default { get; } = ReadDefault();

    /// <summary>Names of the column with the machine's id.</summary>
    public IReadOnlyList<string> Machine { get; internal init; } = [];

    /// <summary>Names of the column with the sample number.</summary>
    public IReadOnlyList<string> SampleNumber { get; internal init; } = [];

    /// <summary>Names of the column with the date, or date and time, of sampling.</summary>
    public IReadOnlyList<string> TakenAt { get; internal init; } = [];

    /// <summary>Names of a column with the time of day, beside one with the date.</summary>
    public IReadOnlyList<string> TimeOfDay { get; internal init; } = [];

    /// <summary>Names of a column with the temperature at which a viscosity was measured.</summary>
    public IReadOnlyList<string> TestTemperature { get; internal init; } = [];

    /// <summary>Names of viscosities whose temperature stands in the header behind the name, or in a column of its own.</summary>
    public IReadOnlyList<string> Viscosity { get; internal init; } = [];

    /// <summary>Names of columns with codes after ISO 4406.</summary>
    public IReadOnlyList<string> CleanlinessCode { get; internal init; } = [];

    /// <summary>The columns with readings, the user's before the default ones.</summary>
    public IReadOnlyList<LabColumn> Columns { get; internal init; } = [];

    /// <summary>What stands in a cell without a reading, besides nothing.</summary>
    public IReadOnlyList<string> Blank { get; internal init; } = [];

    /// <summary>The machine of a file that has no column for it; empty where it must have one.</summary>
    public string ConstantMachine { get; internal init; } = "";

    /// <summary>The sample number of a file that has no column for it; empty for none.</summary>
    public string ConstantSampleNumber { get; internal init; } = "";

    /// <summary>The date of a file that has no column for it; empty where it must have one.</summary>
    public string ConstantTakenAt { get; internal init; } = "";

    /// <summary>Date formats besides those that are always understood: ISO 8601 and dates with the month's name.</summary>
    public IReadOnlyList<string> DateFormats { get; internal init; } = [];

    /// <summary>The zone of dates that state no offset.</summary>
    public TimeZoneInfo TimeZone { get; internal init; } = TimeZoneInfo.Utc;

    /// <summary>Point or comma; null where nobody says: then it is a point, and a comma may only group thousands.</summary>
    public char? DecimalSeparator { get; internal init; }

    /// <summary>Field delimiter; null to take the one that gives a header.</summary>
    public char? Delimiter { get; internal init; }

    /// <summary>Encoding of files without byte order mark, such as <c>windows-1252</c>; empty for UTF-8.</summary>
    public string Encoding { get; internal init; } = "";

    /// <summary>The measurands that files may hold.</summary>
    internal MeasurandCatalog Catalog { get; }

    /// <summary>All names, made ready to be compared with headers.</summary>
    internal HeaderIndex Index => index ??= new HeaderIndex(this);

    /// <summary>Reads a column map from JSON.</summary>
    /// <remarks>
    /// <c>{ "delimiter": ";", "decimalSeparator": ",", "dateFormats": ["dd.MM.yyyy"], "timeZone": "Europe/Berlin",
    /// "constants": { "machine": "M1" }, "machine": ["…"], "sampleNumber": ["…"], "takenAt": ["…"],
    /// "columns": [ { "names": ["…"], "measurand": "water-content", "unit": "ppm", "detectionLimit": 10 } ] }</c>.
    /// What is left out is taken from <see cref="Default"/>; given columns come before the default ones.
    /// </remarks>
    /// <param name="json">The text.</param>
    /// <param name="catalog">The measurands that may be named; null for the built-in ones.</param>
    /// <returns>The map.</returns>
    /// <exception cref="FormatException">The text is not a column map; the message lists every fault with its place.</exception>
    public static ColumnMap Parse(string json, MeasurandCatalog? catalog = null) =>
        ColumnMapReader.Read(Guard.NotNull(json), catalog ?? MeasurandCatalog.BuiltIn, Default);

    /// <summary>This map for the file of one machine, which has no column for it.</summary>
    /// <param name="machineId">The machine's id.</param>
    /// <returns>A new map. A file that does have a column for the machine is read by the column.</returns>
    /// <exception cref="ArgumentException">The id is blank.</exception>
    public ColumnMap ForMachine(string machineId) => this with { ConstantMachine = Guard.NotBlank(machineId) };

    /// <summary>How many columns it knows, and in which zone dates are.</summary>
    /// <returns>For example <c>column map: 45 measurands, dates in UTC</c>.</returns>
    public override string ToString() =>
        $"column map: {Catalog.All.Count} measurands, dates in {TimeZone.Id}{(ConstantMachine.Length == 0 ? "" : ", machine " + ConstantMachine)}";

    private static ColumnMap ReadDefault()
    {
        using var stream =
            Assembly.GetExecutingAssembly().GetManifestResourceStream("default-columns.json")
            ?? throw new InvalidOperationException("The default column map is missing from the assembly.");
        using var reader = new StreamReader(stream);
        return ColumnMapReader.Read(reader.ReadToEnd(), MeasurandCatalog.BuiltIn, basis: null);
    }
}
