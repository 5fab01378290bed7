using OilCondition.Text;

namespace OilCondition;

/// <summary>A problem that belongs into the maintenance system, with a key that is the same for the same problem.</summary>
/// <remarks>
/// Key = machine / oil charge / subject of the problem, which is its topic, with the side where that says something. The key is the same tomorrow,
/// whatever the readings and whichever of the topic's measurands and limits are passed, and different after an oil change, so that a repeated
/// assessment never opens a second work request. What gets worse within one topic is the same alert, which <see cref="AlertJournal"/> escalates.
/// </remarks>
public sealed class Alert
{
    private Alert(string key, Problem problem)
    {
        Key = Guard.NotBlank(key);
        Problem = problem;
        Findings = [.. problem.Findings.Where(finding => finding.Severity >= Severity.Alert)];
    }

    /// <summary>The key.</summary>
    public string Key { get; }

    /// <summary>The problem, with its topic, its statement and its evidence.</summary>
    public Problem Problem { get; }

    /// <summary>The findings of the problem that are of severity alert or alarm, gravest first; at least one.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Alert or alarm.</summary>
    public Severity Severity => Problem.Severity;

    /// <summary>Key and the statement of the problem.</summary>
    /// <returns>For example <c>M1/charge-1/wear: Wear: iron 60 mg/kg ...</c>.</returns>
    public override string ToString() => $"{Key}: {Problem}";

    internal static IReadOnlyList<Alert> Of(Machine machine, OilCharge charge, IReadOnlyList<Problem> problems) =>
        problems.Count == 0
            ? []
            :
            [
                .. problems
                    .Where(problem => problem.Severity >= Severity.Alert)
                    .Select(problem => new Alert(
                        new AlertKey(machine.Id, charge.ToString(), problem.Subject).ToString(),
                        problem
                    )),
            ];
}
