using OilCondition.Text;

namespace OilCondition;

/// <summary>Reads lists of readings: <c>{ "measurand": "iron", "value": 10, "unit": "mg/kg", "qualifier": "less-than", "method": "…" }</c>.</summary>
internal sealed class ReadingsReader(MeasurandCatalog catalog)
{
    public Dictionary<Measurand, Reading> Read(JsonEntry entry, string name)
    {
        var readings = new Dictionary<Measurand, Reading>();
        foreach (var (measurand, reading) in entry.ListIfAny(name, One))
        {
            if (readings.ContainsKey(measurand))
            {
                entry.Fault(name, $"'{measurand.Id}' is there more than once.");
            }

            readings[measurand] = reading;
        }

        return readings;
    }

    /// <summary>The measurand that an entry names in a field; null and a fault where it names none.</summary>
    public Measurand? MeasurandOf(JsonEntry entry)
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

    private Tuple<Measurand, Reading>? One(JsonEntry entry)
    {
        entry.Known("measurand", "value", "unit", "qualifier", "method");
        var measurand = MeasurandOf(entry);
        var value = entry.Number("value");
        var unit = entry.Has("unit") ? entry.AnyText("unit") ?? "" : "";
        var qualifier = entry.WordIfAny<Qualifier>("qualifier") ?? Qualifier.None;
        var method = entry.TextOrEmpty("method");
        if (measurand is null || value is null)
        {
            return null;
        }

        // A scale number stands for a range of counts, and its upper end would be read as the count.
        if (unit.Contains("4406") || !measurand.TryConvert(value.Value, unit, out var converted))
        {
            entry.Fault("unit", $"'{unit}' cannot be converted to {measurand.Unit} ({measurand.Id}).");
            return null;
        }

        return Tuple.Create(measurand, new Reading(converted, qualifier, method));
    }
}
