using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The readings seen through up to four movements at once: sums of squares and products about their level, and the level at the last reading.</summary>
/// <param name="Design">The movements over the dates of the readings.</param>
/// <param name="Both">Weighted sum of products of clock and readings.</param>
/// <param name="Values">Weighted sum of squares of the readings.</param>
/// <param name="Level">The level at the last reading, but for the drift.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct FourReadings(FourDesign Design, Lanes Both, Lanes Values, Lanes Level)
{
    /// <summary>One of the movements.</summary>
    public DegradationMember Member(int index, Movement movement, double leastSquares)
    {
        double At(Lanes lanes) => LaneMath.At(lanes, index);
        var (walked, read) = (At(Design.Walk), At(Design.Reading));
        return DegradationMember.Of(
            Design.Count,
            movement,
            At(Design.LogDeterminant),
            (At(Design.Clock), At(Both), At(Values)),
            (At(Level), At(Design.Reach), At(Design.Variance)),
            walked,
            read > 0 ? 0 : walked,
            leastSquares / (read + walked)
        );
    }
}
