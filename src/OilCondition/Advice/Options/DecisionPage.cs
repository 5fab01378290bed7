using OilCondition.Text;

namespace OilCondition;

/// <summary>A decision as English text of at most 100 columns: the recommendation, the options as a table, what waiting means.</summary>
internal static class DecisionPage
{
    private const int IdWidth = 19;

    private static readonly Sentences Say = Sentences.English;

    public static string Of(TreatmentDecision decision)
    {
        var machine = decision.Assessment.History.Machine;
        var topics = string.Join(" and ", decision.Topics.Select(Say.Topic));
        List<string> lines =
        [
            .. PlainText.Wrap(
                $"{machine.Id} {machine.Name}, {topics}: to be done by {Say.Time(decision.RiskDate)} ({decision.RiskReason})",
                ""
            ),
            .. PlainText.Wrap($"Target: {Say.Target(decision)}.", "  "),
            .. PlainText.Wrap(decision.Recommendation, "  "),
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

        foreach (var line in Say.Lines(decision.Waiting))
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
            decision.Cautions.Select(Say.Of).Append(Say.Notice).SelectMany(one => PlainText.Wrap(one, "  ! "))
        );
        return string.Join("\n", lines);
    }

    private static IEnumerable<string> Rows(TreatmentOption option, bool byCost)
    {
        var isHere = option.IsPossible && option.Verdict != OptionVerdict.Waits;
        yield return Row(
            option.Id,
            PlainText.Spaced(option.Verdict),
            isHere ? $"{Say.Number(option.Probability.Percent, 1)} %" : "",
            isHere ? Short(Say.Hours(option.Assessment!.Band!)).Replace(" h", "") : "",
            isHere ? (option.DoneP90 is { } done ? Say.Time(done) : "not told") : "",
            !isHere ? ""
                : byCost ? Short(Say.Of(option.Cost!)).Replace(" " + option.Cost!.Currency, "")
                : option.Bound is { } bound ? Say.Number(bound.TotalHours)
                : ""
        );
        var below = option.Verdict == OptionVerdict.Waits ? "" : string.Join("; ", option.Remarks);
        foreach (var line in below.Length == 0 ? [] : PlainText.Wrap(below, "      "))
        {
            yield return line;
        }
    }

    private static string Short(string band) => band.Replace(" to ", "-");

    private static string Row(params string[] cells)
    {
        var id = cells[0].Length > IdWidth ? cells[0].Substring(0, IdWidth) : cells[0];
        var text =
            $"  {id.PadRight(IdWidth)} {cells[1], -19} {cells[2], 5}  {cells[3], -16} {cells[4], -16}  {cells[5]}";
        return text.TrimEnd();
    }
}
