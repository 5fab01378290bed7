using OilCondition.Text;

namespace OilCondition;

/// <summary>One laboratory sample of one machine's oil.</summary>
public sealed class OilSample
{
    /// <summary>A sample.</summary>
    /// <param name="sampleNumber">The laboratory's number.</param>
    /// <param name="takenAt">When the sample was taken from the machine; in the years 1900 to 2199.</param>
    /// <param name="readings">What was measured.</param>
    /// <exception cref="ArgumentException">The number is blank, or the moment outside its range.</exception>
    public OilSample(string sampleNumber, DateTimeOffset takenAt, IReadOnlyDictionary<Measurand, Reading> readings)
    {
        SampleNumber = Guard.NotBlank(sampleNumber);
        TakenAt = Guard.Moment(takenAt);
        Readings = Guard.NotNull(readings).ToDictionary(pair => pair.Key, pair => pair.Value);
    }

    /// <summary>The laboratory's number.</summary>
    public string SampleNumber { get; }

    /// <summary>When the sample was taken from the machine.</summary>
    public DateTimeOffset TakenAt { get; }

    /// <summary>What was measured.</summary>
    public IReadOnlyDictionary<Measurand, Reading> Readings { get; }

    /// <summary>Number and date.</summary>
    /// <returns>For example <c>L-1042 of 2026-03-14</c>.</returns>
    public override string ToString() =>
        $"{SampleNumber} of {TakenAt.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)}";
}
