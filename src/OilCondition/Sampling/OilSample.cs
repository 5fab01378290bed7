using System.Globalization;
using OilCondition.Text;

namespace OilCondition;

/// <summary>One laboratory sample of one machine's oil.</summary>
public sealed class OilSample : IPointSource
{
    internal static readonly IReadOnlyDictionary<string, string> NoTexts = new Dictionary<string, string>();

    private readonly KeptReadings readings;

    /// <summary>A sample.</summary>
    /// <param name="sampleNumber">The laboratory's number; blank where it gave none: the sample is then called by its moment.</param>
    /// <param name="takenAt">When the sample was taken from the machine; in the years 1900 to 2199.</param>
    /// <param name="readings">What was measured.</param>
    /// <param name="texts">What the laboratory wrote besides, by the header it stood under; null for nothing.</param>
    /// <exception cref="ArgumentException">The moment lies outside its range.</exception>
    public OilSample(
        string sampleNumber,
        DateTimeOffset takenAt,
        IReadOnlyDictionary<Measurand, Reading> readings,
        IReadOnlyDictionary<string, string>? texts = null
    )
    {
        TakenAt = Guard.Moment(takenAt);
        SampleNumber = string.IsNullOrWhiteSpace(Guard.NotNull(sampleNumber)) ? Unnumbered(takenAt) : sampleNumber;
        this.readings = KeptReadings.Of(readings);
        Origin = new PointOrigin(
            TakenAt,
            SampleNumber,
            this.readings.TryGetValue(Measurands.OilHours, out var hours) && !hours.IsCensored ? hours.Value : null
        );
        Texts = texts is null or { Count: 0 }
            ? NoTexts
            : texts.ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);
    }

    /// <summary>The laboratory's number; where it gave none, the moment of sampling, such as <c>2026-03-14 06:15</c>.</summary>
    public string SampleNumber { get; }

    /// <summary>When the sample was taken from the machine.</summary>
    public DateTimeOffset TakenAt { get; }

    /// <summary>What was measured.</summary>
    public IReadOnlyDictionary<Measurand, Reading> Readings => readings;

    /// <summary>What the laboratory wrote besides, such as a remark: texts by the header they stood under, as in the file.</summary>
    public IReadOnlyDictionary<string, string> Texts { get; }

    /// <summary>What all of its readings share.</summary>
    internal PointOrigin Origin { get; }

    PointOrigin IPointSource.Origin => Origin;

    Reading IPointSource.ReadingOf(Measurand measurand) => readings[measurand];

    SeriesPoint IPointSource.PointOf(Measurand measurand) => new(Origin, readings[measurand]);

    /// <summary>Whether the laboratory gave a number.</summary>
    internal bool IsNumbered => !string.Equals(SampleNumber, Unnumbered(TakenAt), StringComparison.Ordinal);

    internal OilSample With(IReadOnlyDictionary<Measurand, Reading> readings) =>
        new(SampleNumber, TakenAt, readings, Texts);

    private static string Unnumbered(DateTimeOffset takenAt) =>
        takenAt.TimeOfDay == TimeSpan.Zero ? PlainText.Date(takenAt)
        : takenAt.Second == 0 ? PlainText.Time(takenAt)
        : takenAt.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);

    /// <summary>Number and date.</summary>
    /// <returns>For example <c>L-1042 of 2026-03-14</c>.</returns>
    public override string ToString() =>
        IsNumbered ? $"{SampleNumber} of {PlainText.Date(TakenAt)}" : $"unnumbered of {SampleNumber}";
}
