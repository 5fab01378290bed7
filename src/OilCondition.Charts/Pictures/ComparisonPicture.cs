using OilCondition.Charts.Drawing;
using OilCondition.Treatment;

namespace OilCondition.Charts.Pictures;

/// <summary>Treatments for one task as bars of hours, drawn. A comparison recommends nothing, and has neither a machine nor a date.</summary>
internal sealed class ComparisonPicture(ChartTexts texts, TreatmentComparison comparison)
{
    public Scene Scene()
    {
        var title = texts.Say("Ways to treat, hours");
        if (comparison.Rows.Count == 0)
        {
            return Drawing.Scene.Nothing(title, texts.Say("No options to compare."));
        }

        var rows = comparison
            .Rows.Select(
                (one, row) =>
                    (Row: row, Name: texts.Name(one.Treatment.Name), Bar: RowBar.Of(one.Band), Verdict: Verdict(one))
            )
            .ToList();
        var bars = rows.Where(one => one.Bar is not null).Select(one => (one.Row, Bar: one.Bar!.Value)).ToList();
        string Words(RowBar? bar, string verdict) =>
            bar is { } known ? texts.Say("{0}; {1}", known.Words(texts, "h"), verdict) : verdict;
        return new Scene(
            title,
            [
                bars.Count == 0
                    ? texts.Say("Nothing at hand does it.")
                    : bars.OrderBy(one => one.Bar.P50)
                        .Select(one => rows[one.Row])
                        .Select(one => texts.Say("Quickest: {0}, {1}.", one.Name, Words(one.Bar, one.Verdict)))
                        .First(),
                texts.Say(
                    "The makers of machine, oil and unit, local codes and licensed people decide how it is done."
                ),
            ],
            RowBars.Axis(texts.Say("hours of treatment"), bars.Select(one => one.Bar), texts),
            new RowAxis("", [.. rows.Select(one => one.Name)], isUpsideDown: true)
        )
        {
            Layers =
            [
                RowBars.Of(texts.Say("possible"), Ink.SkyBlue, bars),
                .. RowBars.Whiskers(texts.Say("one to nine cases in ten"), bars),
            ],
            Levels = [.. rows.Select(one => new LevelMark(one.Row, Words(one.Bar, one.Verdict), Ink.Grey, null))],
        };
    }

    /// <summary>Sure where nine cases in ten meet the target, as the whisker shows it.</summary>
    private string Verdict(TreatmentAssessment row) =>
        row.Band switch
        {
            { TimeP90: not null } => texts.Say("meets the target"),
            { TimeP50: not null } => texts.Say("not sure"),
            _ => texts.Say("does not reach the target"),
        };
}
