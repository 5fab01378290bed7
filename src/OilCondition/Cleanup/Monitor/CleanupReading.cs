using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>One reading of a run: water by sensor or titration, another measurand, oil temperature, particle counts, or some of them.</summary>
/// <remarks>A sensor knows dissolved water only; its reading needs the temperature at the sensor. A titration without temperature says nothing about warm oil.</remarks>
/// <example>
/// <code>
/// var bySensor = CleanupReading.Sensor(at, Ratio.FromPercent(43.9), Temperature.FromDegreesCelsius(50));
/// var byTitration = CleanupReading.Titration(at, MassFraction.FromPartsPerMillion(115));
/// </code>
/// </example>
public sealed record CleanupReading
{
    private CleanupReading(
        DateTimeOffset at,
        ReadingSource source,
        Temperature? temperature = null,
        ParticleLevels? particles = null
    )
    {
        if (temperature is { } oil)
        {
            OilTemperature.Celsius(oil, nameof(temperature));
        }

        At = Guard.Moment(at);
        Source = source;
        Temperature = temperature;
        Particles = particles;
    }

    /// <summary>When it was taken.</summary>
    public DateTimeOffset At { get; }

    /// <summary>Oil temperature; null where it was not read.</summary>
    public Temperature? Temperature { get; }

    /// <summary>Particle counts; null where there are none.</summary>
    public ParticleLevels? Particles { get; }

    /// <summary>Relative saturation that a sensor read; null where none did.</summary>
    public Ratio? RelativeSaturation { get; private init; }

    /// <summary>What was read, in the unit of what the run follows: mg/kg of a titration; null for relative saturation.</summary>
    public Reading? Figure { get; private init; }

    /// <summary>Whether a sensor read it; a sample, a thermometer or a counter did otherwise.</summary>
    public bool IsBySensor => Source == ReadingSource.Sensor;

    internal ReadingSource Source { get; }

