using System.Text.Json;

namespace OilCondition.Contracts;

/// <summary>A document, or an object inside one. Fields have the names of the JSON; what the JSON leaves out is null.</summary>
public abstract class ContractPart
{
    /// <summary>The object as JSON.</summary>
    /// <returns>Indented JSON.</returns>
    public override string ToString() => JsonSerializer.Serialize(this, GetType(), ContractJson.Default);
}
