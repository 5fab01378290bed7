extern alias charts;

using System.Globalization;
using System.Xml.Linq;
using charts::OilCondition.Charts;
using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.Interactive;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Tests.Charts;
using OilCondition.Tests.Sampling;
using OilCondition.Tests.Treatment;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Interactive;

/// <summary>What a notebook shows of each kind of result: XML that is well-formed, with its figures, the same bytes twice, and names that can do no harm.</summary>
public class ResultHtmlTests
{
    private static readonly ConditionAssessment Rising = Drawn.Rising();

    private static CleanupCurve Curve(int count = 25) =>
        CleanupCurve.Fit(
            [.. Enumerable.Range(0, count).Select(i => Invented.Start.AddHours(i))],
            [.. Enumerable.Range(0, count).Select(i => 50 + 550 * Math.Exp(-i / 8.0) + (i % 2 == 0 ? 1 : -1))]
        );

    private static RemainingLife.Crosses Life() =>
        Rising.States[0].Lives.Single().ShouldBeOfType<RemainingLife.Crosses>();

    private static TrendAssessment Trend() => Rising.States[0].Trend.Assessment;

    private static int Pictures(object result) =>
        Parsed(result).Descendants().Count(element => element.Name.LocalName == "svg");

    private static TreatmentComparison Comparison() =>
        TreatmentComparison.Of(
            Sump.Job(900, 150),
            new VacuumDehydration(Sump.Unit()),
            new DrainAndRefill(
                Ratio.FromPercent(10),
                Sump.Ppm(50),
                new ParticleLevels(1000, 200, 20),
                VolumeFlow.FromLitersPerMinute(30)
            )
        );

    private static TreatmentDecision Decision() =>
        AllCharts.Decided.First(one =>
            one.Assessment.History.Machine.Id == "HP-TGB1" && one.Options.Count > 0 && one.Choice is not null
        );

    /// <summary>One of each type, and each at its poorest.</summary>
    private static IEnumerable<object> All() =>
        [
            LifeChart.Of(Life()),
            Curve(),
            Curve(2),
            Curve(0),
            Rising,
            Rising.States[0],
            Life(),
            AllCharts.Fit(),
            Comparison(),
            .. AllCharts.Decided,
            TreatmentComparison.Of(Sump.Job(900, 150)),
            Trend(),
            Rising.States[0].Trend,
            SeriesTrend.Of(AllCharts.Values(Measurands.ViscosityIndex, [])),
            SeriesTrend.Of(AllCharts.Values(Measurands.ViscosityIndex, [98])),
            .. AllCharts.Assessments.SelectMany(one => one.States).Select(state => state.Trend),
            .. AllCharts.Assessments,
            .. AllCharts.Assessments.SelectMany(one => one.States),
            .. AllCharts.Assessments.SelectMany(one => one.States).SelectMany(state => state.Lives),
            Drawn.Assess(Measurands.AcidNumber, [], [Drawn.Above(Measurands.AcidNumber, 1, 2)]),
            Drawn.Assess(Measurands.AcidNumber, [], [Drawn.Above(Measurands.AcidNumber, 1, 2)]).States[0],
            TrendAssessment.Of([1, 2], [3, 4]),
        ];

    private static XElement Parsed(object result) => XElement.Parse(ResultHtml.Of(result));

    private static string Text(object result) =>
        string.Join(" | ", Parsed(result).DescendantNodes().OfType<XText>().Select(text => text.Value));

