using OilCondition.Text;

namespace OilCondition;

/// <summary>Reads a source as JSON files write it: <c>{ "kind": "standard", "text": "…", "locator": "…" }</c>.</summary>
internal static class SourceReader
{
    /// <summary>The source of an entry; null and a fault where there is none.</summary>
    /// <param name="entry">The entry that has the source.</param>
    /// <param name="what">What the entry is, such as 'limit'.</param>
    public static Source? Read(JsonEntry entry, string what)
    {
        var expected = $"an object with 'kind' and 'text' is expected; no {what} without its source.";
        if (entry.Object("source", expected) is not { } source)
        {
            return null;
        }

        source.Known("kind", "text", "locator");
        var kind = source.Word<SourceKind>("kind");
        var text = source.Text("text");
        var locator = source.TextOrEmpty("locator");
        return kind is not null && text is not null ? new Source(kind.Value, text, locator) : null;
    }
}
