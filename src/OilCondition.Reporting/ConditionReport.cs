using System.Globalization;
using System.Net;
using System.Reflection;
using OilCondition.Text;
using OilCondition.Water;
using Scriban;
using Scriban.Runtime;

namespace OilCondition.Reporting;

/// <summary>Assessments as one self-contained HTML page for people: no script, no outside files, the same bytes for the same input.</summary>
public static class ConditionReport
{
    private static readonly Lazy<Template> Page = new(() =>
    {
        using var stream =
            Assembly.GetExecutingAssembly().GetManifestResourceStream("report.html")
            ?? throw new InvalidOperationException("The report template is missing from the assembly.");
        using var reader = new StreamReader(stream);
        return Template.Parse(reader.ReadToEnd());
    });

    /// <summary>Renders a report.</summary>
    /// <param name="title">Title of the page.</param>
    /// <param name="assessments">The assessments, in the order in which they are to be shown.</param>
    /// <param name="note">A remark under the title; empty for none.</param>
    /// <param name="decisions">What can be done, on the first page; null for none.</param>
    /// <param name="calendar">Where the plant's unit goes next, as plain text below the decisions; empty for none.</param>
    /// <returns>HTML.</returns>
    /// <exception cref="ArgumentException">The title is blank.</exception>
    public static string ToHtml(
        string title,
        IReadOnlyList<ConditionAssessment> assessments,
        string note = "",
        IReadOnlyList<TreatmentDecision>? decisions = null,
        string calendar = ""
    )
    {
        Guard.NotBlank(title);
        Guard.NotNull(assessments);
        Guard.NotNull(note);
        var model = new ScriptObject
        {
            ["title"] = Escape(title),
            ["note"] = Escape(note),
            ["decisions"] = (decisions ?? []).Select(Decision).ToList(),
            ["calendar"] = Escape(calendar),
            ["machines"] = assessments.Select(Machine).ToList(),
        };
        var context = new TemplateContext { StrictVariables = true, EnableRelaxedMemberAccess = false };
        context.PushCulture(CultureInfo.InvariantCulture);
        context.PushGlobal(model);
        return Page.Value.Render(context);
    }

    private static ScriptObject Decision(TreatmentDecision decision) =>
        new()
        {
            ["id"] = Escape(decision.Assessment.History.Machine.Id),
            ["topics"] = Escape(
                string.Join(", ", decision.Topics.Select(topic => Sentences.Of(topic).ToLowerInvariant()))
            ),
            ["by"] = Date(decision.RiskDate),
            ["why"] = Escape(decision.RiskReason),
            ["target"] = Escape(decision.Target.ToString()),
            ["recommendation"] = Escape(decision.Recommendation),
            ["choice"] = Escape(decision.Choice?.Id ?? (decision.UnderWay is null ? "none" : "under way")),
            ["chance"] = decision.Choice is { Assessment: not null } choice
                ? choice.Probability.Percent.ToString("0", CultureInfo.InvariantCulture) + " %"
                : "",
            ["done"] = decision.Choice?.DoneP90 is { } done ? Time(done) : "",
            ["cost"] = Escape(decision.Choice?.Cost?.ToString() ?? ""),
            ["text"] = Escape(decision.ToString()),
        };

