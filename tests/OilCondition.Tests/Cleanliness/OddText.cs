using CsCheck;

namespace OilCondition.Tests.Cleanliness;

/// <summary>Texts that are nearly codes: foreign digits and dashes, halves of surrogate pairs, marks without width, very long numbers.</summary>
internal static class OddText
{
    private static readonly string[] Pieces =
    [
        "18",
        "/",
        "-",
        "–",
        "\u2212",
        "\u00AD",
        "≥",
        ">=",
        ">",
        "*",
        " ",
        "\u00A0",
        "\u200B",
        "\uFEFF",
        "\0",
        "\n",
        "٣",
        "１２",
        "Ⅻ",
        "²",
        "\uD835",
        "\uDFD8",
        "e\u0301",
        "99999999999999999999",
        "00",
        "000",
        "12",
        "A",
        "B",
        "F",
        "Ａ",
        "В",
        "İ",
        "b-f",
    ];

    public static Gen<string> Any { get; } =
        Gen.Int[0, Pieces.Length - 1].Array[0, 8].Select(chosen => string.Concat(chosen.Select(i => Pieces[i])));
}
