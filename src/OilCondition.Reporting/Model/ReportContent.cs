using System.Globalization;
using OilCondition.Text;
using Scriban.Runtime;

namespace OilCondition.Reporting;

/// <summary>What a report says, for any kind of page: plain texts, not yet escaped.</summary>
internal static class ReportContent
{
    public static ScriptObject Of(string title, IReadOnlyList<ConditionAssessment> assessments, ReportOptions options)
    {
        var texts = options.Texts;
        var notes = new Notes();
        var first = new FirstPage(texts);
        var section = new MachineSection(texts, first, notes);
        var entries = MachineEntry.InOrder(assessments, options.Decisions, texts);
        var normal = entries.Where(entry => !entry.AsksForSomething).ToList();
        var machines = entries.Select(entry => section.Of(entry, options.PicturesOf(entry.Assessment))).ToList();
        var labels = new ScriptObject();
        foreach (var key in texts.Keys)
        {
            labels[key.Replace('.', '_').Replace('-', '_')] = texts[key];
        }

        foreach (var key in new[] { "water.saturation", "water.dissolved", "water.free" })
        {
            labels[key.Replace('.', '_')] = texts.Say(key, ("unit", texts.Sentences.Unit(Measurands.WaterContent)));
        }

        return new ScriptObject
        {
            ["language"] = texts.Language,
            ["text"] = labels,
            ["title"] = title,
            ["note"] = options.Note,
            ["dates"] = Offsets(assessments) is { Length: > 0 } offsets ? texts.Say("dates", ("offset", offsets)) : "",
            ["rows"] = entries.Where(entry => entry.AsksForSomething).Select(first.Row).ToList(),
            ["normal"] = normal.ConvertAll(first.Row),
            ["normal_summary"] =
                normal.Count == 1
                    ? texts["first.normal-summary-one"]
                    : texts.Say("first.normal-summary", ("count", texts.Sentences.Number(normal.Count))),
            ["pictures"] = options.Pictures.Select(MachineSection.Picture).ToList(),
            ["calendar"] = options.Calendar,
            ["calendar_lines"] = options.Calendar.Split('\n').Where(_ => options.Calendar.Length > 0).ToList(),
            ["machines"] = machines,
            ["cautions_of_work"] = notes
                .Cautions.Select(caution => new ScriptObject
                {
                    ["id"] = PlainText.Kebab(caution),
                    ["sentence"] = texts.Sentences.Of(caution),
                })
                .ToList(),
            ["evidence"] = notes
                .Evidence.Select(
                    (one, i) =>
                        new ScriptObject
                        {
                            ["number"] = i + 1,
                            ["machine"] = one.Machine,
                            ["back"] = one.Back,
                            ["lines"] = one.Lines.ToList(),
                        }
                )
                .ToList(),
            ["sources"] = notes
                .Sources.Select((text, i) => new ScriptObject { ["number"] = i + 1, ["text"] = text })
                .ToList(),
        };
    }

    /// <summary>The offsets from UTC at which the dates of the page stand.</summary>
    private static string Offsets(IEnumerable<ConditionAssessment> assessments) =>
        string.Join(
            ", ",
            assessments
                .Select(one => one.Options.AsOf.ToString("zzz", CultureInfo.InvariantCulture))
                .Distinct(StringComparer.Ordinal)
        );
}
