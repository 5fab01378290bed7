namespace OilCondition.Contracts;

/// <summary>The words that a text, or each text of a list, can be.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class WordsAttribute(string words) : Attribute
{
    public IReadOnlyList<string> Words { get; } = words.Split(' ');
}
