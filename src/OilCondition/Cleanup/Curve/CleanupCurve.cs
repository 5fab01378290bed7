using OilCondition.Statistics;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>The exponential fall of a contaminant in a well-mixed charge, fitted to what was observed.</summary>
/// <remarks>
/// c(t) = floor + (start − floor) exp(−k t). In a kidney loop k = η Q / V with the single-pass efficiency η on the excess over the
/// floor, the flow Q and the charge volume V (mass balance of a well-mixed tank, derived). Without options the scatter of a reading is told from the readings.
/// <para>
/// What comes before the exponential (warming up, free water) is left out and named, see <see cref="LeftOutReadings"/>. Readings such as
/// '&lt;10' count by the chance that the curve gives them (<see cref="CensoredDecay"/>), never as a number.
/// </para>
/// </remarks>
/// <example>
/// <code>
/// var curve = CleanupCurve.Fit(moments, ppm);
/// var ready = curve.TimeTo(100);   // expected between two moments, or not before one, or never
/// </code>
/// </example>
public sealed partial class CleanupCurve
{
    /// <summary>Fewest readings for a curve with nothing known: three constants and one to judge the scatter by. Each known part spares one.</summary>
    public const int FewestReadings = 4;

    private readonly FittedFall fall;
    private readonly IReadOnlyList<DateTimeOffset> usedMoments;
    private readonly IReadOnlyList<Reading> used;

    private CleanupCurve(
        CleanupSelection selection,
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<Reading> readings,
        FittedFall fall,
        CleanupOptions options
    )
    {
        usedMoments = [.. selection.Used.Select(i => moments[i])];
        used = [.. selection.Used.Select(i => readings[i])];
        Origin = selection.Origin;
        FirstReadingAt = selection.Begins;
        LastReadingAt = selection.Ends;
        UsedReadings = selection.Used;
        LeftOutReadings = selection.LeftOut;
        LeftOutReasons = selection.Reasons;
        Options = options;
        this.fall = fall;
    }

    /// <summary>What was known beforehand.</summary>
    public CleanupOptions Options { get; }

    /// <summary>Which readings were used, in order of time: positions, from 0, in the lists that were given.</summary>
    public IReadOnlyList<int> UsedReadings { get; }

    /// <summary>Readings of an initial phase, which were not used, in order of time: positions, from 0, in the lists that were given.</summary>
    public IReadOnlyList<int> LeftOutReadings { get; }

    /// <summary>Why each of <see cref="LeftOutReadings"/> was not used, in the same order.</summary>
    public IReadOnlyList<InitialPhaseReason> LeftOutReasons { get; }

    /// <summary>Where the curve begins: the given moment where the start is known, else the first reading used.</summary>
    public DateTimeOffset Origin { get; }

    /// <summary>When the first reading used was taken.</summary>
    public DateTimeOffset FirstReadingAt { get; }

    /// <summary>When the last reading used was taken; later the curve is extrapolated.</summary>
    public DateTimeOffset LastReadingAt { get; }

    /// <summary>What the readings could tell.</summary>
    public ExponentialDecayStatus Status => fall.Status;

    /// <summary>Whether there is a curve; without one the numbers below are 0.</summary>
    public bool HasCurve => fall.HasCurve;

    /// <summary>Number of readings used.</summary>
    public int Count => fall.Count;

    /// <summary>Number of readings used that are numbers, not below a limit.</summary>
    public int AboveLimitCount => fall.AboveLimitCount;

    /// <summary>Value at <see cref="Origin"/>, in the unit of the readings.</summary>
    public double Start => fall.Start;

    /// <summary>Where the curve levels off, in the unit of the readings; 0 or more.</summary>
    public double Floor => fall.Floor;

    /// <summary>Rate, k.</summary>
    public double RatePerHour => fall.Rate;

    /// <summary>
    /// By how much the rate rises a kelvin, as a logarithm: 0.02 is 2 %. Null where no temperatures were given or they hardly move; the rate is then that of the
    /// whole run.
    /// </summary>
    public double? RatePerKelvin => fall.PerKelvin;

    /// <summary>
    /// Standard deviation of the readings about the curve: in their unit, with two components the root mean square; with proportional and
    /// logarithmic noise as a fraction of the curve. With readings below a limit the most likely value, which is on the small side for few readings.
    /// </summary>
    public double ResidualStandardDeviation => fall.Scatter;

    /// <summary>Readings that tell the scatter, those above their limit, less fitted parts: the degrees of freedom of every interval; 0 without a curve.</summary>
    public int DegreesOfFreedom => HasCurve ? fall.DegreesOfFreedom : 0;

