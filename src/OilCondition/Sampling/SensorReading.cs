using OilCondition.Text;

namespace OilCondition;

/// <summary>What the sensors of one machine read at one moment.</summary>
public sealed class SensorReading
{
    /// <summary>A sensor reading.</summary>
    /// <param name="at">When it was read; in the years 1900 to 2199.</param>
    /// <param name="readings">What was read at that moment; saturation and the temperature it belongs to go together.</param>
    /// <exception cref="ArgumentOutOfRangeException">The moment lies outside its range.</exception>
    public SensorReading(DateTimeOffset at, IReadOnlyDictionary<Measurand, Reading> readings)
    {
        At = Guard.Moment(at);
        Readings = Guard.NotNull(readings).ToDictionary(pair => pair.Key, pair => pair.Value);
    }

    /// <summary>When it was read.</summary>
    public DateTimeOffset At { get; }

    /// <summary>What was read.</summary>
    public IReadOnlyDictionary<Measurand, Reading> Readings { get; }
}
