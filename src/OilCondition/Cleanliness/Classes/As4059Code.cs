using System.Diagnostics.CodeAnalysis;
using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>A cleanliness code after AS4059, cumulative counts: <c>6B</c>, <c>7B/6C/5D</c> or <c>6B-F</c>.</summary>
/// <remarks>
/// <para>As a requirement <c>6B-F</c> asks every size from B to F to keep within class 6; as a result it says that the worst of them has class 6.</para>
/// <para>A class without a letter is read as size B, 6 µm(c) or 5 µm (common practice, no source), and written with it.</para>
/// <para>The code does not say which printing of the table stands behind it: state that beside it, see <see cref="As4059"/>.</para>
/// <para>Source: AS4059 rev. E, forms seen in secondary reproductions.</para>
/// </remarks>
/// <example><code>As4059Code.Parse("7B/6C/5D").Compare(As4059Code.Parse("6B-D")); // Exceeded, at B</code></example>
public sealed record As4059Code
#if NET
    : IParsable<As4059Code>
#endif
{
    /// <summary>A code from its parts, from the smallest size to the largest.</summary>
    internal As4059Code(IEnumerable<As4059Part> parts)
    {
        As4059Part[] read = [.. Guard.NotNull(parts).Select(part => Guard.NotNull(part, nameof(parts)))];
        if (!IsInOrder(read))
        {
            throw new ArgumentException(
                $"Code '{string.Join<As4059Part>("/", read)}' is not allowed: at least one part, each size once, from the smallest to the largest.",
                nameof(parts)
            );
        }

        Parts = read;
    }

    /// <summary>The parts, from the smallest size to the largest.</summary>
    internal IReadOnlyList<As4059Part> Parts { get; }

    /// <summary>Reads a code: <c>6</c>, <c>6B</c>, <c>7B/6C/5D</c>, <c>6B-F</c>, <c>6 B – F</c>, <c>&gt;12A/9B</c>. Words around it are refused.</summary>
    /// <param name="text">The code.</param>
    /// <param name="code">The code read, or null.</param>
    /// <returns>Whether the text is a code. No text makes this call throw.</returns>
    public static bool TryParse(string? text, [NotNullWhen(true)] out As4059Code? code)
    {
        code = null;
        var texts = (text ?? "").Split('/');
        var parts = new As4059Part[texts.Length];
        for (var i = 0; i < texts.Length; i++)
        {
            if (!As4059Part.TryParse(texts[i], mayLackSize: texts.Length == 1, out var part))
            {
                return false;
            }

            parts[i] = part;
        }

        code = IsInOrder(parts) ? new As4059Code(parts) : null;
        return code is not null;
    }

    /// <summary>Reads a code as <see cref="TryParse"/> does.</summary>
    /// <param name="text">The code.</param>
    /// <returns>The code read.</returns>
    /// <exception cref="ArgumentNullException">There is no text.</exception>
    /// <exception cref="FormatException">The text is not a code.</exception>
    public static As4059Code Parse(string text) =>
        TryParse(Guard.NotNull(text), out var code)
            ? code
            : throw new FormatException(
                $"'{text}' is not a code after AS4059; expected for example 6B, 7B/6C/5D or 6B-F, sizes A to F in order, classes 000, 00, 0 to 12 or >12."
            );

    /// <summary>The class at a size; over a span the worst of its sizes.</summary>
    /// <param name="size">The size.</param>
    /// <param name="cleanlinessClass">The class; class 0 where the method returns false.</param>
    /// <returns>Whether the code speaks of the size.</returns>
    public bool TryClassAt(As4059Size size, out CleanlinessClass cleanlinessClass)
    {
        var part = PartAt(size);
        cleanlinessClass = part?.Class ?? default;
        return part is not null;
    }

    /// <summary>This code beside a target.</summary>
    /// <remarks>
    /// A span such as <c>7B-D</c> tells the worst of its sizes, not which. Beside a target that it passes its sizes stay open; the outcome is still
    /// 'exceeded' when the target asks less than that class at every size of the span.
    /// </remarks>
    /// <param name="target">The target code.</param>
    /// <returns>Met, exceeded or not determined.</returns>
    /// <exception cref="ArgumentNullException">There is no target.</exception>
    /// <exception cref="ArgumentException">The target has a class above the table, which limits nothing.</exception>
    public TargetOutcome Compare(As4059Code target) => Beside(target).Outcome;

    /// <summary>Sizes whose own class is above a target's.</summary>
    /// <param name="target">The target code.</param>
    /// <returns>The sizes, the smallest first.</returns>
    /// <exception cref="ArgumentNullException">There is no target.</exception>
    /// <exception cref="ArgumentException">The target has a class above the table, which limits nothing.</exception>
    public IReadOnlyList<As4059Size> ExceededSizes(As4059Code target) => Beside(target).ExceededSizes;

    /// <summary>Sizes that a target asks for and this code does not tell.</summary>
    /// <param name="target">The target code.</param>
    /// <returns>The sizes, the smallest first.</returns>
    /// <exception cref="ArgumentNullException">There is no target.</exception>
    /// <exception cref="ArgumentException">The target has a class above the table, which limits nothing.</exception>
    public IReadOnlyList<As4059Size> UndeterminedSizes(As4059Code target) => Beside(target).UndeterminedSizes;

    /// <summary>Two codes are equal when they are written alike.</summary>
    /// <param name="other">Another code.</param>
    /// <returns>Whether they are equal.</returns>
    public bool Equals(As4059Code? other) => other is not null && Parts.SequenceEqual(other.Parts);

    /// <summary>A hash of the written form.</summary>
    /// <returns>The hash.</returns>
    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(ToString());

    /// <summary>The code as it is written.</summary>
    /// <returns>For example <c>7B/6C/5D</c>.</returns>
    public override string ToString() => string.Join("/", Parts);

#if NET
    static As4059Code IParsable<As4059Code>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<As4059Code>.TryParse(
        [NotNullWhen(true)] string? s,
        IFormatProvider? provider,
        [MaybeNullWhen(false)] out As4059Code result
    ) => TryParse(s, out result);
#endif

    private As4059Comparison Beside(As4059Code target) => new(this, Guard.NotNull(target));

    internal As4059Part? PartAt(As4059Size size) => Parts.FirstOrDefault(part => part.Covers(size));

    private static bool IsInOrder(As4059Part[] parts) =>
        parts.Length > 0 && Enumerable.Range(1, parts.Length - 1).All(i => parts[i].FirstSize > parts[i - 1].LastSize);
}
