using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>A class of a particle count: <c>000</c>, <c>00</c>, <c>0</c> to <c>12</c>, or above the table, <c>&gt;12</c>.</summary>
/// <remarks>
/// The classes of NAS 1638 and AS4059, and of the US Navy (0 to 6, above the table <c>&gt;6</c>). Which table a class belongs to is not part of
/// it. The default value is class 0.
/// </remarks>
public readonly partial record struct CleanlinessClass
#if NET
    : IParsable<CleanlinessClass>
#endif
{
    internal const int LowestRank = -2;
    internal const int HighestRank = 12;

    private CleanlinessClass(int rank, bool isAboveTable)
    {
        Rank = rank;
        IsAboveTable = isAboveTable;
    }

    /// <summary>Class 000, the cleanest; in the cumulative table of AS4059 only.</summary>
    public static CleanlinessClass Class000 { get; } = new(LowestRank, isAboveTable: false);

    /// <summary>Class 00.</summary>
    public static CleanlinessClass Class00 { get; } = new(-1, isAboveTable: false);

    /// <summary>The place in the order from clean to dirty: 000 is −2, 00 is −1, a number is itself, above the table is one more than the last class.</summary>
    public int Rank { get; }

    /// <summary>Whether the count lies above the last class of its table.</summary>
    public bool IsAboveTable { get; }

    /// <summary>A class with a number.</summary>
    /// <param name="number">0 to 12.</param>
    /// <returns>The class.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number lies outside 0 to 12.</exception>
    public static CleanlinessClass Of(int number) =>
        new((int)Guard.InRange(number, 0, HighestRank, "(class)"), isAboveTable: false);

    /// <summary>What is said of a count above the last class of a table.</summary>
    /// <param name="number">The last class of the table, 0 to 12.</param>
    /// <returns>The result that prints as <c>&gt;12</c>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number lies outside 0 to 12.</exception>
    public static CleanlinessClass Above(int number) =>
        new((int)Guard.InRange(number, 0, HighestRank, "(class)") + 1, isAboveTable: true);

    /// <summary>Reads a class: <c>000</c>, <c>00</c>, <c>0</c> to <c>12</c>, <c>&gt;12</c>; spaces around it are accepted.</summary>
    /// <param name="text">The class.</param>
    /// <param name="cleanlinessClass">The class read, or class 0.</param>
    /// <returns>Whether the text is a class. No text makes this call throw.</returns>
    public static bool TryParse(string? text, out CleanlinessClass cleanlinessClass)
    {
        var part = (text ?? "").Trim();
        cleanlinessClass =
            part == "000" ? Class000
            : part == "00" ? Class00
            : default;
        if (part is "000" or "00")
        {
            return true;
        }

        var isAbove = part.Length > 0 && part[0] == '>';
        var digits = isAbove ? part.Substring(1).TrimStart() : part;
        if (
            digits.Length is 0 or > 2
            || !int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            || number > HighestRank
            || (digits.Length == 2 && number < 10)
        )
        {
            return false;
        }

        cleanlinessClass = isAbove ? Above(number) : Of(number);
        return true;
    }

    /// <summary>Reads a class as <see cref="TryParse"/> does.</summary>
    /// <param name="text">The class.</param>
    /// <returns>The class.</returns>
    /// <exception cref="ArgumentNullException">There is no text.</exception>
    /// <exception cref="FormatException">The text is not a class.</exception>
    public static CleanlinessClass Parse(string text) =>
        TryParse(Guard.NotNull(text), out var read)
            ? read
            : throw new FormatException($"'{text}' is not a class; expected 000, 00, 0 to 12 or >12.");

    /// <summary>The class as it is written.</summary>
    /// <returns>For example <c>00</c>, <c>7</c> or <c>&gt;12</c>.</returns>
    public override string ToString() =>
        IsAboveTable ? ">" + (Rank - 1).ToString(CultureInfo.InvariantCulture)
        : Rank < 0 ? new string('0', 1 - Rank)
        : Rank.ToString(CultureInfo.InvariantCulture);

#if NET
    static CleanlinessClass IParsable<CleanlinessClass>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<CleanlinessClass>.TryParse(
        [NotNullWhen(true)] string? s,
        IFormatProvider? provider,
        out CleanlinessClass result
    ) => TryParse(s, out result);
#endif

    /// <summary>The class with a rank within the tables.</summary>
    internal static CleanlinessClass FromRank(int rank) => new(rank, isAboveTable: false);
}