    /// <summary>Standard deviation of one reading where the curve stands at a value.</summary>
    /// <param name="value">The value, in the unit of the readings.</param>
    /// <returns>The standard deviation, in that unit; 0 without a curve.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public double ScatterAt(double value) => HasCurve ? fall.ScatterAt(Guard.Finite(value, "")) : 0;

    /// <summary>How many time constants the readings span; below about two the floor is hardly known.</summary>
    public double ObservedTimeConstants => fall.Rate * fall.Span;

    /// <summary>The noise model that the residuals speak for; where it is not the one used, intervals are too narrow.</summary>
    public DecayNoise SuggestedNoise => fall.SuggestedNoise;

    /// <summary>Correlation of each residual with the next (lag 1).</summary>
    public double ResidualAutocorrelation => fall.Autocorrelation;

    /// <summary>Whether the readings agree with one exponential. Where they contradict it, <see cref="TimeTo"/> determines nothing.</summary>
    public CourseCheck Course => fall.Course;

    /// <summary>
    /// Whether every interval covers less often than it says: the residuals follow one another, or the course is not one exponential.
    /// </summary>
    public bool CoverageInDoubt => fall.CoverageInDoubt;

    /// <summary>
    /// Readings that do not belong to the curve of the others, see <see cref="ExponentialDecayAnalysis.FlaggedReadings"/>: positions, from 0, in the lists
    /// that were given. With readings below a limit none is looked for.
    /// </summary>
    public IReadOnlyList<int> FlaggedReadings => [.. fall.FlaggedReadings.Select(i => UsedReadings[i])];

    /// <summary>Whether as many readings are flagged as are looked for, a sixth of them and at most five: there may be more.</summary>
    public bool MoreFlagsPossible => fall.MoreFlagsPossible;

    internal FittedFall Fall => fall;

    /// <summary>Fits the curve to numbers.</summary>
    /// <param name="moments">When the readings were taken; n moments in any order.</param>
    /// <param name="readings">The readings, all in one unit; n values up to 10¹² in size.</param>
    /// <param name="options">What is known beforehand; null for scatter of two components and nothing known.</param>
    /// <returns>The curve; its status says what it is worth.</returns>
    /// <exception cref="ArgumentException">The lists differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A reading is not finite or too large, or not above 0 with logarithmic noise.</exception>
    public static CleanupCurve Fit(
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<double> readings,
        CleanupOptions? options = null
    ) => Fit(moments, [.. Guard.NotNull(readings).Select(value => new Reading(InRange(value)))], options);

    /// <summary>Fits the curve to readings with qualifiers.</summary>
    /// <remarks>
    /// '&gt;' marks an initial phase before the exponential, see <see cref="InitialPhaseReason.UpToLastSaturated"/>. '&lt;' goes into the likelihood,
    /// which knows any scatter but that of the logarithm and holds known parts.
    /// </remarks>
    /// <param name="moments">When the readings were taken; n moments in any order.</param>
    /// <param name="readings">The readings, all in one unit; n readings.</param>
    /// <param name="options">What is known beforehand; null for scatter of two components and nothing known.</param>
    /// <returns>The curve; its status says what it is worth.</returns>
    /// <exception cref="ArgumentException">
    /// The lists differ in length, or a reading used lies below a limit while the options state logarithmic noise or robustness.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A reading is too large, or not above 0 with logarithmic noise.</exception>
    public static CleanupCurve Fit(
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<Reading> readings,
        CleanupOptions? options = null
    ) => Fit(moments, readings, Guard.NotNull(readings).Select(_ => (double?)null).ToArray(), options);

    /// <summary>Fits the curve to readings in oil that warms up or cools: the rate goes with the temperature, by how much is told from the readings.</summary>
    /// <remarks>
    /// k(T) = k exp(b (T − T_n)) with b from 0 to 0.1 a kelvin (<see cref="RatePerKelvin"/>) and T_n the temperature at the last reading used, to which
    /// <see cref="RatePerHour"/> belongs and at which the forecast goes on. The level stays. A slow start is then not looked for in the shape. Without effect where the
    /// temperature moves by less than 3 K, a reading used lies below a limit, or start or rate is known.
    /// </remarks>
    /// <param name="moments">When the readings were taken; n moments in any order.</param>
    /// <param name="readings">The readings, all in one unit; n readings.</param>
    /// <param name="temperatures">Oil temperature at each; null where it was not read, and then from its neighbours in time.</param>
    /// <param name="options">What is known beforehand; null for scatter of two components and nothing known.</param>
    /// <returns>The curve; its status says what it is worth.</returns>
    /// <exception cref="ArgumentException">As for readings without temperatures.</exception>
    /// <exception cref="ArgumentOutOfRangeException">As for readings without temperatures, or a temperature lies outside its range.</exception>
    public static CleanupCurve Fit(
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<Reading> readings,
        IReadOnlyList<Temperature?> temperatures,
        CleanupOptions? options = null
    )
    {
        Guard.NotNull(moments);
        Guard.NotNull(temperatures);
        Guard.SameLength(temperatures.Count, moments.Count, nameof(temperatures), nameof(moments));
        return Fit(
            moments,
            readings,
            [
                .. temperatures.Select(one =>
                    one is { } oil ? OilTemperature.Celsius(oil, nameof(temperatures)) : (double?)null
                ),
            ],
            options
        );
    }

