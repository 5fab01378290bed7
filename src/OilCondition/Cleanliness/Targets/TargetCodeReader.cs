using System.Text.Json;
using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>Reads sets of target codes and reports every fault with its place in the document.</summary>
internal static class TargetCodeReader
{
    public static TargetCodeSet Read(string json) => JsonFaults.Read(json, "set of target codes", Set);

    private static TargetCodeSet? Set(JsonElement root, JsonFaults faults)
    {
        if (root.ValueKind != JsonValueKind.Object)
        {
            faults.Add("$", "an object with 'name' and 'targets' is expected.");
            return null;
        }

        faults.Known(root, "$", "name", "note", "targets");
        var name = faults.Text(root, "$", "name");
        var note = root.TryGetProperty("note", out _) ? faults.Text(root, "$", "note") ?? "" : "";
        if (
            !root.TryGetProperty("targets", out var targets)
            || targets.ValueKind != JsonValueKind.Array
            || targets.GetArrayLength() == 0
        )
        {
            faults.Add("$.targets", "a list with at least one target is expected.");
            return null;
        }

        List<ComponentTarget> read =
        [
            .. targets
                .EnumerateArray()
                .Select((element, i) => One(element, $"$.targets[{i}]", faults))
                .OfType<ComponentTarget>(),
        ];
        if (TargetCodeSet.TwiceIn(read.Select(target => target.Component)) is { } twice)
        {
            faults.Add("$.targets", $"'{twice}' comes more than once.");
        }

        return faults.None ? new TargetCodeSet(name!, read, note) : null;
    }

    private static ComponentTarget? One(JsonElement element, string path, JsonFaults faults)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            faults.Add(path, "an object is expected.");
            return null;
        }

        faults.Known(element, path, "component", "strictest", "loosest", "source");
        var component = faults.Text(element, path, "component");
        var strictest = Code(element, path, "strictest", faults);
        var loosest = Code(element, path, "loosest", faults);
        var source = SourceReader.Read(element, path, "target", faults);
        if (component is null || strictest is null || loosest is null || source is null)
        {
            return null;
        }

        try
        {
            return new ComponentTarget(component.Trim(), strictest, loosest, source);
        }
        catch (ArgumentException error)
        {
            faults.Add(path, error.Message.Split('\n')[0]);
            return null;
        }
    }

    private static CleanlinessCode? Code(JsonElement element, string path, string name, JsonFaults faults)
    {
        if (faults.Text(element, path, name) is not { } text)
        {
            return null;
        }

        if (!CleanlinessCode.TryParse(text, out var code))
        {
            faults.Add($"{path}.{name}", $"'{text}' is not a code after ISO 4406; expected for example 18/16/13.");
        }

        return code;
    }
}
