namespace OilCondition.Treatment;

/// <summary>A way to clean the oil of a machine. Implement it to compare a treatment of your own with the others.</summary>
public interface ITreatment
{
    /// <summary>The treatment in words.</summary>
    string Name { get; }

    /// <summary>Which of the known kinds it is; null for a treatment of your own.</summary>
    TreatmentKind? Kind { get; }

    /// <summary>Forms of contamination that it reaches, at least in part.</summary>
    ContaminationForms Reaches { get; }

    /// <summary>What it does for a task.</summary>
    /// <param name="job">The task.</param>
    /// <returns>What it reaches, when, with what; or why not.</returns>
    TreatmentAssessment Assess(TreatmentJob job);
}
