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
        Readings = KeptReadings.Of(readings);
    }

    /// <summary>When it was read.</summary>
    public DateTimeOffset At { get; }

    /// <summary>What was read.</summary>
    public IReadOnlyDictionary<Measurand, Reading> Readings { get; }

    /// <summary>When, and what was read.</summary>
    /// <returns>For example <c>2025-12-10 06:15: oil temperature 60 °C, relative saturation 45.2 %</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Time(At)}: "
        + string.Join(
            ", ",
            Readings
                .OrderBy(pair => pair.Key.Id, StringComparer.Ordinal)
                .Select(pair => $"{pair.Key.Name} {pair.Key.Text(pair.Value)}")
        );
}
