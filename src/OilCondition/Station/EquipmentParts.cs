using OilCondition.Cleanliness;
using OilCondition.Text;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition;

/// <summary>Reads what several kinds of equipment have: pump, side loop, vacuum chamber, filter, counts.</summary>
internal static class EquipmentParts
{
    public static string[] LoopFields =>
        [
            "flowLitresPerMinute",
            "highestViscosityCentistokes",
            "startViscosityCentistokes",
            "workingCelsius",
            "heaterKilowatts",
            "highestRiseKelvin",
            "motorKilowatts",
        ];

    public static SideLoop? Loop(JsonEntry entry)
    {
        var pump = Pump(entry);
        var working = entry.NumberIfAny("workingCelsius");
        var heater = entry.NumberIfAny("heaterKilowatts") ?? 0;
        var motor = entry.NumberIfAny("motorKilowatts") ?? 0;
        return pump is null
            ? null
            : entry.Made(() =>
                new SideLoop(
                    pump,
                    working is { } warm ? Temperature.FromDegreesCelsius(warm) : null,
                    Power.FromKilowatts(heater),
                    Power.FromKilowatts(motor),
                    Rise(entry),
                    StartViscosity(entry)
                )
            );
    }

    public static TemperatureDelta? Rise(JsonEntry entry) =>
        entry.NumberIfAny("highestRiseKelvin") is { } kelvins ? TemperatureDelta.FromKelvins(kelvins) : null;

    public static KinematicViscosity? StartViscosity(JsonEntry entry) =>
        entry.NumberIfAny("startViscosityCentistokes") is { } thick ? KinematicViscosity.FromCentistokes(thick) : null;

    public static PumpViscosityLimit? Pump(JsonEntry entry)
    {
        var flow = entry.Number("flowLitresPerMinute");
        var highest = entry.Number("highestViscosityCentistokes");
        return flow is null || highest is null
            ? null
            : entry.Made(() =>
                new PumpViscosityLimit(
                    VolumeFlow.FromLitersPerMinute(flow.Value),
                    KinematicViscosity.FromCentistokes(highest.Value)
                )
            );
    }

    public static FilterRatings? Filter(JsonEntry entry)
    {
        if (entry.ObjectIfAny("filter") is not { } filter)
        {
            return null;
        }

        filter.Known("beta4", "beta6", "beta14");
        var at4 = filter.Number("beta4");
        var at6 = filter.Number("beta6");
        var at14 = filter.Number("beta14");
        return at4 is null || at6 is null || at14 is null
            ? null
            : filter.Made(() =>
                new FilterRatings(new FilterBeta(at4.Value), new FilterBeta(at6.Value), new FilterBeta(at14.Value))
            );
    }

    public static ParticleLevels? Counts(JsonEntry entry)
    {
        if (entry.Object("newParticlesPerMillilitre") is not { } counts)
        {
            return null;
        }

        counts.Known("at4", "at6", "at14");
        var at4 = counts.Number("at4");
        var at6 = counts.Number("at6");
        var at14 = counts.Number("at14");
        return at4 is null || at6 is null || at14 is null
            ? null
            : counts.Made(() => new ParticleLevels(at4.Value, at6.Value, at14.Value));
    }

    public static Density? Particles(JsonEntry entry) =>
        entry.NumberIfAny("particleKilogramsPerCubicMetre") is { } density
            ? Density.FromKilogramsPerCubicMeter(density)
            : null;

    public static VacuumChamber? Chamber(JsonEntry entry)
    {
        var pressure = entry.Number("chamberMillibar");
        var sweep = entry.NumberIfAny("dryAirKilogramsPerHour") ?? 0;
        var capacity = entry.NumberIfAny("pumpCubicMetresPerHour");
        var condenser = entry.NumberIfAny("condenserCelsius");
        return pressure is null
            ? null
            : entry.Made(() =>
                new VacuumChamber(
                    Pressure.FromMillibars(pressure.Value),
                    SweepAir.Dry(MassFlow.FromKilogramsPerHour(sweep)),
                    capacity is { } flow ? VolumeFlow.FromCubicMetersPerHour(flow) : null,
                    condenser is { } cold ? VapourCondenser.BeforePump(Temperature.FromDegreesCelsius(cold)) : null
                )
            );
    }
}
