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
        var known = bars.Where(one => one.Bar is not null).ToList();
        var ends = known
            .SelectMany(one => new[] { one.Bar!.Value.P10, one.Bar.Value.P50, one.Bar.Value.P90 })
            .OfType<double>();
        List<Stroke> whiskers =
        [
            .. known
                .Where(one => one.Bar is { P10: not null, P90: not null })
                .SelectMany(one => Whisker(one.Row, one.Bar!.Value.P10!.Value, one.Bar.Value.P90!.Value)),
        ];
        var currency = options.Select(option => option.Cost?.Currency).OfType<string>().FirstOrDefault() ?? "";
        var label = isCost ? texts.Say("cost, {0}", currency) : texts.Say("hours of treatment");
        return new Scene(
            title,
            Lines(),
            NumberAxis.Around(label, ends.Append(0), false, texts, isFromZero: true),
            new RowAxis("", [.. options.Select(Name)], isUpsideDown: true)
        )
        {
            Layers =
            [
                Bars(texts.Say("recommended"), Ink.Blue, known.Where(one => one.Option == decision.Choice)),
                Bars(
                    texts.Say("possible"),
                    Ink.SkyBlue,
                    known.Where(one => one.Option != decision.Choice && one.Option.IsPossible)
                ),
                Bars(texts.Say("ruled out"), Ink.PaleGrey, known.Where(one => !one.Option.IsPossible)),
                // A white edge, so that it is seen on a dark bar.
                new Strokes(null, Ink.White, Dash.Solid, whiskers, 4.5f),
                new Strokes(texts.Say("one to nine cases in ten"), Ink.Black, Dash.Solid, whiskers, 1.6f),
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

    private (double? P10, double P50, double? P90)? BarOf(TreatmentOption option)
    {
        if (isCost)
        {
            return option.Cost is { P50: { } middle } cost ? (cost.P10, middle, cost.P90) : null;
        }

        return option is { IsPossible: true, Assessment.Band: { TimeP50: { } half } band }
            ? (band.TimeP10?.TotalHours, half.TotalHours, band.TimeP90?.TotalHours)
            : null;
    }

    private static Boxes Bars(
        string key,
        Ink ink,
        IEnumerable<(TreatmentOption Option, int Row, (double? P10, double P50, double? P90)? Bar)> bars
    ) =>
        new(
            key,
            ink,
            [
                .. bars.Select(one => new Stroke(
                    new Spot(0, one.Row - 0.28),
                    new Spot(one.Bar!.Value.P50, one.Row + 0.28)
                )),
            ],
            Ink.Black
        );

    private static IEnumerable<Stroke> Whisker(int row, double from, double to)
    {
        yield return new Stroke(new Spot(from, row), new Spot(to, row));
        yield return new Stroke(new Spot(from, row - 0.15), new Spot(from, row + 0.15));
        yield return new Stroke(new Spot(to, row - 0.15), new Spot(to, row + 0.15));
    }

    private string Name(TreatmentOption option)
    {
        var name =
            option.Verdict == OptionVerdict.Waits ? texts.Say("wait until the next outage") : texts.Name(option.Name);
        return option == decision.Choice ? "► " + name : name;
    }

    private string Words(TreatmentOption option, (double? P10, double P50, double? P90)? bar)
    {
        var verdict = Verdict(option.Verdict);
        if (bar is not { } known)
        {
            return verdict;
        }

        string Number(double value) => texts.Number(value, Math.Max(known.P50 / 20, 1e-6));
        var middle = $"{Number(known.P50)} {(isCost ? option.Cost!.Currency : "h")}";
        var range =
            known is { P10: { } low, P90: { } high } && Number(low) != Number(high)
                ? texts.Say("{0} ({1} to {2})", middle, Number(low), Number(high))
                : middle;
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
