using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>One reading of a run: water by sensor or titration, oil temperature, particle counts, or some of them.</summary>
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
        WaterSource source,
        double water,
        Temperature? temperature,
        ParticleLevels? particles
    )
    {
        if (temperature is { } oil)
        {
            OilTemperature.Celsius(oil, nameof(temperature));
        }

        At = Guard.Moment(at);
        Source = source;
        WaterFigure = water;
        HasTemperature = temperature.HasValue;
        Temperature = temperature ?? Temperature.FromDegreesCelsius(0);
        Counts = particles;
    }

    /// <summary>When it was taken.</summary>
    public DateTimeOffset At { get; }

    /// <summary>Where its water content comes from, if it has one.</summary>
    public WaterSource Source { get; }

    /// <summary>Whether it has a temperature.</summary>
    public bool HasTemperature { get; }

    /// <summary>Oil temperature; 0 °C where there is none.</summary>
    public Temperature Temperature { get; }

    /// <summary>Whether it has particle counts.</summary>
    public bool HasParticles => Counts is not null;

    /// <summary>Particle counts; zeros where there are none.</summary>
    public ParticleLevels Particles => Counts ?? new ParticleLevels(0, 0, 0);

    /// <summary>Relative saturation that a sensor read; 0 where none did.</summary>
    public Ratio RelativeSaturation => Ratio.FromDecimalFractions(Source == WaterSource.Sensor ? WaterFigure : 0);

    /// <summary>Water that a titration found; 0 where there was none.</summary>
    public MassFraction TitratedWater =>
        MassFraction.FromPartsPerMillion(Source == WaterSource.Titration ? WaterFigure : 0);

    /// <summary>Relative saturation as a fraction for a sensor, mg/kg for a titration.</summary>
    internal double WaterFigure { get; }

    internal ParticleLevels? Counts { get; }

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
    ) => new(at, WaterSource.Sensor, PhysicalRange.SaturationReading(relativeSaturation), temperature, particles);

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
    ) => new(at, WaterSource.Titration, PhysicalRange.Water(water), temperature, particles);

    /// <summary>Particle counts alone.</summary>
    /// <param name="at">When the sample was taken, years 1900 to 2199.</param>
    /// <param name="particles">The counts.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentNullException">There are no counts.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The moment lies outside its range.</exception>
    public static CleanupReading OfParticles(DateTimeOffset at, ParticleLevels particles) =>
        new(at, WaterSource.None, 0, null, Guard.NotNull(particles));

    /// <summary>A temperature alone.</summary>
    /// <param name="at">When it was read, years 1900 to 2199.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public static CleanupReading OfTemperature(DateTimeOffset at, Temperature temperature) =>
        new(at, WaterSource.None, 0, temperature, null);
}
