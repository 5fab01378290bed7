using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Thermal;

/// <summary>When a tank comes to a temperature, and what the heater takes until then.</summary>
public sealed record HeatUpTime
{
    internal HeatUpTime(HeatUpOutcome outcome, double seconds, double watts)
    {
        Outcome = outcome;
        Time = Elapsed.FromSeconds(seconds);
        HeaterEnergy = Energy.FromJoules(seconds * watts);
    }

    /// <summary>Whether the temperature is reached.</summary>
    public HeatUpOutcome Outcome { get; }

    /// <summary>Time to the target; 0 unless it is <see cref="HeatUpOutcome.Reached"/>.</summary>
    public TimeSpan Time { get; }

    /// <summary>Energy that the heater gives off in that time, losses included.</summary>
    public Energy HeaterEnergy { get; }
}