    [Fact]
    public void Every_result_is_one_well_formed_div_that_asks_for_nothing_from_elsewhere()
    {
        foreach (var result in All())
        {
            var html = Parsed(result);
            html.Name.LocalName.ShouldBe("div");
            html.Descendants().Select(element => element.Name.LocalName).ShouldNotContain("script");
            html.Descendants()
                .Attributes()
                .Where(attribute => attribute.Name.LocalName is "src" or "href")
                .Select(attribute => attribute.Value)
                .ShouldAllBe(target => target.StartsWith('#') || target.StartsWith("data:", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Every_type_has_a_view_and_none_is_left_out_of_the_list()
    {
        var shown = All().ToList();
        ResultHtml.Types.ShouldAllBe(type => shown.Any(type.IsInstanceOfType));
        shown.ShouldAllBe(one => ResultHtml.Types.Any(type => type.IsInstanceOfType(one)));
    }

    [Fact]
    public void The_same_result_gives_the_same_bytes_in_every_culture()
    {
        var before = CultureInfo.CurrentCulture;
        var first = All().Select(ResultHtml.Of).ToList();
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        try
        {
            CultureInfo.CurrentCulture = comma;
            All().Select(ResultHtml.Of).ShouldBe(first);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Hostile_names_stay_texts_and_cannot_turn_figures_round()
    {
        var machine = Drawn.Machine("M<script>", AllCharts.Hostile);
        var assessment = Drawn.Rising(machine: machine);

        var html = ResultHtml.Of(assessment);

        html.ShouldNotContain("<script>");
        html.ShouldNotContain("<b>");
        html.ShouldNotContain("\u202E");
        html.ShouldNotContain("\u2066");
        html.ShouldNotContain("\u0007");
        Text(assessment).ShouldContain("M<script> pump <b>\"A\" & B</b> gnp.x]]> --> {0}");
    }

    /// <summary>The truth behind the readings: 50 + 550 exp(−t/8 h), so that the rate is 0.125 a hour and the half-life 8 ln 2 = 5.55 h.</summary>
    [Fact]
    public void A_cleanup_curve_shows_floor_rate_and_picture()
    {
        var text = Text(Curve());

        text.ShouldContain("floor, in the unit of the readings | 50.");
        text.ShouldContain("rate, 1/h | 0.125");
        text.ShouldContain("(90 %)");
        text.ShouldContain("at the first moment, 2025-01-06 08:00 (UTC+00:00)");
        text.ShouldContain("does not know the unit of its readings");
        Pictures(Curve()).ShouldBe(1);
    }

    [Fact]
    public void Too_few_readings_show_no_figures()
    {
        Text(Curve(2)).ShouldContain("too few readings (2 readings)");
        Parsed(Curve(2)).Descendants("table").ShouldBeEmpty();
    }

    [Fact]
    public void A_life_shows_its_three_dates_its_limit_and_what_now_is()
    {
        var life = Life();
        var text = Text(life);

        text.ShouldContain("limit, not to be exceeded | 0.4 mgKOH/g");
        text.ShouldContain($"as of | {Rising.Options.AsOf:yyyy-MM-dd}");
        foreach (var (cases, at) in new[] { ("1", life.P10), ("5", life.P50), ("9", life.P90) })
        {
            text.ShouldContain($"passed in {cases} of 10 cases by | {at:yyyy-MM-dd}");
        }
    }

    [Fact]
    public void A_state_shows_its_reading_trend_and_life()
    {
        var text = Text(Rising.States[0]);

        text.ShouldContain("latest reading | 0.224 mgKOH/g on 2026-01-01");
        text.ShouldContain("state | normal");
        text.ShouldContain("readings judged | 13");
        text.ShouldContain("slope, mgKOH/g per day | 0.000");
        text.ShouldContain("limit passed in 10, 50 and 90 % of cases");
        Pictures(Rising.States[0]).ShouldBe(2, "the trend and its one life");
    }

    [Fact]
    public void A_trend_of_a_series_shows_its_figures_with_their_unit_and_its_readings()
    {
        var text = Text(Rising.States[0].Trend);

        text.ShouldStartWith("acid number: trend | verdict | rising | slope, mgKOH/g per day | 0.000");
        text.ShouldContain("readings judged | 13");
        Pictures(Rising.States[0].Trend).ShouldBe(1);
        Text(SeriesTrend.Of(AllCharts.Values(Measurands.ViscosityIndex, [98, 97, 98, 99, 98, 97, 98, 98])))
            .ShouldContain("| slope per day |", customMessage: "a measurand without a unit");
    }

    /// <summary>NIST StRD Norris: certified slope 1.00211681802045, standard error 0.000429796848: three digits would read '1, from 1 to 1'.</summary>
    [Fact]
    public void A_slope_has_the_digits_that_tell_the_ends_of_its_interval_apart()
    {
        var rows = OilCondition.Tests.Reference.ReferenceFolder.Rows("nist/Norris.csv");
        var pairs = rows.Select(row =>
                (
                    X: double.Parse(row["x"], CultureInfo.InvariantCulture),
                    Y: double.Parse(row["y"], CultureInfo.InvariantCulture)
                )
            )
            .OrderBy(pair => pair.X)
            .ToList();

        var text = Text(TrendAssessment.Of([.. pairs.Select(pair => pair.X)], [.. pairs.Select(pair => pair.Y)]));

        text.ShouldContain("slope per unit of time | 1.0021; 1.00");
        text.ShouldContain("(p) | below 0.001");
    }

    /// <summary>Twenty readings that rise by 2 with a scatter of ±0.1: least squares by hand gives 2 − 1/665.</summary>
    [Fact]
    public void A_trend_alone_shows_verdict_slope_and_interval()
    {
        double[] times = [.. Enumerable.Range(0, 20).Select(i => (double)i)];
        double[] values = [.. times.Select(time => 2 * time + (time % 2 == 0 ? 0.1 : -0.1))];

        var text = Text(TrendAssessment.Of(times, values));

        text.ShouldContain("verdict | rising");
        text.ShouldContain("slope per unit of time | 1.998; 1.9");
        text.ShouldContain("readings judged | 20");
        text.ShouldContain("SeriesTrend.Of(series) has its readings");
        Pictures(TrendAssessment.Of(times, values)).ShouldBe(0);
    }

    [Fact]
    public void A_saturation_fit_shows_each_measurement_beside_the_curve()
    {
        var text = Text(AllCharts.Fit());

        text.ShouldContain("measured between, °C | 15 and 75");
        text.ShouldContain("15 | 88 | ");
        text.ShouldContain("75 | 640 | ");
        text.ShouldContain("scatter of a measurement, % of the saturation | ");
        text.ShouldContain("invented");
        text.ShouldContain("measured saturation");
    }

    [Fact]
    public void A_comparison_shows_every_treatment_with_what_can_hurt_and_who_decides()
    {
        var comparison = Comparison();
        var text = Text(comparison);

        Pictures(comparison).ShouldBe(1);

        foreach (var row in comparison.Rows)
        {
            text.ShouldContain(row.Treatment.Name);
            foreach (var caution in row.Cautions)
            {
                text.ShouldContain(Sentences.English.Of(caution));
            }
        }

        text.ShouldEndWith(TreatmentDecision.Notice);
    }

    [Fact]
    public void A_decision_shows_every_option_with_what_can_hurt_and_who_decides()
    {
        var decision = Decision();
        var text = Text(decision);

        text.ShouldContain(decision.Recommendation);
        text.ShouldContain($"{decision.Choice!.Id} (recommended)");
        decision.Options.ShouldAllBe(option => text.Contains(option.Name, StringComparison.Ordinal));
        decision.Cautions.ShouldNotBeEmpty();
        decision.Cautions.ShouldAllBe(caution =>
            text.Contains(Sentences.English.Of(caution), StringComparison.Ordinal)
        );
        text.ShouldEndWith(TreatmentDecision.Notice);
    }

    [Fact]
    public void An_assessment_shows_problems_states_advice_and_pictures()
    {
        foreach (var assessment in AllCharts.Assessments)
        {
            var text = Text(assessment);
            text.ShouldStartWith($"{assessment.History.Machine.Id} {assessment.History.Machine.Name}, ");
            assessment.Problems.ShouldAllBe(one => text.Contains(one.Statement, StringComparison.Ordinal));
            assessment.States.ShouldAllBe(one => text.Contains(one.Measurand.Name, StringComparison.Ordinal));
            assessment
                .Recommendations.SelectMany(one => one.Cautions)
                .ShouldAllBe(caution => text.Contains(Sentences.English.Of(caution), StringComparison.Ordinal));
            text.Contains(TreatmentDecision.Notice, StringComparison.Ordinal)
                .ShouldBe(assessment.Recommendations.Any(one => one.Cautions.Count > 0));
            Pictures(assessment).ShouldBe(AssessmentCharts.Of(assessment).Count);
        }
    }

    [Fact]
    public void Another_type_is_refused_with_those_that_are_shown()
    {
        Should
            .Throw<ArgumentException>(() => ResultHtml.Of("text"))
            .Message.ShouldStartWith("result is of type String; allowed: Chart, CleanupCurve, ConditionAssessment");
        Should.Throw<ArgumentNullException>(() => ResultHtml.Of(null!)).ParamName.ShouldBe("result");
    }
}
