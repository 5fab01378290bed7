using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>A measured viscosity against the grade that the oil should have.</summary>
public sealed record IsoGradeCheck
{
    internal IsoGradeCheck(
        IsoViscosityGrade nominal,
        IsoViscosityGrade nearest,
        KinematicViscosity viscosity,
        bool isInGrade
    )
    {
        Nominal = nominal;
        Nearest = nearest;
        Viscosity = viscosity;
        IsInGrade = isInGrade;
    }

    /// <summary>The grade that the oil should have.</summary>
    public IsoViscosityGrade Nominal { get; }

    /// <summary>The grade nearest to what was measured, by ratio.</summary>
    public IsoViscosityGrade Nearest { get; }

    /// <summary>The viscosity at 40 °C that was measured.</summary>
    public KinematicViscosity Viscosity { get; }

    /// <summary>Whether it lies in the grade, limits included. If not, the sign of <see cref="FromMidpoint"/> says on which side.</summary>
    public bool IsInGrade { get; }

    /// <summary>
    /// Distance from the midpoint, above 0 for thicker. It is not the change in service: that is judged against the new oil of the same
    /// batch, which may lie anywhere in the grade (common practice, no source).
    /// </summary>
    public Ratio FromMidpoint => Ratio.FromDecimalFractions(Viscosity.Centistokes / Nominal.Midpoint.Centistokes - 1);

    /// <summary>The report in one line.</summary>
    /// <returns>For example <c>52.4 mm²/s at 40 °C: too thick for VG 46, 13.9 % above its midpoint</c>.</returns>
    public override string ToString()
    {
        var side = FromMidpoint.DecimalFractions < 0 ? "below" : "above";
        var verdict =
            IsInGrade ? $"in {Nominal}"
            : FromMidpoint.DecimalFractions < 0 ? $"too thin for {Nominal}"
            : $"too thick for {Nominal}";
        return $"{PlainText.Number(Viscosity.Centistokes)} mm²/s at 40 °C: {verdict}, {PlainText.Number(Math.Abs(FromMidpoint.Percent))} % {side} its midpoint";
    }
}
