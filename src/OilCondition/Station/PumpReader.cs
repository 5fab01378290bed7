using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition;

/// <summary>Reads the pumps of a vacuum dehydration unit, each of which may be left out.</summary>
internal static class PumpReader
{
    public static DischargePump? Discharge(JsonEntry unit)
    {
        if (unit.ObjectIfAny("dischargePump") is not { } entry)
        {
            return null;
        }

        entry.Known(
            "litresPerMinute",
            "heightMetres",
            "suctionMetres",
            "suctionMillimetres",
            "headNeededMetres",
            "variableSpeed"
        );
        var flow = entry.Number("litresPerMinute");
        var height = entry.Number("heightMetres");
        var length = entry.Number("suctionMetres");
        var diameter = entry.Number("suctionMillimetres");
        var needed = entry.Number("headNeededMetres");
        var variable = entry.FlagIfAny("variableSpeed") ?? false;
        return flow is null || height is null || length is null || diameter is null || needed is null
            ? null
            : entry.Made(() =>
                new DischargePump(
                    VolumeFlow.FromLitersPerMinute(flow.Value),
                    Length.FromMeters(height.Value),
                    Length.FromMeters(length.Value),
                    Length.FromMillimeters(diameter.Value),
                    Length.FromMeters(needed.Value),
                    variable
                )
            );
    }

    public static VacuumPump? Vacuum(JsonEntry unit)
    {
        if (unit.ObjectIfAny("vacuumPump") is not { } entry)
        {
            return null;
        }

        var kind = entry.Word<VacuumPump.PumpKind>("kind");
        var capacity = entry.Number("cubicMetresPerHour");
        if (kind is null || capacity is null)
        {
            return null;
        }

        var flow = VolumeFlow.FromCubicMetersPerHour(capacity.Value);
        if (kind == VacuumPump.PumpKind.LiquidRing)
        {
            entry.Known("kind", "cubicMetresPerHour", "ringWaterCelsius");
            return entry.Number("ringWaterCelsius") is { } ring
                ? entry.Made(() => VacuumPump.LiquidRing(flow, Temperature.FromDegreesCelsius(ring)))
                : null;
        }

        Pressure? ultimate = entry.NumberIfAny("ultimateMillibar") is { } lowest
            ? Pressure.FromMillibars(lowest)
            : null;
        if (kind == VacuumPump.PumpKind.Dry)
        {
            entry.Known("kind", "cubicMetresPerHour", "ultimateMillibar");
            return entry.Made(() => VacuumPump.Dry(flow, ultimate));
        }

        entry.Known("kind", "cubicMetresPerHour", "ultimateMillibar", "vapourToleranceMillibar", "gasBallast");
        var ballast = entry.FlagIfAny("gasBallast") ?? false;
        return entry.Number("vapourToleranceMillibar") is { } tolerance
            ? entry.Made(() => VacuumPump.OilSealed(flow, Pressure.FromMillibars(tolerance), ballast, ultimate))
            : null;
    }
}
