using OilCondition.Text;

namespace OilCondition;

/// <summary>What belongs into the maintenance system, with a key that is the same for the same problem.</summary>
/// <remarks>
/// Key = machine / oil charge / finding / subject. The subject is the measurand, but for water and for particles, of which several measurands tell
/// of one problem: particles of three sizes make one alert. The key is the same tomorrow, whatever the reading, and different after an oil change, so that a
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

    /// <summary>Key and the sentence of the gravest finding.</summary>
    /// <returns>For example <c>M1/charge-1/limit-passed/iron: Iron: 60 mg/kg ...</c>.</returns>
    public override string ToString() => $"{Key}: {Sentences.Of(Findings[0])}";

    /// <summary>What alerts on a measurand are about.</summary>
    internal static string SubjectOf(Measurand measurand) =>
        measurand.Topic is MeasurandTopic.Water or MeasurandTopic.Particles
            ? PlainText.Kebab(measurand.Topic)
            : measurand.Id;

    internal static IReadOnlyList<Alert> Of(Machine machine, OilCharge charge, IEnumerable<Finding> findings) =>
        [
            .. findings
                .Where(finding => finding.Severity >= Severity.Alert)
                .GroupBy(finding =>
                    string.Join("/", machine.Id, charge, PlainText.Kebab(finding.Code), SubjectOf(finding.Measurand))
                )
                .Select(group => new Alert(group.Key, [.. group])),
        ];
}
