using System.Globalization;
using System.Text.Json;
using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>Reads column maps and reports every fault with its place in the document.</summary>
internal sealed class ColumnMapReader
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

    private readonly MeasurandCatalog catalog;
    private readonly JsonFaults faults;

    private ColumnMapReader(MeasurandCatalog catalog, JsonFaults faults)
    {
        this.catalog = catalog;
        this.faults = faults;
    }

    public static ColumnMap Read(string json, MeasurandCatalog catalog, ColumnMap? basis) =>
        JsonFaults.Read(json, "column map", (root, faults) => new ColumnMapReader(catalog, faults).Map(root, basis));

    private ColumnMap? Map(JsonElement root, ColumnMap? basis)
    {
        if (root.ValueKind != JsonValueKind.Object)
        {
            faults.Add("$", "an object is expected.");
            return null;
        }

        faults.Known(root, "$", Names);

        List<LabColumn> columns = [];
        if (root.TryGetProperty("columns", out var list))
        {
            if (list.ValueKind == JsonValueKind.Array)
            {
                columns.AddRange(
                    list.EnumerateArray().Select((one, i) => Column(one, $"$.columns[{i}]")).OfType<LabColumn>()
                );
            }
            else
            {
                faults.Add("$.columns", "a list is expected.");
            }
        }

        return new ColumnMap(
            Texts(root, "machine") ?? basis?.Machine ?? [],
            Texts(root, "sampleNumber") ?? basis?.SampleNumber ?? [],
            Texts(root, "takenAt") ?? basis?.TakenAt ?? [],
            [.. columns, .. basis?.Columns ?? []],
            Texts(root, "dateFormats") ?? [],
            Offset(root),
            Character(root, "decimalSeparator", ".,") ?? '.',
            Character(root, "delimiter", ",;\t|")
        );
    }

    private LabColumn? Column(JsonElement element, string path)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            faults.Add(path, "an object is expected.");
            return null;
        }

        var names = Texts(element, "names", path);
        var id = Text(element, "measurand", path);
        if (names is null || id is null)
        {
            faults.Add(path, "'names' and 'measurand' are expected.");
            return null;
        }

        if (!catalog.TryFind(id, out var measurand))
        {
            faults.Add($"{path}.measurand", $"'{id}' is not a known measurand; did you mean '{catalog.Nearest(id)}'?");
            return null;
        }

        double? detectionLimit = null;
        if (element.TryGetProperty("detectionLimit", out var limit))
        {
            if (limit.ValueKind == JsonValueKind.Number)
            {
                detectionLimit = limit.GetDouble();
            }
            else
            {
                faults.Add($"{path}.detectionLimit", "a number is expected.");
            }
        }

        try
        {
            return new LabColumn(
                names,
                measurand!,
                Text(element, "unit", path) ?? "",
                detectionLimit,
                Text(element, "method", path) ?? ""
            );
        }
        catch (ArgumentException error)
        {
            faults.Add(path, error.Message.Split('\n')[0]);
            return null;
        }
    }

    private IReadOnlyList<string>? Texts(JsonElement element, string name, string path = "$")
    {
        if (!element.TryGetProperty(name, out var list))
        {
            return null;
        }

        if (
            list.ValueKind != JsonValueKind.Array
            || list.GetArrayLength() == 0
            || list.EnumerateArray().Any(one => one.ValueKind != JsonValueKind.String)
        )
        {
            faults.Add($"{path}.{name}", "a list of texts is expected.");
            return null;
        }

        return [.. list.EnumerateArray().Select(one => one.GetString()!)];
    }

    private string? Text(JsonElement element, string name, string path)
    {
        if (!element.TryGetProperty(name, out var text))
        {
            return null;
        }

        if (text.ValueKind == JsonValueKind.String)
        {
            return text.GetString();
        }

        faults.Add($"{path}.{name}", "a text is expected.");
        return null;
    }

    private TimeSpan Offset(JsonElement root)
    {
        var text = Text(root, "offsetFromUtc", "$");
        if (text is null)
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

        faults.Add("$.offsetFromUtc", $"'{text}'; expected is a form such as +01:00, up to 14 hours.");
        return TimeSpan.Zero;
    }

    private char? Character(JsonElement root, string name, string allowed)
    {
        var text = Text(root, name, "$");
        if (text is null)
        {
            return null;
        }

        if (text.Length == 1 && allowed.Contains(text[0]))
        {
            return text[0];
        }

        faults.Add($"$.{name}", $"'{text}'; allowed is one of '{allowed.Replace("\t", "tab")}'.");
        return null;
    }
}
