namespace OilCondition.Viscosity;

/// <summary>Whether a measured viscosity has a grade.</summary>
public enum GradeMatchOutcome
{
    /// <summary>It lies in the grade, limits included.</summary>
    InGrade,

    /// <summary>It lies in the gap between two grades.</summary>
    BetweenGrades,

    /// <summary>It is thinner than the thinnest grade.</summary>
    ThinnerThanAll,

    /// <summary>It is thicker than the thickest grade.</summary>
    ThickerThanAll,
}
