using OilCondition.Text;

namespace OilCondition.Limits;

/// <summary>The figures of one limit in a JSON document, converted to the measurand's unit; a percentage stays one.</summary>
internal sealed class LimitFigures(JsonEntry entry, Measurand measurand, LimitKind kind, string unit)
{
    /// <summary>Whether the figures of a kind are percentages, in whatever unit its measurand is.</summary>
    public static bool IsPercentage(LimitKind kind) =>
        kind is LimitKind.PercentChangeFromNew or LimitKind.OwnHistory or LimitKind.Fleet;

    /// <summary>The figures of one side; null where the limit has none there.</summary>
    public LimitBand? Band(string side)
    {
        if (entry.ObjectIfAny(side, "an object with 'alert' and 'alarm' is expected.") is not { } band)
        {
            return null;
        }

        band.Known("alert", "alarm");
        var alert = Figure(band, "alert");
        var alarm = Figure(band, "alarm");
        if (!band.Has("alert") && !band.Has("alarm"))
        {
            band.Fault("'alert' or 'alarm' is expected.");
        }

        return alert is null && alarm is null ? null : new LimitBand(alert, alarm);
    }

    /// <summary>Width of the dead band; 0 where none is given.</summary>
    public double DeadBand()
    {
        if (entry.NumberIfAny("deadBand") is not { } width)
        {
            return 0;
        }

        if (IsPercentage(kind) || TryDistance(width, out width))
        {
            return width;
        }

        entry.Fault(
            "deadBand",
            $"'{unit}' is no unit of a distance in {measurand.Unit} ({measurand.Id}); give the limit in {measurand.Unit}."
        );
        return 0;
    }

    private double? Figure(JsonEntry band, string name)
    {
        if (band.NumberIfAny(name) is not { } figure)
        {
            return null;
        }

        if (IsPercentage(kind))
        {
            if (unit is not ("" or "%"))
            {
                entry.Fault($"a percentage has the unit '%', not '{unit}'.");
            }

            return figure;
        }

        double converted;
        var isConverted = kind is LimitKind.ChangeFromNew or LimitKind.RateOfChange
            ? TryDistance(figure, out converted)
            : measurand.TryConvert(figure, unit, out converted);
        if (!isConverted || !(Math.Abs(converted) <= LimitBand.Largest))
        {
            band.Fault(name, $"{figure} '{unit}' cannot be converted to {measurand.Unit} ({measurand.Id}).");
            return null;
        }

        if (kind == LimitKind.Absolute && !measurand.IsPlausible(converted))
        {
            band.Fault(
                name,
                $"{measurand.Id} is {converted} {measurand.Unit}; allowed: {measurand.LowestPlausible} to {measurand.HighestPlausible} {measurand.Unit}."
            );
        }

        return converted;
    }

    /// <summary>A distance between two values; a unit whose zero lies elsewhere, such as °F, has none in another unit.</summary>
    private bool TryDistance(double distance, out double converted) =>
        measurand.TryConvert(distance, unit, out converted) && measurand.TryConvert(0, unit, out var zero) && zero == 0;
}
