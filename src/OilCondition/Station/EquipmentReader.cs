using OilCondition.Text;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition;

/// <summary>Reads the equipment of a station file: one field a figure, its unit in its name.</summary>
internal static class EquipmentReader
{
    private static readonly Dictionary<TreatmentKind, Func<JsonEntry, ITreatment?>> Kinds = new()
    {
        [TreatmentKind.VacuumDehydration] = Vacuum,
        [TreatmentKind.FineFiltration] = Filtration,
        [TreatmentKind.Coalescer] = Coalescing,
        [TreatmentKind.WaterAbsorbingElements] = Absorbing,
        [TreatmentKind.Centrifuge] = Spinning,
        [TreatmentKind.SettlingAndDraining] = Settling,
        [TreatmentKind.HeadSpacePurge] = Purge,
        [TreatmentKind.DrainAndRefill] = Refill,
    };

    public static StationEquipment? Read(JsonEntry entry)
    {
        var id = entry.Text("id");
        var name = entry.Text("name");
        var kind = entry.Word<TreatmentKind>("kind");
        var connects = entry.TextsIfAny("connectsTo") ?? [];
        if (kind is null)
        {
            return null;
        }

        var treatment = Kinds[kind.Value](entry);
        var terms = SiteReader.Terms(entry, kind.Value);
        return id is null || name is null || treatment is null || terms is null
            ? null
            : new StationEquipment(
                id,
                name,
                treatment,
                connects,
                terms,
                PumpReader.Discharge(entry),
                PumpReader.Vacuum(entry)
            );
    }

    private static void Known(JsonEntry entry, params string[] names) =>
        entry.Known(["id", "name", "kind", "connectsTo", "note", .. SiteReader.TermFields, .. names]);

    private static VacuumDehydration? Vacuum(JsonEntry entry)
    {
        Known(
            entry,
            "flowLitresPerMinute",
            "highestViscosityCentistokes",
            "startViscosityCentistokes",
            "heaterKilowatts",
            "highestRiseKelvin",
            "motorKilowatts",
            "processCelsius",
            "highestCelsius",
            "chamberMillibar",
            "dryAirKilogramsPerHour",
            "pumpCubicMetresPerHour",
            "condenserCelsius",
            "removalPerPass",
            "removalViscosityCentistokes",
            "filter",
            "elements",
            "dischargePump",
            "vacuumPump"
        );
        var pump = EquipmentParts.Pump(entry);
        var process = entry.Number("processCelsius");
        var chamber = EquipmentParts.Chamber(entry);
        var removal = entry.Number("removalPerPass");
        var heater = entry.NumberIfAny("heaterKilowatts") ?? 0;
        var motor = entry.NumberIfAny("motorKilowatts") ?? 0;
        var highest = entry.NumberIfAny("highestCelsius");
        var film = entry.NumberIfAny("removalViscosityCentistokes");
        var filter = EquipmentParts.Filter(entry);
        var elements = entry.WholeIfAny("elements", 0, 10_000);
        return pump is null || process is null || chamber is null || removal is null
            ? null
            : entry.Made(() =>
                new VacuumDehydration(
                    new PurificationUnit(
                        pump,
                        Power.FromKilowatts(heater),
                        Temperature.FromDegreesCelsius(process.Value),
                        chamber,
                        Ratio.FromDecimalFractions(removal.Value),
                        filter,
                        Power.FromKilowatts(motor),
                        highest is { } hot ? Temperature.FromDegreesCelsius(hot) : null,
                        EquipmentParts.StartViscosity(entry),
                        EquipmentParts.Rise(entry),
                        film is { } found ? KinematicViscosity.FromCentistokes(found) : null
                    ),
                    elements
                )
            );
    }

    private static FineFiltration? Filtration(JsonEntry entry)
    {
        Known(entry, [.. EquipmentParts.LoopFields, "filter", "elements"]);
        var loop = EquipmentParts.Loop(entry);
        var filter = EquipmentParts.Filter(entry);
        var elements = entry.WholeIfAny("elements", 0, 10_000) ?? 1;
        if (filter is null)
        {
            entry.Fault("filter", "an object with 'beta4', 'beta6' and 'beta14' is expected.");
        }

        return loop is null || filter is null ? null : entry.Made(() => new FineFiltration(loop, filter, elements));
    }

    private static Coalescer? Coalescing(JsonEntry entry)
    {
        Known(entry, [.. EquipmentParts.LoopFields, "removalPerPass", "elements"]);
        var loop = EquipmentParts.Loop(entry);
        var removal = entry.Number("removalPerPass");
        var elements = entry.WholeIfAny("elements", 0, 10_000) ?? 1;
        return loop is null || removal is null
            ? null
            : entry.Made(() => new Coalescer(loop, Ratio.FromDecimalFractions(removal.Value), elements));
    }

