using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The chances that scatter about one exponential departs as far to either side; 1 and 1 where that is not tested, and then not a number.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct CourseChances(double FasterAtFirst, double SlowerAtFirst)
{
    public static CourseChances Untested { get; } = new(double.NaN, double.NaN);

    /// <summary>Chance of a departure as far to either side; not a number where that is not tested.</summary>
    public double PValue =>
        double.IsNaN(FasterAtFirst + SlowerAtFirst)
            ? double.NaN
            : Math.Min(1, 2 * Math.Min(FasterAtFirst, SlowerAtFirst));

    public bool AreContradicted => PValue < CourseCheck.ContradictedBelow;

    public CourseCheck Check() => double.IsNaN(PValue) ? CourseCheck.Untested : CourseCheck.Of(this);
}
