using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>The check of a width or scale: above 0, and no larger than the readings may be.</summary>
internal static class ChartScale
{
    public static double Check(double value, string name) =>
        value > 0 ? Guard.InRange(value, 0, 1e100, "", name) : Guard.Positive(value, "", name);
}
