using System.Diagnostics.CodeAnalysis;

namespace OilCondition.Cleanliness;

/// <summary>One part of a code after AS4059: a class at one size, <c>6B</c>, or over a span of sizes, <c>6B-F</c>.</summary>
internal sealed record As4059Part
{
    /// <summary>A class over a span of sizes.</summary>
    /// <param name="cleanlinessClass">000 to 12, or above class 12.</param>
    /// <param name="firstSize">The smallest size.</param>
    /// <param name="lastSize">The largest size; the same as the first for one size.</param>
    /// <exception cref="ArgumentException">The last size is smaller than the first, or the class is not one of AS4059.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A size is not one of the named.</exception>
    public As4059Part(CleanlinessClass cleanlinessClass, As4059Size firstSize, As4059Size lastSize)
    {
        As4059.Column(firstSize);
        As4059.Column(lastSize);
        if (lastSize < firstSize)
        {
            throw new ArgumentException(
                $"firstSize is {firstSize}, lastSize is {lastSize}; allowed: a first size that is not larger.",
                nameof(lastSize)
            );
        }

        if (cleanlinessClass.IsAboveTable && cleanlinessClass.Rank <= CleanlinessClass.HighestRank)
        {
            throw new ArgumentException(
                $"cleanlinessClass is {cleanlinessClass}; allowed: 000 to 12, or >12.",
                nameof(cleanlinessClass)
            );
        }

        Class = cleanlinessClass;
        FirstSize = firstSize;
        LastSize = lastSize;
    }

    /// <summary>The class; over a span the worst of its sizes.</summary>
    public CleanlinessClass Class { get; }

    /// <summary>The smallest size.</summary>
    public As4059Size FirstSize { get; }

    /// <summary>The largest size.</summary>
    public As4059Size LastSize { get; }

    /// <summary>Whether the part speaks of a size.</summary>
    /// <param name="size">The size.</param>
    /// <returns>Whether it lies within the span.</returns>
    public bool Covers(As4059Size size) => size >= FirstSize && size <= LastSize;

    /// <summary>The part as it is written.</summary>
    /// <returns>For example <c>6B</c> or <c>6B-F</c>.</returns>
    public override string ToString() =>
        FirstSize == LastSize ? $"{Class}{FirstSize}" : $"{Class}{FirstSize}-{LastSize}";

    internal bool IsSpan => FirstSize != LastSize;

    internal IEnumerable<As4059Size> Sizes =>
        Enumerable.Range((int)FirstSize, LastSize - FirstSize + 1).Select(size => (As4059Size)size);

    /// <summary>Reads <c>6B</c>, <c>6B-F</c>, <c>6 b – f</c>; a class alone is size B where that is allowed.</summary>
    internal static bool TryParse(string text, bool mayLackSize, [NotNullWhen(true)] out As4059Part? part)
    {
        part = null;
        var trimmed = text.Trim();
        var letters = trimmed.Length;
        while (letters > 0 && !char.IsDigit(trimmed[letters - 1]))
        {
            letters--;
        }

        var span = trimmed
            .Substring(letters)
            .Replace('–', '-')
            .Replace('—', '-')
            .Replace('\u2212', '-')
            .Split('-')
            .Select(size => size.Trim())
            .ToArray();
        if (span.Length == 1 && span[0].Length == 0 && mayLackSize)
        {
            span = ["B"];
        }

        if (
            span.Length > 2
            || !CleanlinessClass.TryParse(trimmed.Substring(0, letters), out var read)
            || (read.IsAboveTable && read.Rank <= CleanlinessClass.HighestRank)
            || !TrySize(span[0], out var first)
            || !TrySize(span[span.Length - 1], out var last)
            || (span.Length == 2 && last <= first)
        )
        {
            return false;
        }

        part = new As4059Part(read, first, last);
        return true;
    }

    private static bool TrySize(string text, out As4059Size size)
    {
        var place = text.Length == 1 ? "ABCDEFabcdef".IndexOf(text[0]) : -1;
        size = (As4059Size)(place < 0 ? 0 : place % 6);
        return place >= 0;
    }
}
