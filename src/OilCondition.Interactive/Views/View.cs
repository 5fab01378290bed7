using System.Xml.Linq;
using OilCondition.Charts;
using OilCondition.Charts.Drawing;

namespace OilCondition.Interactive.Views;

/// <summary>What one result shows, from top to bottom. Texts are cleaned and escaped here, and nowhere else.</summary>
internal sealed class View
{
    private const string Apart = "margin:0 0 1em 0";

    private readonly XElement parts;

    private View(string element) => parts = new XElement(element);

    public View()
        : this("div") { }

    public View Heading(string text) => Add(new XElement("h4", CleanText.Of(text)));

    public View Line(string text) => Add(new XElement("p", CleanText.Of(text)));

    /// <summary>Sentences one below the other; nothing where there are none.</summary>
    public View Lines(IEnumerable<string> texts)
    {
        XElement[] items = [.. texts.Select(text => new XElement("li", CleanText.Of(text)))];
        return items.Length == 0 ? this : Add(new XElement("ul", items));
    }

    /// <summary>Figures with their names.</summary>
    public View Figures(params (string Name, string Figure)[] rows) =>
        Add(
            new XElement(
                "table",
                new XAttribute("style", Apart),
                new XElement(
                    "tbody",
                    rows.Select(row => new XElement("tr", Cell("th", row.Name, "row"), Cell("td", row.Figure)))
                )
            )
        );

    public View Table(IReadOnlyList<string> headers, IEnumerable<IReadOnlyList<string>> rows) =>
        Add(
            new XElement(
                "table",
                new XAttribute("style", Apart),
                new XElement("thead", new XElement("tr", headers.Select(header => Cell("th", header, "col")))),
                new XElement("tbody", rows.Select(row => new XElement("tr", row.Select(cell => Cell("td", cell)))))
            )
        );

    /// <summary>A chart has its title and sentences in the picture, and as its text alternative.</summary>
    public View Picture(Chart chart) => Add(XElement.Parse(chart.ToSvg(), LoadOptions.PreserveWhitespace));

    /// <summary>What is shown on a click, so that a notebook of many results stays short.</summary>
    public View Folded(string summary, Action<View> fill)
    {
        var folded = new View("details");
        folded.Add(new XElement("summary", CleanText.Of(summary)));
        fill(folded);
        return Add(folded.parts);
    }

    public string Html() => parts.ToString(SaveOptions.DisableFormatting);

    private View Add(XElement part)
    {
        parts.Add(part);
        return this;
    }

    /// <summary>The left edge is stated, because notebooks set tables to the right, where words are hard to read.</summary>
    private static XElement Cell(string element, string text, string? scope = null) =>
        new(
            element,
            scope is null ? null : new XAttribute("scope", scope),
            new XAttribute("style", "text-align:left"),
            CleanText.Of(text)
        );
}
