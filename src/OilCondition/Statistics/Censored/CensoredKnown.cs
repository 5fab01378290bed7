using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>Parts of a curve that are known beforehand, scaled; NaN for those that are fitted.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct CensoredKnown(double Floor, double Start, double LogRate)
{
    /// <summary>Rates beyond the search, as ln: slower ones are a straight line and faster ones a step to the last digit.</summary>
    private static readonly double Beyond = 30 * Math.Log(2);

    public bool HasFloor => !double.IsNaN(Floor);
    public bool HasStart => !double.IsNaN(Start);
    public bool HasRate => !double.IsNaN(LogRate);

    /// <summary>ln of the slowest and the fastest rate at which a curve can meet a condition without a floor below the lowest.</summary>
    /// <remarks>
    /// With a known start s and a value T to be met at τ the floor is (T − s z)/(1 − z), z = exp(−κ τ): not below f while z (s − f) is
    /// T − f or less. With a known floor f as well the rate is the one at which they are equal.
    /// </remarks>
    public (double Lowest, double Highest) LogRates(in CensoredCondition condition, CensoredSeries series)
    {
        if (HasRate)
        {
            return (LogRate, LogRate);
        }

        var (lowest, highest) = (DecayScan.LogLowest, series.Top);
        var floor = HasFloor ? Floor : series.LowestFloor;
        if (!HasStart || condition.IsNone || double.IsInfinity(condition.ScaledTime) || double.IsInfinity(floor))
        {
            return (lowest, highest);
        }

        var constants = Math.Log((Start - floor) / (condition.Value - floor));
        if (HasFloor)
        {
            var met = Math.Log(Math.Max(0, constants) / condition.ScaledTime);
            met = Math.Max(lowest - Beyond, Math.Min(highest + Beyond, met));
            return (met, met);
        }

        if (!(constants > 0))
        {
            return (lowest, highest);
        }

        var edge = Math.Min(highest + Beyond, Math.Log(constants / condition.ScaledTime));
        return Start > floor
            ? (Math.Max(lowest, edge), Math.Max(highest, edge))
            : (Math.Min(lowest, edge), Math.Min(highest, edge));
    }

    /// <summary>The values that a curve can have at a time; infinite where there is no end.</summary>
    public (double Least, double Largest) ValuesAt(double scaledTime, double lowestFloor)
    {
        if (!HasStart)
        {
            return (double.NegativeInfinity, double.PositiveInfinity);
        }

        if (HasFloor)
        {
            return (Math.Min(Start, Floor), Math.Max(Start, Floor));
        }

        var left = HasRate ? Math.Exp(-Math.Exp(LogRate) * scaledTime) : 0;
        return (
            HasRate ? lowestFloor + (Start - lowestFloor) * left : Math.Min(Start, lowestFloor),
            double.PositiveInfinity
        );
    }
}
