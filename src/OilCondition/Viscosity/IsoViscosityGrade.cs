using System.Diagnostics.CodeAnalysis;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>A viscosity grade for industrial oils, after ISO 3448: kinematic viscosity at 40 °C within 10 % of a midpoint.</summary>
/// <remarks>
/// Limits belong to the grade. Between grades lie gaps: 36 mm²/s has no grade. Numbers below 10 are rounded names (VG 2 is 2.2, VG 3 3.2,
/// VG 5 4.6, VG 7 6.8 mm²/s). VG 2200 and VG 3200 are in ASTM D2422, not in ISO 3448:1992.
/// </remarks>
/// <example>
/// <code>
/// var check = IsoViscosityGrade.FromNumber(46).Check(KinematicViscosity.FromCentistokes(52.4));
/// // check.IsInGrade is false, check.FromMidpoint 13.9 %: too thick
/// </code>
/// </example>
public sealed record IsoViscosityGrade
{
    /// <summary>Room for unit conversion: a limit given in m²/s is still the limit.</summary>
    private const double Rounding = 1e-9;

    private IsoViscosityGrade(int number, double midpoint, double lowest, double highest)
    {
        Number = number;
        Midpoint = KinematicViscosity.FromCentistokes(midpoint);
        Lowest = KinematicViscosity.FromCentistokes(lowest);
        Highest = KinematicViscosity.FromCentistokes(highest);
    }

    /// <summary>The grade's number: 46 of VG 46.</summary>
    public int Number { get; }

    /// <summary>Midpoint at 40 °C.</summary>
    public KinematicViscosity Midpoint { get; }

    /// <summary>Lowest viscosity of the grade at 40 °C.</summary>
    public KinematicViscosity Lowest { get; }

    /// <summary>Highest viscosity of the grade at 40 °C.</summary>
    public KinematicViscosity Highest { get; }

    /// <summary>Where the grade is defined.</summary>
    public Source Source =>
        Number > 1500
            ? new Source(SourceKind.Standard, "ASTM D2422 as seen in reproduction")
            : new Source(SourceKind.Standard, "ISO 3448:1992 as seen in reproduction");

    /// <summary>All grades, thinnest first.</summary>
    public static IReadOnlyList<IsoViscosityGrade> All { get; } =
    [
        new(2, 2.2, 1.98, 2.42),
        new(3, 3.2, 2.88, 3.52),
        new(5, 4.6, 4.14, 5.06),
        new(7, 6.8, 6.12, 7.48),
        new(10, 10, 9, 11),
        new(15, 15, 13.5, 16.5),
        new(22, 22, 19.8, 24.2),
        new(32, 32, 28.8, 35.2),
        new(46, 46, 41.4, 50.6),
        new(68, 68, 61.2, 74.8),
        new(100, 100, 90, 110),
        new(150, 150, 135, 165),
        new(220, 220, 198, 242),
        new(320, 320, 288, 352),
        new(460, 460, 414, 506),
        new(680, 680, 612, 748),
        new(1000, 1000, 900, 1100),
        new(1500, 1500, 1350, 1650),
        new(2200, 2200, 1980, 2420),
        new(3200, 3200, 2880, 3520),
    ];

    /// <summary>The grade with a number.</summary>
    /// <param name="gradeNumber">Number of the grade, 2 to 3200.</param>
    /// <returns>The grade.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No grade has this number.</exception>
    public static IsoViscosityGrade FromNumber(int gradeNumber) =>
        All.FirstOrDefault(grade => grade.Number == gradeNumber)
        ?? throw new ArgumentOutOfRangeException(
            nameof(gradeNumber),
            FormattableString.Invariant(
                $"gradeNumber is {gradeNumber}; allowed: {string.Join(", ", All.Select(grade => grade.Number))}."
            )
        );

    /// <summary>The grade of a measured viscosity.</summary>
    /// <param name="viscosityAt40">Kinematic viscosity at 40 °C, above 0.</param>
    /// <param name="grade">The grade that it lies in, limits included.</param>
    /// <returns>False in the gap between two grades and beyond the ends; <see cref="Nearest"/> then says which is near.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The viscosity is not above 0.</exception>
    public static bool TryFind(KinematicViscosity viscosityAt40, [NotNullWhen(true)] out IsoViscosityGrade? grade)
    {
        var nearest = Nearest(viscosityAt40);
        grade = nearest.Holds(viscosityAt40.Centistokes) ? nearest : null;
        return grade is not null;
    }

    /// <summary>The grade whose midpoint is nearest by ratio, whether or not the viscosity lies in it.</summary>
    /// <param name="viscosityAt40">Kinematic viscosity at 40 °C, above 0.</param>
    /// <returns>The nearest grade.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The viscosity is not above 0.</exception>
    public static IsoViscosityGrade Nearest(KinematicViscosity viscosityAt40)
    {
        var v = Guard.Positive(viscosityAt40.Centistokes, "mm²/s", nameof(viscosityAt40));
        // Grades stand in equal steps of the logarithm, so nearness is a ratio.
        return All.OrderBy(grade => Math.Abs(Math.Log(v / grade.Midpoint.Centistokes))).First();
    }

    /// <summary>Compares a measured viscosity with this grade: the off-grade report.</summary>
    /// <param name="viscosityAt40">Kinematic viscosity at 40 °C, above 0.</param>
    /// <returns>In the grade or not, by how much, and the grade that was measured instead.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The viscosity is not above 0.</exception>
    public IsoGradeCheck Check(KinematicViscosity viscosityAt40) =>
        new(this, Nearest(viscosityAt40), viscosityAt40, Holds(viscosityAt40.Centistokes));

    /// <summary>The grade as written on a drum.</summary>
    /// <returns>For example <c>VG 46</c>.</returns>
    public override string ToString() => FormattableString.Invariant($"VG {Number}");

    private bool Holds(double centistokes) =>
        centistokes >= Lowest.Centistokes * (1 - Rounding) && centistokes <= Highest.Centistokes * (1 + Rounding);
}