    private static WaterAbsorbingElements? Absorbing(JsonEntry entry)
    {
        Known(entry, [.. EquipmentParts.LoopFields, "removalPerPass", "elementLitres"]);
        var loop = EquipmentParts.Loop(entry);
        var removal = entry.Number("removalPerPass");
        var litres = entry.Number("elementLitres");
        return loop is null || removal is null || litres is null
            ? null
            : entry.Made(() =>
                new WaterAbsorbingElements(
                    loop,
                    Ratio.FromDecimalFractions(removal.Value),
                    Volume.FromLiters(litres.Value)
                )
            );
    }

    private static Centrifuge? Spinning(JsonEntry entry)
    {
        Known(
            entry,
            [
                .. EquipmentParts.LoopFields,
                "equivalentSquareMetres",
                "dropletMicrometres",
                "emulsionMicrometres",
                "particleKilogramsPerCubicMetre",
            ]
        );
        var loop = EquipmentParts.Loop(entry);
        var area = entry.Number("equivalentSquareMetres");
        var droplet = entry.Number("dropletMicrometres");
        var emulsion = entry.Number("emulsionMicrometres");
        var density = EquipmentParts.Particles(entry);
        return loop is null || area is null || droplet is null || emulsion is null
            ? null
            : entry.Made(() =>
                new Centrifuge(
                    loop,
                    Area.FromSquareMeters(area.Value),
                    Length.FromMicrometers(droplet.Value),
                    Length.FromMicrometers(emulsion.Value),
                    density
                )
            );
    }

    private static SettlingAndDraining? Settling(JsonEntry entry)
    {
        Known(
            entry,
            "heightMetres",
            "dropletMicrometres",
            "fineDropletMicrometres",
            "celsius",
            "particleKilogramsPerCubicMetre"
        );
        var height = entry.Number("heightMetres");
        var droplet = entry.Number("dropletMicrometres");
        var celsius = entry.NumberIfAny("celsius");
        var fine = entry.NumberIfAny("fineDropletMicrometres");
        var density = EquipmentParts.Particles(entry);
        return height is null || droplet is null
            ? null
            : entry.Made(() =>
                new SettlingAndDraining(
                    Length.FromMeters(height.Value),
                    Length.FromMicrometers(droplet.Value),
                    celsius is { } stated ? Temperature.FromDegreesCelsius(stated) : null,
                    density,
                    fine is { } small ? Length.FromMicrometers(small) : null
                )
            );
    }

    private static HeadSpacePurge? Purge(JsonEntry entry)
    {
        Known(
            entry,
            "dryAirKilogramsPerHour",
            "airCelsius",
            "dewPointCelsius",
            "atmosphereMillibar",
            "approach",
            "motorKilowatts"
        );
        var flow = entry.Number("dryAirKilogramsPerHour");
        var air = entry.Number("airCelsius");
        var dewPoint = entry.Number("dewPointCelsius");
        var atmosphere = entry.NumberIfAny("atmosphereMillibar") ?? 1013.25;
        var approach = entry.Number("approach");
        var motor = entry.NumberIfAny("motorKilowatts") ?? 0;
        return flow is null || air is null || dewPoint is null || approach is null
            ? null
            : entry.Made(() =>
                new HeadSpacePurge(
                    MassFlow.FromKilogramsPerHour(flow.Value),
                    HumidAir.FromDewPoint(
                        Temperature.FromDegreesCelsius(air.Value),
                        Temperature.FromDegreesCelsius(dewPoint.Value)
                    ),
                    Pressure.FromMillibars(atmosphere),
                    Ratio.FromDecimalFractions(approach.Value),
                    Power.FromKilowatts(motor)
                )
            );
    }

    private static DrainAndRefill? Refill(JsonEntry entry)
    {
        Known(
            entry,
            "heel",
            "newWaterMgPerKg",
            "newParticlesPerMillilitre",
            "transferLitresPerMinute",
            "motorKilowatts"
        );
        var heel = entry.Number("heel");
        var water = entry.Number("newWaterMgPerKg");
        var particles = EquipmentParts.Counts(entry);
        var flow = entry.Number("transferLitresPerMinute");
        var motor = entry.NumberIfAny("motorKilowatts") ?? 0;
        return heel is null || water is null || particles is null || flow is null
            ? null
            : entry.Made(() =>
                new DrainAndRefill(
                    Ratio.FromDecimalFractions(heel.Value),
                    MassFraction.FromPartsPerMillion(water.Value),
                    particles,
                    VolumeFlow.FromLitersPerMinute(flow.Value),
                    Power.FromKilowatts(motor)
                )
            );
    }
}
