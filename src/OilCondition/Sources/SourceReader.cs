using System.Text.Json;
using OilCondition.Text;

namespace OilCondition;

/// <summary>Reads a source as JSON files write it: <c>{ "kind": "standard", "text": "…", "locator": "…" }</c>.</summary>
internal static class SourceReader
{
    private static readonly Dictionary<string, SourceKind> Kinds = new(StringComparer.Ordinal)
    {
        ["standard"] = SourceKind.Standard,
        ["paper"] = SourceKind.Paper,
        ["handbook"] = SourceKind.Handbook,
        ["user-data"] = SourceKind.UserData,
        ["derived"] = SourceKind.Derived,
        ["common-practice"] = SourceKind.CommonPractice,
        ["from-memory"] = SourceKind.FromMemory,
    };

    /// <summary>The source of an entry; null and a fault where there is none.</summary>
    /// <param name="entry">The entry that has the source.</param>
    /// <param name="path">Place of the entry.</param>
    /// <param name="what">What the entry is, such as 'limit'.</param>
    /// <param name="faults">Where faults go.</param>
    public static Source? Read(JsonElement entry, string path, string what, JsonFaults faults)
    {
        path += ".source";
        if (!entry.TryGetProperty("source", out var source) || source.ValueKind != JsonValueKind.Object)
        {
            faults.Add(path, $"an object with 'kind' and 'text' is expected; no {what} without its source.");
            return null;
        }

        faults.Known(source, path, "kind", "text", "locator");
        var word = faults.Text(source, path, "kind");
        var isKind = Kinds.TryGetValue(word ?? "", out var kind);
        if (!isKind && word is not null)
        {
            faults.Add($"{path}.kind", $"'{word}'; allowed: {string.Join(", ", Kinds.Keys)}.");
        }

        var text = faults.Text(source, path, "text");
        var locator = source.TryGetProperty("locator", out _) ? faults.Text(source, path, "locator") ?? "" : "";
        return isKind && text is not null ? new Source(kind, text, locator) : null;
    }
}
