using OilCondition.Text;

namespace OilCondition.Reporting;

/// <summary>
/// Assessments as one page for people: what to do on which machine first, then each machine with its problems, options and pictures; evidence, sources and
/// cautions once at the end.
/// </summary>
/// <remarks>
/// <para>
/// The page is one file, without script or anything to load, and the same bytes for the same input. Machines stand in the order of <see cref="InOrder"/>.
/// </para>
/// <para>
/// Names of machines, oils and laboratories are shown as they are, but for control characters and marks that turn the direction of a text, which are left
/// out.
/// </para>
/// </remarks>
public static class ConditionReport
{
    private static readonly Page HtmlPage = new("report.html", PageText.Html);
    private static readonly Page MarkdownPage = new("report.md", PageText.Markdown);

    /// <summary>Renders a report as a page of HTML: for a screen of any width, light or dark, and for paper.</summary>
    /// <param name="title">Title of the page.</param>
    /// <param name="assessments">The assessments, in any order.</param>
    /// <param name="options">What it has beside them, and in which words; nothing and English where left out.</param>
    /// <returns>HTML.</returns>
    /// <exception cref="ArgumentException">The title is blank, or a decision is of none of the assessments.</exception>
    public static string ToHtml(
        string title,
        IReadOnlyList<ConditionAssessment> assessments,
        ReportOptions? options = null
    ) => HtmlPage.Render(Content(title, assessments, options));

    /// <summary>Renders the same report as Markdown with tables, after the GitHub flavour. Pictures are there as their descriptions.</summary>
    /// <param name="title">Title of the page.</param>
    /// <param name="assessments">The assessments, in any order.</param>
    /// <param name="options">What it has beside them, and in which words; nothing and English where left out.</param>
    /// <returns>Markdown.</returns>
    /// <exception cref="ArgumentException">The title is blank, or a decision is of none of the assessments.</exception>
    public static string ToMarkdown(
        string title,
        IReadOnlyList<ConditionAssessment> assessments,
        ReportOptions? options = null
    ) => MarkdownPage.Render(Content(title, assessments, options));

    /// <summary>
    /// The assessments as a report shows them: what asks for something first, by severity, then by the date by which it is to be done, then as they
    /// were given.
    /// </summary>
    /// <param name="assessments">The assessments.</param>
    /// <param name="decisions">What can be done about them, whose dates count; null for none.</param>
    /// <returns>The same assessments in order.</returns>
    /// <exception cref="ArgumentException">A decision is of none of the assessments.</exception>
    public static IReadOnlyList<ConditionAssessment> InOrder(
        IReadOnlyList<ConditionAssessment> assessments,
        IReadOnlyList<TreatmentDecision>? decisions = null
    ) =>
        [
            .. MachineEntry
                .InOrder(Guard.NotNull(assessments), decisions ?? [], ReportTexts.English)
                .Select(entry => entry.Assessment),
        ];

    private static Scriban.Runtime.ScriptObject Content(
        string title,
        IReadOnlyList<ConditionAssessment> assessments,
        ReportOptions? options
    ) => ReportContent.Of(Guard.NotBlank(title), Guard.NotNull(assessments), options ?? new ReportOptions());
}
