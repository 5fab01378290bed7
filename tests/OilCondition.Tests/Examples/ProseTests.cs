using System.Text.RegularExpressions;
using OilCondition.Tests.Architecture;

namespace OilCondition.Tests.Examples;

/// <summary>What people read is short, and its links lead somewhere.</summary>
public partial class ProseTests
{
    private const int LongestSentence = 35;

    private static readonly string[] PagesOfDocs =
    [
        .. Directory
            .EnumerateFiles(RepositoryFiles.PathOf("docs"), "*.md")
            .Select(file => Path.GetFileName(file))
            .Order(StringComparer.Ordinal),
    ];

    public static TheoryData<string> Pages =>
        ["README.md", "DEVELOPERS.md", .. PagesOfDocs.Select(page => "docs/" + page)];

    [Theory]
    [MemberData(nameof(Pages))]
    public void No_sentence_has_more_than_35_words(string page) =>
        Blocks(RepositoryFiles.Read(page.Split('/')))
            .SelectMany(block => SentenceEnd().Split(block))
            .Where(sentence => Word().Count(sentence) > LongestSentence)
            .ShouldBeEmpty();

    [Theory]
    [MemberData(nameof(Pages))]
    public void Links_lead_to_a_file_and_a_heading(string page)
    {
        var folder = Path.GetDirectoryName(RepositoryFiles.PathOf(page.Split('/')))!;
        foreach (Match link in Link().Matches(WithoutCode(RepositoryFiles.Read(page.Split('/')))))
        {
            var target = link.Groups["target"].Value;
            if (target.StartsWith("https://", StringComparison.Ordinal))
            {
                continue;
            }

            var parts = target.Split('#');
            var file = parts[0].Length == 0 ? RepositoryFiles.PathOf(page.Split('/')) : Path.Combine(folder, parts[0]);
            (File.Exists(file) || Directory.Exists(file)).ShouldBeTrue($"{page}: {target}");
            if (parts.Length == 2)
            {
                Headings(File.ReadAllText(file)).ShouldContain(parts[1], $"{page}: {target}");
            }
        }
    }

    /// <summary>A page that stands nowhere is not found.</summary>
    [Fact]
    public void Every_page_stands_in_the_list_of_the_site_and_on_the_first_page()
    {
        var (list, first) = (RepositoryFiles.Read("docs", "toc.yml"), RepositoryFiles.Read("docs", "index.md"));
        foreach (var page in PagesOfDocs)
        {
            list.ShouldContain($"href: {page}\n");
            (page == "index.md" || first.Contains($"({page})", StringComparison.Ordinal)).ShouldBeTrue(page);
        }
    }

    [Fact]
    public void A_sentence_ends_at_its_full_stop_and_a_row_of_a_table_is_none()
    {
        const string text = "One two.\nThree `a.b c`, [four](five.md) 0.5 six.\n\n| a | b. |\n- Seven\n  eight: nine!";
        var sentences = Blocks(text).SelectMany(block => SentenceEnd().Split(block)).ToList();
        sentences.Select(sentence => Word().Count(sentence)).ShouldBe([2, 5, 3]);
    }

    /// <summary>Paragraphs and items of lists, each on one line; links by their words, a piece of code as one word.</summary>
    private static List<string> Blocks(string markdown)
    {
        var blocks = new List<string>();
        var isOpen = false;
        foreach (
            var line in Fence().Replace(markdown, "\n").Split('\n').Select(line => line.Trim().TrimStart('>', ' '))
        )
        {
            if (line.Length == 0 || line[0] is '|' or '#' or '<')
            {
                isOpen = false;
            }
            else if (!isOpen || Item().IsMatch(line))
            {
                blocks.Add(Item().Replace(line, ""));
                isOpen = true;
            }
            else
            {
                blocks[^1] += " " + line;
            }
        }

        return [.. blocks.Select(block => Code().Replace(Link().Replace(block, "${words}"), "code"))];
    }

    private static string WithoutCode(string markdown) => Code().Replace(Fence().Replace(markdown, "\n"), "code");

    private static IEnumerable<string> Headings(string markdown) =>
        Fence()
            .Replace(markdown, "\n")
            .Split('\n')
            .Where(line => line.StartsWith('#'))
            .Select(line => NoAnchor().Replace(line.TrimStart('#').Trim().ToLowerInvariant(), "").Replace(' ', '-'));

    [GeneratedRegex(@"(?<=[.!?][)*""']*)\s+(?=\W*(\p{Lu}|\d|code))", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex SentenceEnd();

    [GeneratedRegex(@"\S*\w\S*", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Word();

    [GeneratedRegex(@"```.*?```", RegexOptions.ExplicitCapture | RegexOptions.Singleline, 1000)]
    private static partial Regex Fence();

    [GeneratedRegex("`[^`]*`", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Code();

    [GeneratedRegex(@"!?\[(?<words>[^\]]*)\]\((?<target>[^)]*)\)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Link();

    [GeneratedRegex(@"^([-*]|\d+\.)\s+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Item();

    [GeneratedRegex(@"[^\w\s-]", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex NoAnchor();
}
