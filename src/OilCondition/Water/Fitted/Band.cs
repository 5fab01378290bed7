using OilCondition.Text;

namespace OilCondition.Water;

/// <summary>What a fitted curve says, with its uncertainty. Each end answers as the curve itself does: split, equilibrium, cool-down.</summary>
/// <typeparam name="T"><see cref="SaturationPoint"/> at one temperature, or <see cref="SeparationPoint"/> of one water content.</typeparam>
/// <example>
/// <code>
/// var band = fit.BandAt(Temperature.FromDegreesCelsius(15), 0.95, BandKind.Mean);
/// var mostFreeWater = band.Lower.Split(total).Free;
/// var leastFreeWater = band.Upper.Split(total).Free;
/// </code>
/// </example>
public sealed record Band<T>
    where T : class
{
    internal Band(T lower, T estimate, T upper, double confidence)
    {
        Lower = lower;
        Estimate = estimate;
        Upper = upper;
        Confidence = confidence;
    }

    /// <summary>Lower end: the oil holds no less, or water separates at no colder a temperature.</summary>
    public T Lower { get; }

    /// <summary>From the curve itself.</summary>
    public T Estimate { get; }

    /// <summary>Upper end: the oil holds no more, or water separates at no warmer a temperature; keep the oil above it to be on the safe side.</summary>
    public T Upper { get; }

    /// <summary>Two-sided confidence level.</summary>
    public double Confidence { get; }

    /// <summary>The estimate with both ends.</summary>
    /// <returns>For example <c>243 mg/kg at 65 °C (231 to 255, 95 %)</c>.</returns>
    public override string ToString() =>
        $"{Estimate} ({Figure(Lower)} to {Figure(Upper)}, {PlainText.Number(100 * Confidence)} %)";

    private static string Figure(T end) =>
        end switch
        {
            SaturationPoint saturation => PlainText.Number(saturation.Content.PartsPerMillion),
            SeparationPoint separation => PlainText.Tenths(separation.Temperature.DegreesCelsius),
            _ => end.ToString()!,
        };
}
