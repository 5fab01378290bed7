namespace OilCondition.Tests.Text;

/// <summary>What a sentence has to have in every language: the same figures and dates.</summary>
internal static class SaidTwice
{
    /// <summary>The German sentence has the figures and dates of the English one, in any order.</summary>
    public static void HasTheSameFigures(string english, string german) =>
        Figures(Iso(german)).ShouldBe(Figures(english), ignoreOrder: true, $"{english}\n{german}");

    private static string Iso(string german) =>
        Pattern.Of(@"(?<=\d),(?=\d)").Replace(Pattern.Of(@"(\d\d)\.(\d\d)\.(\d{4})").Replace(german, "$3-$2-$1"), ".");

    /// <summary>Where sentences differ in the number of a word, as in 'one chance in ten', there are no digits.</summary>
    private static List<string> Figures(string text) =>
        [.. Pattern.Of(@"\d+(?:[.:-]\d+)*(?:E-?\d+)?").Matches(text).Select(one => one.Value)];
}
