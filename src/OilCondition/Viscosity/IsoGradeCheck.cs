using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>A measured viscosity against the grade that the oil should have.</summary>
public sealed record IsoGradeCheck
{
    internal IsoGradeCheck(IsoViscosityGrade nominal, IsoGradeMatch measured, GradeOutcome outcome)
    {
        Nominal = nominal;
        Measured = measured;
        Outcome = outcome;
    }

    /// <summary>The grade that the oil should have.</summary>
    public IsoViscosityGrade Nominal { get; }

    /// <summary>The grade that was measured.</summary>
    public IsoGradeMatch Measured { get; }

    /// <summary>In, below or above the grade.</summary>
    public GradeOutcome Outcome { get; }

    /// <summary>
    /// Distance from the midpoint, above 0 for thicker. It is not the change in service: that is judged against the new oil of the same
    /// batch, which may lie anywhere in the grade (common practice, no source).
    /// </summary>
    public Ratio FromMidpoint =>
        Ratio.FromDecimalFractions(Measured.Viscosity.Centistokes / Nominal.Midpoint.Centistokes - 1);
}
