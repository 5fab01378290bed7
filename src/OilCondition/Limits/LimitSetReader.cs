using System.Globalization;
using System.Text.Json;
using OilCondition.Text;
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
    private readonly JsonFaults faults;

    private LimitSetReader(MeasurandCatalog catalog, JsonFaults faults)
    {
        this.catalog = catalog;
        this.faults = faults;
    }

    public static LimitSet Read(string json, MeasurandCatalog catalog) =>
        JsonFaults.Read(json, "limit set", (root, faults) => new LimitSetReader(catalog, faults).Set(root));

    private LimitSet? Set(JsonElement root)
    {
        if (root.ValueKind != JsonValueKind.Object)
        {
            faults.Add("$", "an object with 'name' and 'limits' is expected.");
            return null;
        }

        faults.Known(root, "$", "name", "note", "limits");
        var name = faults.Text(root, "$", "name");
        if (!root.TryGetProperty("limits", out var limits) || limits.ValueKind != JsonValueKind.Array)
        {
            faults.Add("$.limits", "a list is expected.");
            return null;
        }

        var read = limits.EnumerateArray().Select((element, i) => One(element, $"$.limits[{i}]")).ToList();
        foreach (
            var twice in read.OfType<Limit>().SelectMany(Figures).GroupBy(figure => figure).Where(g => g.Count() > 1)
        )
        {
            faults.Add("$.limits", $"{twice.Key} is given more than once.");
        }

        return faults.None && name is not null ? new LimitSet(name, read.OfType<Limit>()) : null;
    }

    /// <summary>What a limit sets: alert and alarm may come from different sources and then stand in two limits.</summary>
    private static IEnumerable<string> Figures(Limit limit)
    {
        foreach (var (side, band) in new[] { ("upper", limit.Upper), ("lower", limit.Lower) })
        {
            var name = $"the {side} {{0}} of {limit.Measurand.Id} ({limit.Kind}{SpanOf(limit)})";
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

    /// <summary>Rates per different spans are different limits.</summary>
    private static string SpanOf(Limit limit) =>
        limit.Per is { } span
            ? $" per {PlainText.Number(span.TotalHours)} {(limit.OverOilHours ? "oil hours" : "h")}"
            : "";

    private Limit? One(JsonElement element, string path)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            faults.Add(path, "an object is expected.");
            return null;
        }

        faults.Known(
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
        var source = SourceReader.Read(element, path, "limit", faults);
        if (measurand is null || kind is null)
        {
            return null;
        }

        var unit = element.TryGetProperty("unit", out _) ? faults.Text(element, path, "unit") ?? "" : "";
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
                DeadBand(element, path, measurand, kind.Value, unit),
                Confirmations(element, path),
                Rate(element, path, out var overOilHours),
                overOilHours
            );
        }
        catch (ArgumentException error)
        {
            faults.Add(path, error.Message.Split('\n')[0]);
            return null;
        }
    }

    private Measurand? MeasurandOf(JsonElement element, string path)
    {
        if (faults.Text(element, path, "measurand") is not { } id)
        {
            return null;
        }

        if (!catalog.TryFind(id, out var measurand))
        {
            faults.Add($"{path}.measurand", $"'{id}' is not a known measurand; did you mean '{catalog.Nearest(id)}'?");
        }

        return measurand;
    }

    private LimitKind? Kind(JsonElement element, string path)
    {
        var text = faults.Text(element, path, "kind");
        if (text is null)
        {
            return null;
        }

        if (!Kinds.TryGetValue(text, out var kind))
        {
            faults.Add($"{path}.kind", $"'{text}'; allowed: {string.Join(", ", Kinds.Keys)}.");
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

        faults.Add($"{path}.confirmations", $"{count}; allowed: a whole number from 1 to 10.");
        return 1;
    }

    private TimeSpan? Rate(JsonElement element, string path, out bool overOilHours)
    {
        var days = Number(element, path, "perDays");
        var hours = Number(element, path, "perOilHours");
        if (days is not null && hours is not null)
        {
            faults.Add(path, "'perDays' and 'perOilHours' exclude each other.");
        }

        overOilHours = hours is not null;
        return hours is { } running ? Elapsed.FromHours(running)
            : days is { } calendar ? Elapsed.FromDays(calendar)
            : null;
    }

    private double? Number(JsonElement element, string path, string name)
    {
        if (!element.TryGetProperty(name, out var property))
        {
            return null;
        }

        if (property.ValueKind == JsonValueKind.Number && property.TryGetDouble(out var value) && Guard.IsFinite(value))
        {
            return value;
        }

        faults.Add($"{path}.{name}", "a number is expected.");
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
            faults.Add($"{path}.{side}", "an object with 'alert' and 'alarm' is expected.");
            return null;
        }

        faults.Known(band, $"{path}.{side}", "alert", "alarm");
        var alert = Figure(band, $"{path}.{side}", "alert", measurand, kind, unit);
        var alarm = Figure(band, $"{path}.{side}", "alarm", measurand, kind, unit);
        return alert is null && alarm is null ? null : new LimitBand(alert, alarm);
    }

    /// <summary>A distance in the unit of the figures; beside percentages in the measurand's own unit.</summary>
    private double DeadBand(JsonElement element, string path, Measurand measurand, LimitKind kind, string unit)
    {
        if (Number(element, path, "deadBand") is not { } width)
        {
            return 0;
        }

        var isPercentage = kind is LimitKind.PercentChangeFromNew or LimitKind.OwnHistory or LimitKind.Fleet;
        if (isPercentage || TryDistance(measurand, width, unit, out width))
        {
            return width;
        }

        faults.Add(
            $"{path}.deadBand",
            $"'{unit}' is no unit of a distance in {measurand.Unit} ({measurand.Id}); give the limit in {measurand.Unit}."
        );
        return 0;
    }

    /// <summary>A distance converts like a value only where the units have a common zero: not from °F, Saybolt seconds or scale numbers.</summary>
    private static bool TryDistance(Measurand measurand, double distance, string unit, out double converted) =>
        measurand.TryConvert(distance, unit, out converted) && measurand.TryConvert(0, unit, out var zero) && zero == 0;

    private double? Figure(JsonElement band, string path, string name, Measurand measurand, LimitKind kind, string unit)
    {
        if (!band.TryGetProperty(name, out var element))
        {
            return null;
        }

        if (
            element.ValueKind != JsonValueKind.Number
            || !element.TryGetDouble(out var figure)
            || !Guard.IsFinite(figure)
        )
        {
            faults.Add($"{path}.{name}", "a number is expected.");
            return null;
        }

        if (kind is LimitKind.PercentChangeFromNew or LimitKind.OwnHistory or LimitKind.Fleet)
        {
            if (unit is not ("" or "%"))
            {
                faults.Add(path, $"a percentage has the unit '%', not '{unit}'.");
            }

            return figure;
        }

        double converted;
        var isConverted = kind is LimitKind.ChangeFromNew or LimitKind.RateOfChange
            ? TryDistance(measurand, figure, unit, out converted)
            : measurand.TryConvert(figure, unit, out converted);
        if (!isConverted || !(Math.Abs(converted) <= LimitBand.Largest))
        {
            faults.Add(
                $"{path}.{name}",
                $"{figure} '{unit}' cannot be converted to {measurand.Unit} ({measurand.Id})."
            );
            return null;
        }

        if (kind == LimitKind.Absolute && !measurand.IsPlausible(converted))
        {
            faults.Add(
                $"{path}.{name}",
                $"{measurand.Id} is {converted} {measurand.Unit}; allowed: {measurand.LowestPlausible} to {measurand.HighestPlausible} {measurand.Unit}."
            );
        }

        return converted;
    }
}
