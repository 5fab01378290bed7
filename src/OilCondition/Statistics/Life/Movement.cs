using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>What a series may be doing: a mean that stands or follows a course, with a random part of a given size.</summary>
/// <param name="Kind">Whether the mean stands, rises along its course, or has a drift that itself walks at random.</param>
/// <param name="Course">The course of the mean; the random part runs on the same clock.</param>
/// <param name="Ratio">
/// Variance that the random part gains over one mean interval over the variance of a reading; for a walking drift the variance of what it adds to
/// the level over the whole time, over that of a reading. 0 is none, <see cref="PureWalk"/> a walk read without error.
/// </param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Movement(MovementKind Kind, Course Course, double Ratio)
{
    public const double PureWalk = double.MaxValue;
}
