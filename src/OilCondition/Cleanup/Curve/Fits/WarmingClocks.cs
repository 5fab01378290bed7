using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>Clocks for a run whose oil warms up: the rate goes as exp(b (T − T_n)), and b is told from the readings.</summary>
/// <remarks>
/// Vapour pressure over solubility rises with temperature and viscosity falls, each by a per cent or a few a kelvin (common practice, no source): b from 0 to 0.1 a kelvin,
/// which holds a rate that doubles every seven kelvin.
/// </remarks>
internal static class WarmingClocks
{
    private const double MostPerKelvin = 0.1;
    private const int Steps = 16;

    /// <summary>A run whose temperature moves less says nothing of its effect.</summary>
    private const double LeastRangeKelvin = 3;

    /// <summary>The clocks; none where temperatures are missing or hardly move.</summary>
    /// <param name="hours">Hours of the readings used, in order.</param>
    /// <param name="celsius">Temperature at each; null where it was not read, and then from its neighbours.</param>
    public static IReadOnlyList<DecayClock> Of(double[] hours, double?[] celsius)
    {
        int[] known = [.. Enumerable.Range(0, hours.Length).Where(i => celsius[i].HasValue)];
        if (!Move(celsius))
        {
            return [];
        }

        double[] kelvins = [.. hours.Select(hour => At(hour, hours, celsius, known))];
        var last = kelvins[kelvins.Length - 1];
        double[] relative = [.. kelvins.Select(one => one - last)];
        return
        [
            .. Enumerable.Range(0, Steps + 1).Select(i => new DecayClock(hours, relative, MostPerKelvin * i / Steps)),
        ];
    }

    /// <summary>Whether temperatures move enough to tell their effect.</summary>
    public static bool Move(double?[] celsius) => celsius.Max() - celsius.Min() >= LeastRangeKelvin;

    private static double At(double hour, double[] hours, double?[] celsius, int[] known)
    {
        var after = Array.FindIndex(known, i => hours[i] >= hour);
        if (after <= 0)
        {
            return celsius[known[after < 0 ? known.Length - 1 : 0]]!.Value;
        }

        var (one, other) = (known[after - 1], known[after]);
        var share = hours[other] > hours[one] ? (hour - hours[one]) / (hours[other] - hours[one]) : 1;
        return celsius[one]!.Value + share * (celsius[other]!.Value - celsius[one]!.Value);
    }
}
