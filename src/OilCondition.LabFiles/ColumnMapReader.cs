using System.Globalization;
using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>Reads column maps and reports every fault with its place in the document.</summary>
internal sealed class ColumnMapReader(MeasurandCatalog catalog)
{
    private static readonly string[] Names =
    [
        "delimiter",
        "decimalSeparator",
        "dateFormats",
        "offsetFromUtc",
        "machine",
        "sampleNumber",
        "takenAt",
        "columns",
        "note",
    ];

    public static ColumnMap Read(string json, MeasurandCatalog catalog, ColumnMap? basis) =>
        JsonEntry.Read(json, JsonFormat.ColumnMap, root => new ColumnMapReader(catalog).Map(root, basis));

    private ColumnMap Map(JsonEntry root, ColumnMap? basis)
    {
        root.Known(Names);
        var columns = root.ListIfAny("columns", Column);
        return new ColumnMap(
            root.TextsIfAny("machine") ?? basis?.Machine ?? [],
            root.TextsIfAny("sampleNumber") ?? basis?.SampleNumber ?? [],
            root.TextsIfAny("takenAt") ?? basis?.TakenAt ?? [],
            [.. columns, .. basis?.Columns ?? []],
            root.TextsIfAny("dateFormats") ?? [],
            Offset(root),
            Character(root, "decimalSeparator", ".,") ?? '.',
            Character(root, "delimiter", ",;\t|")
        );
    }

    private LabColumn? Column(JsonEntry entry)
    {
        entry.Known("names", "measurand", "unit", "detectionLimit", "method", "note");
        var names = entry.TextsIfAny("names");
        if (names is null && !entry.Has("names"))
        {
            entry.Fault("names", "a list of texts is expected.");
        }

        var id = entry.Text("measurand");
        var detectionLimit = entry.NumberIfAny("detectionLimit");
        if (names is null || id is null)
        {
            return null;
        }

        if (!catalog.TryFind(id, out var measurand))
        {
            entry.Fault("measurand", $"'{id}' is not a known measurand; did you mean '{catalog.Nearest(id)}'?");
            return null;
        }

        return entry.Made(() =>
            new LabColumn(names, measurand!, entry.TextOrEmpty("unit"), detectionLimit, entry.TextOrEmpty("method"))
        );
    }

    private static TimeSpan Offset(JsonEntry root)
    {
        if (!root.Has("offsetFromUtc") || root.Text("offsetFromUtc") is not { } text)
        {
            return TimeSpan.Zero;
        }

        var digits = text.TrimStart('+', '-');
        if (
            TimeSpan.TryParseExact(digits, @"hh\:mm", CultureInfo.InvariantCulture, out var offset)
            && offset.TotalHours <= 14
        )
        {
            return text[0] == '-' ? -offset : offset;
        }

        root.Fault("offsetFromUtc", $"'{text}'; expected is a form such as +01:00, up to 14 hours.");
        return TimeSpan.Zero;
    }

    private static char? Character(JsonEntry root, string name, string allowed)
    {
        if (!root.Has(name) || root.AnyText(name) is not { } text)
        {
            return null;
        }

        if (text.Length == 1 && allowed.Contains(text[0]))
        {
            return text[0];
        }

        root.Fault(name, $"'{text}'; allowed is one of '{allowed.Replace("\t", "tab")}'.");
        return null;
    }
}
