using System.Xml.Linq;
using OilCondition.Reporting;
using OilCondition.Tests.Advice.Options;
using OilCondition.Tests.Text;
using OilCondition.Text;

namespace OilCondition.Tests.Reporting;

/// <summary>The second language, and the second system of units.</summary>
public class GermanReportTests
{
    private static readonly IReadOnlyList<ConditionAssessment> Fleet = ReportPages.Fleet(24);

    [Fact]
    public void The_page_is_German_and_has_the_same_shape()
    {
        var english = ReportPages.Parsed(ConditionReport.ToHtml("Ölzustand", Fleet));
        var german = ReportPages.Parsed(
            ConditionReport.ToHtml("Ölzustand", Fleet, new ReportOptions(texts: ReportTexts.German))
        );

        ((string?)german.Attribute("lang")).ShouldBe("de");
        Shape(german).ShouldBe(Shape(english));
        german.ToString().ShouldContain("Was zu tun ist");
        // A style sheet and sources have words of their own.
        var words = string.Join(
            " ",
            german
                .Element("body")!
                .Descendants("main")
                .Single()
                .DescendantNodes()
                .OfType<XText>()
                .Where(text => text.Parent!.Name != "code")
                .Select(text => text.Value)
        );
        var own = Pattern.Of("common practice, no source: [a-z]*").Replace(words, "");
        Pattern
            .Of(@"\b(the|of|water|reading|sample|since|limit|rising|normal trend|no action)\b")
            .Matches(own)
            .ShouldBeEmpty();

        static IEnumerable<string> Shape(XElement page) => page.Descendants().Select(one => one.Name.LocalName);
    }

    [Fact]
    public void Every_word_is_translated()
    {
        Keys("de").ShouldBe(Keys("en"));
        Keys("en").Count.ShouldBeGreaterThan(100);

        static List<string> Keys(string language) =>
            [
                .. PhraseBook
                    .Resource(typeof(ReportTexts).Assembly, $"texts.{language}.json")
                    .Split('\n')
                    .Select(line => Pattern.Of("^    \"([a-z0-9.-]+)\":").Match(line).Groups[1].Value)
                    .Where(key => key.Length > 0)
                    .Order(StringComparer.Ordinal),
            ];
    }

    [Fact]
    public void In_US_customary_units_no_SI_unit_is_left()
    {
        var texts = ReportTexts.English.In(Sentences.Units.UsCustomary);
        foreach (
            var page in new[]
            {
                ConditionReport.ToHtml("Oil condition", Fleet, new ReportOptions(texts: texts)),
                ConditionReport.ToMarkdown("Oil condition", Fleet, new ReportOptions(texts: texts)),
            }
        )
        {
            page.ShouldContain("ppm");
            page.ShouldContain("gal");
            page.ShouldMatch("(°|&#176;)F");
            // Viscosity at 40 °C is the name of a test.
            Pattern
                .Of(@".{30}(?<!viscosity at \d+)(?<!at \d)\d (L|mg/kg|mm²/s|(°|&#176;)C)\b")
                .Matches(page)
                .Select(one => one.Value)
                .ShouldBeEmpty();
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public void Decisions_follow_the_language_and_the_units(int seed)
    {
        var decisions = DecisionPropertyTests.Drawn(seed).Decide();
        var assessments = decisions.Select(one => one.Assessment).Distinct().ToList();
        string Page(ReportTexts texts) =>
            ConditionReport.ToMarkdown("Ölzustand", assessments, new ReportOptions(decisions: decisions, texts: texts));
        var (german, us) = (Page(ReportTexts.German), Page(ReportTexts.English.In(Sentences.Units.UsCustomary)));

        foreach (var decision in decisions)
        {
            // A page in Markdown escapes what would change it.
            Plain(german).ShouldContain(Plain(Sentences.German.Recommendation(decision)));
            Plain(german).ShouldContain(Plain(Sentences.German.RiskReason(decision)));
        }

        Pattern.Of(@"\b(ruled out|meets the target|floor|cheapest|hired,|chance)\b").Matches(german).ShouldBeEmpty();
        Pattern.Of(@"(?<!at \d)\d (°C|L|mg/kg|kg|L/min|mm²/s)(?![/\w])").Matches(us).ShouldBeEmpty();

        static string Plain(string text) => text.Replace("\\", "", StringComparison.Ordinal);
    }
}