    private static ScriptObject Machine(ConditionAssessment assessment) =>
        new()
        {
            ["id"] = Escape(assessment.History.Machine.Id),
            ["name"] = Escape(assessment.History.Machine.Name),
            ["oil"] = Escape(assessment.History.Machine.Oil.Name),
            ["as_of"] = assessment.Options.AsOf.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture),
            ["charge"] = assessment.Charge.ToString(),
            ["charge_since"] = Date(assessment.Charge.Since),
            ["worst"] = Word(assessment),
            ["code"] = assessment.Cleanliness is { } code ? Escape(code.ToString()) : "no counts",
            ["limit_set"] = Escape(assessment.Limits.Name),
            ["water"] = Water(assessment.Water),
            ["states"] = assessment.States.Select(State).ToList(),
            ["next_sample"] = assessment.NextSample is { } next ? Escape(Sentences.Of(next)) : "",
            ["problems"] = assessment
                .Problems.Select(problem => new ScriptObject
                {
                    ["severity"] = problem.Severity.ToString().ToLowerInvariant(),
                    ["statement"] = Escape(problem.Statement),
                    ["evidence"] = Sentences.Evidence(problem).Select(Escape).ToList(),
                })
                .ToList(),
            ["alerts"] = assessment
                .Alerts.Select(alert => new ScriptObject
                {
                    ["severity"] = alert.Severity.ToString().ToLowerInvariant(),
                    ["key"] = Escape(alert.Key),
                })
                .ToList(),
            ["recommendations"] = assessment
                .Recommendations.Select(recommendation => new ScriptObject
                {
                    ["sentence"] = Escape(recommendation.ToString()),
                    ["cautions"] = recommendation.Cautions.Select(caution => Escape(Sentences.Of(caution))).ToList(),
                })
                .ToList(),
        };

    private static ScriptObject Water(WaterInOil water) =>
        water switch
        {
            WaterInOil.Split split => new ScriptObject
            {
                ["outcome"] = "",
                ["total"] = Escape($"{Measurands.WaterContent.Text(split.Point.Reading)}, {Date(split.Point.At)}"),
                ["rows"] = new List<ScriptObject>
                {
                    WaterRow("running", split.Running, split.Point.Reading),
                    WaterRow("standstill", split.Standstill, split.Point.Reading),
                },
                ["separation"] = Escape(Separation(split.Separation)),
            },
            WaterInOil.NoSaturationCurve => Note(
                "No saturation curve of this oil: two saturations measured at two temperatures would give it."
            ),
            _ => Note("No water reading of this oil fill."),
        };

    private static ScriptObject Note(string text) =>
        new()
        {
            ["outcome"] = text,
            ["total"] = "",
            ["rows"] = new List<ScriptObject>(),
            ["separation"] = "",
        };

    private static ScriptObject WaterRow(string when, WaterState state, Reading total) =>
        new()
        {
            ["when"] = when,
            ["celsius"] = Number(state.Saturation.Temperature.DegreesCelsius),
            ["saturation"] =
                Measurands.WaterContent.Text(state.Saturation.Content.PartsPerMillion)
                + (state.Saturation.IsExtrapolated ? " (extrapolated)" : ""),
            ["dissolved"] = state.HasFreeWater
                ? Measurands.WaterContent.Text(state.Dissolved.PartsPerMillion)
                : Escape(Measurands.WaterContent.Text(total).Split(' ')[0]),
            ["free"] = Measurands.WaterContent.Text(state.Free.PartsPerMillion, total.Value),
            ["relative"] = Measurands.RelativeSaturation.Text(state.RelativeSaturation.Percent),
        };

    private static string Separation(SeparationPoint point) =>
        point.StaysDissolved ? $"The water stays dissolved down to {Celsius(point.Temperature)}."
        : point.StaysFree ? $"Free water is present even at {Celsius(point.Temperature)}."
        : $"Water separates below {Celsius(point.Temperature)}.";

    private static ScriptObject State(MeasurandState state)
    {
        return new ScriptObject
        {
            ["measurand"] = Escape(state.Measurand.Name),
            ["latest"] = state.Latest is { } latest
                ? Escape($"{state.Measurand.Text(latest.Reading)}, {Date(latest.At)}")
                : "no reading",
            ["state"] = state.Worst.State.ToString().ToLowerInvariant(),
            ["state_words"] = Escape(StateWord(state)),
            ["trend"] = Escape(Sentences.Of(state)),
            ["life"] =
                state.Lives.Count == 0
                    ? ""
                    : Escape(string.Join("; ", state.Lives.Select(life => Sentences.Of(state, life)))),
            ["source"] = Escape(string.Join("; ", state.Limits.Select(one => one.Limit.Source.ToString()).Distinct())),
        };
    }

    private static string StateWord(MeasurandState state) =>
        string.Join(
            "; ",
            [
                state.Worst.State == Limits.LimitState.NotDetermined
                    ? $"not determined: {Sentences.Of(state.Worst.Reason)}"
                    : state.Worst.State.ToString().ToLowerInvariant(),
                .. state.Limits.SelectMany(one => one.Limit.MissingFigures).Select(Sentences.Of),
            ]
        );

    private static string Word(ConditionAssessment assessment) =>
        assessment.Worst == Severity.Information ? "normal" : assessment.Worst.ToString().ToLowerInvariant();

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    private static string Celsius(UnitsNet.Temperature temperature) =>
        temperature.DegreesCelsius.ToString("0", CultureInfo.InvariantCulture) + " °C";

    private static string Time(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    private static string Date(DateTimeOffset at) => at.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Escape(string text) => WebUtility.HtmlEncode(text);
}
