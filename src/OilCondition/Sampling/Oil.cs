using OilCondition.Text;
using OilCondition.Water;

namespace OilCondition;

/// <summary>An oil as it is delivered: its name, its new-oil readings and, where it was measured, its water saturation.</summary>
public sealed class Oil
{
    /// <summary>An oil.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="newReadings">Readings of the new oil, against which change is judged; each within its measurand's plausible range.</param>
    /// <param name="saturationCurve">Its water saturation; null where nobody has measured it.</param>
    /// <exception cref="ArgumentException">The name is blank, or a reading lies outside the plausible range of its measurand.</exception>
    public Oil(
        string name,
        IReadOnlyDictionary<Measurand, Reading> newReadings,
        SaturationCurve? saturationCurve = null
    )
    {
        Name = Guard.NotBlank(name);
        NewReadings = Guard
            .NotNull(newReadings, nameof(newReadings))
            .ToDictionary(
                pair => pair.Key,
                pair =>
                {
                    var (measurand, value) = (pair.Key, pair.Value.Value);
                    Guard.InRange(
                        value,
                        measurand.LowestPlausible,
                        measurand.HighestPlausible,
                        measurand.Unit,
                        $"{nameof(newReadings)}[{measurand.Id}]"
                    );
                    return pair.Value;
                }
            );
        SaturationCurve = saturationCurve;
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>Readings of the new oil.</summary>
    public IReadOnlyDictionary<Measurand, Reading> NewReadings { get; }

    /// <summary>Its water saturation; null where nobody has measured it.</summary>
    public SaturationCurve? SaturationCurve { get; }

    /// <summary>Name, and how much is known of it.</summary>
    /// <returns>For example <c>ISO VG 46 (3 new-oil readings, saturation curve)</c>.</returns>
    public override string ToString() =>
        $"{Name} ({NewReadings.Count} new-oil readings, {(SaturationCurve is null ? "no saturation curve" : "saturation curve")})";
}
