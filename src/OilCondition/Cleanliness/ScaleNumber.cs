using System.Globalization;
using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>One part of a cleanliness code after ISO 4406: <c>16</c>, <c>≥7</c>, <c>&gt;28</c>, <c>*</c> or <c>-</c>.</summary>
/// <remarks>
/// <para>Range: 0 to 28 in the table; 29 stands for a count above its end and prints as <c>&gt;28</c>.</para>
/// <para>
/// Source: ISO 4406:2021, table 1 and the rule on fewer than 20 particles (seen in secondary reproductions); the signs
/// <c>*</c> and <c>-</c> after ISO 4406:1999, 3.4 (from memory).
/// </para>
/// </remarks>
public readonly record struct ScaleNumber
{
    private readonly int number;

    private ScaleNumber(ScaleNumberKind kind, int number)
    {
        Kind = kind;
        this.number = number;
    }

    /// <summary>No count was asked for at this size. Also the default value.</summary>
    public static ScaleNumber NotCounted => default;

    /// <summary>Too numerous to count.</summary>
    public static ScaleNumber TooNumerous => new(ScaleNumberKind.TooNumerous, 0);

    /// <summary>How the number is to be read.</summary>
    public ScaleNumberKind Kind { get; }

    /// <summary>Whether there is a number.</summary>
    public bool HasNumber => Kind is ScaleNumberKind.Counted or ScaleNumberKind.FewCounted;

    /// <summary>The number, 0 to 29; 29 stands for above the table.</summary>
    /// <exception cref="InvalidOperationException">There is no number: the size was not counted or too numerous.</exception>
    public int Number =>
        HasNumber ? number : throw new InvalidOperationException($"The scale number is '{this}'; it has no number.");

    /// <summary>A number without mark.</summary>
    /// <param name="scaleNumber">0 to 28, or 29 for above the table.</param>
    /// <returns>The scale number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number lies outside 0 to 29.</exception>
    public static ScaleNumber Of(int scaleNumber) =>
        new(ScaleNumberKind.Counted, Checked(scaleNumber, nameof(scaleNumber)));

    /// <summary>A number that rests on fewer than 20 counted particles.</summary>
    /// <param name="scaleNumber">0 to 28. For 29 the mark is dropped, since above the table is open upwards already.</param>
    /// <returns>The scale number, printed with <c>≥</c>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number lies outside 0 to 29.</exception>
    public static ScaleNumber OfFewCounted(int scaleNumber) =>
        Checked(scaleNumber, nameof(scaleNumber)) > Iso4406.HighestScaleNumber
            ? Of(scaleNumber)
            : new(ScaleNumberKind.FewCounted, scaleNumber);

    /// <summary>The number as it is written.</summary>
    /// <returns>For example <c>16</c> or <c>≥7</c>.</returns>
    public override string ToString() =>
        Kind switch
        {
            ScaleNumberKind.NotCounted => "-",
            ScaleNumberKind.TooNumerous => "*",
            _ when number > Iso4406.HighestScaleNumber => ">28",
            ScaleNumberKind.FewCounted => "≥" + number.ToString(CultureInfo.InvariantCulture),
            _ => number.ToString(CultureInfo.InvariantCulture),
        };

    /// <summary>Reads one part of a code; dashes of any length, <c>&gt;=</c> for <c>≥</c> and spaces are accepted.</summary>
    internal static bool TryParse(string text, out ScaleNumber scaleNumber)
    {
        var part = text.Trim().Replace(">=", "≥");
        scaleNumber = part == "*" ? TooNumerous : NotCounted;
        if (part is "*" or "-" or "–" or "—" or "\u2212")
        {
            return true;
        }

        var mark = part.Length > 0 && (part[0] is '≥' or '>') ? part[0] : ' ';
        var digits = mark == ' ' ? part : part.Substring(1).TrimStart();
        if (
            digits.Length is 0 or > 2
            || !int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var read)
            || read > Iso4406.HighestScaleNumber
            || (mark == '>' && read != Iso4406.HighestScaleNumber)
        )
        {
            return false;
        }

        scaleNumber = mark switch
        {
            '>' => Of(Iso4406.HighestScaleNumber + 1),
            '≥' => OfFewCounted(read),
            _ => Of(read),
        };
        return true;
    }

    private static int Checked(int number, string name) =>
        (int)Guard.InRange(number, 0, Iso4406.HighestScaleNumber + 1, "(scale number)", name);
}
