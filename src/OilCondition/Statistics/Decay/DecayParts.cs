using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>Which parts of a curve the readings decided: neither known beforehand nor at a bound.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct DecayParts(bool Start, bool Floor, bool Rate)
{
    public static DecayParts Of(ExponentialDecayStatus status, ExponentialDecayOptions options) =>
        new(
            !options.Start.HasValue,
            !options.Floor.HasValue && status != ExponentialDecayStatus.AtFloorBound,
            !options.Rate.HasValue
                && status is not (ExponentialDecayStatus.StraightLine or ExponentialDecayStatus.FasterThanSampling)
        );
}
