using Microsoft.Data.Analysis;
using OilCondition.Text;
using OilCondition.Water;

namespace OilCondition.DataFrames;

/// <summary>Water in oil by the column: saturation, dissolved and free water, and what a sensor's reading means.</summary>
/// <remarks>
/// The formulas are those of <see cref="SaturationCurve"/>, by its bulk methods. Null gives null. A temperature outside the range of the curve gives null,
/// with why in the reason column; with <c>extrapolate</c> it gives a value, and the reason says so. So does a number that is not believed at all.
/// Columns know nothing of qualifiers: take values by <see cref="FrameExtensions.ValuesOf"/>, which leaves bounds out.
/// </remarks>
/// <example>
/// <code>
/// var split = WaterColumns.Split(curve, wide.ValuesOf(Measurands.WaterContent), wide.ValuesOf(Measurands.OilTemperature));
/// wide = wide.With(split);
/// </code>
/// </example>
public static class WaterColumns
{
    /// <summary>Dissolved water at saturation: <c>saturation [mg/kg]</c>, <c>saturationReason</c>.</summary>
    /// <param name="curve">The oil's curve.</param>
    /// <param name="temperatures">Oil temperatures in °C, −60 to 200.</param>
    /// <param name="extrapolate">Whether temperatures outside the range of the curve have values too.</param>
    /// <returns>A frame of the same length.</returns>
    /// <exception cref="ArgumentException">The column holds no numbers, or not in full.</exception>
    public static DataFrame Saturation(SaturationCurve curve, DataFrameColumn temperatures, bool extrapolate = false)
    {
        Guard.NotNull(curve);
        var rows = ColumnRows.Of(Temperature(temperatures));
        var saturations = rows.NewColumn();
        var outside = curve.Saturations(rows.Values(0), saturations);
        MarkOutside(curve, rows, 0, outside, extrapolate);
        return new DataFrame(rows.Numbers("saturation [mg/kg]", saturations), rows.Reasons("saturationReason"));
    }

    /// <summary>
    /// All water split into dissolved and free: <c>saturation [mg/kg]</c>, <c>dissolved [mg/kg]</c>, <c>free [mg/kg]</c>,
    /// <c>relative saturation [%]</c>, <c>splitReason</c>.
    /// </summary>
    /// <param name="curve">The oil's curve.</param>
    /// <param name="waterContents">All water, in mg/kg, 0 to 500 000, as a titration gives it.</param>
    /// <param name="temperatures">Oil temperatures in °C, −60 to 200; same length.</param>
    /// <param name="extrapolate">Whether temperatures outside the range of the curve have values too.</param>
    /// <returns>A frame of the same length.</returns>
    /// <exception cref="ArgumentException">The columns differ in length or hold no numbers: all faults are named.</exception>
    public static DataFrame Split(
        SaturationCurve curve,
        DataFrameColumn waterContents,
        DataFrameColumn temperatures,
        bool extrapolate = false
    )
    {
        Guard.NotNull(curve);
        var rows = ColumnRows.Of(Water(waterContents), Temperature(temperatures));
        var (saturations, dissolved) = (rows.NewColumn(), rows.NewColumn());
        var (free, relative) = (rows.NewColumn(), rows.NewColumn());
        curve.Saturations(rows.Values(1), saturations);
        curve.RelativeSaturations(rows.Values(0), rows.Values(1), relative);
        var outside = curve.Split(rows.Values(0), rows.Values(1), dissolved, free);
        MarkOutside(curve, rows, 1, outside, extrapolate);
        return new DataFrame(
            rows.Numbers("saturation [mg/kg]", saturations),
            rows.Numbers("dissolved [mg/kg]", dissolved),
            rows.Numbers("free [mg/kg]", free),
            rows.Numbers("relative saturation [%]", InPercent(relative)),
            rows.Reasons("splitReason")
        );
    }

