using System.Globalization;
using System.Text.Json;
using OilCondition.Sampling;
using OilCondition.Sources;
using UnitsNet;

namespace OilCondition.Limits;

/// <summary>Reads limit sets and reports every fault with its place in the document.</summary>
internal sealed class LimitSetReader
{
    private static readonly Dictionary<string, LimitKind> Kinds = new(StringComparer.Ordinal)
    {
        ["absolute"] = LimitKind.Absolute,
        ["change-from-new"] = LimitKind.ChangeFromNew,
        ["percent-change-from-new"] = LimitKind.PercentChangeFromNew,
        ["rate-of-change"] = LimitKind.RateOfChange,
        ["own-history"] = LimitKind.OwnHistory,
        ["fleet"] = LimitKind.Fleet,
    };

    private readonly MeasurandCatalog catalog;
    private readonly List<string> faults = [];

    private LimitSetReader(MeasurandCatalog catalog) => this.catalog = catalog;

    public static LimitSet Read(string json, MeasurandCatalog catalog)
    {
        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(
                json,
                new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true }
            );
        }
        catch (JsonException error)
        {
            throw new FormatException($"The limit set is not JSON: {error.Message}", error);
        }

        using (document)
        {
            var reader = new LimitSetReader(catalog);
            var set = reader.Set(document.RootElement);
            return reader.faults.Count == 0 && set is not null
                ? set
                : throw new FormatException(
                    "The limit set has faults:" + string.Concat(reader.faults.Select(fault => "\n- " + fault))
                );
        }
    }

    private LimitSet? Set(JsonElement root)
    {
        if (root.ValueKind != JsonValueKind.Object)
        {
            faults.Add("$: an object with 'name' and 'limits' is expected.");
            return null;
        }

        Known(root, "$", "name", "note", "limits");
        var name = Text(root, "$", "name");
        if (!root.TryGetProperty("limits", out var limits) || limits.ValueKind != JsonValueKind.Array)
        {
            faults.Add("$.limits: a list is expected.");
            return null;
        }

        var read = limits.EnumerateArray().Select((element, i) => One(element, $"$.limits[{i}]")).ToList();
        foreach (
            var twice in read.OfType<Limit>().SelectMany(Figures).GroupBy(figure => figure).Where(g => g.Count() > 1)
        )
        {
            faults.Add($"$.limits: {twice.Key} is given more than once.");
        }

        return faults.Count == 0 && name is not null ? new LimitSet(name, read.OfType<Limit>()) : null;
    }

    /// <summary>What a limit sets: alert and alarm may come from different sources and then stand in two limits.</summary>
    private static IEnumerable<string> Figures(Limit limit)
    {
        foreach (var (side, band) in new[] { ("upper", limit.Upper), ("lower", limit.Lower) })
        {
            var name = $"the {side} {{0}} of {limit.Measurand.Id} ({limit.Kind})";
            if (band?.Alert is not null)
            {
                yield return string.Format(CultureInfo.InvariantCulture, name, "alert");
            }

            if (band?.Alarm is not null)
            {
                yield return string.Format(CultureInfo.InvariantCulture, name, "alarm");
            }
        }
    }

    private Limit? One(JsonElement element, string path)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            faults.Add($"{path}: an object is expected.");
            return null;
        }

        Known(
            element,
            path,
            "measurand",
            "kind",
            "unit",
            "upper",
            "lower",
            "source",
            "note",
            "deadBand",
            "confirmations",
            "perDays",
            "perOilHours"
        );
        var measurand = MeasurandOf(element, path);
        var kind = Kind(element, path);
        var source = SourceOf(element, path);
        if (measurand is null || kind is null)
        {
            return null;
        }

        var unit = element.TryGetProperty("unit", out _) ? Text(element, path, "unit") ?? "" : "";
        var upper = Band(element, path, "upper", measurand, kind.Value, unit);
        var lower = Band(element, path, "lower", measurand, kind.Value, unit);
        if (source is null)
        {
            return null;
        }

        try
        {
            return new Limit(
                measurand,
                kind.Value,
                upper,
                lower,
                source,
                Number(element, path, "deadBand") ?? 0,
                Confirmations(element, path),
                Rate(element, path)
            );
        }
        catch (ArgumentException error)
        {
            faults.Add($"{path}: {error.Message.Split('\n')[0]}");
            return null;
        }
    }

    private Measurand? MeasurandOf(JsonElement element, string path)
    {
        if (Text(element, path, "measurand") is not { } id)
        {
            return null;
        }

        if (!catalog.TryFind(id, out var measurand))
        {
            faults.Add($"{path}.measurand: '{id}' is not a known measurand; did you mean '{catalog.Nearest(id)}'?");
        }

        return measurand;
    }

    private LimitKind? Kind(JsonElement element, string path)
    {
        var text = Text(element, path, "kind");
        if (text is null)
        {
            return null;
        }

        if (!Kinds.TryGetValue(text, out var kind))
        {
            faults.Add($"{path}.kind: '{text}'; allowed: {string.Join(", ", Kinds.Keys)}.");
            return null;
        }

        return kind;
    }

    private int Confirmations(JsonElement element, string path)
    {
        if (Number(element, path, "confirmations") is not { } count)
        {
            return 1;
        }

        if (count is >= 1 and <= 10 && Math.Floor(count) == count)
        {
            return (int)count;
        }

        faults.Add($"{path}.confirmations: {count}; allowed: a whole number from 1 to 10.");
        return 1;
    }

    private LimitRate? Rate(JsonElement element, string path)
    {
        var days = Number(element, path, "perDays");
        var hours = Number(element, path, "perOilHours");
        if (days is not null && hours is not null)
        {
            faults.Add($"{path}: 'perDays' and 'perOilHours' exclude each other.");
        }

        return hours is { } running ? new LimitRate(TimeAxis.OilHours, Duration.FromHours(running))
            : days is { } calendar ? new LimitRate(TimeAxis.Calendar, Duration.FromDays(calendar))
            : null;
    }

    private double? Number(JsonElement element, string path, string name)
    {
        if (!element.TryGetProperty(name, out var property))
        {
            return null;
        }

        if (property.ValueKind == JsonValueKind.Number && property.TryGetDouble(out var value))
        {
            return value;
        }

        faults.Add($"{path}.{name}: a number is expected.");
        return null;
    }

    private LimitBand? Band(
        JsonElement element,
        string path,
        string side,
        Measurand measurand,
        LimitKind kind,
        string unit
    )
    {
        if (!element.TryGetProperty(side, out var band))
        {
            return null;
        }

        if (band.ValueKind != JsonValueKind.Object)
        {
            faults.Add($"{path}.{side}: an object with 'alert' and 'alarm' is expected.");
            return null;
        }

        Known(band, $"{path}.{side}", "alert", "alarm");
        var alert = Figure(band, $"{path}.{side}", "alert", measurand, kind, unit);
        var alarm = Figure(band, $"{path}.{side}", "alarm", measurand, kind, unit);
        return alert is null && alarm is null ? null : new LimitBand(alert, alarm);
    }

    private double? Figure(JsonElement band, string path, string name, Measurand measurand, LimitKind kind, string unit)
    {
        if (!band.TryGetProperty(name, out var element))
        {
            return null;
        }

        if (element.ValueKind != JsonValueKind.Number || !element.TryGetDouble(out var figure))
        {
            faults.Add($"{path}.{name}: a number is expected.");
            return null;
        }

        if (kind is LimitKind.PercentChangeFromNew or LimitKind.OwnHistory or LimitKind.Fleet)
        {
            if (unit is not ("" or "%"))
            {
                faults.Add($"{path}: a percentage has the unit '%', not '{unit}'.");
            }

            return figure;
        }

        // A difference converts like a value only where the units have a common zero: not from °F, Saybolt seconds or scale numbers.
        var isDifference = kind is LimitKind.ChangeFromNew or LimitKind.RateOfChange;
        var hasCommonZero = ReportedUnits.TryConvert(measurand, 0, unit, out var zero) && zero == 0;
        if (!ReportedUnits.TryConvert(measurand, figure, unit, out var converted) || (isDifference && !hasCommonZero))
        {
            faults.Add($"{path}.{name}: {figure} '{unit}' cannot be converted to {measurand.Unit} ({measurand.Id}).");
            return null;
        }

        if (kind == LimitKind.Absolute && !measurand.IsPlausible(converted))
        {
            faults.Add(
                $"{path}.{name}: {measurand.Id} is {converted} {measurand.Unit}; allowed: {measurand.LowestPlausible} to {measurand.HighestPlausible} {measurand.Unit}."
            );
        }

        return converted;
    }

    private Source? SourceOf(JsonElement element, string path)
    {
        if (!element.TryGetProperty("source", out var source) || source.ValueKind != JsonValueKind.Object)
        {
            faults.Add($"{path}.source: an object with 'kind' and 'text' is expected; no limit without its source.");
            return null;
        }

        Known(source, $"{path}.source", "kind", "text", "locator");
        var word = Text(source, $"{path}.source", "kind");
        SourceKind? kind = word switch
        {
            "standard" => SourceKind.Standard,
            "paper" => SourceKind.Paper,
            "handbook" => SourceKind.Handbook,
            "user-data" => SourceKind.UserData,
            "derived" => SourceKind.Derived,
            "common-practice" => SourceKind.CommonPractice,
            "from-memory" => SourceKind.FromMemory,
            _ => null,
        };
        if (kind is null && word is not null)
        {
            faults.Add(
                $"{path}.source.kind: '{word}'; allowed: standard, paper, handbook, user-data, derived, common-practice, from-memory."
            );
        }

        var text = Text(source, $"{path}.source", "text");
        var locator = source.TryGetProperty("locator", out _) ? Text(source, $"{path}.source", "locator") ?? "" : "";
        return kind is { } known && text is not null ? new Source(known, text, locator) : null;
    }

    private string? Text(JsonElement element, string path, string name)
    {
        if (
            element.TryGetProperty(name, out var property)
            && property.ValueKind == JsonValueKind.String
            && !string.IsNullOrWhiteSpace(property.GetString())
        )
        {
            return property.GetString();
        }

        faults.Add($"{path}.{name}: a text is expected.");
        return null;
    }

    private void Known(JsonElement element, string path, params string[] names)
    {
        foreach (var property in element.EnumerateObject().Where(property => !names.Contains(property.Name)))
        {
            faults.Add($"{path}.{property.Name}: unknown; allowed: {string.Join(", ", names)}.");
        }
    }
}
