namespace OilCondition.Treatment;

/// <summary>A way to clean an oil charge. Implement it to compare a treatment of your own with the others.</summary>
public interface ITreatment
{
    /// <summary>The treatment in words.</summary>
    string Name { get; }

    /// <summary>Forms of contamination that it reaches, at least in part.</summary>
    ContaminationForms Reaches { get; }

    /// <summary>What it does for a task.</summary>
    /// <param name="job">The task.</param>
    /// <returns>What it reaches, when, with what; or why not.</returns>
    TreatmentAssessment Assess(TreatmentJob job);
}
