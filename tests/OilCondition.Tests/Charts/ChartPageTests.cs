extern alias charts;

using System.Globalization;
using System.Text;
using charts::OilCondition.Charts;

namespace OilCondition.Tests.Charts;

/// <summary>
/// A browser lays every chart out and measures its texts: none beyond the edge of its chart, none over another. The browser is a second judge, which knows
/// nothing of how the charts were made.
/// </summary>
public class ChartPageTests
{
    private const string Script = """
        const found = [];
        for (const figure of document.querySelectorAll('div')) {
          const svg = figure.querySelector('svg'), sheet = svg.getBoundingClientRect();
          const texts = [...svg.querySelectorAll('text')].map(one => ({ text: one.textContent, box: one.getBoundingClientRect() }));
          const name = figure.dataset.name;
          if (texts.length === 0) found.push(name + ': no text');
          for (const one of texts) {
            if (one.box.left < sheet.left - 1 || one.box.right > sheet.right + 1 || one.box.top < sheet.top - 1 || one.box.bottom > sheet.bottom + 1)
              found.push(name + ': outside: ' + one.text);
          }
          for (let i = 0; i < texts.length; i++) for (let j = i + 1; j < texts.length; j++) {
            const a = texts[i].box, b = texts[j].box;
            const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left), high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
            if (wide > 1 && high > 1.5) found.push(name + ': over each other: ' + texts[i].text + ' | ' + texts[j].text);
          }
        }
        const result = document.createElement('pre');
        result.id = 'result';
        result.textContent = 'BEGIN\n' + found.join('\n') + '\nEND ' + document.querySelectorAll('div').length;
        document.body.appendChild(result);
        """;

    [ChromiumFact]
    public void No_text_lies_outside_its_chart_or_over_another()
    {
        var german = new ChartOptions(ChartTexts.German.In(Sentences.Units.UsCustomary), TimeSpan.FromHours(2));
        var all = AllCharts
            .OfStation()
            .Concat(AllCharts.Odd())
            .Concat(AllCharts.OfStation(german).Select(one => ("german " + one.Name, one.Chart)))
            .Concat(AllCharts.Odd(german).Select(one => ("german " + one.Name, one.Chart)))
            .ToList();
        all.AddRange([
            .. all.Select(one => ("least size, " + one.Item1, one.Item2.WithSize(480, 320))),
            .. all.Where((_, i) => i % 7 == 0).Select(one => ("tall, " + one.Item1, one.Item2.WithSize(500, 1600))),
        ]);

        var (problems, count) = Measure(all);

        count.ShouldBe(all.Count);
        string.Join("\n", problems).ShouldBe("");
    }

    [ChromiumFact]
    public void A_text_over_another_or_outside_is_seen()
    {
        var svg =
            "<svg xmlns='http://www.w3.org/2000/svg' width='100' height='50'><text x='10' y='20'>one</text><text x='12' y='22'>two</text><text x='300' y='20'>far</text></svg>";

        var (problems, count) = Measure([("bad", svg)]);

        count.ShouldBe(1);
        problems.ShouldBe(["bad: outside: far", "bad: over each other: one | two"]);
    }

    private static (IReadOnlyList<string> Problems, int Count) Measure(
        IEnumerable<(string Name, Chart Chart)> charts
    ) => Measure(charts.Select(one => (one.Name, one.Chart.ToSvg())));

    private static (IReadOnlyList<string> Problems, int Count) Measure(IEnumerable<(string Name, string Svg)> charts)
    {
        var page = new StringBuilder("<!doctype html><html><head><meta charset=\"utf-8\"></head><body>\n");
        foreach (var (name, svg) in charts)
        {
            page.Append(CultureInfo.InvariantCulture, $"<div data-name=\"{name}\">{svg}</div>\n");
        }

        page.Append("<script>\n").Append(Script).Append("\n</script></body></html>");
        var lines = Browser.LinesOf(page.ToString());
        return (
            [.. lines.SkipLast(1).Where(line => line.Length > 0)],
            int.Parse(lines[^1]["END ".Length..], CultureInfo.InvariantCulture)
        );
    }
}
