using OilCondition.Text;

namespace OilCondition;

/// <summary>What belongs into the maintenance system, with a key that is the same for the same problem.</summary>
/// <remarks>
/// Key = machine / oil charge / finding / topic. The topic is the measurand, or one word for several that tell of one problem: particles
/// of three sizes make one alert. The key is the same tomorrow, whatever the reading, and different after an oil change, so that a
/// repeated assessment never opens a second work request.
/// </remarks>
public sealed class Alert
{
    internal Alert(string key, IReadOnlyList<Finding> findings)
    {
        Key = Guard.NotBlank(key);
        Findings = findings;
        Severity = findings.Max(finding => finding.Severity);
    }

    /// <summary>The key.</summary>
    public string Key { get; }

    /// <summary>The findings with their evidence, gravest first; at least one.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Alert or alarm.</summary>
    public Severity Severity { get; }

    internal static IReadOnlyList<Alert> Of(Machine machine, OilCharge charge, IEnumerable<Finding> findings) =>
        [
            .. findings
                .Where(finding => finding.Severity >= Severity.Alert)
                .GroupBy(finding =>
                    string.Join("/", machine.Id, charge, PlainText.Kebab(finding.Code), finding.Measurand.Topic)
                )
                .Select(group => new Alert(group.Key, [.. group])),
        ];
}
