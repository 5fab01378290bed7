using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>A cleanliness code after AS4059, cumulative counts: <c>6B</c>, <c>7B/6C/5D</c> or <c>6B-F</c>.</summary>
/// <remarks>
/// <para>As a requirement <c>6B-F</c> asks every size from B to F to keep within class 6; as a result it says that the worst of them has class 6.</para>
/// <para>A class without a letter is read as size B, 6 µm(c) or 5 µm (common practice, no source), and written with it.</para>
/// <para>The code does not say which printing of the table stands behind it: state that beside it, see <see cref="As4059Printing"/>.</para>
/// <para>Source: AS4059 rev. E, forms seen in secondary reproductions.</para>
/// </remarks>
/// <example><code>As4059Code.Parse("7B/6C/5D").Compare(As4059Code.Parse("6B-D")).Outcome; // Exceeded, at B</code></example>
public sealed record As4059Code
{
    /// <summary>A code from its parts.</summary>
    /// <param name="parts">Parts from the smallest size to the largest.</param>
    /// <exception cref="ArgumentNullException">There are no parts, or one of them is null.</exception>
    /// <exception cref="ArgumentException">There is no part, or a size comes twice or after a larger one.</exception>
    public As4059Code(IEnumerable<As4059Part> parts)
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
    public IReadOnlyList<As4059Part> Parts { get; }

    /// <summary>Reads a code: <c>6</c>, <c>6B</c>, <c>7B/6C/5D</c>, <c>6B-F</c>, <c>6 B – F</c>, <c>&gt;12A/9B</c>. Words around it are refused.</summary>
    /// <param name="text">The code.</param>
    /// <param name="code">The code read, or null.</param>
    /// <returns>Whether the text is a code. No text makes this call throw.</returns>
    public static bool TryParse(string? text, out As4059Code? code)
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

            parts[i] = part!;
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
            ? code!
            : throw new FormatException(
                $"'{text}' is not a code after AS4059; expected for example 6B, 7B/6C/5D or 6B-F, sizes A to F in order, classes 000, 00, 0 to 12 or >12."
            );

    /// <summary>This code beside a target, size by size.</summary>
    /// <param name="target">The target code.</param>
    /// <returns>The outcome with the sizes that are exceeded and those that stay open.</returns>
    /// <exception cref="ArgumentNullException">There is no target.</exception>
    /// <exception cref="ArgumentException">The target has a class above the table, which limits nothing.</exception>
    public As4059Comparison Compare(As4059Code target) => new(this, Guard.NotNull(target));

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

    internal As4059Part? PartAt(As4059Size size) => Parts.FirstOrDefault(part => part.Covers(size));

    private static bool IsInOrder(As4059Part[] parts) =>
        parts.Length > 0 && Enumerable.Range(1, parts.Length - 1).All(i => parts[i].FirstSize > parts[i - 1].LastSize);
}
