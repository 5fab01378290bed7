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
        var curve = name is null ? null : SaturationCurveReader.Read(entry, name);
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
                list.Has(id)
                && list.Number(id, measurand!.LowestPlausible, measurand.HighestPlausible, measurand.Unit) is { } value
            )
            {
                readings[measurand] = new Reading(value);
            }
        }

        return readings;
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