    private static CleanupCurve Fit(
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<Reading> readings,
        double?[] celsius,
        CleanupOptions? options
    )
    {
        Guard.NotNull(moments);
        Guard.NotNull(readings);
        Guard.SameLength(readings.Count, moments.Count, nameof(readings), nameof(moments));
        foreach (var reading in readings)
        {
            InRange(reading.Value);
        }

        var known = options ?? CleanupOptions.Default;
        var selection = new CleanupSelection(moments, readings, celsius, known);
        double[] hours = [.. selection.Used.Select(i => (moments[i] - selection.Origin).TotalHours)];
        double[] values = [.. selection.Used.Select(i => readings[i].Value)];
        bool[] belowLimit = [.. selection.Used.Select(i => readings[i].Qualifier == Qualifier.LessThan)];
        if (!belowLimit.Contains(true))
        {
            foreach (var value in known.Noise == DecayNoise.Logarithmic ? values : [])
            {
                Guard.Positive(value, "with logarithmic noise", nameof(readings));
            }

            var clocks =
                known.RatePerHour.HasValue || known.Start.HasValue || hours.Length < known.FewestReadings + 2
                    ? []
                    : WarmingClocks.Of(hours, [.. selection.Used.Select(i => celsius[i])]);
            return new CleanupCurve(
                selection,
                moments,
                readings,
                clocks.Count > 0
                    ? new LeastSquaresFall(clocks, values, known.Decay)
                    : new LeastSquaresFall(hours, values, known.Decay),
                known
            );
        }

        var byLikelihood = new CensoredFall(hours, values, belowLimit, known.Decay);
        return new CleanupCurve(selection, moments, readings, byLikelihood, known);
    }

    /// <summary>Fits the curve to a series of a history, with the usual scatter of its measurand.</summary>
    /// <remarks>
    /// Scatter of the logarithm for counts, in proportion where a count is 0 or lies below a limit, of two components otherwise:
    /// <see cref="Options"/> of the result says which.
    /// </remarks>
    /// <param name="series">The series of a run.</param>
    /// <returns>The curve; positions are those of the points of the series.</returns>
    public static CleanupCurve Fit(MeasurandSeries series)
    {
        Guard.NotNull(series);
        Reading[] readings = [.. series.Points.Select(point => point.Reading)];
        return Fit(
            [.. series.Points.Select(point => point.At)],
            readings,
            CleanupOptions.UsualFor(series.Measurand.Scale, readings)
        );
    }

    /// <summary>The curve at a moment.</summary>
    /// <param name="at">The moment; before <see cref="Origin"/> the curve is extended backwards.</param>
    /// <returns>The value, in the unit of the readings.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The moment is more than 200 time constants before the origin.</exception>
    public double ValueAt(DateTimeOffset at) => fall.ValueAt(HoursTo(at));

    /// <summary>Rate, floor and readings.</summary>
    /// <returns>For example <c>falls at 0.3 per h to 60 (41 readings)</c>.</returns>
    public override string ToString()
    {
        var left = LeftOutReadings.Count == 0 ? "" : $", {LeftOutReadings.Count} of an initial phase not used";
        var what =
            !HasCurve ? "too few readings"
            : !fall.HasRate ? $"no rate determined, level {PlainText.Number(Floor)}"
            : Status == ExponentialDecayStatus.Rising
                ? $"rises at {PlainText.Number(RatePerHour)} per h to {PlainText.Number(Floor)}"
            : $"falls at {PlainText.Number(RatePerHour)} per h to {PlainText.Number(Floor)}";
        var flagged = MoreFlagsPossible ? $", {FlaggedReadings.Count} flagged, as many as are looked for" : "";
        return $"{what} ({Count} readings{left}{flagged})";
    }

    private static double InRange(double reading) =>
        Guard.InRange(reading, -CleanupOptions.LargestContent, CleanupOptions.LargestContent, "", "readings");

    private double HoursTo(DateTimeOffset at) => (at - Origin).TotalHours;
}
