using System.Globalization;

namespace OilCondition.Statistics;

/// <summary>Whether the readings agree with the course that was fitted, one exponential, against two that depart from it.</summary>
/// <remarks>
/// One column is added to the fit: e^(−4 k t) for a fall that is faster at first, e^(−8 k t) for one that is slower at first, and each tested by
/// Student's t on its side (the F test of one added column; Seber and Wild 1989, Draper and Smith 1998, both from memory). p is twice the
/// smaller chance. Contradicted below 0.025: one true exponential in forty. Too few readings for it: those to fit the curve and two.
/// </remarks>
public sealed class CourseCheck
{
    /// <summary>With <see cref="SerialCorrelation"/> at one in fifty, a true exponential is doubted in about one run of twenty.</summary>
    internal const double ContradictedBelow = 0.025;

    private CourseCheck(double? pValue, CourseDeparture departure)
    {
        PValue = pValue;
        Departure = departure;
    }

    /// <summary>Chance that one exponential departs as far; null where there are too few readings to test it.</summary>
    public double? PValue { get; }

    /// <summary>Whether the readings contradict one exponential: its forecast is then worth nothing.</summary>
    public bool IsContradicted => Departure != CourseDeparture.None;

    /// <summary>How they depart from it, where they contradict it.</summary>
    public CourseDeparture Departure { get; }

    internal string Words =>
        Departure switch
        {
            CourseDeparture.FasterAtFirst => "falls faster at first than one exponential",
            CourseDeparture.SlowerAtFirst => "falls slower at first than one exponential",
            _ => "agrees with one exponential",
        };

    internal static CourseCheck Untested { get; } = new(null, CourseDeparture.None);

    /// <summary>What the check says, in words.</summary>
    /// <returns>For example <c>falls faster at first than one exponential (p 0.003)</c>.</returns>
    public override string ToString() =>
        PValue is not { } p
            ? "too few readings to test the course"
            : Words + " (p " + p.ToString("G2", CultureInfo.InvariantCulture) + ")";

    /// <summary>From the chances of an excess as large in each direction.</summary>
    internal static CourseCheck Of(CourseChances chances) =>
        new(
            chances.PValue,
            !chances.AreContradicted ? CourseDeparture.None
                : chances.FasterAtFirst < chances.SlowerAtFirst ? CourseDeparture.FasterAtFirst
                : CourseDeparture.SlowerAtFirst
        );
}
