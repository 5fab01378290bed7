using System.Globalization;
using OilCondition.Limits;
using OilCondition.Text;
using OilCondition.Treatment;
using OilCondition.Water;
using Scriban.Runtime;

namespace OilCondition.Reporting;

/// <summary>All that is told of one machine; what would be said many times goes into the notes.</summary>
internal sealed class MachineSection(ReportTexts texts, FirstPage first, Notes notes)
{
    private readonly Sentences say = texts.Sentences;

    public ScriptObject Of(MachineEntry entry, IReadOnlyList<ReportPicture> pictures)
    {
        var assessment = entry.Assessment;
        var machine = assessment.History.Machine;
        return new ScriptObject
        {
            ["anchor"] = entry.Anchor,
            ["id"] = machine.Id,
            ["name"] = machine.Name,
            ["state"] = first.Severity(assessment),
            ["facts"] = texts.Say(
                "machine.facts",
                ("oil", machine.Oil.Name),
                ("litres", say.Text(machine.ChargeVolume)),
                ("charge", assessment.Charge.IsDated ? say.Date(assessment.Charge.Since) : texts["machine.undated"]),
                ("since", say.Date(assessment.Charge.Since)),
                (
                    "asOf",
                    $"{say.Time(assessment.Options.AsOf)} {assessment.Options.AsOf.ToString("zzz", CultureInfo.InvariantCulture)}"
                ),
                ("limits", assessment.Limits.Name)
            ),
            ["problems"] = assessment.Problems.Select((one, i) => Problem(entry, one, i)).ToList(),
            ["actions"] = assessment.Recommendations.Select(one => $"{say.Topics(one)}: {say.Of(one)}").ToList(),
            ["cautions"] = Cautions(
                assessment
                    .Recommendations.SelectMany(one => one.Cautions)
                    .Concat(entry.Decisions.SelectMany(one => one.Cautions))
            ),
            ["pictures"] = pictures.Select(Picture).ToList(),
            ["decisions"] = entry.Decisions.Select(Decision).ToList(),
            ["water"] = Water(assessment.Water),
            ["states"] = assessment.States.Select(State).ToList(),
            ["next_sample"] = assessment.NextSample is { } next ? say.Of(next) : "",
            ["keys"] = assessment.Alerts.Select(alert => alert.Key).ToList(),
        };
    }

    public static ScriptObject Picture(ReportPicture picture) =>
        new()
        {
            ["title"] = picture.Title,
            ["description"] = picture.Description,
            ["data"] = Convert.ToBase64String(System.Text.Encoding.UTF8.GetBytes(picture.Svg)),
        };

    private ScriptObject Problem(MachineEntry entry, Problem problem, int index)
    {
        var back = $"{entry.Anchor}-problem-{index + 1}";
        return new ScriptObject
        {
            ["anchor"] = back,
            ["state"] = first.Severity(problem.Severity),
            ["statement"] = say.Of(problem),
            ["evidence"] = notes.Evidenced(entry.Assessment.History.Machine.Id, back, [.. Evidence(problem)]),
        };
    }

    /// <summary>The evidence, a line a measurand, without sources, which stand once for all.</summary>
    private IEnumerable<string> Evidence(Problem problem)
    {
        var parts = problem
            .Evidence.Select(part =>
                (
                    Of: say.Name(part.Key),
                    Items: part.Where(one => one.Id is not ("limit-source" or "limit-missing")).ToList()
                )
            )
            .Where(part => part.Items.Count > 0)
            .ToList();
        return parts.Select(part =>
            (parts.Count > 1 ? $"{part.Of}: " : "") + string.Join("; ", part.Items.Select(say.Of))
        );
    }

    private List<ScriptObject> Cautions(IEnumerable<Caution> cautions) =>
        [
            .. cautions
                .Distinct()
                .OrderBy(caution => caution)
                .Select(caution => new ScriptObject
                {
                    ["id"] = PlainText.Kebab(notes.Cautioned(caution)),
                    ["word"] = texts["caution." + PlainText.Kebab(caution)],
                }),
        ];

    private ScriptObject Decision(TreatmentDecision decision)
    {
        var (far, near) = (
            decision
                .Options.Where(one => one.Verdict == OptionVerdict.CannotBeConnected)
                .Select(one => one.Id)
                .ToList(),
            decision.Options.Where(one => one.Verdict != OptionVerdict.CannotBeConnected).ToList()
        );
        var assumed = decision.Figures.Where(one => one.IsAssumed).Select(one => say.Of(one.Item)).ToList();
        var needs = say.Sizing(decision);
        return new ScriptObject
        {
            ["heading"] = texts.Say(
                "options.heading",
                ("topics", string.Join(", ", decision.Topics.Select(say.Topic)))
            ),
            ["target"] = texts.Say(
                "options.target",
                ("target", say.Target(decision)),
                ("date", say.Time(decision.RiskDate)),
                ("reason", say.RiskReason(decision))
            ),
            ["recommendation"] = say.Recommendation(decision),
            ["options"] = near.ConvertAll(option => Option(option, ReferenceEquals(option, decision.Choice))),
            ["far"] = far.Count == 0 ? "" : texts.Say("options.not-connected", ("ids", string.Join(", ", far))),
            ["rule"] =
                near.Count == 0 ? "" : texts.Say("options.rule", ("rule", say.Of(decision.DecisionOptions.Rule))),
            ["waiting"] = say.Lines(decision.Waiting).ToList(),
            ["sample"] = decision.OneMoreSample is { } sample ? say.Of(sample) : "",
            ["needs"] = needs.Count == 0 ? "" : texts.Say("options.needs", ("needs", string.Join("; ", needs))),
            ["assumed"] =
                assumed.Count == 0 ? "" : texts.Say("options.assumed", ("figures", string.Join("; ", assumed))),
        };
    }

