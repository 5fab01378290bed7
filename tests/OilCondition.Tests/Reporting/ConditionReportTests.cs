using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using OilCondition.Reporting;
using OilCondition.Tests.Text;

namespace OilCondition.Tests.Reporting;

/// <summary>What a maintenance manager sees first, what stands once, and what no name can change.</summary>
public class ConditionReportTests
{
    private static readonly IReadOnlyList<ConditionAssessment> Fleet = ReportPages.Fleet(24);

    [Fact]
    public void What_asks_for_something_comes_first_by_severity_and_date_and_the_rest_is_folded()
    {
        var order = ConditionReport.InOrder(Fleet);
        var page = ReportPages.Parsed(ConditionReport.ToHtml("Oil condition", Fleet));
        var asking = order.Where(one => one.Worst >= Severity.Alert || one.Recommendations.Count > 0).ToList();

        order.OrderBy(one => one.History.Machine.Id).ShouldBe(Fleet.OrderBy(one => one.History.Machine.Id));
        order.Take(asking.Count).ShouldBe(asking);
        asking.Select(one => one.Worst).ShouldBe(asking.Select(one => one.Worst).OrderDescending());
        asking.Count.ShouldBeInRange(2, Fleet.Count - 1);
        asking.Select(one => one.Worst).Distinct().Count().ShouldBeGreaterThan(1);
        foreach (
            var alert in asking
                .Where(one => one.Worst == Severity.Alert)
                .Zip(asking.Where(one => one.Worst == Severity.Alert).Skip(1))
        )
        {
            (Date(alert.First) ?? DateTimeOffset.MaxValue).ShouldBeLessThanOrEqualTo(
                Date(alert.Second) ?? DateTimeOffset.MaxValue
            );
        }

        ReportPages
            .Rows(page)
            .Select(row => row.Descendants("bdi").First().Value)
            .ShouldBe(order.Select(one => one.History.Machine.Id));
        var dated = asking.Where(one => one.Worst == Severity.Alert && Date(one) is not null).ToList();
        dated.Count.ShouldBeGreaterThan(1);
        foreach (var one in dated)
        {
            ReportPages
                .Rows(page)
                .Single(row => row.Descendants("bdi").First().Value == one.History.Machine.Id)
                .Value.ShouldContain($"{Date(one):yyyy-MM-dd}");
        }

        var folded = page.Descendants("details").Single();
        folded.Element("summary")!.Value.ShouldStartWith($"No action: {order.Count - asking.Count} machines: ");
        folded.Descendants("td").Count(cell => cell.Value == "No action").ShouldBe(order.Count - asking.Count);
        page.Descendants("h2")
            .Select(one => one.Value)
            .Count(text => text.Contains('(', StringComparison.Ordinal))
            .ShouldBe(order.Count);

        static DateTimeOffset? Date(ConditionAssessment one) =>
            one
                .Problems.Where(problem => problem.Severity >= Severity.Alert)
                .Select(problem => problem.NextLimitFrom)
                .Min();
    }

