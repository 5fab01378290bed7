using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>Reads the saturation curve of an oil from a station file or a history.</summary>
internal static class SaturationCurveReader
{
    /// <summary>Two measured points, or the constants of a known curve.</summary>
    /// <param name="entry">The oil that may have a curve.</param>
    /// <param name="oil">The oil's name, for a curve that has none of its own.</param>
    public static SaturationCurve? Read(JsonEntry entry, string oil)
    {
        if (entry.ObjectIfAny("saturation") is not { } saturation)
        {
            return null;
        }

        saturation.Known(
            "name",
            "points",
            "a",
            "bKelvin",
            "lowestCelsius",
            "highestCelsius",
            "source",
            "basis",
            "ageingFactor"
        );
        var name = saturation.Has("name") ? saturation.Text("name") ?? oil : oil;
        var source = SourceReader.Read(saturation, "saturation curve");
        if (saturation.Has("points") == saturation.Has("a"))
        {
            saturation.Fault("either 'points' with two points, or 'a' and 'bKelvin' are expected.");
            return null;
        }

        return saturation.Has("points")
            ? FromPoints(saturation, name, source)
            : FromConstants(saturation, name, source);
    }

    private static SaturationCurve? FromPoints(JsonEntry entry, string name, Source? source)
    {
        foreach (
            var alone in new[] { "bKelvin", "lowestCelsius", "highestCelsius", "basis", "ageingFactor" }.Where(
                entry.Has
            )
        )
        {
            entry.Fault(alone, "belongs to the constants of a curve, not to points.");
        }

        var points = entry.List("points", Point);
        if (points.Count != 2 || source is null)
        {
            if (points.Count != 2)
            {
                entry.Fault("points", $"{points.Count} points were read; exactly two are expected.");
            }

            return null;
        }

        return entry.Made(() =>
            SaturationCurve.FromTwoPoints(
                name,
                points[0].Item1,
                points[0].Item2,
                points[1].Item1,
                points[1].Item2,
                source
            )
        );
    }

    private static Tuple<Temperature, MassFraction>? Point(JsonEntry entry)
    {
        entry.Known("celsius", "mgPerKg");
        var celsius = entry.Number("celsius", OilTemperature.LowestCelsius, OilTemperature.HighestCelsius, "°C");
        var content = entry.Number("mgPerKg");
        return celsius is null || content is null
            ? null
            : Tuple.Create(
                Temperature.FromDegreesCelsius(celsius.Value),
                MassFraction.FromPartsPerMillion(content.Value)
            );
    }

    private static SaturationCurve? FromConstants(JsonEntry entry, string name, Source? source)
    {
        var a = entry.Number("a");
        var b = entry.Number("bKelvin");
        var lowest = entry.Number("lowestCelsius", OilTemperature.LowestCelsius, OilTemperature.HighestCelsius, "°C");
        var highest = entry.Number("highestCelsius", OilTemperature.LowestCelsius, OilTemperature.HighestCelsius, "°C");
        var basis = entry.TextOrEmpty("basis");
        var ageing = entry.NumberIfAny("ageingFactor", 0.001, 1000, "(ratio)") ?? 1;
        return a is null || b is null || lowest is null || highest is null || source is null
            ? null
            : entry.Made(() =>
                SaturationCurve.FromFile(
                    name,
                    a.Value,
                    b.Value,
                    Temperature.FromDegreesCelsius(lowest.Value),
                    Temperature.FromDegreesCelsius(highest.Value),
                    source,
                    basis,
                    ageing
                )
            );
    }
}
