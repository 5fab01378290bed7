using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>The grade of a measured viscosity, or the nearest one.</summary>
public sealed record IsoGradeMatch
{
    internal IsoGradeMatch(KinematicViscosity viscosity, IsoViscosityGrade nearest, GradeMatchOutcome outcome)
    {
        Viscosity = viscosity;
        Nearest = nearest;
        Outcome = outcome;
    }

    /// <summary>The viscosity at 40 °C that was asked about.</summary>
    public KinematicViscosity Viscosity { get; }

    /// <summary>The grade whose midpoint is nearest by ratio; the oil has this grade only where <see cref="Outcome"/> says so.</summary>
    public IsoViscosityGrade Nearest { get; }

    /// <summary>Whether the viscosity has a grade.</summary>
    public GradeMatchOutcome Outcome { get; }
}
