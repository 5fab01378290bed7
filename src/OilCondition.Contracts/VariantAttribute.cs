namespace OilCondition.Contracts;

/// <summary>
/// Fields that an object has only in one of its variants: by a word in one of its fields, or by whether a field is there. Fields that no variant
/// names belong to all.
/// </summary>
/// <param name="field">The field that tells the variants apart.</param>
/// <param name="values">The words that make this variant, or <see cref="IsThere"/> or <see cref="IsLeftOut"/>.</param>
/// <param name="required">Fields that must be there; of two with a slash between them, exactly one.</param>
/// <param name="allowed">Fields that may be there.</param>
[AttributeUsage(AttributeTargets.Class, AllowMultiple = true)]
internal sealed class VariantAttribute(string field, string values, string required, string allowed) : Attribute
{
    public const string IsThere = "*";
    public const string IsLeftOut = "";

    public string Field { get; } = field;

    public string Values { get; } = values;

    public IReadOnlyList<string> Required { get; } = Names(required);

    public IReadOnlyList<string> Allowed { get; } = Names(allowed);

    private static string[] Names(string names) => names.Split(new[] { ' ' }, StringSplitOptions.RemoveEmptyEntries);
}