    private ScriptObject Option(TreatmentOption option, bool isChosen)
    {
        var isHere = option.IsPossible && option.Verdict != OptionVerdict.Waits;
        return new ScriptObject
        {
            ["id"] = option.Id,
            ["name"] = say.Name(option),
            ["verdict"] =
                texts["verdict." + PlainText.Kebab(option.Verdict)]
                + (isChosen && isHere ? $" ({texts["options.chosen"]})" : ""),
            ["met"] = isHere ? $"{say.Number(option.Probability.Percent, 1)} %" : "",
            ["hours"] = isHere ? say.Hours(option.Assessment!.Band!) : "",
            ["done"] = isHere && option.DoneP90 is { } done ? say.Time(done) : "",
            ["cost"] = isHere && option.Cost is { } cost ? say.Of(cost) : "",
            ["remark"] = string.Join("; ", say.Remarks(option)),
        };
    }

    private ScriptObject Water(WaterInOil water) =>
        water switch
        {
            WaterInOil.Split split => new ScriptObject
            {
                ["outcome"] = "",
                ["caption"] = texts.Say(
                    "water.caption",
                    ("total", say.Text(split.Point.Reading, Measurands.WaterContent)),
                    ("date", say.Time(split.Point.At))
                ),
                ["rows"] = new List<ScriptObject>
                {
                    WaterRow("water.running", split.Running, split.Point.Reading),
                    WaterRow("water.standstill", split.Standstill, split.Point.Reading),
                },
                ["separation"] = texts.Say(
                    split.Separation.StaysDissolved ? "water.stays"
                        : split.Separation.StaysFree ? "water.stays-free"
                        : "water.separates",
                    ("temperature", say.Text(split.Separation.Temperature))
                ),
            },
            WaterInOil.NoSaturationCurve => WithoutWater("water.no-curve"),
            _ => WithoutWater("water.no-reading"),
        };

    private ScriptObject WithoutWater(string key) =>
        new()
        {
            ["outcome"] = texts[key],
            ["caption"] = "",
            ["rows"] = new List<ScriptObject>(),
            ["separation"] = "",
        };

    private ScriptObject WaterRow(string when, WaterState state, Reading total) =>
        new()
        {
            ["when"] = texts[when],
            ["oil"] = say.Text(state.Saturation.Temperature),
            ["saturation"] =
                say.Number(state.Saturation.Content.PartsPerMillion, Measurands.WaterContent)
                + (state.Saturation.IsExtrapolated ? $" ({texts["water.extrapolated"]})" : ""),
            ["dissolved"] = state.HasFreeWater
                ? say.Number(state.Dissolved.PartsPerMillion, Measurands.WaterContent)
                : say.Text(total, Measurands.WaterContent).Split(' ')[0],
            ["free"] = say.Number(state.Free.PartsPerMillion, Measurands.WaterContent, total.Value),
            ["relative"] = say.Number(state.RelativeSaturation.Percent, Measurands.RelativeSaturation),
        };

    /// <summary>Why a state is not determined, and which figures of its limits a fleet did not give.</summary>
    private IEnumerable<string> Reasons(MeasurandState state) =>
        (state.Worst.State == LimitState.NotDetermined ? new[] { say.Of(state.Worst.Reason) } : []).Concat(
            state.Limits.SelectMany(one => one.Limit.MissingFigures).Select(say.Of)
        );

    private ScriptObject State(MeasurandState state) =>
        new()
        {
            ["measurand"] = say.Name(state.Measurand),
            ["latest"] = state.Latest is { } latest
                ? say.Text(latest.Reading, state.Measurand)
                : texts["states.no-reading"],
            ["read_at"] = state.Latest is { } read ? say.Date(read.At) : "",
            ["state"] = first.State(state.Worst.State),
            ["reason"] = string.Join("; ", Reasons(state)),
            ["trend"] = say.Of(state),
            ["life"] = string.Join("; ", state.Lives.Select(life => say.Of(state, life))),
            ["sources"] = state
                .Limits.Select(one => notes.Source(one.Limit.Source))
                .Distinct()
                .OrderBy(one => one)
                .ToList(),
        };
}
