using OilCondition.Text;

namespace OilCondition;

/// <summary>Reads what was done to the oils of a station's machines.</summary>
internal sealed class EventReader(MeasurandCatalog catalog)
{
    private readonly OilEventReader events = new(catalog, "machine", "note");

    public StationEvent? Read(JsonEntry entry)
    {
        var machine = entry.Text("machine");
        var read = events.Read(entry);
        return machine is null || read is null ? null : new StationEvent(machine, read);
    }
}
