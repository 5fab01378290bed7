using System.Diagnostics.CodeAnalysis;
using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>A cleanliness code after ISO 4406: scale numbers for particles of at least 4, 6 and 14 µm(c).</summary>
/// <remarks>
/// <para>
/// A microscope count has two numbers, at 5 and 15 µm, written <c>-/16/13</c>. They stand at <see cref="At6"/> and <see cref="At14"/>,
/// whose sizes ISO 4406 chose as the equivalents of 5 and 15 µm; <see cref="At4"/> is then not counted. The older form <c>16/13</c>
/// is read the same way, never as 4 and 6 µm(c). The written code does not tell a microscope count from a counter's that left out
/// 4 µm(c), nor does this type.
/// </para>
/// <para>Numbers never rise with size: cumulative counts cannot.</para>
/// <para>Source: ISO 4406:2021, table 1 and clause 4 (clause seen, table seen in secondary reproductions).</para>
/// </remarks>
/// <example><code>CleanlinessCode.Parse("19/17/14").Compare(CleanlinessCode.Parse("18/16/13")); // Exceeded</code></example>
public sealed partial record CleanlinessCode : IFormattable
#if NET
        , IParsable<CleanlinessCode>
#endif
{
    /// <summary>A code from three plain numbers.</summary>
    /// <param name="at4">Scale number at 4 µm(c), 0 to 29; 29 stands for 'above the table' and prints as &gt;28.</param>
    /// <param name="at6">Scale number at 6 µm(c).</param>
    /// <param name="at14">Scale number at 14 µm(c).</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside 0 to 29.</exception>
    /// <exception cref="ArgumentException">The numbers rise with size.</exception>
    public CleanlinessCode(int at4, int at6, int at14)
        : this(Number(at4, nameof(at4)), Number(at6, nameof(at6)), Number(at14, nameof(at14))) { }

    /// <summary>A code from three scale numbers, which may carry <c>≥</c> or be <c>*</c> or <c>-</c>.</summary>
    /// <param name="at4">At 4 µm(c); <see cref="ScaleNumber.NotCounted"/> for a microscope count.</param>
    /// <param name="at6">At 6 µm(c), or 5 µm by microscope.</param>
    /// <param name="at14">At 14 µm(c), or 15 µm by microscope.</param>
    /// <exception cref="ArgumentException">
    /// The numbers rise with size, a size is too numerous above a smaller size that is not, or no size was counted.
    /// </exception>
    public CleanlinessCode(ScaleNumber at4, ScaleNumber at6, ScaleNumber at14)
    {
        if (Fault(at4, at6, at14) is { } fault)
        {
            throw new ArgumentException($"Code {at4}/{at6}/{at14} {fault}.", nameof(at14));
        }

        At4 = at4;
        At6 = at6;
        At14 = at14;
    }

    /// <summary>At 4 µm(c).</summary>
    public ScaleNumber At4 { get; }

    /// <summary>At 6 µm(c), or 5 µm by microscope.</summary>
    public ScaleNumber At6 { get; }

    /// <summary>At 14 µm(c), or 15 µm by microscope.</summary>
    public ScaleNumber At14 { get; }

    /// <summary>The code of three cumulative counts. Without the particles counted, no number can carry the mark <c>≥</c>.</summary>
    /// <param name="at4PerMillilitre">Particles of at least 4 µm(c) per millilitre.</param>
    /// <param name="at6PerMillilitre">Particles of at least 6 µm(c) per millilitre.</param>
    /// <param name="at14PerMillilitre">Particles of at least 14 µm(c) per millilitre.</param>
    /// <returns>The code.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative or not finite.</exception>
    /// <exception cref="ArgumentException">The code rises with size.</exception>
    public static CleanlinessCode FromCounts(
        double at4PerMillilitre,
        double at6PerMillilitre,
        double at14PerMillilitre
    ) =>
        new(
            Iso4406.ScaleNumber(at4PerMillilitre),
            Iso4406.ScaleNumber(at6PerMillilitre),
            Iso4406.ScaleNumber(at14PerMillilitre)
        );

    /// <summary>The code of what a counter counted, with <c>≥</c> where it counted fewer than 20.</summary>
    /// <param name="countAt4">Count at 4 µm(c).</param>
    /// <param name="countAt6">Count at 6 µm(c).</param>
    /// <param name="countAt14">Count at 14 µm(c).</param>
    /// <returns>The code.</returns>
    /// <exception cref="ArgumentException">The code rises with size.</exception>
    public static CleanlinessCode FromCounts(ParticleCount countAt4, ParticleCount countAt6, ParticleCount countAt14) =>
        new(
            Guard.NotNull(countAt4).ScaleNumber,
            Guard.NotNull(countAt6).ScaleNumber,
            Guard.NotNull(countAt14).ScaleNumber
        );

    /// <summary>The code of a microscope count, longest dimension: <c>-/16/13</c>.</summary>
    /// <param name="countAt5">Count at 5 µm.</param>
    /// <param name="countAt15">Count at 15 µm.</param>
    /// <returns>The code.</returns>
    /// <exception cref="ArgumentException">The code rises with size.</exception>
    public static CleanlinessCode FromMicroscope(ParticleCount countAt5, ParticleCount countAt15) =>
        new(ScaleNumber.NotCounted, Guard.NotNull(countAt5).ScaleNumber, Guard.NotNull(countAt15).ScaleNumber);

    /// <summary>The code of a microscope count per millilitre. Without the particles counted, no number can carry the mark <c>≥</c>.</summary>
    /// <param name="at5PerMillilitre">Particles of at least 5 µm, longest dimension, per millilitre.</param>
    /// <param name="at15PerMillilitre">Particles of at least 15 µm per millilitre.</param>
    /// <returns>The code.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative or not finite.</exception>
    /// <exception cref="ArgumentException">The code rises with size.</exception>
    public static CleanlinessCode FromMicroscope(double at5PerMillilitre, double at15PerMillilitre) =>
        new(
            ScaleNumber.NotCounted,
            ScaleNumber.Of(Iso4406.ScaleNumber(at5PerMillilitre)),
            ScaleNumber.Of(Iso4406.ScaleNumber(at15PerMillilitre))
        );

    /// <summary>Reads a code as laboratories write it.</summary>
    /// <remarks>
    /// <c>18/16/13</c>, <c>-/16/13</c>, <c>*/19/14</c>, <c>14/12/≥7</c>, <c>14/12/&gt;=7</c>, <c>&gt;28/20/15</c>, with spaces; and
    /// <c>16/13</c>, which is 5 and 15 µm. Words around the code are refused.
    /// </remarks>
    /// <param name="text">The code.</param>
    /// <param name="code">The code read, or null.</param>
    /// <returns>Whether the text is a code. No text makes this call throw.</returns>
    public static bool TryParse(string? text, [NotNullWhen(true)] out CleanlinessCode? code)
    {
        code = null;
        var parts = (text ?? "").Split('/');
        if (parts.Length is < 2 or > 3)
        {
            return false;
        }

        // Two numbers are the last two: 5 and 15 µm, the equivalents of 6 and 14 µm(c).
        var numbers = new ScaleNumber[3];
        var first = 3 - parts.Length;
        for (var i = 0; i < parts.Length; i++)
        {
            if (!ScaleNumber.TryParse(parts[i], out numbers[first + i]))
            {
                return false;
            }
        }

        if (Fault(numbers[0], numbers[1], numbers[2]) is not null)
        {
            return false;
        }

        code = new CleanlinessCode(numbers[0], numbers[1], numbers[2]);
        return true;
    }

    /// <summary>Reads a code as <see cref="TryParse"/> does.</summary>
    /// <param name="text">The code.</param>
    /// <returns>The code read.</returns>
    /// <exception cref="ArgumentNullException">There is no text.</exception>
    /// <exception cref="FormatException">The text is not a code.</exception>
    public static CleanlinessCode Parse(string text) =>
        TryParse(Guard.NotNull(text), out var code)
            ? code
            : throw new FormatException(
                $"'{text}' is not a code after ISO 4406; expected for example 18/16/13, -/16/13, */19/14 or 14/12/>=7, not rising with size."
            );

    /// <summary>The code as it is written.</summary>
    /// <returns>For example <c>18/16/13</c> or <c>14/12/≥7</c>.</returns>
    public override string ToString() => $"{At4}/{At6}/{At14}";

    /// <summary>The code as it is written.</summary>
    /// <param name="format"><c>G</c> or nothing for the sign ≥; <c>A</c> for <c>&gt;=</c>, where a file or screen has no such sign.</param>
    /// <returns>The code.</returns>
    /// <exception cref="FormatException">The format is none of these.</exception>
    public string ToString(string? format) => ToString(format, null);

    /// <summary>The code as it is written.</summary>
    /// <param name="format"><c>G</c> or nothing for <c>14/12/≥7</c>; <c>A</c> for <c>14/12/&gt;=7</c>, where a file or screen has no sign ≥.</param>
    /// <param name="formatProvider">Not used: a code is written alike everywhere.</param>
    /// <returns>The code.</returns>
    /// <exception cref="FormatException">The format is none of these.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider) =>
        $"{At4.ToString(format, formatProvider)}/{At6.ToString(format, formatProvider)}/{At14.ToString(format, formatProvider)}";

#if NET
    static CleanlinessCode IParsable<CleanlinessCode>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<CleanlinessCode>.TryParse(
        [NotNullWhen(true)] string? s,
        IFormatProvider? provider,
        [MaybeNullWhen(false)] out CleanlinessCode result
    ) => TryParse(s, out result);
#endif

    private static string? Fault(ScaleNumber at4, ScaleNumber at6, ScaleNumber at14)
    {
        ScaleNumber[] counted = [.. new[] { at4, at6, at14 }.Where(one => one.Kind != ScaleNumberKind.NotCounted)];
        if (counted.Length == 0)
        {
            return "counts nothing";
        }

        for (var i = 1; i < counted.Length; i++)
        {
            if (Rank(counted[i]) > Rank(counted[i - 1]))
            {
                return "rises with particle size; cumulative counts cannot";
            }
        }

        return null;
    }

    // Too numerous to count ranks above every number.
    private static int Rank(ScaleNumber one) => one.HasNumber ? one.Number : int.MaxValue;

    private static ScaleNumber Number(int number, string name) =>
        ScaleNumber.Of((int)Guard.InRange(number, 0, Iso4406.HighestScaleNumber + 1, "(scale number)", name));
}
