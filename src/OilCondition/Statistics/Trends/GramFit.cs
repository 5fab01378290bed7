using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>What <see cref="GramColumns"/> finds with one of the other columns.</summary>
/// <param name="Left">Residual sum of squares.</param>
/// <param name="Coefficient">Coefficient of that column.</param>
/// <param name="Variance">Its variance over that of a reading.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct GramFit(Lanes Left, Lanes Coefficient, Lanes Variance);
