namespace OilCondition;

/// <summary>Whether a word was meant to be another: what 'did you mean' goes by.</summary>
internal static class SimilarWords
{
    /// <summary>Letters for each that may be wrong: 'aluminum' is meant to be aluminium, and 'gallium' not calcium.</summary>
    private const int LettersForEachMistake = 4;

    /// <summary>Longer texts are no word that anybody mistyped.</summary>
    private const int Longest = 60;

    /// <summary>Letters and digits alone, in lower case.</summary>
    public static string Bare(string text) =>
        text.Length > Longest ? "" : new([.. text.Where(char.IsLetterOrDigit).Select(char.ToLowerInvariant)]);

    public static bool IsSimilar(int distance, string written) =>
        written.Length > 0 && distance <= Math.Max(1, written.Length / LettersForEachMistake) && written.Length > 2;

    /// <summary>Whether a text begins with these words, as 'water content' with 'water'.</summary>
    public static bool Begins(string text, string words)
    {
        if (words.Length > Longest)
        {
            return false;
        }

        var known = WordsOf(text);
        var written = WordsOf(words);
        return written.Count > 0
            && written[0].Length > 2
            && known.Take(written.Count).SequenceEqual(written, StringComparer.Ordinal);
    }

    /// <summary>Letters to change, to add, to leave out or to swap with their neighbour (optimal string alignment).</summary>
    public static int Distance(string one, string other)
    {
        var table = new int[one.Length + 1, other.Length + 1];
        for (var i = 0; i <= one.Length; i++)
        {
            for (var j = 0; j <= other.Length; j++)
            {
                table[i, j] =
                    i == 0 ? j
                    : j == 0 ? i
                    : Cheapest(i, j);
            }
        }

        return table[one.Length, other.Length];

        int Cheapest(int i, int j)
        {
            var change = table[i - 1, j - 1] + (one[i - 1] == other[j - 1] ? 0 : 1);
            var least = Math.Min(change, Math.Min(table[i - 1, j], table[i, j - 1]) + 1);
            return i > 1 && j > 1 && one[i - 1] == other[j - 2] && one[i - 2] == other[j - 1]
                ? Math.Min(least, table[i - 2, j - 2] + 1)
                : least;
        }
    }

    private static List<string> WordsOf(string text) =>
        [.. text.ToLowerInvariant().Split([' ', '-', '_'], StringSplitOptions.RemoveEmptyEntries)];
}
