using System.Diagnostics.CodeAnalysis;
using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>Target codes by component, from a JSON file that a plant keeps.</summary>
/// <remarks>
/// <para>
/// <see cref="StarterSet"/> is a place to begin, not a recommendation: spans that are common practice in the trade, without a source. What the maker of a
/// machine or component asks for overrides it. In a system the most sensitive component rules. Usual, and without a source as well: one number cleaner
/// above about 200 bar, for severe duty, long life or safety; action one to two numbers above the target.
/// </para>
/// <para>
/// Format: <c>{ "name": "…", "note": "…", "targets": [ { "component": "servo valve", "strictest": "14/12/9", "loosest": "16/14/11",
/// "source": { "kind": "common-practice", "text": "…" } } ] }</c>. Comments and trailing commas are allowed; the note may be left out.
/// </para>
/// </remarks>
/// <example>
/// <code>
/// var targets = TargetCodeSet.Parse(File.ReadAllText("our-targets.json"));
/// if (targets.TryFind("servo valve", out var servo)) { code.Compare(servo.Loosest); }
/// </code>
/// </example>
public sealed class TargetCodeSet
{
    private static readonly Lazy<TargetCodeSet> Starter = new(ReadStarterSet);

    /// <summary>A set of targets.</summary>
    /// <param name="name">What the set is called.</param>
    /// <param name="targets">The targets, each component once whatever the case of its letters.</param>
    /// <param name="note">What a reader should know; may be empty.</param>
    /// <exception cref="ArgumentNullException">An argument, or a target, is missing.</exception>
    /// <exception cref="ArgumentException">The name is blank, there is no target, or a component comes twice.</exception>
    public TargetCodeSet(string name, IEnumerable<ComponentTarget> targets, string note = "")
    {
        Name = Guard.NotBlank(name);
        Note = Guard.NotNull(note);
        Targets = [.. Guard.NotNull(targets).Select(target => Guard.NotNull(target, nameof(targets)))];
        if (Targets.Count == 0)
        {
            throw new ArgumentException("targets is empty; at least one target is required.", nameof(targets));
        }

        if (TwiceIn(Targets.Select(target => target.Component)) is { } twice)
        {
            throw new ArgumentException($"targets has '{twice}' more than once; each component once.", nameof(targets));
        }
    }

    /// <summary>Spans of common practice, without a source, for the user to replace; the file is embedded in the package.</summary>
    public static TargetCodeSet StarterSet => Starter.Value;

    /// <summary>What the set is called.</summary>
    public string Name { get; }

    /// <summary>What a reader should know; may be empty.</summary>
    public string Note { get; }

    /// <summary>The targets.</summary>
    public IReadOnlyList<ComponentTarget> Targets { get; }

    /// <summary>Reads a set.</summary>
    /// <param name="json">The text.</param>
    /// <returns>The set.</returns>
    /// <exception cref="ArgumentNullException">There is no text.</exception>
    /// <exception cref="FormatException">The text is not a set of target codes; the message lists every fault with its place.</exception>
    public static TargetCodeSet Parse(string json) => TargetCodeReader.Read(Guard.NotNull(json));

    /// <summary>Finds a component, whatever the case of its letters.</summary>
    /// <param name="component">Its name in the set.</param>
    /// <param name="target">The target, or null.</param>
    /// <returns>Whether the set has it.</returns>
    public bool TryFind(string component, [NotNullWhen(true)] out ComponentTarget? target)
    {
        Guard.NotNull(component);
        target = Targets.FirstOrDefault(one =>
            string.Equals(one.Component, component.Trim(), StringComparison.OrdinalIgnoreCase)
        );
        return target is not null;
    }

    /// <summary>The set in short.</summary>
    /// <returns>For example <c>our targets: 10 components</c>.</returns>
    public override string ToString() => $"{Name}: {Targets.Count} component{(Targets.Count == 1 ? "" : "s")}";

    internal static string? TwiceIn(IEnumerable<string> components) =>
        components
            .GroupBy(one => one, StringComparer.OrdinalIgnoreCase)
            .FirstOrDefault(group => group.Count() > 1)
            ?.Key;

    private static TargetCodeSet ReadStarterSet()
    {
        using var stream = typeof(TargetCodeSet).Assembly.GetManifestResourceStream("target-codes.json")!;
        using var reader = new StreamReader(stream);
        return Parse(reader.ReadToEnd());
    }
}
