extern alias charts;

using System.Net;
using HarrowPoint;
using OilCondition.Reporting;
using OilCondition.Tests.Architecture;
using OilCondition.Tests.Charts;

namespace OilCondition.Tests.Examples;

/// <summary>A browser lays the report out at the width of a phone and of a desk: nothing reaches beyond the edge, and each picture is drawn.</summary>
public class ReportPageTests
{
    private const string Script = """
        addEventListener('load', () => {
          const found = [];
          for (const frame of document.querySelectorAll('iframe')) {
            const page = frame.contentDocument, width = frame.clientWidth, name = frame.title;
            if (page.documentElement.scrollWidth > width) found.push(name + ': scrolls sideways to ' + page.documentElement.scrollWidth);
            for (const one of page.querySelectorAll('th, td, li, p, h1, h2, h3, summary, caption, figure, pre')) {
              const box = one.getBoundingClientRect();
              if (box.width > 0 && getComputedStyle(one.closest('thead') || one).position !== 'absolute' && (box.right > width + 1 || box.left < -1))
                found.push(name + ': beyond the edge: ' + one.tagName + ' ' + one.textContent.trim().slice(0, 60));
            }
            for (const one of page.querySelectorAll('img')) if (!one.complete || one.naturalWidth === 0) found.push(name + ': not drawn: ' + one.alt);
            found.push(name + ' has ' + page.querySelectorAll('img').length + ' pictures');
          }
          const result = document.createElement('pre');
          result.textContent = 'BEGIN\n' + found.join('\n');
          document.body.appendChild(result);
        });
        """;

    [ChromiumFact]
    public void Nothing_reaches_beyond_the_edge_of_a_phone_or_a_desk()
    {
        var station = StationRecords.Read(RepositoryFiles.PathOf("examples", "HarrowPoint", "Data"));
        var assessments = station
            .Machines.Select(one =>
                ConditionAssessor.Assess(one.History, one.Limits, new AssessmentOptions(station.AsOf))
            )
            .ToList();
        var decisions = HarrowPoint.Decisions.Of(station, assessments);
        var outcome = HarrowPoint.Decisions.Schedule(station, decisions);
        var html = ConditionReport.ToHtml(
            "Oil condition, Harrow Point",
            assessments,
            new ReportOptions(
                "invented",
                decisions,
                HarrowPoint.Decisions.Calendar(outcome),
                Pictures.OfPlan(outcome),
                Pictures.OfReport
            )
        );
        var odd = ConditionReport.ToHtml(
            "Oil condition",
            Reporting.ReportPages.Fleet(24, Reporting.ReportPages.OddNames),
            new ReportOptions(texts: ReportTexts.German)
        );

        var found = Browser.LinesOf(
            "<!DOCTYPE html><html><head><meta charset=\"utf-8\"><script>"
                + Script
                + "</script></head><body>"
                + Frame("phone", 400, html)
                + Frame("desk", 1200, html)
                + Frame("phone with odd names", 400, odd)
                + Frame("desk with odd names", 1200, odd)
                + "</body></html>"
        );

        var pictures = html.Split("<img ").Length - 1;
        pictures.ShouldBeGreaterThan(10);
        found.ShouldBe([
            $"phone has {pictures} pictures",
            $"desk has {pictures} pictures",
            "phone with odd names has 0 pictures",
            "desk with odd names has 0 pictures",
        ]);

        static string Frame(string name, int width, string page) =>
            $"<iframe title=\"{name}\" style=\"border:0;width:{width}px;height:900px\" srcdoc=\"{WebUtility.HtmlEncode(page)}\"></iframe>";
    }
}