    [Fact]
    public void Each_problem_stands_once_with_its_evidence_and_each_caution_and_source_once()
    {
        var html = ConditionReport.ToHtml("Oil condition", Fleet);
        var page = ReportPages.Parsed(html);
        var problems = Fleet.SelectMany(one => one.Problems).ToList();

        var told = page.Descendants("li")
            .Where(item => ((string?)item.Attribute("id"))?.Contains("-problem-", StringComparison.Ordinal) == true)
            .Select(item => item.Value)
            .ToList();
        told.Count.ShouldBe(problems.Count);
        foreach (var problem in problems)
        {
            told.ShouldContain(text => text.Contains(problem.Statement, StringComparison.Ordinal));
        }

        page.Descendants("li")
            .Count(item => ((string?)item.Attribute("id"))?.StartsWith("evidence-", StringComparison.Ordinal) == true)
            .ShouldBe(problems.Count);
        foreach (var caution in Fleet.SelectMany(one => one.Recommendations).SelectMany(one => one.Cautions).Distinct())
        {
            page.Descendants("li")
                .Count(item => item.Value == Sentences.English.Of(caution))
                .ShouldBe(1, Sentences.English.Of(caution));
        }

        var sources = Fleet
            .SelectMany(one => one.States)
            .SelectMany(one => one.Limits)
            .Select(one => one.Limit.Source.ToString())
            .Distinct()
            .ToList();
        page.Descendants("li")
            .Where(item => ((string?)item.Attribute("id"))?.StartsWith("source-", StringComparison.Ordinal) == true)
            .Select(item => item.Value)
            .ShouldBe(sources, ignoreOrder: true);
        Pattern
            .Of("common practice, no source")
            .Count(html)
            .ShouldBe(sources.Count(one => one.StartsWith("common practice", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_page_is_well_formed_every_link_has_its_place_and_every_table_its_headers(bool isOdd)
    {
        var fleet = isOdd ? ReportPages.Fleet(24, ReportPages.OddNames) : Fleet;
        var html = ConditionReport.ToHtml(
            "Oil <condition>",
            fleet,
            new ReportOptions(
                "note & more",
                calendar: "unit <1>\n  day",
                pictures: [ReportPages.Picture("calendar \"x\"")],
                picturesOf: one => [ReportPages.Picture(one.History.Machine.Name)]
            )
        );
        var page = ReportPages.Parsed(html);

        var ids = page.Descendants().Select(one => (string?)one.Attribute("id")).OfType<string>().ToList();
        ids.ShouldBe(ids.Distinct());
        ids.ShouldAllBe(id => Pattern.Of("^[a-z0-9-]+$").IsMatch(id));
        var links = page.Descendants("a").Select(one => (string)one.Attribute("href")!).ToList();
        links.Count.ShouldBeGreaterThan(100);
        links.Where(link => link[0] != '#' || !ids.Contains(link[1..])).ShouldBeEmpty();
        foreach (var table in page.Descendants("table"))
        {
            table.Element("caption")!.Value.ShouldNotBeNullOrWhiteSpace();
            var headers = table.Element("thead")!.Descendants("th").ToList();
            headers.ShouldAllBe(one => (string?)one.Attribute("scope") == "col");
            foreach (var row in table.Element("tbody")!.Elements("tr"))
            {
                row.Elements().Count().ShouldBe(headers.Count);
                row.Elements("th").ShouldAllBe(one => (string?)one.Attribute("scope") == "row");
                row.Elements("th").Count().ShouldBe(1);
            }
        }

        ((string?)page.Attribute("lang")).ShouldBe("en");
        new[] { "header", "main", "footer" }.ShouldAllBe(name => page.Descendants(name).Count() == 1);
        page.Descendants("section").ShouldAllBe(one => ids.Contains((string)one.Attribute("aria-labelledby")!));
        page.Descendants("img").Count().ShouldBe(fleet.Count + 1);
        page.Descendants("img")
            .ShouldAllBe(one =>
                ((string)one.Attribute("alt")!).Length > 8
                && ((string)one.Attribute("src")!).StartsWith("data:image/svg+xml;base64,")
            );
        page.Descendants("script").ShouldBeEmpty();
        html.ShouldNotContain("http", Case.Insensitive);
    }

    [Fact]
    public void A_name_stands_for_itself_and_turns_nothing()
    {
        var fleet = ReportPages.Fleet(24, ReportPages.OddNames);
        foreach (
            var text in new[]
            {
                ConditionReport.ToHtml("Oil condition", fleet),
                ConditionReport.ToMarkdown("Oil condition", fleet),
            }
        )
        {
            text.ShouldNotMatch("(?<!\\\\)<(b>|script)");
            text.ShouldNotMatch("[\u202A-\u202E\u2066-\u2069\u200E\u200F\u061C\u0000-\u0009\u000B-\u001F]");
        }

        var page = ReportPages.Parsed(ConditionReport.ToHtml("Oil condition", fleet));
        var names = page.Descendants("bdi").Select(one => one.Value).ToList();
        names.ShouldContain("P-1 <b>&\"'</b>");
        names.ShouldContain("{{ title }} {count} </style><script>alert(1)</script>");
        names.ShouldContain("gnippilf right");
        ConditionReport
            .ToMarkdown("Oil condition", fleet)
            .ShouldContain("HP/GOV\\|2 \\*x\\* \\_y\\_ \\[z\\](q) \\`c\\`");
    }

    [Fact]
    public void Markdown_has_the_same_facts_and_whole_tables()
    {
        var text = ConditionReport.ToMarkdown(
            "Oil condition",
            Fleet,
            new ReportOptions(picturesOf: _ => [ReportPages.Picture("trend")])
        );
        var lines = text.Split('\n');

        for (var i = 0; i < lines.Length; i++)
        {
            if (Pattern.Of("^(\\|---)+\\|$").IsMatch(lines[i]))
            {
                var columns = Cells(lines[i]);
                lines[i - 2].ShouldBe("");
                Cells(lines[i - 1]).ShouldBe(columns);
                for (i++; lines[i].Length > 0; i++)
                {
                    Cells(lines[i]).ShouldBe(columns, lines[i]);
                }
            }
        }

        var plain = Pattern.Of("\\\\([^A-Za-z0-9 ])").Replace(text, "$1");
        Fleet
            .SelectMany(one => one.Problems)
            .ShouldAllBe(one => plain.Contains(one.Statement, StringComparison.Ordinal));
        Fleet.SelectMany(one => one.Alerts).ShouldAllBe(one => plain.Contains(one.Key, StringComparison.Ordinal));
        Fleet
            .SelectMany(one => one.Recommendations)
            .SelectMany(one => one.Cautions)
            .ShouldAllBe(one => Pattern.Of(Regex.Escape(Sentences.English.Of(one))).Count(plain) == 1);
        plain.ShouldContain("- trend: trend in words");
        text.ShouldNotContain("\n\n\n");

        static int Cells(string line) => Pattern.Of("(?<!\\\\)\\|").Count(line) - 1;
    }

    [Fact]
    public void The_culture_of_the_machine_changes_no_byte()
    {
        var (html, markdown) = (
            ConditionReport.ToHtml("Oil condition", Fleet),
            ConditionReport.ToMarkdown("Oil condition", Fleet)
        );
        var before = CultureInfo.CurrentCulture;
        var odd = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        odd.NumberFormat.NumberDecimalSeparator = ",";
        odd.NumberFormat.NegativeSign = "~";
        odd.DateTimeFormat.DateSeparator = ".";
        odd.DateTimeFormat.TimeSeparator = ".";
        try
        {
            CultureInfo.CurrentCulture = odd;
            ConditionReport.ToHtml("Oil condition", ReportPages.Fleet(24)).ShouldBe(html);
            ConditionReport.ToMarkdown("Oil condition", ReportPages.Fleet(24)).ShouldBe(markdown);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_fleet_without_anything_to_do_and_an_empty_one_say_so()
    {
        var quiet = Fleet.Where(one => one.Worst < Severity.Alert && one.Recommendations.Count == 0).ToList();

        ConditionReport.ToHtml("Oil condition", quiet).ShouldContain("No machine asks for anything.");
        ConditionReport.ToMarkdown("Oil condition", []).ShouldContain("No machine asks for anything.");
        ReportPages.Parsed(ConditionReport.ToHtml("Oil condition", [])).Descendants("table").ShouldBeEmpty();
    }

    [Fact]
    public void A_blank_title_is_refused() =>
        Should.Throw<ArgumentException>(() => ConditionReport.ToHtml(" ", Fleet)).ParamName.ShouldBe("title");
}
