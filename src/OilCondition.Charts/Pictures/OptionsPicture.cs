using OilCondition.Charts.Drawing;
using OilCondition.Text;

namespace OilCondition.Charts.Pictures;

/// <summary>Options as bars, drawn.</summary>
internal sealed class OptionsPicture(Page page, TreatmentDecision decision, bool isCost)
{
    private readonly ChartTexts texts = page.Texts;

    public Scene Scene()
    {
        var machine = Page.Machine(decision.Assessment.History.Machine);
        var topics = string.Join(", ", decision.Topics.Select(topic => page.Sentences.Topic(topic)));
        var title = texts.Say(
            isCost ? "options.cost-title" : "options.hours-title",
            ("machine", machine),
            ("topics", topics)
        );
        if (decision.Options.Count == 0)
        {
            return Drawing.Scene.Nothing(title, texts["options.none"]);
        }

        var options = decision.Options;
        var bars = options.Select((option, row) => (Option: option, Row: row, Bar: BarOf(option))).ToList();
        var known = bars.Where(one => one.Bar is not null).ToList();
        IEnumerable<(int Row, RowBar Bar)> Rows(Func<TreatmentOption, bool> which) =>
            known.Where(one => which(one.Option)).Select(one => (one.Row, one.Bar!.Value));
        var currency = options.Select(option => option.Cost?.Currency).OfType<string>().FirstOrDefault() ?? "";
        var label = isCost ? texts.Say("options.cost", ("currency", currency)) : texts["options.hours"];
        return new Scene(
            title,
            Lines(),
            RowBars.Axis(label, known.Select(one => one.Bar!.Value), texts),
            new RowAxis("", [.. options.Select(Name)], isUpsideDown: true)
        )
        {
            Layers =
            [
                RowBars.Of(texts["options.recommended"], Ink.Blue, Rows(one => one == decision.Choice)),
                RowBars.Of(
                    texts["options.possible"],
                    Ink.SkyBlue,
                    Rows(one => one != decision.Choice && one.IsPossible)
                ),
                RowBars.Of(texts["options.ruled-out"], Ink.PaleGrey, Rows(one => !one.IsPossible)),
                .. RowBars.Whiskers(texts["options.interval"], Rows(_ => true)),
            ],
            Levels =
            [
                .. bars.Select(one => new LevelMark(
                    one.Row,
                    one.Option == decision.Choice
                        ? texts.Say("options.choice", ("words", Words(one.Option, one.Bar)))
                        : Words(one.Option, one.Bar),
                    Ink.Grey,
                    null
                )),
            ],
        };
    }

    private RowBar? BarOf(TreatmentOption option)
    {
        if (isCost)
        {
            return option.Cost is { P50: { } middle } cost ? new RowBar(cost.P10, middle, cost.P90) : null;
        }

        return option.IsPossible ? RowBar.Of(option.Assessment?.Band) : null;
    }

    private string Name(TreatmentOption option) => option == decision.Choice ? "► " + Plain(option) : Plain(option);

    private string Plain(TreatmentOption option) =>
        option.Verdict == OptionVerdict.Waits ? texts["options.wait"] : option.Name;

    private string Words(TreatmentOption option, RowBar? bar)
    {
        var verdict = texts["verdict." + PlainText.Kebab(option.Verdict)];
        return bar is { } known
            ? texts.Say(
                "options.words",
                ("amount", isCost ? Cost(option.Cost!, known) : page.Sentences.Hours(option.Assessment!.Band!)),
                ("verdict", verdict)
            )
            : verdict;
    }

    private string Cost(OptionCost cost, RowBar bar)
    {
        string Number(double value) => page.Sentences.Number(value, Math.Max(bar.P50 / 20, 1e-6));
        var middle = $"{Number(bar.P50)} {cost.Currency}";
        var range =
            bar is { P10: { } low, P90: { } high } && Number(low) != Number(high)
                ? texts.Say("options.range", ("middle", middle), ("low", Number(low)), ("high", Number(high)))
                : middle;
        return cost.IsComplete ? range : texts.Say("options.at-least", ("amount", range));
    }

    private List<string> Lines()
    {
        var lines = new List<string> { texts.Say("options.told-due", ("at", page.Minute(decision.RiskDate))) };
        lines.Add(
            decision.Choice is { } choice
                ? texts.Say("options.told-choice", ("option", Plain(choice)), ("words", Words(choice, BarOf(choice))))
                : texts["options.told-nothing"]
        );
        if (decision.Choice is { DoneP90: { } done, Begins: { } begun })
        {
            lines.Add(texts.Say("options.told-done", ("begun", page.Minute(begun)), ("done", page.Minute(done))));
        }

        lines.Add(texts["options.told-caution"]);
        return lines;
    }
}
