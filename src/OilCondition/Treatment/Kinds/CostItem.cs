namespace OilCondition.Treatment;

/// <summary>One row of a cost: so much of something, at the user's price.</summary>
public sealed record CostItem
{
    internal CostItem(CostKind kind, double amount, double? price)
    {
        Kind = kind;
        Amount = amount;
        HasPrice = price.HasValue;
        Cost = amount * (price ?? 0);
    }

    /// <summary>What is used.</summary>
    public CostKind Kind { get; }

    /// <summary>How much, in the unit that its kind names.</summary>
    public double Amount { get; }

    /// <summary>Whether the user gave a price.</summary>
    public bool HasPrice { get; }

    /// <summary>Amount times price, in the user's currency; 0 where there is no price.</summary>
    public double Cost { get; }
}
