namespace OilCondition.DataFrames;

/// <summary>Qualifiers as frames write them: signs, and null for a plain value.</summary>
internal static class QualifierSign
{
    public const string Allowed = "<, >, ≈ or null";

    public static string? Of(Qualifier qualifier) =>
        qualifier switch
        {
            Qualifier.LessThan => "<",
            Qualifier.GreaterThan => ">",
            Qualifier.Approximately => "≈",
            _ => null,
        };

    public static bool TryRead(string? sign, out Qualifier qualifier)
    {
        (var known, qualifier) = sign switch
        {
            null or "" => (true, Qualifier.None),
            "<" => (true, Qualifier.LessThan),
            ">" => (true, Qualifier.GreaterThan),
            "≈" or "~" => (true, Qualifier.Approximately),
            _ => (false, Qualifier.None),
        };
        return known;
    }
}
