using System.Text.Json;

namespace OilCondition.Text;

/// <summary>Objects and lists inside an object.</summary>
internal sealed partial class JsonEntry
{
    /// <summary>An object that must be there.</summary>
    /// <param name="name">The field.</param>
    /// <param name="expected">What it should hold, for the fault.</param>
    public JsonEntry? Object(string name, string expected = "an object is expected.")
    {
        if (element.TryGetProperty(name, out var field) && field.ValueKind == JsonValueKind.Object)
        {
            return new JsonEntry(field, $"{Path}.{name}", reading);
        }

        Fault(name, expected);
        return null;
    }

    /// <summary>An object that may be left out.</summary>
    public JsonEntry? ObjectIfAny(string name, string expected = "an object is expected.") =>
        Has(name) ? Object(name, expected) : null;

    /// <summary>A list of objects that must be there; what an object was not read to is left out, with its fault.</summary>
    public IReadOnlyList<T> List<T>(string name, Func<JsonEntry, T?> read)
        where T : class
    {
        if (!element.TryGetProperty(name, out var list) || list.ValueKind != JsonValueKind.Array)
        {
            Fault(name, "a list is expected.");
            return [];
        }

        var items = new List<T>();
        foreach (var (item, i) in list.EnumerateArray().Select((item, i) => (item, i)))
        {
            var entry = new JsonEntry(item, $"{Path}.{name}[{i}]", reading);
            if (item.ValueKind != JsonValueKind.Object)
            {
                entry.Fault("an object is expected.");
            }
            else if (read(entry) is { } one)
            {
                items.Add(one);
            }
        }

        return items;
    }

    /// <summary>A list that may be left out.</summary>
    public IReadOnlyList<T> ListIfAny<T>(string name, Func<JsonEntry, T?> read)
        where T : class => Has(name) ? List(name, read) : [];

    /// <summary>A list of texts that may be left out, with at least one in it.</summary>
    public IReadOnlyList<string>? TextsIfAny(string name)
    {
        if (!Has(name))
        {
            return null;
        }

        var list = element.GetProperty(name);
        if (
            list.ValueKind == JsonValueKind.Array
            && list.GetArrayLength() > 0
            && list.EnumerateArray().All(one => one.ValueKind == JsonValueKind.String)
        )
        {
            return [.. list.EnumerateArray().Select(one => one.GetString()!)];
        }

        Fault(name, "a list of texts is expected.");
        return null;
    }
}
