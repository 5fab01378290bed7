using OilCondition.Charts;
using OilCondition.Limits;
using OilCondition.Text;

namespace OilCondition.Interactive.Views;

/// <summary>A machine: what is wrong, what to do, where every measurand stands, and its pictures folded below.</summary>
internal static class AssessmentView
{
    public static View Of(ConditionAssessment assessment)
    {
        var view = new View()
            .Heading($"{TreatmentView.Name(assessment)}, {PlainText.Date(assessment.Options.AsOf)}: {Word(assessment)}")
            .Lines(assessment.Problems.Select(one => $"{PlainText.Spaced(one.Severity)}: {one.Statement}"))
            .Table(
                [
                    "measurand",
                    "latest",
                    "taken",
                    "state",
                    "trend",
                    "remaining life: limit passed in 1 / 5 / 9 of 10 cases by",
                ],
                assessment.States.Select(Row)
            )
            .Lines(assessment.Recommendations.Select(one => one.ToString()))
            .Lines(assessment.Recommendations.SelectMany(one => one.Cautions).Distinct().Select(Sentences.English.Of));
        if (assessment.Recommendations.Any(one => one.Cautions.Count > 0))
        {
            view.Line(TreatmentDecision.Notice);
        }

        if (assessment.NextSample is { } next)
        {
            view.Line(Sentences.English.Of(next));
        }

        foreach (var problem in assessment.Problems)
        {
            view.Folded(
                $"What this rests on: {problem.Statement}",
                folded => folded.Lines(Sentences.English.Evidence(problem))
            );
        }

        foreach (var chart in AssessmentCharts.Of(assessment))
        {
            view.Folded(chart.Title, folded => folded.Picture(chart));
        }

        return view;
    }

    private static string Word(ConditionAssessment assessment) =>
        assessment.Findings.Count > 0 ? PlainText.Spaced(assessment.Worst)
        : assessment.IsJudged ? PlainText.Spaced(LimitState.Normal)
        : PlainText.Spaced(LimitState.NotDetermined);

    private static string[] Row(MeasurandState state) =>
        [
            state.Measurand.Name,
            state.Latest is { } latest ? state.Measurand.Text(latest.Reading) : "",
            state.Latest is { } reading ? PlainText.Date(reading.At) : "",
            PlainText.Spaced(state.Worst.State),
            Sentences.English.Of(state),
            string.Join("; ", state.Lives.Select(life => Sentences.English.Of(state, life))),
        ];
}
