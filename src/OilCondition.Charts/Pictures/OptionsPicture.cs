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
        var topics = string.Join(", ", decision.Topics.Select(topic => texts.Name(PlainText.Spaced(topic))));
        var title = texts.Say(
            isCost ? "{0}: ways to treat ({1}), cost" : "{0}: ways to treat ({1}), hours",
            machine,
            topics
        );
        if (decision.Options.Count == 0)
        {
            return Drawing.Scene.Nothing(title, texts.Say("No options to compare."));
        }

        var options = decision.Options;
        var bars = options.Select((option, row) => (Option: option, Row: row, Bar: BarOf(option))).ToList();
        var known = bars.Where(one => one.Bar is not null)
            .Select(one => (one.Option, one.Row, Bar: one.Bar!.Value))
            .ToList();
        IEnumerable<(int Row, RowBar Bar)> Rows(Func<TreatmentOption, bool> which) =>
            known.Where(one => which(one.Option)).Select(one => (one.Row, one.Bar));
        var currency = options.Select(option => option.Cost?.Currency).OfType<string>().FirstOrDefault() ?? "";
        var label = isCost ? texts.Say("cost, {0}", currency) : texts.Say("hours of treatment");
        return new Scene(
            title,
            Lines(),
            RowBars.Axis(label, known.Select(one => one.Bar), texts),
            new RowAxis("", [.. options.Select(Name)], isUpsideDown: true)
        )
        {
            Layers =
            [
                RowBars.Of(texts.Say("recommended"), Ink.Blue, Rows(one => one == decision.Choice)),
                RowBars.Of(texts.Say("possible"), Ink.SkyBlue, Rows(one => one != decision.Choice && one.IsPossible)),
                RowBars.Of(texts.Say("ruled out"), Ink.PaleGrey, Rows(one => !one.IsPossible)),
                .. RowBars.Whiskers(texts.Say("one to nine cases in ten"), Rows(_ => true)),
            ],
            Levels =
            [
                .. bars.Select(one => new LevelMark(
                    one.Row,
                    one.Option == decision.Choice
                        ? texts.Say("recommended: {0}", Words(one.Option, one.Bar))
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

    private string Name(TreatmentOption option)
    {
        var name =
            option.Verdict == OptionVerdict.Waits ? texts.Say("wait until the next outage") : texts.Name(option.Name);
        return option == decision.Choice ? "► " + name : name;
    }

    private string Words(TreatmentOption option, RowBar? bar)
    {
        var verdict = Verdict(option.Verdict);
        if (bar is not { } known)
        {
            return verdict;
        }

        var range = known.Words(texts, isCost ? option.Cost!.Currency : "h");
        var least = isCost && option.Cost is { IsComplete: false } ? texts.Say("at least {0}", range) : range;
        return texts.Say("{0}; {1}", least, verdict);
    }

    private string Verdict(OptionVerdict verdict) =>
        verdict switch
        {
            OptionVerdict.Meets => texts.Say("meets the target"),
            OptionVerdict.MeetsLate => texts.Say("meets the target late"),
            OptionVerdict.NotSure => texts.Say("not sure"),
            OptionVerdict.Waits => texts.Say("nothing is done"),
            OptionVerdict.DoesNotReach => texts.Say("does not reach the target"),
            OptionVerdict.NotEnoughInStock => texts.Say("too little in stock"),
            OptionVerdict.OutageTooShort => texts.Say("outage too short"),
            OptionVerdict.NotEnoughPower => texts.Say("not enough power"),
            _ => texts.Say("cannot be connected"),
        };

    private List<string> Lines()
    {
        var lines = new List<string> { texts.Say("To be done by {0}.", page.Minute(decision.RiskDate)) };
        lines.Add(
            decision.Choice is { } choice
                ? texts.Say("Recommended: {0}, {1}.", Plain(choice), Words(choice, BarOf(choice)))
                : texts.Say("Nothing at hand does it.")
        );
        if (decision.Choice is { DoneP90: { } done, Begins: { } begun })
        {
            lines.Add(texts.Say("Begun {0}, done by {1} in nine cases of ten.", page.Minute(begun), page.Minute(done)));
        }

        lines.Add(
            texts.Say("The makers of machine, oil and unit, local codes and licensed people decide how it is done.")
        );
        return lines;
    }

    private string Plain(TreatmentOption option) =>
        option.Verdict == OptionVerdict.Waits ? texts.Say("wait until the next outage") : texts.Name(option.Name);
}
