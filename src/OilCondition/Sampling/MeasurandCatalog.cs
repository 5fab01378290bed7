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

    /// <summary>The known id that is most like a mistyped one.</summary>
    /// <param name="id">What was written.</param>
    /// <returns>The nearest id, by the number of letters to change.</returns>
    public string Nearest(string id)
    {
        Guard.NotNull(id);
        return byId
            .Keys.OrderBy(known => EditDistance(known, id))
            .ThenBy(known => known, StringComparer.Ordinal)
            .First();
    }

    private static int EditDistance(string one, string other)
    {
        var previous = Enumerable.Range(0, other.Length + 1).ToArray();
        for (var i = 1; i <= one.Length; i++)
        {
            var current = new int[other.Length + 1];
            current[0] = i;
            for (var j = 1; j <= other.Length; j++)
            {
                var replace = previous[j - 1] + (one[i - 1] == other[j - 1] ? 0 : 1);
                current[j] = Math.Min(replace, Math.Min(previous[j], current[j - 1]) + 1);
            }

            previous = current;
        }

        return previous[other.Length];
    }

    /// <summary>How many measurands it has.</summary>
    /// <returns>For example <c>29 measurands</c>.</returns>
    public override string ToString() => $"{All.Count} measurands";
}
