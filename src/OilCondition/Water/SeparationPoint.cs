using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>The temperature at which a given water content just saturates an oil: on further cooling, free water appears.</summary>
public sealed record SeparationPoint
{
    internal SeparationPoint(
        Temperature temperature,
        bool isExtrapolated,
        bool staysDissolved = false,
        bool staysFree = false
    )
    {
        Temperature = temperature;
        IsExtrapolated = isExtrapolated;
        StaysDissolved = staysDissolved;
        StaysFree = staysFree;
    }

    /// <summary>The separation temperature, or the end of the range of −60 to 200 °C where it lies beyond.</summary>
    public Temperature Temperature { get; }

    /// <summary>Whether the water stays dissolved even at −60 °C, the lowest that the library answers for.</summary>
    public bool StaysDissolved { get; }

    /// <summary>Whether free water is present even at 200 °C, the highest that the library answers for.</summary>
    public bool StaysFree { get; }

    /// <summary>Whether the temperature lies outside the range in which the curve was measured or published.</summary>
    public bool IsExtrapolated { get; }

    /// <summary>Where water separates, in one line.</summary>
    /// <returns>For example <c>water separates below 41.3 °C</c>.</returns>
    public override string ToString()
    {
        var celsius = $"{PlainText.Tenths(Temperature.DegreesCelsius)} °C";
        var words =
            StaysDissolved ? $"the water stays dissolved down to {celsius}"
            : StaysFree ? $"free water is present even at {celsius}"
            : $"water separates below {celsius}";
        return words + (IsExtrapolated ? ", extrapolated" : "");
    }
}
