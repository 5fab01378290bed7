using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The readings seen through the movements of a <see cref="FourDesign"/>.</summary>
/// <param name="Squares">Weighted sum of squares that is left.</param>
/// <param name="Level">The level at the last reading.</param>
/// <param name="Drift">The rise per clock unit; 0 of a mean that stands.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct FourReadings(Lanes Squares, Lanes Level, Lanes Drift);
