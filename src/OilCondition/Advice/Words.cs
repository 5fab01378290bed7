namespace OilCondition.Advice;

/// <summary>Names of enumeration members as they stand in keys and JSON: lower case with hyphens.</summary>
internal static class Words
{
    public static string Kebab(Enum value)
    {
        var name = value.ToString();
        return string.Concat(
            name.Select((letter, i) => (i > 0 && char.IsUpper(letter) ? "-" : "") + char.ToLowerInvariant(letter))
        );
    }
}
