using System.Diagnostics.CodeAnalysis;
using OilCondition.Text;

namespace OilCondition;

/// <summary>The measurands that a file or a limit set may name.</summary>
public sealed class MeasurandCatalog
{
    private readonly Dictionary<string, Measurand> byId;

    private MeasurandCatalog(IEnumerable<Measurand> measurands)
    {
        All = [.. measurands];
        byId = All.ToDictionary(measurand => measurand.Id, StringComparer.Ordinal);
    }

    /// <summary>The built-in measurands.</summary>
    public static MeasurandCatalog BuiltIn { get; } = new(Measurands.All);

    /// <summary>All measurands, in the order in which they were added.</summary>
    public IReadOnlyList<Measurand> All { get; }

    /// <summary>This catalog and one more measurand, which replaces one of the same id.</summary>
    /// <param name="measurand">The measurand.</param>
    /// <returns>A new catalog.</returns>
    public MeasurandCatalog With(Measurand measurand)
    {
        Guard.NotNull(measurand);
        return new MeasurandCatalog(All.Where(other => !other.Equals(measurand)).Append(measurand));
    }

    /// <summary>Finds a measurand by its id.</summary>
    /// <param name="id">The id.</param>
    /// <param name="measurand">The measurand, or null.</param>
    /// <returns>Whether it was found.</returns>
    public bool TryFind(string? id, [NotNullWhen(true)] out Measurand? measurand) =>
        byId.TryGetValue(id ?? "", out measurand);

    /// <summary>The known id that a mistyped one was meant to be.</summary>
    /// <remarks>
    /// Words are similar when, hyphens, blanks and case apart, a letter in four at most is wrong, missing, too many or changed places with its
    /// neighbour; or when the first words of the id or name were written.
    /// </remarks>
    /// <param name="id">What was written.</param>
    /// <returns>The most similar id; null when none is similar, since a wrong suggestion is worse than none.</returns>
    public string? Nearest(string id)
    {
        var written = SimilarWords.Bare(Guard.NotNull(id));
        var nearest = All.Select(known =>
                (
                    known.Id,
                    Distance: Math.Min(
                        SimilarWords.Distance(SimilarWords.Bare(known.Id), written),
                        SimilarWords.Distance(SimilarWords.Bare(known.Name), written)
                    )
                )
            )
            .OrderBy(known => known.Distance)
            .First();
        return SimilarWords.IsSimilar(nearest.Distance, written)
            ? nearest.Id
            : All.FirstOrDefault(known => SimilarWords.Begins(known.Name, id) || SimilarWords.Begins(known.Id, id))?.Id;
    }

    /// <summary>What to say of an id that is none.</summary>
    internal string Unknown(string id) =>
        $"'{PlainText.Cut(id.AsSpan())}' is not a known measurand{(Nearest(id) is { } near ? $"; did you mean '{near}'?" : ".")}";

    /// <summary>How many measurands it has.</summary>
    /// <returns>For example <c>29 measurands</c>.</returns>
    public override string ToString() => $"{All.Count} measurands";
}
