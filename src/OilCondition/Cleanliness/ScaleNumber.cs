using System.Diagnostics.CodeAnalysis;
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
public readonly record struct ScaleNumber : IFormattable
#if NET
        , IParsable<ScaleNumber>
#endif
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

    /// <summary>Whether the number rests on fewer than 20 counted particles, so that the true one may be higher; written <c>≥7</c>.</summary>
    public bool IsFewCounted => Kind == ScaleNumberKind.FewCounted;

    /// <summary>How the number is to be read.</summary>
    internal ScaleNumberKind Kind { get; }

    /// <summary>The highest count that still belongs to it, per mL; infinite where it sets no limit: not counted, too numerous, above the table.</summary>
    internal double HighestPerMillilitre =>
        HasNumber && number <= Iso4406.HighestScaleNumber
            ? Iso4406.UpperLimitPerMillilitre(number)
            : double.PositiveInfinity;

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

    /// <summary>The number as it is written.</summary>
    /// <param name="format"><c>G</c> or nothing for the sign ≥; <c>A</c> for <c>&gt;=</c>, where a file or screen has no such sign.</param>
    /// <returns>The number.</returns>
    /// <exception cref="FormatException">The format is none of these.</exception>
    public string ToString(string? format) => ToString(format, null);

    /// <summary>The number as it is written.</summary>
    /// <param name="format"><c>G</c> or nothing for <c>≥7</c>; <c>A</c> for <c>&gt;=7</c>, where a file or screen has no sign ≥.</param>
    /// <param name="formatProvider">Not used: a code is written alike everywhere.</param>
    /// <returns>The number.</returns>
    /// <exception cref="FormatException">The format is none of these.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider) =>
        format switch
        {
            null or "" or "G" => ToString(),
            "A" => ToString().Replace("≥", ">="),
            _ => throw new FormatException($"format is '{format}'; allowed: G, A."),
        };

    /// <summary>Reads one number of a code; dashes of any length, <c>&gt;=</c> for <c>≥</c> and spaces are accepted.</summary>
    /// <param name="text">The number.</param>
    /// <param name="scaleNumber">The number read, or that of a size not counted.</param>
    /// <returns>Whether the text is such a number. No text makes this call throw.</returns>
    public static bool TryParse(string? text, out ScaleNumber scaleNumber)
    {
        var part = (text ?? "").Trim().Replace(">=", "≥");
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

    /// <summary>Reads a number as <see cref="TryParse"/> does.</summary>
    /// <param name="text">The number.</param>
    /// <returns>The number read.</returns>
    /// <exception cref="ArgumentNullException">There is no text.</exception>
    /// <exception cref="FormatException">The text is not a scale number.</exception>
    public static ScaleNumber Parse(string text) =>
        TryParse(Guard.NotNull(text), out var read)
            ? read
            : throw new FormatException($"'{text}' is not a scale number; expected 0 to 28, >28, >=7, * or -.");

#if NET
    static ScaleNumber IParsable<ScaleNumber>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<ScaleNumber>.TryParse(
        [NotNullWhen(true)] string? s,
        IFormatProvider? provider,
        out ScaleNumber result
    ) => TryParse(s, out result);
#endif

    private static int Checked(int number, string name) =>
        (int)Guard.InRange(number, 0, Iso4406.HighestScaleNumber + 1, "(scale number)", name);
}
