namespace Pages;

/// <summary>The pages of docs that are made of the code, by their file names.</summary>
internal static class MadePages
{
    public static IEnumerable<(string Name, string Text)> All =>
        [("cautions.md", CautionsPage.Write()), ("sources.md", SourcesPage.Write())];

    /// <summary>A row of a table.</summary>
    public static string Row(params string[] cells) =>
        "| " + string.Join(" | ", cells.Select(cell => cell.Replace("|", "\\|"))) + " |\n";
}
