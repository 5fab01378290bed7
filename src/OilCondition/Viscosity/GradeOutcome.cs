namespace OilCondition.Viscosity;

/// <summary>Where a measured viscosity lies against the grade that it should have.</summary>
public enum GradeOutcome
{
    /// <summary>Within the grade, limits included.</summary>
    InGrade,

    /// <summary>Thinner than the grade allows.</summary>
    BelowGrade,

    /// <summary>Thicker than the grade allows.</summary>
    AboveGrade,
}
