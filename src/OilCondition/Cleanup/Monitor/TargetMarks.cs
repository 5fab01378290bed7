using OilCondition.Treatment;
using OilCondition.Water;

namespace OilCondition.Cleanup;

/// <summary>What a single reading says about the target.</summary>
internal static class TargetMarks
{
    /// <summary>A figure in the unit of what is followed, '&gt;' where a sensor stands at saturation; null where the reading does not tell it.</summary>
    public static Reading? Content(CleanupReading reading, CleanupMonitorOptions options)
    {
        if (reading.Figure is not null)
        {
            return reading.Figure;
        }

        if (
            !options.IsWater
            || options.SaturationCurve is not { } curve
            || reading is not { RelativeSaturation: { } saturation, Temperature: { } temperature }
        )
        {
            return null;
        }

        var state = curve.FromSensor(saturation, temperature);
        return new Reading(
            state.Total.PartsPerMillion,
            state.Knowledge == WaterKnowledge.AtLeast ? Qualifier.GreaterThan : Qualifier.None
        );
    }

    public static void Mark(MonitorCell cell, CleanupReading reading, CleanupMonitorOptions options)
    {
        var content = Content(reading, options);
        cell.Sensor = content is not null && reading.Source == ReadingSource.Sensor ? reading : null;
        cell.Sample = content is not null && reading.Source == ReadingSource.Sample ? reading : null;
        cell.Particles = reading.Particles is null ? null : reading;
        MarkFigure(cell.Figure, reading, content, options);
        if (options.Code is { } code && reading.Particles is { } counts)
        {
            if (new CodeLimits(code).Excess(counts) > 0)
            {
                cell.Code.MarkAbove(reading.At);
            }
            else
            {
                cell.Code.MarkBelow(reading.At);
            }
        }
    }

    private static void MarkFigure(
        HoldMarks marks,
        CleanupReading reading,
        Reading? content,
        CleanupMonitorOptions options
    )
    {
        if (options.Target is not { } target)
        {
            return;
        }

        var isCold =
            !options.IsReferred && reading.Temperature?.DegreesCelsius < options.ReferenceTemperature.DegreesCelsius;
        if (isCold)
        {
            marks.MarkCold();
        }

        if (content is not { } figure)
        {
            return;
        }

        if (figure.Qualifier == Qualifier.GreaterThan)
        {
            marks.MarkAbove(reading.At);
        }
        else if (figure.Value > target)
        {
            // '<50' with a target of 30 tells nothing.
            if (figure.Qualifier != Qualifier.LessThan)
            {
                marks.MarkAbove(reading.At);
            }
        }
        else if (!isCold && (options.IsReferred || reading.Temperature.HasValue))
        {
            marks.MarkBelow(reading.At);
        }
    }
}
