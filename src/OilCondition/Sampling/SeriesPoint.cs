using OilCondition.Text;

namespace OilCondition;

/// <summary>One reading of a series.</summary>
public sealed record SeriesPoint
{
    internal SeriesPoint(DateTimeOffset at, Reading reading, string sampleNumber, double? oilHours = null)
        : this(at, reading, reading, sampleNumber, oilHours) { }

    private SeriesPoint(DateTimeOffset at, Reading reading, Reading reported, string sampleNumber, double? oilHours)
    {
        At = at;
        Reading = reading;
        Reported = reported;
        SampleNumber = sampleNumber;
        OilHours = oilHours;
    }

    /// <summary>When the sample was taken or the sensor read.</summary>
    public DateTimeOffset At { get; }

    /// <summary>The reading, in the unit of the series' measurand; corrected where the series is (see <see cref="TopUpCorrection"/>).</summary>
    public Reading Reading { get; }

    /// <summary>The reading as it was reported.</summary>
    public Reading Reported { get; }

    /// <summary>The laboratory's number; empty for a sensor reading.</summary>
    public string SampleNumber { get; }

    /// <summary>Running hours of the oil at that moment; null where they are not recorded.</summary>
    public double? OilHours { get; }

    /// <summary>Why it is kept out of its series and stands beside it; null for a reading of the series.</summary>
    public LeftOutReason? LeftOut { get; private init; }

    internal SeriesPoint LeftOutBecause(LeftOutReason reason) => this with { LeftOut = reason };

    /// <summary>The point as a bound; one of 'more than' stays one.</summary>
    internal SeriesPoint AtMost(double value)
    {
        var qualifier = Reading.Qualifier == Qualifier.GreaterThan ? Qualifier.GreaterThan : Qualifier.LessThan;
        return new(At, new Reading(value, qualifier, Reading.Method), Reported, SampleNumber, OilHours);
    }

    internal SeriesPoint WithValue(double value) =>
        new(At, new Reading(value, Reading.Qualifier, Reading.Method), Reported, SampleNumber, OilHours);

    /// <summary>Reading, date and sample, without the unit, which the series has.</summary>
    /// <returns>For example <c>0.12 on 2025-10-03, sample S9</c>.</returns>
    public override string ToString() =>
        $"{Reading} on {PlainText.Date(At)}, {(SampleNumber.Length == 0 ? "sensor" : $"sample {SampleNumber}")}"
        + (LeftOut is { } reason ? $", left out: {PlainText.Spaced(reason)}" : "");
}
