using OilCondition.Statistics;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Prognosis;

/// <summary>Water that comes into an oil between treatments, from its own readings: litres a day with an interval, or why it cannot be told.</summary>
/// <remarks>
/// <para>
/// Rate = b M, with b the slope of the water content [mg/kg a day] and M the oil [kg]. The latest stretch between treatments and oil changes counts.
/// Earlier ones share its slope, each with a level of its own, where tests at 5 % do not tell their slope and scatter from its own. Readings weigh by
/// the precision of the measurand at the level of the line, a² + (b y)², and are taken to scatter no less than that. Interval by Student's t with n −
/// stretches − 1 degrees of freedom, widened where readings follow one another. A clear bend is no scatter: the rate is then the mean over the time
/// seen. Three readings are the fewest, and tell little.
/// </para>
/// <para>
/// It is what stays in the oil: water that settles, or leaves through a vent, is not seen. A sensor sees dissolved water only: at saturation it has
/// reached its ceiling and the rate is no longer told. Readings below a detection limit are left out.
/// </para>
/// <para>
/// A leak and the air cannot be told apart by a slope. Air brings oil to equilibrium with it and no further, and no more than is breathed: what lies
/// clearly beyond either is a leak. Breathing is named only where the rise levels off below that equilibrium. Water that condenses under a cold roof
/// and drips is neither.
/// </para>
/// </remarks>
/// <example>
/// <code>
/// var estimate = IngressEstimate.Of(history, Density.FromKilogramsPerCubicMeter(872), asOf);
/// if (estimate is IngressEstimate.Rising rising) { /* rising.LitresPerDay, rising.Rate, rising.Cause */ }
/// </code>
/// </example>
public abstract class IngressEstimate
{
    /// <summary>Litres of water per kilogram, at 20 °C.</summary>
    private const double LitrePerKilogram = 1 / 0.9982;

    private IngressEstimate(IReadOnlyList<MeasurandSeries> stretches, int count)
    {
        Stretches = stretches;
        Count = count;
    }

    /// <summary>The stretches that were judged, in order of time.</summary>
    public IReadOnlyList<MeasurandSeries> Stretches { get; }

    /// <summary>Readings that were used.</summary>
    public int Count { get; }

