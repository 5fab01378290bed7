using OilCondition.Text;
using OilCondition.Thermal;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition;

/// <summary>Reads the oils of a station file, with their saturation curves.</summary>
internal sealed class OilReader(MeasurandCatalog catalog)
{
    public StationOil? Read(JsonEntry entry)
    {
        entry.Known(
            "id",
            "name",
            "new",
            "saturation",
            "highestCelsius",
            "hasDetergents",
            "pourPointCelsius",
            "flashPointCelsius"
        );
        var id = entry.Text("id");
        var name = entry.Text("name");
        var readings = NewReadings(entry);
        var curve = name is null ? null : Saturation(entry, name);
        var highest = entry.NumberIfAny("highestCelsius", 0, 150, "°C");
        var detergents = entry.FlagIfAny("hasDetergents") ?? false;
        var pour = entry.NumberIfAny("pourPointCelsius", -60, 60, "°C");
        var flash = entry.NumberIfAny("flashPointCelsius", 0, 400, "°C");
        if (id is null || name is null || entry.Made(() => new Oil(name, readings, curve)) is not { } oil)
        {
            return null;
        }

        return new StationOil(
            id,
            oil,
            highest is null ? null : entry.Made(() => Treated(oil, highest.Value, detergents, pour, flash))
        );
    }

    private Dictionary<Measurand, Reading> NewReadings(JsonEntry entry)
    {
        var readings = new Dictionary<Measurand, Reading>();
        if (entry.ObjectIfAny("new") is not { } list)
        {
            return readings;
        }

        foreach (var id in list.Names)
        {
            if (!catalog.TryFind(id, out var measurand))
            {
                list.Fault(id, catalog.Unknown(id));
            }
            else if (
                list.Number(id, measurand!.LowestPlausible, measurand.HighestPlausible, measurand.Unit) is { } value
            )
            {
                readings[measurand] = new Reading(value);
            }
        }

        return readings;
    }

    /// <summary>Two measured points, or the constants of a known curve.</summary>
    private static SaturationCurve? Saturation(JsonEntry entry, string name)
    {
        if (entry.ObjectIfAny("saturation") is not { } saturation)
        {
            return null;
        }

        saturation.Known("points", "a", "bKelvin", "lowestCelsius", "highestCelsius", "source");
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
        return a is null || b is null || lowest is null || highest is null || source is null
            ? null
            : entry.Made(() =>
                SaturationCurve.FromCoefficients(
                    name,
                    a.Value,
                    b.Value,
                    Temperature.FromDegreesCelsius(lowest.Value),
                    Temperature.FromDegreesCelsius(highest.Value),
                    source
                )
            );
    }

    private static TreatedOil? Treated(
        Oil oil,
        double highestCelsius,
        bool detergents,
        double? pourCelsius,
        double? flashCelsius
    )
    {
        double? New(Measurand measurand) => oil.NewReadings.TryGetValue(measurand, out var one) ? one.Value : null;
        return
            oil.SaturationCurve is { } curve
            && New(Measurands.Density15) is { } density
            && New(Measurands.Viscosity40) is { } at40
            && New(Measurands.Viscosity100) is { } at100
            ? new TreatedOil(
                OilProperties.FromDensityAt15(Density.FromKilogramsPerCubicMeter(density)),
                curve,
                ViscosityTemperatureLine.FromTwoPoints(
                    Temperature.FromDegreesCelsius(40),
                    KinematicViscosity.FromCentistokes(at40),
                    Temperature.FromDegreesCelsius(100),
                    KinematicViscosity.FromCentistokes(at100)
                ),
                Temperature.FromDegreesCelsius(highestCelsius),
                detergents,
                pourCelsius is { } cold ? Temperature.FromDegreesCelsius(cold) : null,
                flashCelsius is { } hot ? Temperature.FromDegreesCelsius(hot) : null
            )
            : null;
    }
}
