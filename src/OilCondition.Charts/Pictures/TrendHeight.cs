using OilCondition.Charts.Drawing;

namespace OilCondition.Charts.Pictures;

/// <summary>The upright axis of a trend: its readings, and the limits that leave them their room.</summary>
internal static class TrendHeight
{
    /// <summary>A limit so far off that the readings would fill less than this share of the height stays off the chart, and is named at its edge.</summary>
    private const double LeastShare = 0.12;

    /// <summary>The axis.</summary>
    /// <param name="label">What it counts.</param>
    /// <param name="heights">What must be seen.</param>
    /// <param name="limits">Limits, which are seen where there is room.</param>
    /// <param name="isLogarithmic">Whether it is one of logarithms.</param>
    /// <param name="texts">Words.</param>
    public static NumberAxis Of(
        string label,
        IEnumerable<double> heights,
        IEnumerable<double> limits,
        bool isLogarithmic,
        ChartTexts texts
    )
    {
        List<double> all = [.. heights];
        bool Fits(double value) => !isLogarithmic || value > 0;
        double Place(double value) => isLogarithmic ? Math.Log10(Math.Max(value, 1e-300)) : value;
        var places = all.Where(Fits).Select(Place).ToList();
        foreach (var limit in limits.Where(Fits))
        {
            if (places.Count == 0)
            {
                all.Add(limit);
                continue;
            }

            var (low, high, place) = (places.Min(), places.Max(), Place(limit));
            var size = Math.Max(high, place) - Math.Min(low, place);

            // One level has no size of its own: then it is compared with its height.
            var own = high > low ? high - low : Math.Max(Math.Abs(high), isLogarithmic ? 1 : 0);
            if (own >= LeastShare * size)
            {
                all.Add(limit);
            }
        }

        return NumberAxis.Around(label, all, isLogarithmic, texts);
    }
}
