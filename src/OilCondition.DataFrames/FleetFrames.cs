using System.Runtime.CompilerServices;
using Microsoft.Data.Analysis;
using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>What was concluded about a fleet, as frames: machines, lives, findings, evidence, and ways to treat.</summary>
/// <remarks>
/// Every figure is one that the assessment or the decision has; nothing is computed here. Moments are in UTC. Words are those of the JSON documents,
/// such as <c>no-latest-date</c>. The frames join by machine and subject. docs/frames.md has the columns.
/// </remarks>
/// <example>
/// <code>
/// var lives = FleetFrames.Lives(assessments).OrderBy("p10Utc");
/// </code>
/// </example>
public static class FleetFrames
{
    /// <summary>A row for each machine: its charge, how bad it is, which limit comes first and when, and the next sample.</summary>
    /// <param name="assessments">The assessments.</param>
    /// <returns>A new frame, in the order of the assessments.</returns>
    public static DataFrame Machines(IEnumerable<ConditionAssessment> assessments) =>
        MachineRows.Shape.Of([.. Each(assessments)]);

    /// <summary>
    /// A row for each machine, measurand and limited side: trend and slope with its interval, when the limit is passed, and the next sample of the
    /// machine. A measurand without a life has one row that says so.
    /// </summary>
    /// <param name="assessments">The assessments.</param>
    /// <returns>A new frame, in the order of the assessments and of their limits.</returns>
    public static DataFrame Lives(IEnumerable<ConditionAssessment> assessments) =>
        LifeRows.Shape.Of([.. Each(assessments).SelectMany(LifeRows.Of)]);

    /// <summary>A row for each finding, with the problem that it belongs to.</summary>
    /// <param name="assessments">The assessments.</param>
    /// <returns>A new frame, gravest problem of each machine first.</returns>
    public static DataFrame Findings(IEnumerable<ConditionAssessment> assessments) =>
        FindingRows.Findings.Of([.. Each(assessments).SelectMany(FindingRows.FindingsOf)]);

    /// <summary>A row for each figure or word on which a problem rests.</summary>
    /// <param name="assessments">The assessments.</param>
    /// <returns>A new frame, in the order of the problems.</returns>
    public static DataFrame Evidence(IEnumerable<ConditionAssessment> assessments) =>
        FindingRows.Evidence.Of([.. Each(assessments).SelectMany(FindingRows.EvidenceOf)]);

    /// <summary>
    /// A row for each way to treat, best first: how surely, when, how long, to which floor and at what cost, why it is ruled out, and what to beware of.
    /// It is advice: the plant decides; makers' limits, local codes and licensed practice come first.
    /// </summary>
    /// <param name="decisions">The decisions.</param>
    /// <returns>A new frame, in the order of the decisions.</returns>
    public static DataFrame Options(IEnumerable<TreatmentDecision> decisions) =>
        OptionRows.Shape.Of([.. Each(decisions).SelectMany(OptionRows.Of)]);

    private static IEnumerable<T> Each<T>(IEnumerable<T> all, [CallerArgumentExpression(nameof(all))] string name = "")
        where T : class => Guard.NotNull(all, name).Select(one => Guard.NotNull(one, name));
}
