using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>One measured saturation of an oil, direct or from a titration and a sensor reading on the same sample.</summary>
/// <remarks>
/// S = C / aw with C the Karl Fischer content and aw the sensor reading, on a sealed sample below saturation, at rest at one
/// temperature. A linear isotherm is assumed. At saturation the sensor no longer follows the content, so that such a pair is refused.
/// Relative standard error, where the errors are given: (u_S/S)² = (u_C/C)² + (u_aw/aw)².
/// </remarks>
public sealed record SaturationMeasurement
{
    private SaturationMeasurement(Temperature temperature, double saturationPpm, double relativeStandardError)
    {
        OilTemperature.Celsius(temperature);
        Temperature = temperature;
        Saturation = MassFraction.FromPartsPerMillion(saturationPpm);
        RelativeStandardError = Ratio.FromDecimalFractions(relativeStandardError);
    }

    /// <summary>Oil temperature of the measurement.</summary>
    public Temperature Temperature { get; }

    /// <summary>Measured saturation, S.</summary>
    public MassFraction Saturation { get; }

    /// <summary>Standard error of the saturation over the saturation; 0 where none was given.</summary>
    public Ratio RelativeStandardError { get; }

    /// <summary>Whether a standard error was given.</summary>
    public bool HasStandardError => RelativeStandardError.DecimalFractions > 0;

    /// <summary>A saturation measured as such, for example by titrating oil that stood over water.</summary>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <param name="saturation">Water content at saturation, above 0 and at most 500 000 mg/kg.</param>
    /// <returns>The measurement, without a standard error.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static SaturationMeasurement Saturated(Temperature temperature, MassFraction saturation) =>
        new(temperature, Positive(saturation, nameof(saturation)), 0);

    /// <summary>A saturation measured as such, with its standard error.</summary>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <param name="saturation">Water content at saturation, above 0 and at most 500 000 mg/kg.</param>
    /// <param name="standardError">Standard error of the content, above 0.</param>
    /// <returns>The measurement.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static SaturationMeasurement Saturated(
        Temperature temperature,
        MassFraction saturation,
        MassFraction standardError
    )
    {
        var ppm = Positive(saturation, nameof(saturation));
        return new SaturationMeasurement(temperature, ppm, Positive(standardError, nameof(standardError)) / ppm);
    }

    /// <summary>A saturation from a Karl Fischer value and a sensor reading.</summary>
    /// <param name="temperature">Oil temperature at the sensor, −60 to 200 °C.</param>
    /// <param name="relativeSaturation">Sensor reading, above 0 and below 0.995: at saturation it says nothing about the content.</param>
    /// <param name="content">Karl Fischer content of the same sample, above 0.</param>
    /// <returns>The measurement, without a standard error.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static SaturationMeasurement FromSensor(
        Temperature temperature,
        Ratio relativeSaturation,
        MassFraction content
    ) => new(temperature, SaturationPpm(relativeSaturation, content), 0);

    /// <summary>A saturation from a Karl Fischer value and a sensor reading, with their standard errors.</summary>
    /// <param name="temperature">Oil temperature at the sensor, −60 to 200 °C.</param>
    /// <param name="relativeSaturation">Sensor reading, above 0 and below 0.995: at saturation it says nothing about the content.</param>
    /// <param name="content">Karl Fischer content of the same sample, above 0.</param>
    /// <param name="sensorError">Standard error of the sensor reading, 0 to 0.2.</param>
    /// <param name="contentError">Standard error of the Karl Fischer content, above 0.</param>
    /// <returns>The measurement.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static SaturationMeasurement FromSensor(
        Temperature temperature,
        Ratio relativeSaturation,
        MassFraction content,
        Ratio sensorError,
        MassFraction contentError
    )
    {
        var saturation = SaturationPpm(relativeSaturation, content);
        var ofSensor = PhysicalRange.SensorAccuracy(sensorError) / relativeSaturation.DecimalFractions;
        var ofContent = Positive(contentError, nameof(contentError)) / content.PartsPerMillion;
        return new SaturationMeasurement(
            temperature,
            saturation,
            Math.Sqrt(ofSensor * ofSensor + ofContent * ofContent)
        );
    }

    private static double SaturationPpm(Ratio relativeSaturation, MassFraction content)
    {
        var activity = relativeSaturation.DecimalFractions;
        if (!(activity > 0 && activity < 1 - PhysicalRange.RelativeSaturationGrace))
        {
            Guard.InRange(
                activity,
                1e-6,
                1 - PhysicalRange.RelativeSaturationGrace - 1e-6,
                "(ratio)",
                nameof(relativeSaturation)
            );
        }

        var saturation = Positive(content, nameof(content)) / activity;
        return Guard.InRange(
            saturation,
            1e-3,
            PhysicalRange.PureWaterMgPerKg,
            "mg/kg (content over relative saturation)",
            nameof(content)
        );
    }

    private static double Positive(MassFraction content, string name) =>
        Guard.InRange(
            Guard.Positive(content.PartsPerMillion, "mg/kg", name),
            1e-3,
            PhysicalRange.PureWaterMgPerKg,
            "mg/kg",
            name
        );

    /// <summary>The measurement in one line.</summary>
    /// <returns>For example <c>243 mg/kg at 60 °C ± 5 %</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(Saturation.PartsPerMillion)} mg/kg at {PlainText.Tenths(Temperature.DegreesCelsius)} °C"
        + (HasStandardError ? $" ± {PlainText.Number(RelativeStandardError.Percent)} %" : "");
}
