using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The chances that scatter about one exponential departs as far to either side; 1 and 1 where that is not tested, and then not a number.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct CourseChances(double FasterAtFirst, double SlowerAtFirst)
{
    public static CourseChances Untested { get; } = new(double.NaN, double.NaN);

    public CourseCheck Check() =>
        double.IsNaN(FasterAtFirst + SlowerAtFirst)
            ? CourseCheck.Untested
            : CourseCheck.Of(FasterAtFirst, SlowerAtFirst);
}
