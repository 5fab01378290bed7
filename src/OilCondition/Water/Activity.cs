using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>Relative saturation as sensors report it, with the rounding that displays do.</summary>
internal static class Activity
{
    /// <summary>A display of whole per cent shows 100 from 99.5 % on, and a zero may come out as −0.5 %.</summary>
    public const double Grace = 0.005;

    public static double Of(Ratio relativeSaturation, string name) => Of(relativeSaturation.DecimalFractions, name);

    public static double Of(double activity, string name) =>
        Math.Min(1, Math.Max(0, Guard.InRange(activity, -Grace, 1 + Grace, "(ratio)", name)));
}
