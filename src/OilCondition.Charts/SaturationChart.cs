using OilCondition.Charts.Drawing;
using OilCondition.Charts.Pictures;
using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Charts;

/// <summary>How much water an oil holds dissolved, and what drops out between running and standstill.</summary>
public static class SaturationChart
{
    /// <summary>The chart of an assessed machine: its oil's curve, its temperatures, its latest water content.</summary>
    /// <param name="assessment">The assessment.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart; one that says so where the oil has no curve.</returns>
    public static Chart Of(ConditionAssessment assessment, ChartOptions? options = null)
    {
        Guard.NotNull(assessment);
        options ??= ChartOptions.Default;
        var page = Page.Of(options, assessment.Options.AsOf);
        var machine = assessment.History.Machine;
        var title = page.Texts.Say("saturation.title", ("whose", Page.Machine(machine)));
        if (machine.Oil.SaturationCurve is not { } curve)
        {
            return new Chart(Scene.Nothing(title, page.Texts["saturation.none"]), options);
        }

        MassFraction? water = assessment.Water is WaterInOil.Split split
            ? MassFraction.FromPartsPerMillion(split.Point.Reading.Value)
            : null;
        return new Chart(
            new SaturationPicture(
                page,
                title,
                curve,
                null,
                machine.RunningTemperature,
                machine.StandstillTemperature,
                water,
                0
            ).Scene(),
            options
        );
    }

    /// <summary>The chart of a curve.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="runningTemperature">Oil temperature in operation, −60 to 200 °C.</param>
    /// <param name="standstillTemperature">Oil temperature after cooling, −60 to 200 °C.</param>
    /// <param name="water">All water in the oil, 0 to 500 000 mg/kg; null where it is not known.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <returns>The chart.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A temperature or the content lies outside its range.</exception>
    public static Chart Of(
        SaturationCurve curve,
        Temperature runningTemperature,
        Temperature standstillTemperature,
        MassFraction? water = null,
        ChartOptions? options = null
    ) => Of(Guard.NotNull(curve), null, runningTemperature, standstillTemperature, water, 0, options);

    /// <summary>The chart of a fitted curve, with its measurements and the confidence band of the curve.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="runningTemperature">Oil temperature in operation, −60 to 200 °C.</param>
    /// <param name="standstillTemperature">Oil temperature after cooling, −60 to 200 °C.</param>
    /// <param name="water">All water in the oil, 0 to 500 000 mg/kg; null where it is not known.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <param name="confidence">Two-sided confidence level of the band, above 0 and below 1.</param>
    /// <returns>The chart.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A temperature, the content or the level lies outside its range.</exception>
    public static Chart Of(
        SaturationFit fit,
        Temperature runningTemperature,
        Temperature standstillTemperature,
        MassFraction? water = null,
        ChartOptions? options = null,
        double confidence = 0.9
    ) =>
        Of(
            Guard.NotNull(fit).Curve,
            fit,
            runningTemperature,
            standstillTemperature,
            water,
            Guard.OpenUnitInterval(confidence),
            options
        );

    /// <summary>The chart of a fitted curve alone, of no machine: its measurements and the confidence band of the curve.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="options">Size, words, units; <see cref="ChartOptions.Default"/> where left out.</param>
    /// <param name="confidence">Two-sided confidence level of the band, above 0 and below 1.</param>
    /// <returns>The chart.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The level lies outside its range.</exception>
    public static Chart Of(SaturationFit fit, ChartOptions? options = null, double confidence = 0.9)
    {
        var curve = Guard.NotNull(fit).Curve;
        Guard.OpenUnitInterval(confidence);
        options ??= ChartOptions.Default;
        var page = new Page(options.Texts, TimeSpan.Zero);
        return new Chart(
            new SaturationPicture(
                page,
                page.Texts.Say("saturation.title", ("whose", curve.Name)),
                curve,
                fit,
                curve.Highest,
                curve.Lowest,
                null,
                confidence,
                isOfMachine: false
            ).Scene(),
            options
        );
    }

    private static Chart Of(
        SaturationCurve curve,
        SaturationFit? fit,
        Temperature runningTemperature,
        Temperature standstillTemperature,
        MassFraction? water,
        double confidence,
        ChartOptions? options
    )
    {
        Guard.InRange(runningTemperature.DegreesCelsius, -60, 200, "°C", nameof(runningTemperature));
        Guard.InRange(standstillTemperature.DegreesCelsius, -60, 200, "°C", nameof(standstillTemperature));
        if (water is { } content)
        {
            Guard.InRange(content.PartsPerMillion, 0, 500_000, "mg/kg", nameof(water));
        }

        options ??= ChartOptions.Default;
        var page = new Page(options.Texts, TimeSpan.Zero);
        return new Chart(
            new SaturationPicture(
                page,
                page.Texts.Say("saturation.title", ("whose", curve.Name)),
                curve,
                fit,
                runningTemperature,
                standstillTemperature,
                water,
                confidence
            ).Scene(),
            options
        );
    }
}
