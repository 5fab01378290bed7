using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Prognosis;

/// <summary>What the user accepts between two samples.</summary>
public sealed class SamplingPlan
{
    /// <summary>A plan.</summary>
    /// <param name="risk">Accepted chance that a limit is crossed unseen before the next sample; above 0 and below 1.</param>
    /// <param name="shortest">Shortest interval between samples, above 0.</param>
    /// <param name="longest">Longest interval between samples, not below the shortest.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is outside its range.</exception>
    public SamplingPlan(Ratio risk, TimeSpan shortest, TimeSpan longest)
    {
        Guard.OpenUnitInterval(risk.DecimalFractions, nameof(risk));
        Guard.Positive(shortest.TotalDays, "d", nameof(shortest));
        Guard.InRange(longest.TotalDays, shortest.TotalDays, LifeForecast.HorizonDays, "d", nameof(longest));
        Risk = risk;
        Shortest = shortest;
        Longest = longest;
    }

    /// <summary>Accepted chance that a limit is crossed unseen before the next sample.</summary>
    public Ratio Risk { get; }

    /// <summary>Shortest interval between samples.</summary>
    public TimeSpan Shortest { get; }

    /// <summary>Longest interval between samples.</summary>
    public TimeSpan Longest { get; }

    /// <summary>Risk and intervals.</summary>
    /// <returns>For example <c>5 % risk, every 14 to 180 days</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(Risk.Percent)} % risk, every {PlainText.Number(Shortest.TotalDays)} to {PlainText.Number(Longest.TotalDays)} days";
}
