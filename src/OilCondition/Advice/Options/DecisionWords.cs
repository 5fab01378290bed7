using OilCondition.Text;
using OilCondition.Treatment;

namespace OilCondition;

/// <summary>The one place where decisions become English: advice with its figures, options as a table of at most 100 columns.</summary>
internal static class DecisionWords
{
    private const int IdWidth = 19;

    public static string Of(TargetProposal target)
    {
        var water = target.Water is not { } content
            ? ""
            : $"{Ppm(content.PartsPerMillion)} mg/kg of water{Bound(target)}";
        var code = target.Code is { } asked
            ? $"ISO 4406 {asked}{(target.IsCodeToBeReached ? "" : ", which is to be kept")}"
            : "";
        var stated = target.StandstillBreaksStated
            ? $"the recorded target of {Ppm(target.StatedMgPerKg!.Value)} mg/kg would leave free water at standstill, where the oil holds {Held(target)}"
            : "";
        var limit =
            target.StandstillBreaksLimit && target.Bound == TargetProposal.WaterBound.Standstill
                ? $"water comes out at standstill before the alert figure of {Ppm(target.LimitMgPerKg!.Value)} mg/kg is passed"
                : "";
        var all = string.Join("; ", new[] { water, code, stated, limit }.Where(one => one.Length > 0));
        return all.Length == 0 ? "nothing is known to ask for" : all;
    }

    /// <summary>What is recommended, in one sentence.</summary>
    public static string Recommendation(TreatmentDecision decision)
    {
        if (decision.UnderWay is { } run)
        {
            var further = decision.Target is { StandstillBreaksStated: true, Water: { } dry }
                ? $", but not only to {Ppm(run.Run.Target)} mg/kg: standstill would free water again. Go on to {Ppm(dry.PartsPerMillion)} mg/kg"
                : "";
            return $"Let the treatment that is under way go on{further}.";
        }

        if (decision.Missing.Length > 0)
        {
            return $"Nothing can be planned without {decision.Missing}.";
        }

        if (decision.IsMetAlready)
        {
            return "The oil meets the target now: find what brings it in, rather than treat it.";
        }

        return decision.Choice switch
        {
            null => "Nothing at hand does it; what such a task needs stands below.",
            { Verdict: OptionVerdict.Waits } =>
                "Nothing at hand does it as surely as even odds: wait, look for the cause, and get what the task needs.",
            { } choice => $"Take {choice.Id}, {choice.Name}: {Outcome(choice)}.{Lasting(choice)}",
        };
    }

    public static string Of(TreatmentOption option) =>
        option.Verdict == OptionVerdict.Waits ? $"{option.Name}: {option.RuledOut}"
        : option.RuledOut.Length > 0 ? $"{option.Id} {option.Name}: ruled out, {option.RuledOut}"
        : $"{option.Id} {option.Name}: {Outcome(option)}";

    public static string Of(WaitingOutlook waiting)
    {
        var soFar =
            waiting.FreeWaterSoFar is { } free && waiting.FreeIfStoppedSoFar is { } stopped
                ? new[]
                {
                    $"so far {Days(free)} with free water at running temperature, {Days(stopped)} in which a standstill would have freed it",
                }
                : [];
        return string.Join("\n", soFar.Concat(waiting.Steps.Select(step => step.ToString())));
    }

    public static string Of(WaitingOutlook.Step step)
    {
        static string Chance(UnitsNet.Ratio? chance) =>
            chance is not { } share ? "not told"
            : share.Percent >= 99.5 ? "passed, or as good as"
            : share.Percent < 0.5 ? "below 1 %"
            : $"{PlainText.Number(share.Percent, 1)} %";
        var water =
            step.FreeWaterToCome is { } free && step.FreeIfStoppedToCome is { } stopped
                ? $"; {Days(free)} with free water, {Days(stopped)} in which a standstill would free it"
                : "";
        return $"until {step.Name}, {PlainText.Date(step.At)}: alarm {Chance(step.ChanceOfAlarm)}, alert {Chance(step.ChanceOfAlert)}{water}";
    }

