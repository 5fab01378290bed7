namespace OilCondition.Contracts;

/// <summary>Fields of which an object has at least one.</summary>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class AnyOfAttribute(string fields) : Attribute
{
    public IReadOnlyList<string> Fields { get; } = fields.Split(' ');
}
