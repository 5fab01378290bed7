using OilCondition.Cleanliness;
using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>What the treatment is to reach: water, a cleanliness code, or both.</summary>
public sealed record TreatmentTarget
{
    /// <summary>States a target.</summary>
    /// <param name="water">All water that may remain, 0 to 500 000 mg/kg; null where nothing is asked.</param>
    /// <param name="code">The code to reach; a size without number asks nothing. Null where nothing is asked.</param>
    /// <exception cref="ArgumentException">Neither is asked, or the code asks for what no count can show.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The water lies outside its range.</exception>
    public TreatmentTarget(MassFraction? water = null, CleanlinessCode? code = null)
    {
        if (water is null && code is null)
        {
            throw new ArgumentException("A target needs a water content, a cleanliness code, or both.", nameof(water));
        }

        if (water is { } content)
        {
            PhysicalRange.Water(content, nameof(water));
        }

        if (code is not null && new[] { code.At4, code.At6, code.At14 }.Any(AsksForNoCount))
        {
            throw new ArgumentException(
                $"code is {code}; a target asks for numbers of 0 to 28, and for nothing at a size with -.",
                nameof(code)
            );
        }

        Water = water;
        Code = code;
    }

    /// <summary>All water that may remain; null where nothing is asked.</summary>
    public MassFraction? Water { get; }

    /// <summary>The code to reach; null where nothing is asked.</summary>
    public CleanlinessCode? Code { get; }

    /// <summary>Water so low that the oil stays below a relative saturation at a stated temperature, for example cold after standstill.</summary>
    /// <remarks>C = aw S(T). The content stays the same at every temperature; the relative saturation does not.</remarks>
    /// <param name="saturationCurve">Saturation curve of the oil.</param>
    /// <param name="temperature">The temperature at which it is to hold, −60 to 200 °C.</param>
    /// <param name="relativeSaturation">Relative saturation there, 0 to 1.</param>
    /// <param name="code">The code to reach as well, or null.</param>
    /// <returns>The target.</returns>
    /// <exception cref="ArgumentNullException">The curve is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static TreatmentTarget DryAt(
        SaturationCurve saturationCurve,
        Temperature temperature,
        Ratio relativeSaturation,
        CleanlinessCode? code = null
    )
    {
        var saturation = Guard.NotNull(saturationCurve).SaturationAt(temperature).Content;
        var share = PhysicalRange.Saturation(relativeSaturation);
        return new TreatmentTarget(MassFraction.FromPartsPerMillion(saturation.PartsPerMillion * share), code);
    }

    private static bool AsksForNoCount(ScaleNumber number) =>
        number != ScaleNumber.NotCounted && !(CodeLimits.Of(number) < double.PositiveInfinity);

    /// <summary>The target in a few words.</summary>
    /// <returns>For example <c>90 mg/kg, 18/16/13</c>.</returns>
    public override string ToString() =>
        string.Join(
            ", ",
            new[]
            {
                Water is { } water ? $"{PlainText.Number(water.PartsPerMillion)} mg/kg" : "",
                Code?.ToString() ?? "",
            }.Where(part => part.Length > 0)
        );
}
