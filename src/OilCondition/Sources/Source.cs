using OilCondition.Text;

namespace OilCondition;

/// <summary>Where a constant, a curve, a table or a limit comes from. It travels with the figure into results, JSON and reports.</summary>
/// <remarks>Two sources are equal when kind, text and locator are equal, letter by letter.</remarks>
public sealed record Source
{
    /// <summary>States a source.</summary>
    /// <param name="kind">What stands behind the figure.</param>
    /// <param name="text">The document, or the practice in words; not blank.</param>
    /// <param name="locator">Clause, table or equation within the document; empty where there is none.</param>
    /// <exception cref="ArgumentException"><paramref name="text"/> is blank.</exception>
    public Source(SourceKind kind, string text, string locator = "")
    {
        Kind = kind;
        Text = Guard.NotBlank(text);
        Locator = Guard.NotNull(locator);
    }

    /// <summary>What stands behind the figure.</summary>
    public SourceKind Kind { get; }

    /// <summary>The document, or the practice in words.</summary>
    public string Text { get; }

    /// <summary>Clause, table or equation within the document; empty where there is none.</summary>
    public string Locator { get; }

    /// <summary>A fact of the trade without a single source.</summary>
    /// <param name="text">The practice in words.</param>
    /// <returns>The source.</returns>
    public static Source CommonPractice(string text) => new(SourceKind.CommonPractice, text);

    /// <summary>The user's own measurement or decision.</summary>
    /// <param name="text">Who measured or decided what.</param>
    /// <returns>The source.</returns>
    public static Source UserData(string text) => new(SourceKind.UserData, text);

    /// <summary>One line: kind, text, locator.</summary>
    /// <returns>For example <c>standard: ISO 4406:2021, table 1</c>.</returns>
    public override string ToString() => Locator.Length == 0 ? $"{Word}: {Text}" : $"{Word}: {Text}, {Locator}";

    private string Word =>
        Kind switch
        {
            SourceKind.Standard => "standard",
            SourceKind.Paper => "paper",
            SourceKind.Handbook => "handbook",
            SourceKind.UserData => "user data",
            SourceKind.Derived => "derived",
            SourceKind.CommonPractice => "common practice, no source",
            _ => "from memory",
        };
}
