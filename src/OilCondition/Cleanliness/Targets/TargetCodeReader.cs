using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>Reads sets of target codes and reports every fault with its place in the document.</summary>
internal static class TargetCodeReader
{
    public static TargetCodeSet Read(string json) => JsonEntry.Read(json, JsonFormat.TargetCodes, Set);

    private static TargetCodeSet? Set(JsonEntry root)
    {
        root.Known("name", "note", "targets");
        var name = root.Text("name");
        var note = root.Note;
        var read = root.List("targets", One);
        if (read.Count == 0 && root.IsFaultless)
        {
            root.Fault("targets", "a list with at least one target is expected.");
        }

        if (TargetCodeSet.TwiceIn(read.Select(target => target.Component)) is { } twice)
        {
            root.Fault("targets", $"'{twice}' comes more than once.");
        }

        return root.IsFaultless ? new TargetCodeSet(name!, read, note) : null;
    }

    private static ComponentTarget? One(JsonEntry entry)
    {
        entry.Known("component", "strictest", "loosest", "source");
        var component = entry.Text("component");
        var strictest = Code(entry, "strictest");
        var loosest = Code(entry, "loosest");
        var source = SourceReader.Read(entry, "target");
        return component is null || strictest is null || loosest is null || source is null
            ? null
            : entry.Made(() => new ComponentTarget(component.Trim(), strictest, loosest, source));
    }

    private static CleanlinessCode? Code(JsonEntry entry, string name)
    {
        if (entry.Text(name) is not { } text)
        {
            return null;
        }

        if (!CleanlinessCode.TryParse(text, out var code))
        {
            entry.Fault(name, $"'{text}' is not a code after ISO 4406; expected for example 18/16/13.");
        }

        return code;
    }
}
