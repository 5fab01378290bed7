using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>Findings and evidence, each with the problem that it belongs to.</summary>
internal static class FindingRows
{
    public static readonly FrameShape<FindingRow> Findings = Keys<FindingRow>(row => row.Assessment, row => row.Problem)
        .Text("topic", row => PlainText.Kebab(row.Problem.Topic))
        .Text("statement", row => row.Problem.Statement)
        .Text("code", row => PlainText.Kebab(row.Finding.Code))
        .Text(FrameNames.Severity, row => PlainText.Kebab(row.Finding.Severity))
        .Text(FrameNames.Measurand, row => row.Finding.Measurand.Id)
        .Text("sentence", row => Sentences.English.Of(row.Finding));

    public static readonly FrameShape<EvidenceRow> Evidence = Keys<EvidenceRow>(
            row => row.Assessment,
            row => row.Problem
        )
        .Text(FrameNames.Measurand, row => row.Measurand.Id)
        .Text("evidence", row => row.Item.Id)
        .Text(FrameNames.Name, row => row.Item.Name)
        .Number(FrameNames.Value, row => row.Item.Value)
        .Word(FrameNames.Unit, row => row.Item.Unit)
        .Text(FrameNames.Text, row => row.Item.Text);

    public static IEnumerable<FindingRow> FindingsOf(ConditionAssessment assessment) =>
        assessment.Problems.SelectMany(problem =>
            problem.Findings.Select(finding => new FindingRow(assessment, problem, finding))
        );

    public static IEnumerable<EvidenceRow> EvidenceOf(ConditionAssessment assessment) =>
        assessment.Problems.SelectMany(problem =>
            problem.Evidence.SelectMany(group =>
                group.Select(item => new EvidenceRow(assessment, problem, group.Key, item))
            )
        );

    private static FrameShape<T> Keys<T>(Func<T, ConditionAssessment> assessment, Func<T, Problem> problem) =>
        FleetKeys.Of(assessment).Text(FrameNames.Subject, row => problem(row).Subject);

    public readonly record struct FindingRow(ConditionAssessment Assessment, Problem Problem, Finding Finding);

    public readonly record struct EvidenceRow(
        ConditionAssessment Assessment,
        Problem Problem,
        Measurand Measurand,
        EvidenceItem Item
    );
}
