using OilCondition.Text;

namespace OilCondition.Reporting;

/// <summary>A picture of a report, such as a chart, with its words for who cannot see it.</summary>
public sealed class ReportPicture
{
    /// <summary>A picture.</summary>
    /// <param name="title">What it shows; not blank.</param>
    /// <param name="description">The same in a sentence or two with its figures; not blank.</param>
    /// <param name="svg">The picture as an SVG document. It is shown as an image: nothing in it runs or loads.</param>
    /// <exception cref="ArgumentException">A text is blank, or <paramref name="svg"/> is no SVG document.</exception>
    public ReportPicture(string title, string description, string svg)
    {
        Title = Guard.NotBlank(title);
        Description = Guard.NotBlank(description);
        Svg = Guard.NotBlank(svg);
        if (svg.IndexOf("<svg", StringComparison.Ordinal) < 0)
        {
            throw new ArgumentException("svg has no <svg> element; an SVG document is expected.", nameof(svg));
        }
    }

    /// <summary>What it shows.</summary>
    public string Title { get; }

    /// <summary>The same in words.</summary>
    public string Description { get; }

    /// <summary>The SVG document.</summary>
    public string Svg { get; }

    /// <summary>What it shows.</summary>
    /// <returns>The title.</returns>
    public override string ToString() => Title;
}
