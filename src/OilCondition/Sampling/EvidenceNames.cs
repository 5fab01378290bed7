namespace OilCondition;

/// <summary>What evidence is called in English. The ids stay as they are, whatever is written here.</summary>
internal static class EvidenceNames
{
    /// <summary>Evidence of readings that a trend left out has the reason at its end.</summary>
    public const string LeftOut = "readings-left-out-";

    private static readonly Dictionary<string, string> Others = new(StringComparer.Ordinal)
    {
        ["chance-10-percent-by"] = "10 % chance by",
        ["chance-50-percent-by"] = "50 % chance by",
        ["chance-90-percent-by"] = "90 % chance by",
        ["density-15c"] = "density at 15 °C",
        ["free-water-at-least"] = "free water, at least",
        ["free-water-at-most"] = "free water, at most",
        ["iso-4406-code"] = "ISO 4406 code",
        ["observed-for"] = "over",
        ["readings-bounded-by-top-ups"] = "readings bounded by top-ups",
        ["readings-of-initial-phase"] = "readings of an initial phase, not used",
        ["readings-since-change"] = "readings since",
        ["saturation-at-least"] = "saturation, which is the least that it holds",
        ["top-ups"] = "top-ups",
        ["uncertainty-of-difference"] = "uncertainty of that",
    };

    /// <summary>The words of an id: mostly its own.</summary>
    public static string Of(string id) =>
        Others.TryGetValue(id, out var words) ? words
        : id.StartsWith(LeftOut, StringComparison.Ordinal) ? "readings left out, " + id.Substring(LeftOut.Length)
        : id.Replace('-', ' ');
}
