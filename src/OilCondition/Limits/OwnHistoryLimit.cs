using OilCondition.Sampling;

namespace OilCondition.Limits;

internal static class OwnHistoryLimit
{
    public static bool TryFigures(Limit limit, MeasurandSeries series, out Limit? figures, out LimitReason reason)
    {
        figures = null;
        reason = LimitReason.TooFewReadings;
        return false;
    }
}
