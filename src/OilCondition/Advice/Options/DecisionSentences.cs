using OilCondition.Text;
using UnitsNet;

namespace OilCondition;

/// <summary>What <see cref="Sentences"/> say of a decision: what to do, what is to be reached and by when, what waiting means.</summary>
/// <example><code>Sentences.German.Recommendation(decision);</code></example>
public static partial class DecisionSentences
{
    /// <summary>What is recommended, in one sentence or two.</summary>
    /// <param name="say">The sentences, in their language and units.</param>
    /// <param name="decision">The decision.</param>
    /// <returns>For example <c>Take HP-VDU, mobile unit: meets the target in 97 % of the cases, in 14 h (11 to 19).</c></returns>
    public static string Recommendation(this Sentences say, TreatmentDecision decision)
    {
        if (Guard.NotNull(decision).UnderWay is { } run)
        {
            return decision.Target is { StandstillBreaksStated: true, Water: { } dry }
                ? say.Say(
                    "decision.go-on-to",
                    ("target", say.Content(run.Run.Target)),
                    ("dry", say.Content(dry.PartsPerMillion))
                )
                : say.Say("decision.go-on");
        }

        return decision switch
        {
            { MissingWords: { } missing } => say.Say("decision.missing", ("missing", missing(say))),
            { IsMetAlready: true } => say.Say("decision.met"),
            { Choice: null } => say.Say("decision.nothing-does"),
            { Choice.Verdict: OptionVerdict.Waits } => say.Say("decision.nothing-sure"),
            { Choice: { } choice } => say.Say(
                "decision.take",
                ("id", choice.Id),
                ("name", say.Name(choice)),
                ("outcome", say.Outcome(choice)),
                ("lasting", say.Lasting(choice))
            ),
        };
    }

    /// <summary>What is to be reached, what sets it, and what standstill would break.</summary>
    /// <param name="say">The sentences, in their language and units.</param>
    /// <param name="decision">The decision.</param>
    /// <returns>For example <c>61 mg/kg of water, 0.8 of the 76 mg/kg that the oil holds at 10 °C</c>.</returns>
    public static string Target(this Sentences say, TreatmentDecision decision) =>
        Guard.NotNull(decision).Topics.Contains(ProblemTopic.OilAgeing)
            ? say.Say(
                "target.renewed",
                (
                    "measurands",
                    string.Join(
                        say.And,
                        decision
                            .Problems.SelectMany(one => one.Findings)
                            .Select(one => say.Name(one.Measurand))
                            .Distinct()
                    )
                ),
                ("target", say.Of(decision.Target))
            )
            : say.Of(decision.Target);

    /// <summary>A target, what sets it, and what standstill would break.</summary>
    /// <param name="say">The sentences, in their language and units.</param>
    /// <param name="target">The target.</param>
    /// <returns>For example <c>61 mg/kg of water, 0.8 of the 76 mg/kg that the oil holds at 10 °C</c>.</returns>
    public static string Of(this Sentences say, TargetProposal target)
    {
        var all = Parts().ToList();
        return all.Count == 0 ? say.Say("target.none") : string.Join("; ", all);

        IEnumerable<string> Parts()
        {
            if (Guard.NotNull(target).Water is { } water)
            {
                yield return say.Say(
                    "target.water",
                    ("content", say.Content(water.PartsPerMillion)),
                    ("bound", say.Bound(target))
                );
            }

            if (target.Code is { } code)
            {
                yield return say.Say(
                    target.IsCodeToBeReached ? "target.code" : "target.code-kept",
                    ("code", $"{code}")
                );
            }

            if (target.StandstillBreaksStated)
            {
                yield return say.Say(
                    "target.breaks-stated",
                    ("stated", say.Content(target.StatedMgPerKg!.Value)),
                    ("held", say.Held(target))
                );
            }

            if (target.StandstillBreaksLimit && target.Bound == TargetProposal.WaterBound.Standstill)
            {
                yield return say.Say("target.breaks-limit", ("limit", say.Content(target.LimitMgPerKg!.Value)));
            }
        }
    }

    /// <summary>Why it must be done by its date, as a phrase.</summary>
    /// <param name="say">The sentences, in their language and units.</param>
    /// <param name="decision">The decision.</param>
    /// <returns>For example <c>the alarm of the water content may stand so long</c>.</returns>
    public static string RiskReason(this Sentences say, TreatmentDecision decision) =>
        Guard.NotNull(decision).RiskWords(say);

    /// <summary>What happens if nothing is done: so far, and until each date looked at.</summary>
    /// <param name="say">The sentences, in their language and units.</param>
    /// <param name="waiting">The outlook.</param>
    /// <returns>Phrases such as <c>until annual outage, 2026-09-07: alarm 12 %, alert 61 %</c>.</returns>
    public static IReadOnlyList<string> Lines(this Sentences say, WaitingOutlook waiting)
    {
        var steps = Guard.NotNull(waiting).Steps.Select(say.Of);
        return waiting.FreeWaterSoFar is { } free && waiting.FreeIfStoppedSoFar is { } stopped
            ? [say.Say("waiting.so-far", ("free", say.Days(free)), ("stopped", say.Days(stopped))), .. steps]
            : [.. steps];
    }

