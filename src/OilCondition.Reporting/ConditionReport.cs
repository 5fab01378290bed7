using System.Globalization;
using System.Net;
using System.Reflection;
using OilCondition.Prognosis;
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
    /// <returns>HTML.</returns>
    /// <exception cref="ArgumentException">The title is blank.</exception>
    public static string ToHtml(string title, IReadOnlyList<ConditionAssessment> assessments, string note = "")
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(title);
        ArgumentNullException.ThrowIfNull(assessments);
        ArgumentNullException.ThrowIfNull(note);
        var model = new ScriptObject
        {
            ["title"] = Escape(title),
            ["note"] = Escape(note),
            ["machines"] = assessments.Select(Machine).ToList(),
        };
        var context = new TemplateContext { StrictVariables = true };
        context.PushCulture(CultureInfo.InvariantCulture);
        context.PushGlobal(model);
        return Page.Value.Render(context);
    }

    private static ScriptObject Machine(ConditionAssessment assessment) =>
        new()
        {
            ["id"] = Escape(assessment.History.Machine.Id),
            ["name"] = Escape(assessment.History.Machine.Name),
            ["oil"] = Escape(assessment.History.Machine.Oil.Name),
            ["as_of"] = assessment.Options.AsOf.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture),
            ["charge"] = assessment.Charge.Number,
            ["charge_since"] = Date(assessment.Charge.Since),
            ["worst"] = Word(assessment),
            ["code"] = assessment.Cleanliness is { } code ? Escape(code.ToString()) : "no counts",
            ["limit_set"] = Escape(assessment.Limits.Name),
            ["water"] = Water(assessment.Water),
            ["states"] = assessment.States.Select(State).ToList(),
            ["next_sample"] = assessment.NextSample is { } next ? Escape(Sentences.Of(next)) : "",
            ["findings"] = assessment
                .Findings.Select(finding => new ScriptObject
                {
                    ["severity"] = finding.Severity.ToString().ToLowerInvariant(),
                    ["sentence"] = Escape(Sentences.Of(finding)),
                    ["evidence"] = finding.Evidence.Select(item => Escape(item.ToString())).ToList(),
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
                    ["sentence"] = Escape(Sentences.Of(recommendation)),
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
                ["total"] = Escape($"{split.Point.Reading} mg/kg, {Date(split.Point.At)}"),
                ["rows"] = new List<ScriptObject>
                {
                    WaterRow("running", split.Running),
                    WaterRow("standstill", split.Standstill),
                },
                ["separation"] = Escape(Separation(split.Separation)),
            },
            WaterInOil.NoSaturationCurve => Note(
                "No saturation curve of this oil: two saturations measured at two temperatures would give it."
            ),
            _ => Note("No water reading of this charge."),
        };

    private static ScriptObject Note(string text) =>
        new()
        {
            ["outcome"] = text,
            ["total"] = "",
            ["rows"] = new List<ScriptObject>(),
            ["separation"] = "",
        };

    private static ScriptObject WaterRow(string when, WaterState state) =>
        new()
        {
            ["when"] = when,
            ["celsius"] = Number(state.Saturation.Temperature.DegreesCelsius),
            ["saturation"] =
                Number(state.Saturation.Content.PartsPerMillion)
                + (state.Saturation.IsExtrapolated ? " (extrapolated)" : ""),
            ["dissolved"] = Number(state.Dissolved.PartsPerMillion),
            ["free"] = Number(state.Free.PartsPerMillion),
            ["relative"] = Number(state.RelativeSaturation.Percent),
        };

    private static string Separation(SeparationPoint point) =>
        point.StaysDissolved ? $"The water stays dissolved down to {Celsius(point.Temperature)}."
        : point.StaysFree ? $"Free water is present even at {Celsius(point.Temperature)}."
        : $"Water separates below {Celsius(point.Temperature)}.";

    private static ScriptObject State(MeasurandState state)
    {
        var limit = state.Evaluation.Limit;
        return new ScriptObject
        {
            ["measurand"] = Escape(state.Measurand.Name),
            ["latest"] = state.Latest is { } latest
                ? Escape($"{latest.Reading} {state.Measurand.Unit}".Trim() + $", {Date(latest.At)}")
                : "no reading",
            ["state"] = state.Evaluation.State.ToString().ToLowerInvariant(),
            ["state_words"] = StateWord(state),
            ["trend"] = Escape(Sentences.Of(state.Trend)),
            ["life"] = state.Life.Count == 0 ? "" : Escape(string.Join("; ", state.Life.Select(Life))),
            ["source"] = Escape(limit.Source.ToString()),
        };
    }

    private static string StateWord(MeasurandState state) =>
        state.Evaluation.State == Limits.LimitState.NotDetermined
            ? $"not determined: {Sentences.Of(state.Evaluation.Reason)}"
            : state.Evaluation.State.ToString().ToLowerInvariant();

    private static string Life(RemainingLife life) =>
        $"limit {Number(life.Limit)}: "
        + life switch
        {
            // What may happen one day in decades is no news, and its dates would only hide those that matter.
            RemainingLife.Forecast forecast
                when forecast.Crossing.ChanceBefore(forecast.Crossing.AsOf.AddYears(5)) < 0.1 =>
                "not within five years",
            RemainingLife.Crosses crosses =>
                $"{Date(crosses.P10.At)} / {Date(crosses.P50.At)} / {Date(crosses.P90.At)}",
            RemainingLife.LateEndOpen open => $"not before {Date(open.P10.At)}, late end open",
            RemainingLife.AlreadyCrossed => "passed",
            RemainingLife.HeldByMakeUp => "held by make-up",
            RemainingLife.TooFewReadings few => $"{few.Count} of {few.Needed} readings needed",
            _ => "",
        };

    private static string Word(ConditionAssessment assessment) =>
        assessment.Worst == Severity.Information ? "normal" : assessment.Worst.ToString().ToLowerInvariant();

    private static string Number(double value) =>
        Math.Abs(value) >= 1000
            ? value.ToString("0", CultureInfo.InvariantCulture)
            : value.ToString("G3", CultureInfo.InvariantCulture);

    private static string Celsius(UnitsNet.Temperature temperature) =>
        temperature.DegreesCelsius.ToString("0.#", CultureInfo.InvariantCulture) + " °C";

    private static string Date(DateTimeOffset at) => at.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Escape(string text) => WebUtility.HtmlEncode(text);
}
