using OilCondition.Text;

namespace OilCondition;

/// <summary>The unit of a rate of change.</summary>
/// <param name="Unit">Unit of what changes; empty for none.</param>
/// <param name="Per">The time over which the change is counted.</param>
/// <param name="IsOverOilHours">Whether that time is running hours of the oil.</param>
internal sealed record RateUnit(string Unit, TimeSpan Per, bool IsOverOilHours)
{
    /// <summary>How many days, or hours of the oil.</summary>
    public double Count => IsOverOilHours ? Per.TotalHours : Per.TotalDays;

    /// <summary>The unit as documents have it.</summary>
    /// <returns>For example <c>mg/kg per 30 days</c>.</returns>
    public override string ToString() =>
        $"{Unit} per {PlainText.Number(Count)} {(IsOverOilHours ? "oil hours" : "days")}".TrimStart();
}
