using OilCondition.Guards;
using OilCondition.Water;

namespace OilCondition.Sampling;

/// <summary>An oil as it is delivered: its name, its new-oil readings and, where it was measured, its water saturation.</summary>
public sealed class Oil
{
    /// <summary>An oil.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="newReadings">Readings of the new oil, against which change is judged.</param>
    /// <param name="saturationCurve">Its water saturation; null where nobody has measured it.</param>
    public Oil(
        string name,
        IReadOnlyDictionary<Measurand, Reading> newReadings,
        SaturationCurve? saturationCurve = null
    )
    {
        Name = Guard.NotBlank(name, nameof(name));
        NewReadings = Guard
            .NotNull(newReadings, nameof(newReadings))
            .ToDictionary(pair => pair.Key, pair => pair.Value);
        SaturationCurve = saturationCurve;
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>Readings of the new oil.</summary>
    public IReadOnlyDictionary<Measurand, Reading> NewReadings { get; }

    /// <summary>Its water saturation; null where nobody has measured it.</summary>
    public SaturationCurve? SaturationCurve { get; }
}
