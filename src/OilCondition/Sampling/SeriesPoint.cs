using OilCondition.Text;

namespace OilCondition;

/// <summary>One reading of a series.</summary>
public sealed record SeriesPoint : IPointSource
{
    private readonly PointOrigin origin;
    private readonly PointChange? change;

    internal SeriesPoint(PointOrigin origin, Reading reading)
        : this(origin, reading, null) { }

    private SeriesPoint(PointOrigin origin, Reading reading, PointChange? change)
    {
        this.origin = origin;
        Reading = reading;
        this.change = change;
    }

    /// <summary>When the sample was taken or the sensor read.</summary>
    public DateTimeOffset At => origin.At;

    /// <summary>The reading, in the unit of the series' measurand; corrected where the series is (see <see cref="TopUpCorrection"/>).</summary>
    public Reading Reading { get; }

    /// <summary>The reading as it was reported.</summary>
    public Reading Reported => change?.Reported ?? Reading;

    /// <summary>The laboratory's number; empty for a sensor reading.</summary>
    public string SampleNumber => origin.SampleNumber;

    /// <summary>Running hours of the oil at that moment; null where they are not recorded.</summary>
    public double? OilHours => origin.OilHours;

    /// <summary>Why it is kept out of its series and stands beside it; null for a reading of the series.</summary>
    public LeftOutReason? LeftOut => change?.LeftOut;

    PointOrigin IPointSource.Origin => origin;

    Reading IPointSource.ReadingOf(Measurand measurand) => Reading;

    SeriesPoint IPointSource.PointOf(Measurand measurand) => this;

    internal SeriesPoint LeftOutBecause(LeftOutReason reason) =>
        new(origin, Reading, new PointChange(Reported, reason));

    /// <summary>The point as a bound; one of 'more than' stays one.</summary>
    internal SeriesPoint AtMost(double value)
    {
        var qualifier = Reading.Qualifier == Qualifier.GreaterThan ? Qualifier.GreaterThan : Qualifier.LessThan;
        return Changed(new Reading(value, qualifier, Reading.Method));
    }

    internal SeriesPoint WithValue(double value) => Changed(new Reading(value, Reading.Qualifier, Reading.Method));

    private SeriesPoint Changed(Reading reading) => new(origin, reading, new PointChange(Reported, LeftOut));

    /// <summary>Reading, date and sample, without the unit, which the series has.</summary>
    /// <returns>For example <c>0.12 on 2025-10-03, sample S9</c>.</returns>
    public override string ToString() =>
        $"{Reading} on {PlainText.Date(At)}, {(SampleNumber.Length == 0 ? "sensor" : $"sample {SampleNumber}")}"
        + (LeftOut is { } reason ? $", left out: {PlainText.Spaced(reason)}" : "");

    /// <summary>What sets a point apart from the reading of its sample.</summary>
    private sealed record PointChange(Reading Reported, LeftOutReason? LeftOut);
}
