using OilCondition.Treatment;

namespace OilCondition.Reporting;

/// <summary>What stands once at the end of a report and is pointed at: evidence, sources and cautions.</summary>
internal sealed class Notes
{
    private readonly List<string> sources = [];
    private readonly SortedSet<Caution> cautions = [];
    private readonly List<(string Machine, string Back, IReadOnlyList<string> Lines)> evidence = [];

    public IReadOnlyList<string> Sources => sources;

    public IEnumerable<Caution> Cautions => cautions;

    public IReadOnlyList<(string Machine, string Back, IReadOnlyList<string> Lines)> Evidence => evidence;

    /// <summary>The number of a source, the same for the same words.</summary>
    public int Source(Source source)
    {
        var text = source.ToString();
        if (!sources.Contains(text))
        {
            sources.Add(text);
        }

        return sources.IndexOf(text) + 1;
    }

    public Caution Cautioned(Caution caution)
    {
        cautions.Add(caution);
        return caution;
    }

    public int Evidenced(string machine, string back, IReadOnlyList<string> lines)
    {
        evidence.Add((machine, back, lines));
        return evidence.Count;
    }
}
