using System.Globalization;
using OilCondition.Text;

namespace OilCondition.Limits;

/// <summary>Reads limit sets and reports every fault with its place in the document.</summary>
internal sealed class LimitSetReader(MeasurandCatalog catalog)
{
    public static LimitSet Read(string json, MeasurandCatalog catalog) =>
        JsonEntry.Read(json, JsonFormat.LimitSet, root => Read(root, catalog));

    /// <summary>A limit set that stands in a larger document.</summary>
    public static LimitSet? Read(JsonEntry entry, MeasurandCatalog catalog) => new LimitSetReader(catalog).Set(entry);

    private LimitSet? Set(JsonEntry entry)
    {
        entry.Known("name", "note", "limits");
        var name = entry.Text("name");
        var note = entry.Note;
        var placed = entry.List("limits", one => One(one) is { } limit ? Tuple.Create(one, limit) : null);
        List<Limit> limits = [.. placed.Select(one => one.Item2)];
        foreach (var twice in limits.SelectMany(Figures).GroupBy(figure => figure).Where(g => g.Count() > 1))
        {
            entry.Fault("limits", $"{twice.Key} is given more than once.");
        }

        for (var i = 1; i < placed.Count; i++)
        {
            foreach (var earlier in placed.Take(i))
            {
                if (LimitContradiction.Between(limits[i], earlier.Item2) is { } contradiction)
                {
                    placed[i].Item1.Fault($"{contradiction.TrimEnd('.')}, together with {earlier.Item1.Path}.");
                }
            }
        }

        return entry.IsFaultless && name is not null ? new LimitSet(name, limits, note) : null;
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

    private Limit? One(JsonEntry entry)
    {
        entry.Known(
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
        var measurand = MeasurandOf(entry);
        var kind = entry.Word<LimitKind>("kind");
        var source = SourceReader.Read(entry, "limit");
        if (measurand is null || kind is null)
        {
            return null;
        }

        var figures = new LimitFigures(entry, measurand, kind.Value, entry.TextOrEmpty("unit"));
        var upper = figures.Band("upper");
        var lower = figures.Band("lower");
        var deadBand = figures.DeadBand();
        var confirmations = entry.WholeIfAny("confirmations", 1, 10);
        var span = Rate(entry, out var overOilHours);
        var note = entry.Note;
        return source is null
            ? null
            : entry.Made(() =>
                new Limit(
                    measurand,
                    kind.Value,
                    upper,
                    lower,
                    source,
                    deadBand,
                    confirmations,
                    span,
                    overOilHours,
                    note
                )
            );
    }

    private Measurand? MeasurandOf(JsonEntry entry)
    {
        if (entry.Text("measurand") is not { } id)
        {
            return null;
        }

        if (!catalog.TryFind(id, out var measurand))
        {
            entry.Fault("measurand", catalog.Unknown(id));
        }

        return measurand;
    }

    private static TimeSpan? Rate(JsonEntry entry, out bool overOilHours)
    {
        var days = entry.NumberIfAny("perDays");
        var hours = entry.NumberIfAny("perOilHours");
        if (days is not null && hours is not null)
        {
            entry.Fault("'perDays' and 'perOilHours' exclude each other.");
        }

        overOilHours = hours is not null;
        return hours is { } running ? Elapsed.FromHours(running)
            : days is { } calendar ? Elapsed.FromDays(calendar)
            : null;
    }
}
