using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>What one change does to a plan.</summary>
public sealed class KnobEffect
{
    internal KnobEffect(PlanKnob knob, PurificationPlan before, PurificationPlan after)
    {
        Knob = knob;
        Plan = after;
        IsCapped = knob == PlanKnob.ProcessTemperature && after.Cap != TemperatureCap.None;
        HasTimeSaved = before.Forecast.IsMet && after.Forecast.IsMet;
        TimeSaved = HasTimeSaved ? before.Time - after.Time : TimeSpan.Zero;
        MakesReachable = !before.Forecast.IsMet && after.Forecast.IsMet;
        FloorDropMgPerKg = before.End.WaterFloor.PartsPerMillion - after.End.WaterFloor.PartsPerMillion;
        LevelDropMgPerKg = before.End.WaterLevel.PartsPerMillion - after.End.WaterLevel.PartsPerMillion;
    }

    /// <summary>What was changed.</summary>
    public PlanKnob Knob { get; }

    /// <summary>The plan with the change.</summary>
    public PurificationPlan Plan { get; }

    /// <summary>Whether a limit of oil, seals or unit held the change down.</summary>
    public bool IsCapped { get; }

    /// <summary>Whether the target is met with and without the change.</summary>
    public bool HasTimeSaved { get; }

    /// <summary>Time saved; negative where the change costs time. 0 unless <see cref="HasTimeSaved"/>.</summary>
    public TimeSpan TimeSaved { get; }

    /// <summary>Whether the target is met only with the change.</summary>
    public bool MakesReachable { get; }

    /// <summary>By how much the floor falls; negative where it rises.</summary>
    public double FloorDropMgPerKg { get; }

    /// <summary>By how much the level with ingress falls; negative where it rises.</summary>
    public double LevelDropMgPerKg { get; }
}
