using OilCondition.Limits;
using OilCondition.Text;

namespace OilCondition;

/// <summary>Reads station files and reports every fault with its place in the document.</summary>
internal static class StationReader
{
    public static Station Read(
        string json,
        IReadOnlyDictionary<string, LimitSet>? limitSets,
        MeasurandCatalog catalog
    ) =>
        JsonEntry.Read(
            json,
            JsonFormat.Station,
            root => Of(root, limitSets ?? new Dictionary<string, LimitSet>(StringComparer.Ordinal), catalog)
        );

    private static Station? Of(
        JsonEntry root,
        IReadOnlyDictionary<string, LimitSet> limitSets,
        MeasurandCatalog catalog
    )
    {
        root.Known(
            "name",
            "note",
            "asOf",
            "oils",
            "limitSets",
            "machines",
            "events",
            "equipment",
            "trains",
            "prices",
            "travel",
            "crew"
        );
        var name = root.Text("name");
        var note = root.Note;
        var asOf = root.MomentIfAny("asOf");
        var oils = Unique(root, "oils", new OilReader(catalog).Read, oil => oil.Id);
        var sets = root.ListIfAny("limitSets", entry => LimitSetReader.Read(entry, catalog));
        var events = root.ListIfAny("events", new EventReader(catalog).Read);
        var machines = Unique(
            root,
            "machines",
            new MachineReader(root, oils, limitSets, sets, events).Read,
            machine => machine.Machine.Id
        );
        var equipment = root.Has("equipment") ? Unique(root, "equipment", EquipmentReader.Read, one => one.Id) : [];
        var trains = root.Has("trains") ? Unique(root, "trains", new TrainReader(equipment).Read, one => one.Id) : [];
        foreach (var twice in trains.Where(train => equipment.Any(one => one.Id == train.Id)))
        {
            root.Fault("trains", $"the id '{twice.Id}' is that of a piece of equipment too.");
        }

        NamesOnlyMachines(root, "events", events.Select(one => one.Machine));
        NamesOnly(
            root,
            "events",
            events.Select(one => (one.Event as TreatmentRun)?.Equipment).OfType<string>(),
            [.. equipment.Concat(trains).Select(one => one.Id)],
            "a piece of equipment"
        );
        NamesOnlyMachines(root, "equipment", equipment.SelectMany(one => one.ConnectsTo));
        NamesOnlyMachines(root, "trains", trains.SelectMany(one => one.ConnectsTo));
        var prices = SiteReader.Prices(root);
        var travel = SiteReader.Travel(root);
        var crew = SiteReader.Crew(root);
        return root.IsFaultless
            ? new Station(name!, note, asOf, machines, [.. equipment, .. trains], prices, travel, crew)
            : null;
    }

    private static IReadOnlyList<T> Unique<T>(
        JsonEntry root,
        string name,
        Func<JsonEntry, T?> read,
        Func<T, string> idOf
    )
        where T : class
    {
        var items = root.List(name, read);
        foreach (var twice in items.GroupBy(idOf, StringComparer.Ordinal).Where(group => group.Count() > 1))
        {
            root.Fault(name, $"the id '{twice.Key}' is there more than once.");
        }

        return items;
    }

    /// <summary>An event or a unit of a machine that is not there would be lost.</summary>
    private static void NamesOnlyMachines(JsonEntry root, string field, IEnumerable<string> ids) =>
        NamesOnly(root, field, ids, root.NamesIn("machines", "id"), "a machine");

    private static void NamesOnly(
        JsonEntry root,
        string field,
        IEnumerable<string> ids,
        IReadOnlyCollection<string> known,
        string what
    )
    {
        foreach (var id in ids.Distinct(StringComparer.Ordinal).Where(id => !known.Contains(id)))
        {
            root.Fault(field, $"'{id}' is not the id of {what}; there are: {string.Join(", ", known)}.");
        }
    }
}
