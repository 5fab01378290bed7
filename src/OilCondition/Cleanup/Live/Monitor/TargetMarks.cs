using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>What a single reading says about the target.</summary>
internal static class TargetMarks
{
    /// <summary>A content in mg/kg; '&gt;' where a sensor stands at saturation.</summary>
    public static Reading Content(CleanupReading reading, CleanupMonitorOptions options)
    {
        if (reading.Source == WaterSource.Titration)
        {
            return new Reading(reading.WaterFigure);
        }

        var state = options.SaturationCurve.FromSensor(
            Ratio.FromDecimalFractions(reading.WaterFigure),
            reading.Temperature
        );
        return new Reading(
            state.Total.PartsPerMillion,
            state.Knowledge == WaterKnowledge.AtLeast ? Qualifier.GreaterThan : Qualifier.None
        );
    }

    public static void Mark(MonitorCell cell, CleanupReading reading, CleanupMonitorOptions options)
    {
        cell.Sensor = reading.Source == WaterSource.Sensor ? reading : null;
        cell.Titration = reading.Source == WaterSource.Titration ? reading : null;
        cell.Particles = reading.HasParticles ? reading : null;
        MarkWater(cell.Water, reading, options);
        if (options.Target.Code is { } code && reading.HasParticles)
        {
            if (new CodeLimits(code).Excess(reading.Particles) > 0)
            {
                cell.Code.MarkAbove(reading.At);
            }
            else
            {
                cell.Code.MarkBelow(reading.At);
            }
        }
    }

    private static void MarkWater(HoldMarks marks, CleanupReading reading, CleanupMonitorOptions options)
    {
        if (options.Target.Water is not { } target)
        {
            return;
        }

        var isCold =
            !options.IsReferred
            && reading.HasTemperature
            && reading.Temperature.DegreesCelsius < options.ReferenceTemperature.DegreesCelsius;
        if (isCold)
        {
            marks.MarkCold();
        }

        if (reading.Source == WaterSource.None)
        {
            return;
        }

        var content = Content(reading, options);
        if (content.Qualifier == Qualifier.GreaterThan || content.Value > target.PartsPerMillion)
        {
            marks.MarkAbove(reading.At);
        }
        else if (!isCold && (options.IsReferred || reading.HasTemperature))
        {
            marks.MarkBelow(reading.At);
        }
    }
}