    /// <summary>What one more sample would change, in a sentence.</summary>
    /// <param name="say">The sentences, in their language and units.</param>
    /// <param name="sampleValue">What it would change.</param>
    /// <returns>For example <c>One more sample would not change the choice.</c></returns>
    public static string Of(this Sentences say, TreatmentDecision.SampleValue sampleValue) =>
        !Guard.NotNull(sampleValue).IsWorthTaking
            ? say.Say("one-more.no")
            : say.Say(
                "one-more.yes",
                ("share", say.Number(sampleValue.ChangesIn.Percent)),
                (
                    "choices",
                    string.Join(
                        ", ",
                        sampleValue
                            .Choices.Where(one => one != sampleValue.Chosen)
                            .Distinct()
                            .Select(one =>
                                one == TreatmentDecision.SampleValue.NoTreatment ? say.Say("one-more.none") : one
                            )
                    )
                )
            );

    /// <summary>The rule by which options are ranked; one of your own is told in its own words.</summary>
    /// <param name="say">The sentences, in their language and units.</param>
    /// <param name="rule">The rule.</param>
    /// <returns>A phrase without a full stop.</returns>
    public static string Of(this Sentences say, ChoiceRule rule) =>
        ReferenceEquals(Guard.NotNull(rule), ChoiceRule.CheapestInTime)
            ? say.Say("rule.cheapest-in-time")
            : rule.Statement;

    /// <summary>What such a task needs where nothing at hand does it: one phrase a need.</summary>
    /// <param name="say">The sentences, in their language and units.</param>
    /// <param name="decision">The decision.</param>
    /// <returns>Phrases such as <c>water to be removed 0.42 kg</c>; none where something at hand does it in time.</returns>
    public static IReadOnlyList<string> Sizing(this Sentences say, TreatmentDecision decision) =>
        [.. Guard.NotNull(decision).Needs.Select(need => need(say))];

    internal static string Of(this Sentences say, WaitingOutlook.Step step)
    {
        var water =
            step.FreeWaterToCome is { } free && step.FreeIfStoppedToCome is { } stopped
                ? say.Say("waiting.water", ("free", say.Days(free)), ("stopped", say.Days(stopped)))
                : "";
        return say.Say(
            "waiting.until",
            ("name", step.DaysAhead is { } days ? say.Say("waiting.days", ("days", say.Number(days))) : step.Name),
            ("date", say.Date(step.At)),
            ("alarm", say.Chance(step.ChanceOfAlarm)),
            ("alert", say.Chance(step.ChanceOfAlert)),
            ("water", water)
        );
    }

    internal static string NothingUntil(this Sentences say, bool outage) =>
        say.Say(outage ? "option.nothing-until" : "option.nothing");

    internal static string AnAlertStands(this Sentences say) => say.Say("risk.alert");

    internal static string AlarmStands(this Sentences say, Measurand measurand) =>
        say.Say("risk.alarm-of", ("measurand", say.Name(measurand)));

    internal static string AlertStands(this Sentences say, Measurand measurand) =>
        say.Say("risk.alert-of", ("measurand", say.Name(measurand)));

    internal static string ChanceOfAlarm(this Sentences say, Measurand measurand, Ratio risk) =>
        say.Say("risk.chance", ("measurand", say.Name(measurand)), ("chance", say.Number(risk.Percent)));

    internal static string StandsIn(this Sentences say, Outage outage) =>
        say.Say("risk.outage", ("outage", outage.Name));

    internal static string FreeWaterStands(this Sentences say) => say.Say("risk.free-water");

    internal static string NoWaterFigure(this Sentences say) => say.Say("missing.water-figure");

    internal static string NoSaturation(this Sentences say) => say.Say("missing.saturation");

    internal static string NoViscosity(this Sentences say) =>
        say.Say("missing.viscosity", ("temperature", say.With(40, "°C")));

    private static string Bound(this Sentences say, TargetProposal target)
    {
        var margin = ("margin", say.Number(target.Margin.DecimalFractions));
        return target.Bound switch
        {
            TargetProposal.WaterBound.Standstill => say.Say(
                target.Standstill!.IsExtrapolated ? "target.by-standstill-extrapolated" : "target.by-standstill",
                margin,
                ("held", say.Held(target)),
                ("temperature", say.With(target.Standstill.Temperature.DegreesCelsius, "°C"))
            ),
            TargetProposal.WaterBound.Limit => say.Say(
                "target.by-limit",
                margin,
                ("limit", say.Content(target.LimitMgPerKg!.Value))
            ),
            _ => say.Say("target.as-it-is"),
        };
    }

    private static string Held(this Sentences say, TargetProposal target) =>
        say.Content(target.Standstill!.Content.PartsPerMillion);

    private static string Content(this Sentences say, double mgPerKg) =>
        say.With(mgPerKg, Measurands.WaterContent.Unit);

    private static string Chance(this Sentences say, Ratio? chance) =>
        chance is not { } share ? say.Say("hours.open")
        : share.Percent >= 99.5 ? say.Say("waiting.passed")
        : share.Percent < 0.5 ? say.Say("waiting.unlikely")
        : say.Percent(share);

    private static string Percent(this Sentences say, Ratio share) => $"{say.Number(share.Percent, 1)} %";

    private static string Days(this Sentences say, TimeSpan time) =>
        time.TotalDays < 2
            ? $"{say.Number(time.TotalHours, 1)} h"
            : say.Say("waiting.days-long", ("days", say.Number(time.TotalDays, time.TotalDays / 50)));
}