    /// <summary>
    /// The water that a moisture sensor sees: <c>sensed dissolved [mg/kg]</c>, <c>sensedReason</c>. At 100 % it is the least that the oil holds in all, and the
    /// reason says so.
    /// </summary>
    /// <param name="curve">The oil's curve.</param>
    /// <param name="relativeSaturations">Sensor readings in %, 0 to 100 with a grace of 0.5 at both ends.</param>
    /// <param name="temperatures">Oil temperatures at the sensor in °C, −60 to 200; same length.</param>
    /// <param name="extrapolate">Whether temperatures outside the range of the curve have values too.</param>
    /// <returns>A frame of the same length.</returns>
    /// <exception cref="ArgumentException">The columns differ in length or hold no numbers: all faults are named.</exception>
    public static DataFrame Sensed(
        SaturationCurve curve,
        DataFrameColumn relativeSaturations,
        DataFrameColumn temperatures,
        bool extrapolate = false
    )
    {
        const double Grace = 100 * PhysicalRange.RelativeSaturationGrace;
        Guard.NotNull(curve);
        var rows = ColumnRows.Of(
            new ColumnInput(relativeSaturations, "relative saturation", "%", -Grace, 100 + Grace),
            Temperature(temperatures)
        );
        var (shares, dissolved) = (rows.NewColumn(), rows.NewColumn());
        for (var i = 0; i < rows.Length; i++)
        {
            shares[i] = Math.Clamp(rows.Values(0)[i] / 100, 0, 1);
            if (shares[i] >= 1)
            {
                rows.Note(i, "at saturation: the least that the oil holds in all, there may be free water beside it");
            }
        }

        var outside = curve.Dissolved(shares, rows.Values(1), dissolved);
        MarkOutside(curve, rows, 1, outside, extrapolate);
        return new DataFrame(rows.Numbers("sensed dissolved [mg/kg]", dissolved), rows.Reasons("sensedReason"));
    }

    /// <summary>The temperature below which water comes out of the oil: <c>separation temperature [°C]</c>, <c>separationReason</c>.</summary>
    /// <param name="curve">The oil's curve.</param>
    /// <param name="waterContents">All water, in mg/kg, 0 to 500 000.</param>
    /// <param name="extrapolate">Whether temperatures outside the range of the curve are given too.</param>
    /// <returns>A frame of the same length. Water that stays dissolved down to −60 °C, or free up to 200 °C, is outside the range of any curve.</returns>
    /// <exception cref="ArgumentException">The column holds no numbers, or not in full.</exception>
    public static DataFrame SeparationTemperature(
        SaturationCurve curve,
        DataFrameColumn waterContents,
        bool extrapolate = false
    )
    {
        Guard.NotNull(curve);
        var rows = ColumnRows.Of(Water(waterContents));
        var temperatures = rows.NewColumn();
        var outside = curve.SeparationTemperatures(rows.Values(0), temperatures);
        MarkOutside(curve, rows, temperatures, outside, extrapolate);
        return new DataFrame(
            rows.Numbers("separation temperature [°C]", temperatures),
            rows.Reasons("separationReason")
        );
    }

    private static ColumnInput Water(DataFrameColumn column) =>
        new(column, "water content", "mg/kg", 0, PhysicalRange.HighestWaterMgPerKg);

    internal static ColumnInput Temperature(DataFrameColumn column) =>
        new(column, "oil temperature", "°C", PhysicalRange.LowestCelsius, PhysicalRange.HighestCelsius);

    private static void MarkOutside(SaturationCurve curve, ColumnRows rows, int input, int outside, bool extrapolate) =>
        MarkOutside(curve, rows, rows.Values(input), outside, extrapolate);

    /// <summary>The bulk methods count the rows outside the range of a curve; which they are is asked only where there are any.</summary>
    private static void MarkOutside(
        SaturationCurve curve,
        ColumnRows rows,
        ReadOnlySpan<double> temperaturesCelsius,
        int outside,
        bool extrapolate
    )
    {
        for (var i = 0; outside > 0 && i < rows.Length; i++)
        {
            if (curve.Covers(UnitsNet.Temperature.FromDegreesCelsius(temperaturesCelsius[i])))
            {
                continue;
            }

            outside--;
            var reason = FormattableString.Invariant(
                $"{temperaturesCelsius[i]:G4} °C is outside the curve, {curve.Lowest.DegreesCelsius:G4} to {curve.Highest.DegreesCelsius:G4} °C"
            );
            rows.Outside(i, reason, extrapolate);
        }
    }

    private static double[] InPercent(double[] shares) => Array.ConvertAll(shares, share => 100 * share);
}