    /// <summary>A reading of a moisture sensor.</summary>
    /// <param name="at">When it was taken, years 1900 to 2199.</param>
    /// <param name="relativeSaturation">Relative saturation, 0 to 1, with a rounding grace of 0.005 at both ends.</param>
    /// <param name="temperature">Oil temperature at the sensor, −60 to 200 °C.</param>
    /// <param name="particles">Particle counts taken with it, or null.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static CleanupReading Sensor(
        DateTimeOffset at,
        Ratio relativeSaturation,
        Temperature temperature,
        ParticleLevels? particles = null
    )
    {
        Guard.InRange(relativeSaturation.DecimalFractions, -0.005, 1.005, "(ratio)", nameof(relativeSaturation));
        return new(at, ReadingSource.Sensor, temperature, particles) { RelativeSaturation = relativeSaturation };
    }

    /// <summary>A titration.</summary>
    /// <param name="at">When the sample was taken, years 1900 to 2199.</param>
    /// <param name="water">All water, 0 to 500 000 mg/kg.</param>
    /// <param name="temperature">Oil temperature at sampling, −60 to 200 °C, or null.</param>
    /// <param name="particles">Particle counts of the sample, or null.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static CleanupReading Titration(
        DateTimeOffset at,
        MassFraction water,
        Temperature? temperature = null,
        ParticleLevels? particles = null
    ) =>
        new(at, ReadingSource.Sample, temperature, particles)
        {
            Figure = new Reading(
                Guard.InRange(water.PartsPerMillion, 0, CleanupMonitorOptions.MostWater, "mg/kg", nameof(water))
            ),
        };

    /// <summary>Particle counts alone.</summary>
    /// <param name="at">When the sample was taken, years 1900 to 2199.</param>
    /// <param name="particles">The counts.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentNullException">There are no counts.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The moment lies outside its range.</exception>
    public static CleanupReading OfParticles(DateTimeOffset at, ParticleLevels particles) =>
        new(at, ReadingSource.None, particles: Guard.NotNull(particles));

    /// <summary>A temperature alone.</summary>
    /// <param name="at">When it was read, years 1900 to 2199.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public static CleanupReading OfTemperature(DateTimeOffset at, Temperature temperature) =>
        new(at, ReadingSource.None, temperature);

    /// <summary>A reading by a sensor, in the unit of the measurand that the run follows.</summary>
    /// <param name="at">When it was taken, years 1900 to 2199.</param>
    /// <param name="reading">The reading, up to 10¹² in size.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C, or null.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static CleanupReading BySensor(DateTimeOffset at, Reading reading, Temperature? temperature = null) =>
        new(at, ReadingSource.Sensor, temperature) { Figure = InRange(reading) };

    /// <summary>A reading of a sample, in the unit of the measurand that the run follows.</summary>
    /// <param name="at">When the sample was taken, years 1900 to 2199.</param>
    /// <param name="reading">The reading, up to 10¹² in size.</param>
    /// <param name="temperature">Oil temperature at sampling, −60 to 200 °C, or null.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static CleanupReading OfSample(DateTimeOffset at, Reading reading, Temperature? temperature = null) =>
        new(at, ReadingSource.Sample, temperature) { Figure = InRange(reading) };

    /// <summary>What a history has of a run, each source for itself: sensor readings and samples of what the run is to bring down.</summary>
    /// <remarks>
    /// Suspect samples, and readings by another method than the latest one, are left out (<see cref="OilHistory.SampleSeries"/>). For water a
    /// sensor gives its content, or relative saturation with the temperature at the sensor. A sample has the oil temperature that was read with it.
    /// </remarks>
    /// <param name="history">The records of the machine.</param>
    /// <param name="run">The run.</param>
    /// <param name="asOf">The moment up to which records are looked at.</param>
    /// <returns>The readings, sensor first, each in order of time; what <see cref="CleanupMonitor.Take"/> takes.</returns>
    /// <exception cref="ArgumentNullException">History or run is missing.</exception>
    public static IReadOnlyList<CleanupReading> Of(OilHistory history, TreatmentRun run, DateTimeOffset asOf)
    {
        Guard.NotNull(history);
        var measurand = Guard.NotNull(run).Measurand;
        var end = run.EndedAt is { } ended && ended < asOf ? ended : asOf;
        return
        [
            .. history
                .SensorReadings.Where(row => row.At >= run.At && row.At <= end)
                .Select(row => OfRow(row, measurand))
                .OfType<CleanupReading>(),
            .. end < run.At ? [] : OfSamples(history, measurand, run.At, end),
        ];
    }

    private static IEnumerable<CleanupReading> OfSamples(
        OilHistory history,
        Measurand measurand,
        DateTimeOffset from,
        DateTimeOffset to
    )
    {
        // The first of a moment, where a repeated sample has another.
        var celsius = history
            .SampleSeries(Measurands.OilTemperature, from, to)
            .Points.Where(point => !point.Reading.IsCensored)
            .GroupBy(point => point.At)
            .ToDictionary(group => group.Key, group => group.First().Reading.Value);
        return history
            .SampleSeries(measurand, from, to)
            .Points.Select(point =>
                OfSample(
                    point.At,
                    point.Reading,
                    celsius.TryGetValue(point.At, out var oil)
                        ? UnitsNet.Temperature.FromDegreesCelsius(oil)
                        : (Temperature?)null
                )
            );
    }

    /// <summary>What was read.</summary>
    /// <returns>For example <c>2025-12-10 12:00: 43.9 % by sensor, 50 °C</c>.</returns>
    public override string ToString()
    {
        List<string> parts = [];
        var by = Source == ReadingSource.Sensor ? "by sensor" : "by sample";
        if (RelativeSaturation is { } saturation)
        {
            parts.Add($"{PlainText.Number(saturation.Percent)} % {by}");
        }

        if (Figure is { } figure)
        {
            parts.Add($"{figure} {by}");
        }

        if (Temperature is { } oil)
        {
            parts.Add($"{PlainText.Number(oil.DegreesCelsius)} °C");
        }

        if (Particles is { } counts)
        {
            parts.Add(counts.Code.ToString());
        }

        return $"{PlainText.Time(At)}: {string.Join(", ", parts)}";
    }

    private static CleanupReading? OfRow(SensorReading row, Measurand measurand)
    {
        Reading? Uncensored(Measurand which) =>
            row.Readings.TryGetValue(which, out var reading) && !reading.IsCensored ? reading : null;

        if (row.Readings.TryGetValue(measurand, out var direct))
        {
            return BySensor(row.At, direct);
        }

        if (!measurand.Equals(Measurands.WaterContent) || Uncensored(Measurands.OilTemperature) is not { } oil)
        {
            return null;
        }

        var temperature = UnitsNet.Temperature.FromDegreesCelsius(oil.Value);
        return Uncensored(Measurands.RelativeSaturation) is { } saturation
            ? Sensor(row.At, Ratio.FromPercent(saturation.Value), temperature)
            : OfTemperature(row.At, temperature);
    }

    private static Reading InRange(Reading reading)
    {
        Guard.InRange(
            reading.Value,
            -CleanupOptions.LargestContent,
            CleanupOptions.LargestContent,
            "",
            nameof(reading)
        );
        return reading;
    }
}
