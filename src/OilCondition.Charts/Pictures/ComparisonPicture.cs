using OilCondition.Charts.Drawing;
using OilCondition.Treatment;

namespace OilCondition.Charts.Pictures;

/// <summary>Treatments for one task as bars of hours, drawn. A comparison recommends nothing, and has neither a machine nor a date.</summary>
internal sealed class ComparisonPicture(ChartTexts texts, TreatmentComparison comparison)
{
    public Scene Scene()
    {
        var title = texts["options.compared-title"];
        if (comparison.Rows.Count == 0)
        {
            return Drawing.Scene.Nothing(title, texts["options.none"]);
        }

        var rows = comparison.Rows.Select((one, row) => (Row: row, Treatment: one, Bar: RowBar.Of(one.Band))).ToList();
        var known = rows.Where(one => one.Bar is not null).ToList();
        var bars = known.Select(one => (one.Row, Bar: one.Bar!.Value)).ToList();
        return new Scene(
            title,
            [
                known.Count == 0
                    ? texts["options.told-nothing"]
                    : Quickest(known.OrderBy(one => one.Bar!.Value.P50).First().Treatment),
                texts["options.told-caution"],
            ],
            RowBars.Axis(texts["options.hours"], bars.Select(one => one.Bar), texts),
            new RowAxis("", [.. comparison.Rows.Select(one => one.Treatment.Name)], isUpsideDown: true)
        )
        {
            Layers =
            [
                RowBars.Of(texts["options.possible"], Ink.SkyBlue, bars),
                .. RowBars.Whiskers(texts["options.interval"], bars),
            ],
            Levels = [.. rows.Select(one => new LevelMark(one.Row, Words(one.Treatment), Ink.Grey, null))],
        };
    }

    private string Quickest(TreatmentAssessment row) =>
        texts.Say("options.told-quickest", ("option", row.Treatment.Name), ("words", Words(row)));

    /// <summary>Sure where nine cases in ten meet the target, as the whisker shows it.</summary>
    private string Words(TreatmentAssessment row)
    {
        if (row.Band is not { TimeP50: not null } band)
        {
            return texts["verdict.does-not-reach"];
        }

        var verdict = texts[band.TimeP90 is null ? "verdict.not-sure" : "verdict.meets"];
        return texts.Say("options.words", ("amount", texts.Sentences.Hours(band)), ("verdict", verdict));
    }
}