    public static string Page(TreatmentDecision decision)
    {
        var machine = decision.Assessment.History.Machine;
        var topics = string.Join(" and ", decision.Topics.Select(topic => PlainText.Spaced(topic)));
        List<string> lines =
        [
            .. PlainText.Wrap(
                $"{machine.Id} {machine.Name}, {topics}: to be done by {PlainText.Time(decision.RiskDate)} ({decision.RiskReason})",
                ""
            ),
            .. PlainText.Wrap($"Target: {Renewed(decision)}{decision.Target}.", "  "),
            .. PlainText.Wrap(Recommendation(decision), "  "),
        ];
        if (decision.Options.Count > 0)
        {
            lines.Add(Row("option", "verdict", "met", "hours", "done (90 %)", decision.ByCost ? "cost" : "bound, h"));
            var (far, near) = (
                decision.Options.Where(option => option.Verdict == OptionVerdict.CannotBeConnected).ToList(),
                decision.Options.Where(option => option.Verdict != OptionVerdict.CannotBeConnected)
            );
            lines.AddRange(near.SelectMany(option => Rows(option, decision.ByCost)));
            if (far.Count > 0)
            {
                lines.AddRange(
                    PlainText.Wrap($"Not connected here: {string.Join(", ", far.Select(option => option.Id))}.", "  ")
                );
            }

            lines.AddRange(PlainText.Wrap($"Rule: {decision.DecisionOptions.Rule}.", "  "));
        }

        foreach (var line in decision.Waiting.ToString().Split('\n'))
        {
            lines.AddRange(PlainText.Wrap($"Waiting: {line}.", "  "));
        }

        if (decision.OneMoreSample is { } sample)
        {
            lines.AddRange(PlainText.Wrap(sample.ToString(), "  "));
        }

        if (decision.Sizing.Count > 0)
        {
            lines.AddRange(PlainText.Wrap($"Such a task needs: {string.Join("; ", decision.Sizing)}.", "  "));
        }

        var assumed = decision.Figures.Where(one => one.IsAssumed).Select(one => one.Item.ToString()).ToList();
        if (assumed.Count > 0)
        {
            lines.AddRange(PlainText.Wrap($"Assumed, by common practice: {string.Join("; ", assumed)}.", "  "));
        }

        lines.AddRange(
            decision.Cautions.Select(Sentences.English.Of).Append(Notice).SelectMany(one => PlainText.Wrap(one, "  ! "))
        );
        return string.Join("\n", lines);
    }

    /// <summary>Who decides.</summary>
    public const string Notice =
        "This is advice. The plant decides; makers' limits, local codes and licensed practice come first.";

    public static string Word(OptionVerdict verdict) => PlainText.Spaced(verdict);

    /// <summary>What an oil change is to bring back inside its limits.</summary>
    private static string Renewed(TreatmentDecision decision) =>
        decision.Topics.Contains(ProblemTopic.OilAgeing)
            ? $"{string.Join(" and ", decision.Problems.SelectMany(one => one.Findings).Select(one => one.Measurand.Name).Distinct())} inside the limits again, with new oil; "
            : "";

    private static IEnumerable<string> Rows(TreatmentOption option, bool byCost)
    {
        var band = option.Assessment?.Band;
        var isHere = option.IsPossible && option.Verdict != OptionVerdict.Waits;
        yield return Row(
            option.Id,
            Word(option.Verdict),
            isHere ? $"{PlainText.Number(option.Probability.Percent, 1)} %" : "",
            isHere ? Sentences.English.Hours(band!).Replace(" h", "").Replace(" to ", "-") : "",
            isHere ? (option.DoneP90 is { } done ? PlainText.Time(done) : "not told") : "",
            !isHere ? ""
                : byCost ? Cost(option.Cost!)
                : option.Bound is { } bound ? PlainText.Number(bound.TotalHours)
                : ""
        );
        var below = option.Verdict == OptionVerdict.Waits ? "" : string.Join("; ", Below(option));
        foreach (var line in below.Length == 0 ? [] : PlainText.Wrap(below, "      "))
        {
            yield return line;
        }
    }

    /// <summary>What stands below an option: why it is ruled out, where the floor is, when the trouble is back, what makes it doubtful.</summary>
    internal static IEnumerable<string> Below(TreatmentOption option)
    {
        if (option.RuledOut.Length > 0)
        {
            yield return option.RuledOut;
        }

        if (option.Floor is { } floor)
        {
            // Below that no titration tells one floor from another.
            yield return floor.PartsPerMillion < 1
                ? "floor below 1 mg/kg"
                : $"floor {Ppm(floor.PartsPerMillion)} mg/kg";
        }

        if (!option.IsPossible)
        {
            yield break;
        }

        if (option.Outage is { } outage)
        {
            yield return $"in {outage.Name}";
        }

        if (option.Terms is { IsHired: true } terms)
        {
            yield return terms.ToString();
        }

        if (option is { Cost: null, Assessment: { } used } && string.Join(", ", Uses(used)) is { Length: > 0 } uses)
        {
            yield return $"uses {uses}";
        }

        if (option.Experience.Length > 0)
        {
            yield return $"planned {option.Experience}";
        }

        if (option.Rebound is { } back)
        {
            yield return Back(back);
        }

        if (option.Assessment is { Flags: not TreatmentDoubts.None } row)
        {
            yield return $"doubts: {string.Join(", ", Flags(row.Flags))}";
        }
    }

