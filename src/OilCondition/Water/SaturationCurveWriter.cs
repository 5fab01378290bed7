using System.Text.Json;
using OilCondition.Text;

namespace OilCondition.Water;

/// <summary>Writes a saturation curve as <see cref="SaturationCurveReader"/> reads it.</summary>
internal static class SaturationCurveWriter
{
    public static void WriteCurve(this Utf8JsonWriter json, string name, SaturationCurve curve)
    {
        json.WriteStartObject(name);
        json.WriteString("name", curve.Name);
        json.WriteExact("a", curve.A);
        json.WriteExact("bKelvin", curve.BKelvin);
        json.WriteExact("lowestCelsius", curve.Lowest.DegreesCelsius);
        json.WriteExact("highestCelsius", curve.Highest.DegreesCelsius);
        json.WriteSource("source", curve.Source);
        json.WriteString("basis", curve.Basis);
        json.WriteExact("ageingFactor", curve.AgeingFactor.DecimalFractions);
        json.WriteEndObject();
    }
}
