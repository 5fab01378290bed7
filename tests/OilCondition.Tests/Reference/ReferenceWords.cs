namespace OilCondition.Tests.Reference;

/// <summary>What the library says instead of, or beside, a figure: the meaning of a row whose value is a word.</summary>
public enum ReferenceBehaviour
{
    /// <summary>A figure and nothing else.</summary>
    Figure,

    /// <summary>An argument error that names the field.</summary>
    Refused,

    /// <summary>A result case: the oil is, or stays, saturated.</summary>
    Saturated,

    /// <summary>A result case: the oil is, or comes to lie, below saturation.</summary>
    Unsaturated,

    /// <summary>A result case: it does not happen.</summary>
    Never,

    /// <summary>A result case: it is so from the start.</summary>
    Already,
}

/// <summary>Reads the words of the reference files and compares them with what the library says.</summary>
public static class ReferenceWords
{
    private static readonly Dictionary<ReferenceBehaviour, string[]> Words = new()
    {
        [ReferenceBehaviour.Refused] =
        [
            "impossible",
            "rejected",
            "reject",
            "refused",
            "invalid",
            "error",
            "not possible",
            "cannot exist",
            "out of range",
            "outside range",
            "undefined",
        ],
        [ReferenceBehaviour.Saturated] = ["saturated", "stays saturated", "at saturation", "free water"],
        [ReferenceBehaviour.Unsaturated] = ["unsaturated", "below saturation", "no free water", "none free"],
        [ReferenceBehaviour.Never] =
        [
            "never",
            "unreachable",
            "not reached",
            "not reachable",
            "cannot be reached",
            "inf",
            "infinity",
            "infinite",
            "stays dissolved",
            "none",
        ],
        [ReferenceBehaviour.Already] = ["already", "already reached", "at target", "now", "always", "no vacuum needed"],
    };

    /// <summary>All meanings of a value such as <c>impossible / rejected</c>. A word that nobody gave a meaning is an error.</summary>
    public static IReadOnlyCollection<ReferenceBehaviour> Meanings(string value)
    {
        var parts = value.Split(
            ['/', ',', ';', '(', ')', '|'],
            StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
        );
        return
        [
            .. parts
                .Select(part =>
                    Words
                        .Where(pair => pair.Value.Contains(part, StringComparer.OrdinalIgnoreCase))
                        .Select(pair => pair.Key)
                        .DefaultIfEmpty(ReferenceBehaviour.Figure)
                        .First()
                )
                .Select(meaning =>
                    meaning == ReferenceBehaviour.Figure
                        ? throw new InvalidOperationException($"'{value}' is a word without a meaning in these tests")
                        : meaning
                )
                .Distinct(),
        ];
    }

    /// <summary>Asserts that the library gives the row's number, or says what its word means.</summary>
    public static void ShouldAgreeOrSay(
        this ReferenceCase row,
        IReadOnlyDictionary<string, Func<ReferenceCase, double>> figures,
        IReadOnlyDictionary<string, Func<ReferenceCase, ReferenceBehaviour>> answers
    )
    {
        if (row.TryNumber(out _))
        {
            row.ShouldAgree(figures[row.Quantity](row));
        }
        else
        {
            row.ShouldSay(answers, figures);
        }
    }

    /// <summary>Asserts that the library says what the row's word means.</summary>
    public static void ShouldSay(
        this ReferenceCase row,
        IReadOnlyDictionary<string, Func<ReferenceCase, ReferenceBehaviour>> answers,
        IReadOnlyDictionary<string, Func<ReferenceCase, double>> figures
    ) =>
        row.Agrees(answers, figures)
            .ShouldBeTrue(
                $"{row.Id} {row.Quantity} ({row.Inputs}): expected '{row.Value}', the library says {Said(row, answers, figures)}; source: {row.Source}"
            );

    /// <summary>
    /// Whether the library says what the row's word means. Quantities without an answer in words give a figure or refuse.
    /// </summary>
    public static bool Agrees(
        this ReferenceCase row,
        IReadOnlyDictionary<string, Func<ReferenceCase, ReferenceBehaviour>> answers,
        IReadOnlyDictionary<string, Func<ReferenceCase, double>> figures
    ) => Meanings(row.Value).Contains(Said(row, answers, figures));

    private static ReferenceBehaviour Said(
        ReferenceCase row,
        IReadOnlyDictionary<string, Func<ReferenceCase, ReferenceBehaviour>> answers,
        IReadOnlyDictionary<string, Func<ReferenceCase, double>> figures
    )
    {
        try
        {
            if (answers.TryGetValue(row.Quantity, out var answer))
            {
                return answer(row);
            }

            double.IsFinite(figures[row.Quantity](row)).ShouldBeTrue(row.Id);
            return ReferenceBehaviour.Figure;
        }
        catch (ArgumentException)
        {
            return ReferenceBehaviour.Refused;
        }
    }

    /// <summary>A row made up in a test, to hold the reading of words itself.</summary>
    public static ReferenceCase Invented(string quantity, string inputs, string word) =>
        new("", "invented", quantity, inputs, word, "", "exact", "", "invented row");
}