    /// <summary>What stands in place of a cost where the plant states no prices.</summary>
    private static IEnumerable<string> Uses(TreatmentAssessment row)
    {
        var energy = (row.Heat + row.Electricity).KilowattHours;
        if (energy > 0)
        {
            yield return $"{PlainText.Number(energy)} kWh";
        }

        if (row.Elements > 0)
        {
            yield return $"{row.Elements} {(row.Elements == 1 ? "element" : "elements")}";
        }

        if (row.NewOil.Liters > 0)
        {
            yield return $"{PlainText.Number(row.NewOil.Liters)} L of new oil";
        }
    }

    private static string Outcome(TreatmentOption option)
    {
        var band = option.Assessment!.Band!;
        var met = $"meets the target in {PlainText.Number(option.Probability.Percent, 1)} % of the cases";
        var hours = $"in {Sentences.English.Hours(band)}";
        var begun = option.Begins is { } begins ? $"begun {PlainText.Time(begins)}, " : "";
        var done = option.DoneP90 is { } late ? $"{begun}done by {PlainText.Time(late)} in nine of ten" : "";
        var cost = option.Cost is { P50: not null } price ? price.ToString() : "";
        var water = option.Assessment.WaterRemoved is { Liters: > 0 } taken
            ? $"takes out {Litres(taken.Liters)} of water"
            : "";
        var back = option.Rebound is { } rebound ? Back(rebound) : "";
        return string.Join(", ", new[] { met, water, hours, done, cost, back }.Where(one => one.Length > 0));
    }

    /// <summary>Who dries an oil that is wet again next month has only bought time.</summary>
    private static string Lasting(TreatmentOption choice)
    {
        const double Soon = 90;
        return
            choice.Rebound is Arrival<DateTimeOffset>.Expected back
            && choice.DoneP50 is { } done
            && (back.Estimate - done).TotalDays < Soon
            ? $" It does not last: find the way in and close it, or the alert is back {PlainText.Number((back.Estimate - done).TotalDays)} days later."
            : "";
    }

    /// <summary>Millilitres where they are few: nobody sends for a unit without knowing that it is a cupful.</summary>
    private static string Litres(double litres) =>
        litres < 1
            ? $"{PlainText.Number(1000 * litres, 50 * litres)} mL"
            : $"{PlainText.Number(litres, litres / 20)} L";

    private static string Back(Arrival<DateTimeOffset> rebound) =>
        rebound switch
        {
            Arrival<DateTimeOffset>.Expected back =>
                $"an alert is back about {PlainText.Date(back.Estimate)} if the way in stays open"
                    + (
                        PlainText.Date(back.Earliest) == PlainText.Date(back.Latest)
                            ? ""
                            : $" ({PlainText.Date(back.Earliest)} to {PlainText.Date(back.Latest)})"
                    ),
            Arrival<DateTimeOffset>.NotBefore back => $"no alert is back before {PlainText.Date(back.Earliest)}",
            Arrival<DateTimeOffset>.Never => "nothing seems to come back",
            _ => "when an alert is back cannot be told",
        };

    private static string Cost(OptionCost cost) =>
        cost.ToString().Replace(" " + cost.Currency, "").Replace(" to ", "-");

    private static IEnumerable<string> Flags(TreatmentDoubts flags) =>
        JsonEntry
            .Members<TreatmentDoubts>()
            .Where(one => one != TreatmentDoubts.None && (flags & one) == one)
            .Select(one => PlainText.Spaced(one));

    private static string Days(TimeSpan time) =>
        time.TotalDays < 2
            ? $"{PlainText.Number(time.TotalHours, 1)} h"
            : $"{PlainText.Number(time.TotalDays, time.TotalDays / 50)} days";

    private static string Bound(TargetProposal target) =>
        target.Bound switch
        {
            TargetProposal.WaterBound.Standstill =>
                $", {PlainText.Number(target.Margin.DecimalFractions)} of the {Held(target)} that the oil holds at {PlainText.Number(target.Standstill!.Temperature.DegreesCelsius)} °C"
                    + (target.Standstill.IsExtrapolated ? " (curve extrapolated)" : ""),
            TargetProposal.WaterBound.Limit =>
                $", {PlainText.Number(target.Margin.DecimalFractions)} of the alert figure of {Ppm(target.LimitMgPerKg!.Value)} mg/kg",
            _ => " at most, to stay within the limits",
        };

    private static string Held(TargetProposal target) => $"{Ppm(target.Standstill!.Content.PartsPerMillion)} mg/kg";

    private static string Ppm(double content) => PlainText.Number(content);

    private static string Row(params string[] cells)
    {
        var id = cells[0].Length > IdWidth ? cells[0].Substring(0, IdWidth) : cells[0];
        var text =
            $"  {id.PadRight(IdWidth)} {cells[1], -19} {cells[2], 5}  {cells[3], -16} {cells[4], -16}  {cells[5]}";
        return text.TrimEnd();
    }
}
