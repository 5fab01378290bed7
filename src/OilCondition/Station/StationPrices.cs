using OilCondition.Text;
using OilCondition.Treatment;

namespace OilCondition;

/// <summary>The plant's prices and their currency.</summary>
public sealed record StationPrices
{
    /// <summary>States the prices.</summary>
    /// <param name="currency">The currency, as it is to be written.</param>
    /// <param name="prices">The prices that are known.</param>
    /// <exception cref="ArgumentException">The currency is blank.</exception>
    /// <exception cref="ArgumentNullException">The prices are null.</exception>
    public StationPrices(string currency, TreatmentPrices prices)
    {
        Currency = Guard.NotBlank(currency);
        Prices = Guard.NotNull(prices);
    }

    /// <summary>The currency, as it is to be written.</summary>
    public string Currency { get; }

    /// <summary>The prices that are known.</summary>
    public TreatmentPrices Prices { get; }

    /// <summary>Prices with their currency.</summary>
    /// <returns>For example <c>EUR: 10 per h, 0.5 per kWh</c>.</returns>
    public override string ToString() => $"{Currency}: {Prices}";
}
