extern alias charts;

using System.Net;
using System.Text.RegularExpressions;
using charts::OilCondition.Charts;
using OilCondition.Limits;
using OilCondition.Reporting;
using OilCondition.Tests.Text;

namespace OilCondition.Tests.Charts;

/// <summary>
/// What a picture says in words stands in the report and in the sentences with the same figures, units, dates and words: in German, in US customary
/// units, so that neither language nor unit is the one that code starts from.
/// </summary>
public class ChartAgreementTests
{
    private static readonly Sentences Say = Sentences.German.In(Sentences.Units.UsCustomary);
    private static readonly ChartOptions Options = new(ChartTexts.German.In(Sentences.Units.UsCustomary));

    private static readonly Lazy<string> Report = new(() =>
        PlainOf(
            ConditionReport.ToHtml(
                "Ölzustand",
                AllCharts.Assessments,
                new ReportOptions(
                    decisions: AllCharts.Decided,
                    texts: ReportTexts.German.In(Sentences.Units.UsCustomary)
                )
            )
        )
    );

    [Fact]
    public void A_trend_says_reading_state_and_trend_of_the_table()
    {
        var seen = 0;
        foreach (var assessment in AllCharts.Assessments)
        {
            foreach (var state in assessment.States.Where(one => one.Latest is not null))
            {
                var chart = TrendChart.Of(assessment, state.Measurand, Options);
                var said = Pattern
                    .Of(@"^(?<reading>.+?) am (?<date>\d\d\.\d\d\.\d{4}): (?<state>[^;]+); (?<trend>.+?\(\d+[^)]*\))\.")
                    .Match(chart.Description);

                said.Success.ShouldBeTrue(chart.Description);
                Report.Value.ShouldContain($"{said.Groups["reading"].Value} {said.Groups["date"].Value}");
                Report.Value.ShouldContain(said.Groups["trend"].Value);
                Report.Value.ShouldContain($" {said.Groups["state"].Value} ");
                seen++;
            }
        }

        seen.ShouldBeGreaterThan(30);
    }

    /// <summary>A limit that was passed: its word and figure in the statement, at the edge of the picture, and where the picture draws it.</summary>
    [Fact]
    public void A_limit_is_the_one_of_the_statement()
    {
        var seen = 0;
        foreach (var assessment in AllCharts.Assessments)
        {
            foreach (
                var finding in assessment.Findings.OfType<LimitFinding>().Where(one => one.Evaluation.Rate is null)
            )
            {
                var figure = Pattern
                    .Of(@"der (?<word>Alarm|Warn)grenze von (?<figure>\S+ [^\s,(]+(?: mL)?)")
                    .Match(Say.Of(finding));
                var chart = TrendChart.Of(assessment, finding.Measurand, Options);

                figure.Success.ShouldBeTrue(Say.Of(finding));
                var word = figure.Groups["word"].Value == "Alarm" ? "Alarm" : "Warnung";
                chart
                    .Scene.Levels.Select(level => level.Text)
                    .ShouldContain(text =>
                        text.StartsWith($"{word} ", StringComparison.Ordinal)
                        && text.Contains($" {figure.Groups["figure"].Value}", StringComparison.Ordinal)
                    );
                seen++;
            }
        }

        seen.ShouldBeGreaterThan(3);
    }

    [Fact]
    public void Water_that_the_oil_holds_is_that_of_the_table_of_water()
    {
        var seen = 0;
        foreach (var assessment in AllCharts.Assessments.Where(one => one.Water is WaterInOil.Split))
        {
            var chart = SaturationChart.Of(assessment, Options);
            var held = Pattern
                .Of(
                    @"Das Öl löst (?<warm>\S+) ppm bei (?<running>\S+ °F) im Betrieb und (?<cold>\S+) ppm bei (?<standstill>\S+ °F) im Stillstand\."
                )
                .Match(chart.Description);

            held.Success.ShouldBeTrue(chart.Description);
            Report.Value.ShouldContain($"Betrieb {held.Groups["running"].Value} {held.Groups["warm"].Value} ");
            Report.Value.ShouldContain($"Stillstand {held.Groups["standstill"].Value} {held.Groups["cold"].Value} ");
            foreach (
                Match separation in Pattern.Of(@"Unter (\S+ °F) scheidet sich Wasser ab").Matches(chart.Description)
            )
            {
                Report.Value.ShouldContain(separation.Groups[1].Value);
            }

            chart.Scene.X.Label.ShouldBe("Öltemperatur, °F");
            chart.Scene.Y.Label.ShouldBe("Wasser, ppm");
            seen++;
        }

        seen.ShouldBeGreaterThan(3);
    }

    [Fact]
    public void A_cleanup_has_the_moments_and_the_target_of_its_statement()
    {
        var assessment = AllCharts.Assessments.Single(one => one.Cleanup is not null);
        var finding = assessment.Findings.OfType<CleanupFinding>().First();

        var chart = CleanupChart.Of(assessment, Options);

        var moments = Moments(Say.Of(finding));
        moments.Count.ShouldBeGreaterThan(2);
        Moments(chart.Description).Intersect(moments).Count().ShouldBe(3, $"{Say.Of(finding)}\n{chart.Description}");
        var target = Pattern.Of(@"das Ziel von (\S+ ppm)").Match(Say.Of(finding)).Groups[1].Value;
        chart.Scene.Levels.Single().Text.ShouldBe($"Ziel {target}");
        chart.Title.ShouldEndWith(": Vakuumtrocknung");

        static List<string> Moments(string text) =>
            [.. Pattern.Of(@"\d\d\.\d\d\.\d{4} \d\d:\d\d").Matches(text).Select(match => match.Value).Distinct()];
    }

    [Fact]
    public void Hours_of_an_option_are_those_of_the_table_of_options()
    {
        var seen = 0;
        foreach (var decision in AllCharts.Decided.Where(one => one.Options.Count > 0))
        {
            foreach (var level in OptionsChart.OfHours(decision, Options).Scene.Levels)
            {
                var hours = Pattern.Of(@"[\d,]+ h \([\d,]+ bis [\d,]+\)").Match(level.Text);
                if (hours.Success)
                {
                    Report.Value.ShouldContain(hours.Value);
                    seen++;
                }
            }
        }

        seen.ShouldBeGreaterThan(3);
    }

    [Fact]
    public void No_picture_has_an_si_unit_that_the_sentences_do_not_give()
    {
        foreach (var (name, chart) in AllCharts.OfStation(Options))
        {
            foreach (var text in chart.Words().Append(chart.Description))
            {
                Pattern
                    .Of(@"°C|mg/kg|mm²/s|\bper\b")
                    .IsMatch(
                        text.Replace("bei 40 °C", "", StringComparison.Ordinal)
                            .Replace("bei 100 °C", "", StringComparison.Ordinal)
                    )
                    .ShouldBeFalse($"{name}: {text}");
            }
        }
    }

    /// <summary>The words of a page, one space between any two.</summary>
    private static string PlainOf(string html) =>
        Pattern.Of(@"\s+").Replace(WebUtility.HtmlDecode(Pattern.Of("<[^>]*>").Replace(html, " ")), " ");
}