    /// <summary>From the records of a machine: its stretches between treatments of the water and oil changes, with top-ups taken out.</summary>
    /// <param name="history">The records, with the volume of the oil fill.</param>
    /// <param name="oilDensity">Density of the oil, 500 to 1500 kg/m³.</param>
    /// <param name="asOf">Now: later records are not looked at.</param>
    /// <param name="bySensor">Whether the sensor is asked, one reading a day, and not the titrations.</param>
    /// <param name="mostByAir">Water content to which the air can bring the oil, <c>SaturationCurve.EquilibriumWith</c>; null where not known.</param>
    /// <param name="mostByBreathing">Water that the tank breathes at most; null where not known.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>The estimate.</returns>
    /// <exception cref="ArgumentNullException">The history is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static IngressEstimate Of(
        OilHistory history,
        Density oilDensity,
        DateTimeOffset asOf,
        bool bySensor = false,
        MassFraction? mostByAir = null,
        MassFlow? mostByBreathing = null,
        double confidence = 0.95
    )
    {
        PhysicalRange.OilDensity(oilDensity);
        var water = Measurands.WaterContent;
        var stretches = IngressStretches
            .Between(Guard.NotNull(history), asOf)
            .Select(stretch =>
                bySensor
                    ? history.SensorSeries(water, stretch.From, stretch.To, TimeSpan.FromDays(1))
                    : history.SampleSeries(water, stretch.From, stretch.To).WithoutTopUps(history, stretch.To)
            );
        return Of([.. stretches], history.Machine.ChargeVolume * oilDensity, mostByAir, mostByBreathing, confidence);
    }

    /// <summary>From one stretch of readings, as a data table has them.</summary>
    /// <param name="series">Water content over time, without a treatment in it; in mg/kg.</param>
    /// <param name="oilMass">The oil fill, above 0 up to 10⁹ kg.</param>
    /// <param name="mostByAir">Water content to which the air can bring the oil; null where not known.</param>
    /// <param name="mostByBreathing">Water that the tank breathes at most; null where not known.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>The estimate.</returns>
    /// <exception cref="ArgumentNullException">The series is null.</exception>
    /// <exception cref="ArgumentException">The series is not of water content.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static IngressEstimate Of(
        MeasurandSeries series,
        Mass oilMass,
        MassFraction? mostByAir = null,
        MassFlow? mostByBreathing = null,
        double confidence = 0.95
    )
    {
        if (!Guard.NotNull(series).Measurand.Equals(Measurands.WaterContent))
        {
            throw new ArgumentException(
                $"series is of {series.Measurand.Name}; water content is required.",
                nameof(series)
            );
        }

        return Of([series], oilMass, mostByAir, mostByBreathing, confidence);
    }

    private static IngressEstimate Of(
        IReadOnlyList<MeasurandSeries> all,
        Mass oilMass,
        MassFraction? mostByAir,
        MassFlow? mostByBreathing,
        double confidence
    )
    {
        var kilograms = Guard.InRange(oilMass.Kilograms, 1e-6, 1e9, "kg", nameof(oilMass));
        Guard.OpenUnitInterval(confidence);
        double? ceiling = mostByAir is { } air ? PhysicalRange.Water(air, nameof(mostByAir)) : null;
        double? breathed = mostByBreathing is { } most
            ? Guard.InRange(most.KilogramsPerHour, 0, 1e6, "kg/h", nameof(mostByBreathing)) * 24
            : null;
        var line = IngressLine.Of(all);
        var saturatedSince = all.Count > 0 ? IngressStretches.CeilingOf(all[all.Count - 1]) : null;
        var perDay = line is null
            ? Interval.Without(IntervalOutcome.TooFewReadings, confidence, IntervalSide.Both)
            : line.Slope(confidence, kilograms * 1e-6 * LitrePerKilogram);
        if (saturatedSince is { } since)
        {
            return new AtCeiling(line?.Stretches ?? all, line?.Count ?? 0, since, perDay);
        }

        if (line is null)
        {
            return new TooFewReadings(all, IngressStretches.CountOf(all));
        }

        if (!(perDay.Lower > 0))
        {
            return new NoRiseShown(line.Stretches, line.Count, perDay);
        }

        var level = line.LevelAtEnd(confidence);
        var levelsOff = line.LevelsOff;
        var cause =
            level.Lower > ceiling || perDay.Lower > breathed * LitrePerKilogram ? IngressCause.Leak
            : levelsOff && level.Upper <= ceiling ? IngressCause.Air
            : IngressCause.NotTold;
        return new Rising(
            line.Stretches,
            line.Count,
            MassFlow.FromKilogramsPerDay(line.SlopePerDay * kilograms * 1e-6),
            perDay,
            levelsOff,
            cause
        );
    }

    /// <summary>Litres, or millilitres where they are few.</summary>
    private static string Amount(Interval litres, double? estimate = null)
    {
        const double Few = 0.1;
        if (litres is not { Lower: { } lower, Upper: { } upper })
        {
            return "too few readings";
        }

        var largest = Math.Max(Math.Abs(lower), Math.Abs(upper));
        var (times, unit) = largest < Few ? (1000, "mL") : (1, "L");
        string Word(double value) => PlainText.Number(times * value, times * (upper - lower) / 10);
        var level = PlainText.Number(100 * litres.Confidence);
        return estimate is { } best
            ? $"{Word(best)} {unit} of water a day ({Word(lower)} to {Word(upper)}, {level} %)"
            : $"{Word(lower)} to {Word(upper)} {unit} of water a day ({level} %)";
    }

    /// <summary>Where the water comes from, as far as it can be told.</summary>
    public enum IngressCause
    {
        /// <summary>A leak and the air would both do.</summary>
        NotTold,

        /// <summary>More than the air at hand can bring.</summary>
        Leak,

        /// <summary>It levels off where the air holds it: no leak is needed to explain it.</summary>
        Air,
    }

    /// <summary>The water rises.</summary>
    public sealed class Rising : IngressEstimate
    {
        internal Rising(
            IReadOnlyList<MeasurandSeries> stretches,
            int count,
            MassFlow rate,
            Interval litresPerDay,
            bool levelsOff,
            IngressCause cause
        )
            : base(stretches, count)
        {
            Rate = rate;
            LitresPerDay = litresPerDay;
            LevelsOff = levelsOff;
            Cause = cause;
        }

        /// <summary>Best estimate, as a reservoir of a treatment takes it.</summary>
        public MassFlow Rate { get; }

        /// <summary>Interval in litres of water a day, at 20 °C.</summary>
        public Interval LitresPerDay { get; }

        /// <summary>Whether the rise levels off: the rate is then the mean over the time seen, and less comes to stay now.</summary>
        public bool LevelsOff { get; }

        /// <summary>Where it comes from, as far as it can be told.</summary>
        public IngressCause Cause { get; }

        /// <inheritdoc/>
        public override string ToString() =>
            $"{Amount(LitresPerDay, Rate.KilogramsPerDay * LitrePerKilogram)}, {Count} readings"
            + (LevelsOff ? ", levelling off" : "")
            + Cause switch
            {
                IngressCause.Leak => ": a leak, more than the air can bring",
                IngressCause.Air => ": as the air would bring it",
                _ => ": leak and air are not told apart",
            };
    }

    /// <summary>No rise is shown; the interval says how much may come in unseen.</summary>
    public sealed class NoRiseShown : IngressEstimate
    {
        internal NoRiseShown(IReadOnlyList<MeasurandSeries> stretches, int count, Interval litresPerDay)
            : base(stretches, count) => LitresPerDay = litresPerDay;

        /// <summary>Interval in litres of water a day; negative where the oil dries.</summary>
        public Interval LitresPerDay { get; }

        /// <inheritdoc/>
        public override string ToString() => $"no rise shown: {Amount(LitresPerDay)}, {Count} readings";
    }

    /// <summary>A sensor stands at saturation: dissolved water is at its ceiling, and what comes in further is not seen.</summary>
    public sealed class AtCeiling : IngressEstimate
    {
        internal AtCeiling(
            IReadOnlyList<MeasurandSeries> stretches,
            int count,
            DateTimeOffset since,
            Interval litresPerDay
        )
            : base(stretches, count)
        {
            Since = since;
            LitresPerDay = litresPerDay;
        }

        /// <summary>Since when.</summary>
        public DateTimeOffset Since { get; }

        /// <summary>Litres of water a day before that; without ends where too few readings are.</summary>
        public Interval LitresPerDay { get; }

        /// <inheritdoc/>
        public override string ToString() =>
            $"dissolved water at its ceiling since {PlainText.Date(Since)}: titrate; before it {Amount(LitresPerDay)}";
    }

    /// <summary>Fewer than three readings in a stretch, or all at one moment.</summary>
    public sealed class TooFewReadings : IngressEstimate
    {
        internal TooFewReadings(IReadOnlyList<MeasurandSeries> stretches, int count)
            : base(stretches, count) { }

        /// <inheritdoc/>
        public override string ToString() => $"too few readings: {Count}";
    }
}
