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
        var label = isCost ? texts.Say("options.cost", ("currency", currency)) : texts["options.hours"];
        return new Scene(
            title,
            Lines(),
            NumberAxis.Around(label, ends.Append(0), false, texts, isFromZero: true),
            new RowAxis("", [.. options.Select(Name)], isUpsideDown: true)
        )
        {
            Layers =
            [
                Bars(texts["options.recommended"], Ink.Blue, known.Where(one => one.Option == decision.Choice)),
                Bars(
                    texts["options.possible"],
                    Ink.SkyBlue,
                    known.Where(one => one.Option != decision.Choice && one.Option.IsPossible)
                ),
                Bars(texts["options.ruled-out"], Ink.PaleGrey, known.Where(one => !one.Option.IsPossible)),
                // A white edge, so that it is seen on a dark bar.
                new Strokes(null, Ink.White, Dash.Solid, whiskers, 4.5f),
                new Strokes(texts["options.interval"], Ink.Black, Dash.Solid, whiskers, 1.6f),
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

    private string Name(TreatmentOption option) => option == decision.Choice ? "► " + Plain(option) : Plain(option);

    private string Plain(TreatmentOption option) =>
        option.Verdict == OptionVerdict.Waits ? texts["options.wait"] : option.Name;

    private string Words(TreatmentOption option, (double? P10, double P50, double? P90)? bar)
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

    private string Cost(OptionCost cost, (double? P10, double P50, double? P90) bar)
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
