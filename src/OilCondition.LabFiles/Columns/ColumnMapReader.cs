using System.Globalization;
using OilCondition.Text;
using TimeZoneConverter;

namespace OilCondition.LabFiles;

/// <summary>Reads column maps and reports every fault with its place in the document.</summary>
internal sealed class ColumnMapReader(MeasurandCatalog catalog, bool isDefault)
{
    private static readonly string[] Names =
    [
        "delimiter",
        "decimalSeparator",
        "encoding",
        "dateFormats",
        "timeZone",
        "offsetFromUtc",
        "constants",
        "blank",
        "machine",
        "sampleNumber",
        "takenAt",
        "timeOfDay",
        "testTemperature",
        "viscosity",
        "cleanlinessCode",
        "columns",
        "note",
    ];

    public static ColumnMap Read(string json, MeasurandCatalog catalog, ColumnMap? basis) =>
        JsonEntry.Read(
            json,
            JsonFormat.ColumnMap,
            root => new ColumnMapReader(catalog, basis is null).Map(root, basis)
        );

    private ColumnMap Map(JsonEntry root, ColumnMap? basis)
    {
        root.Known(Names);
        var map = new ColumnMap(catalog)
        {
            Machine = root.TextsIfAny("machine") ?? basis?.Machine ?? [],
            SampleNumber = root.TextsIfAny("sampleNumber") ?? basis?.SampleNumber ?? [],
            TakenAt = root.TextsIfAny("takenAt") ?? basis?.TakenAt ?? [],
            TimeOfDay = root.TextsIfAny("timeOfDay") ?? basis?.TimeOfDay ?? [],
            TestTemperature = root.TextsIfAny("testTemperature") ?? basis?.TestTemperature ?? [],
            Viscosity = root.TextsIfAny("viscosity") ?? basis?.Viscosity ?? [],
            CleanlinessCode = root.TextsIfAny("cleanlinessCode") ?? basis?.CleanlinessCode ?? [],
            Blank = [.. root.TextsIfAny("blank") ?? [], .. basis?.Blank ?? []],
            Columns = [.. root.ListIfAny("columns", Column), .. basis?.Columns ?? []],
            DateFormats = root.TextsIfAny("dateFormats") ?? [],
            DecimalSeparator = Character(root, "decimalSeparator", ".,"),
            Delimiter = Character(root, "delimiter", ",;\t|"),
            Encoding = EncodingName(root),
            TimeZone = Zone(root),
        };
        return root.ObjectIfAny("constants") is { } constants ? WithConstants(map, constants) : map;
    }

    private static ColumnMap WithConstants(ColumnMap map, JsonEntry constants)
    {
        constants.Known("machine", "sampleNumber", "takenAt");
        map = map with
        {
            ConstantMachine = constants.TextOrEmpty("machine"),
            ConstantSampleNumber = constants.TextOrEmpty("sampleNumber"),
            ConstantTakenAt = constants.TextOrEmpty("takenAt"),
        };
        if (
            map.ConstantTakenAt.Length > 0
            && !new MomentReader(map).TryRead(map.ConstantTakenAt, "", "", out _, out var reason)
        )
        {
            constants.Fault("takenAt", reason);
        }

        return map;
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
            var meant = catalog.Nearest(id) is { } near ? $"; did you mean '{near}'?" : ".";
            entry.Fault("measurand", $"'{PlainText.Cut(id.AsSpan())}' is not a known measurand{meant}");
            return null;
        }

        var (unit, method) = (entry.TextOrEmpty("unit"), entry.TextOrEmpty("method"));
        return entry.Made(() =>
            new LabColumn(names, measurand!, unit, detectionLimit, method) { IsDefault = isDefault }
        );
    }

    private static TimeZoneInfo Zone(JsonEntry root)
    {
        if (root.Has("offsetFromUtc") && root.Has("timeZone"))
        {
            root.Fault("offsetFromUtc", "the time zone is stated too; leave one of them out.");
        }
        else if (root.Has("offsetFromUtc") && root.Text("offsetFromUtc") is { } text)
        {
            return Offset(root, text);
        }
        else if (root.Has("timeZone") && root.Text("timeZone") is { } name)
        {
            if (TZConvert.TryGetTimeZoneInfo(name, out var zone))
            {
                return zone;
            }

            root.Fault("timeZone", $"'{name}' is no known time zone; expected is a name such as Europe/Berlin.");
        }

        return TimeZoneInfo.Utc;
    }

    private static TimeZoneInfo Offset(JsonEntry root, string text)
    {
        var digits = text.TrimStart('+', '-');
        if (
            TimeSpan.TryParseExact(digits, @"hh\:mm", CultureInfo.InvariantCulture, out var offset)
            && offset.TotalHours <= 14
        )
        {
            var name = "UTC" + text;
            return TimeZoneInfo.CreateCustomTimeZone(name, text[0] == '-' ? -offset : offset, name, name);
        }

        root.Fault("offsetFromUtc", $"'{text}'; expected is a form such as +01:00, up to 14 hours.");
        return TimeZoneInfo.Utc;
    }

    private static string EncodingName(JsonEntry root)
    {
        var name = root.TextOrEmpty("encoding");
        if (name.Length > 0 && TextFile.Encoding(name) is null)
        {
            root.Fault("encoding", $"'{name}' is not known here; expected is a name such as windows-1252 or utf-16.");
        }

        return name;
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
