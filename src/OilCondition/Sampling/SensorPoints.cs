using OilCondition.Text;
using UnitsNet;

namespace OilCondition;

/// <summary>What the sensors of a machine tell of one measurand.</summary>
internal static class SensorPoints
{
    /// <summary>
    /// A moisture sensor within half a percent of saturation may sit in free water: it then only says 'at least'.
    /// (Common practice, no source; capacitive sensors in oil are good to 0.02 to 0.03.)
    /// </summary>
    private const double SaturatedPercent = 100 * (1 - PhysicalRange.RelativeSaturationGrace);

    /// <summary>
    /// Readings in a span, both ends included. Water content comes from relative saturation and temperature by the oil's curve where it is not read itself; at
    /// saturation it is a lower bound, because a sensor sees dissolved water only.
    /// </summary>
    public static IEnumerable<SeriesPoint> Of(
        OilHistory history,
        Measurand measurand,
        DateTimeOffset from,
        DateTimeOffset to
    )
    {
        var rows = history.SensorReadings.Where(row => row.At >= from && row.At <= to);
        return measurand.Equals(Measurands.WaterContent)
            ? rows.Select(row => WaterContent(history, row)).OfType<SeriesPoint>()
            : rows.Where(row => row.Readings.ContainsKey(measurand))
                .Select(row => new SeriesPoint(new PointOrigin(row.At), row.Readings[measurand]));
    }

    /// <summary>One reading for each interval that has any: the middle one by value, as it was read.</summary>
    public static IEnumerable<SeriesPoint> Thinned(
        IEnumerable<SeriesPoint> points,
        DateTimeOffset from,
        TimeSpan interval
    ) =>
        points
            .GroupBy(point => (point.At - from).Ticks / interval.Ticks)
            .Select(group =>
            {
                var byValue = group.OrderBy(point => point.Reading.Value).ThenBy(point => point.At).ToList();
                return byValue[(byValue.Count - 1) / 2];
            })
            .OrderBy(point => point.At);

    private static SeriesPoint? WaterContent(OilHistory history, SensorReading row)
    {
        if (row.Readings.TryGetValue(Measurands.WaterContent, out var content))
        {
            return new SeriesPoint(new PointOrigin(row.At), content);
        }

        if (
            history.Machine.Oil.SaturationCurve is not { } curve
            || !row.Readings.TryGetValue(Measurands.RelativeSaturation, out var saturation)
            || !row.Readings.TryGetValue(Measurands.OilTemperature, out var temperature)
            || saturation.IsCensored
            || temperature.IsCensored
        )
        {
            return null;
        }

        var dissolved = curve.DissolvedAt(
            Ratio.FromPercent(saturation.Value),
            Temperature.FromDegreesCelsius(temperature.Value)
        );
        var qualifier = saturation.Value >= SaturatedPercent ? Qualifier.GreaterThan : Qualifier.Approximately;
        return new SeriesPoint(new PointOrigin(row.At), new Reading(dissolved.PartsPerMillion, qualifier));
    }
}
