namespace OilCondition.Charts.Drawing;

/// <summary>Something in the plane of the data, with its words in the key; layers are drawn in their order.</summary>
/// <param name="Key">What the key calls it; null where another layer stands for it.</param>
/// <param name="Ink">Its ink.</param>
internal abstract record Layer(string? Key, Ink Ink)
{
    /// <summary>Whether it shows nothing, so that the key need not tell of it.</summary>
    public virtual bool IsEmpty => false;
}
