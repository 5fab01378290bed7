extern alias charts;

using charts::OilCondition.Charts;
using charts::OilCondition.Charts.Drawing;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Tests.Sampling;
using ScottPlot;
using UnitsNet;

namespace OilCondition.Tests.Charts;

/// <summary>What a trend chart shows is what the assessment says: dates, slopes and figures are held against it, not against the chart's own.</summary>
public class TrendChartTests
{
    private const string Fan = "forecast: dates at which the limit is passed (10 to 90 %)";

    private static readonly Measurand Acid = Measurands.AcidNumber;

    [Fact]
    public void Every_judged_reading_has_a_mark_at_its_date_and_value()
    {
        var chart = TrendChart.Of(Drawn.Rising(), Acid);

        var marks = chart.Layer<Marks>("reading");
        marks.Shape.ShouldBe(MarkerShape.FilledCircle);
        marks.Spots.Count.ShouldBe(13);
        marks.Spots[2].X.ShouldBe(Drawn.Day(Invented.Start.AddDays(60)));
        marks.Spots[2].Y.ShouldBe(0.124, 1e-12);
    }

    [Fact]
    public void A_bound_points_to_where_the_true_value_lies()
    {
        var assessment = Drawn.Assess(
            Acid,
            [
                (0, new Reading(0.1)),
                (30, new Reading(0.05, Qualifier.LessThan)),
                (60, new Reading(0.5, Qualifier.GreaterThan)),
                (90, new Reading(0.1)),
            ],
            [Drawn.Above(Acid, 0.3, 0.4)]
        );

        var chart = TrendChart.Of(assessment, Acid);

        chart.Layer<Marks>("reading: less than (<)").Shape.ShouldBe(MarkerShape.OpenTriangleDown);
        chart.Layer<Marks>("reading: less than (<)").Spots.Single().Y.ShouldBe(0.05);
        chart.Layer<Marks>("reading: more than (>)").Shape.ShouldBe(MarkerShape.OpenTriangleUp);
        chart.Layer<Marks>("reading").Spots.Count.ShouldBe(2);
    }

    [Fact]
    public void A_wild_reading_is_marked_as_set_aside()
    {
        var assessment = Drawn.Assess(
            Acid,
            Enumerable.Range(0, 13).Select(i => (30.0 * i, new Reading(i == 6 ? 0.9 : 0.1 + 0.002 * (i % 3)))),
            [Drawn.Above(Acid, 2, 3)]
        );
        assessment.States[0].Trend.Judged.LeftOut.Single().LeftOut.ShouldBe(LeftOutReason.Wild);

        var chart = TrendChart.Of(assessment, Acid);

        chart.Layer<Marks>("set aside").Spots.Single().Y.ShouldBe(0.9);
        chart.Layer<Marks>("reading").Spots.ShouldNotContain(spot => spot.Y == 0.9);
    }

    [Fact]
    public void Readings_before_an_oil_change_are_open_and_the_change_has_its_line()
    {
        var change = Invented.Start.AddDays(100);

        var chart = TrendChart.Of(Drawn.Rising(events: new OilChange(change)), Acid);

        chart.Layer<Marks>("earlier oil, or before a treatment").Spots.Count.ShouldBe(4);
        chart.Layer<Marks>("reading").Spots.Count.ShouldBe(9);
        chart.Scene.Moments.Single(moment => moment.Text == "oil change").At.ShouldBe(Drawn.Day(change));
        chart.Words().ShouldContain("oil change");
    }

    [Fact]
    public void The_trend_line_has_the_slope_of_the_verdict()
    {
        var assessment = Drawn.Rising();
        var verdict = assessment.States[0].Trend.Assessment;
        verdict.Verdict.ShouldBe(TrendVerdict.Rising);

        var line = TrendChart.Of(assessment, Acid).Layer<Trace>("trend, rising").Spots;

        ((line[^1].Y - line[0].Y) / (line[^1].X - line[0].X)).ShouldBe(verdict.Slope, 1e-9);

        // As many readings above the line as below it.
        var middle = line[line.Count / 2];
        middle.Y.ShouldBe(0.16, 0.004);
    }

    [Fact]
    public void Without_a_trend_there_is_no_trend_line()
    {
        var assessment = Drawn.Assess(
            Acid,
            Enumerable.Range(0, 12).Select(i => (30.0 * i, new Reading(0.1 + 0.01 * (i % 2)))),
            [Drawn.Above(Acid, 0.3, 0.4)]
        );

        TrendChart.Of(assessment, Acid).Layers<Trace>().ShouldNotContain(line => line.Dash == Dash.Solid);
    }

    [Fact]
    public void The_fan_ends_on_the_limit_at_the_dates_of_the_life()
    {
        var assessment = Drawn.Rising();
        var life = assessment.States[0].Lives.Single().ShouldBeOfType<RemainingLife.Crosses>();

        var chart = TrendChart.Of(assessment, Acid);

        var outline = chart.Layer<Shade>(Fan).Outline;
        outline.ShouldContain(new Spot(Drawn.Day(life.P10), 0.4));
        outline.ShouldContain(new Spot(Drawn.Day(life.P90), 0.4));
        chart.Layer<Trace>("forecast, 50 %").Spots[^1].ShouldBe(new Spot(Drawn.Day(life.P50), 0.4));
        chart.Scene.X.Shows(Drawn.Day(life.P90)).ShouldBeTrue();
    }

    [Fact]
    public void The_description_has_reading_state_and_dates_of_the_assessment()
    {
        var assessment = Drawn.Rising();
        var life = assessment.States[0].Lives.Single().ShouldBeOfType<RemainingLife.Crosses>();

        TrendChart
            .Of(assessment, Acid)
            .Description.ShouldBe(
                "0.224 mgKOH/g on 2026-01-01: normal; rising, 0.01 mgKOH/g per 30 days (13 readings). "
                    + $"The alarm figure 0.4 mgKOH/g is passed by {life.P10:yyyy-MM-dd} in one case of ten, by {life.P50:yyyy-MM-dd} in five, by {life.P90:yyyy-MM-dd} in nine."
            );
    }

    [Fact]
    public void A_crossing_in_the_past_is_told_and_has_no_fan()
    {
        var chart = TrendChart.Of(Drawn.Rising(alarm: 0.2), Acid);

        chart.Description.ShouldContain("alarm;");
        chart.Description.ShouldContain("The alarm figure 0.2 mgKOH/g is passed already.");
        chart.Layers<Shade>().ShouldBeEmpty();
    }

    [Fact]
    public void Limits_of_both_sides_have_lines_and_words()
    {
        var assessment = Drawn.Assess(
            Measurands.Viscosity40,
            Enumerable.Range(0, 6).Select(i => (30.0 * i, new Reading(46 + 0.1 * (i % 2)))),
            [Drawn.Above(Measurands.Viscosity40, 48, 50), Drawn.Below(Measurands.Viscosity40, 44, 42)]
        );

        var chart = TrendChart.Of(assessment, Measurands.Viscosity40);

        chart
            .Scene.Levels.Select(level => (level.At, level.Text, level.Dash))
            .ShouldBe(
                [
                    (48, "alert above 48 mm²/s", Dash.Long),
                    (50, "alarm above 50 mm²/s", Dash.Solid),
                    (44, "alert below 44 mm²/s", Dash.Long),
                    (42, "alarm below 42 mm²/s", Dash.Solid),
                ],
                ignoreOrder: true
            );
        chart.Scene.Levels.ShouldAllBe(level => chart.Scene.Y.Shows(level.At));
    }

    [Fact]
    public void A_limit_far_off_leaves_the_readings_their_room_and_stands_at_the_edge()
    {
        var assessment = Drawn.Assess(
            Acid,
            Enumerable.Range(0, 6).Select(i => (30.0 * i, new Reading(0.1 + 0.001 * i))),
            [Drawn.Above(Acid, null, 40)]
        );

        var chart = TrendChart.Of(assessment, Acid);

        chart.Scene.Y.To.ShouldBeLessThan(0.2);
        chart.Words().ShouldContain("↑ alarm above 40 mgKOH/g");
    }

    [Fact]
    public void A_figure_of_the_oils_new_value_is_drawn_as_the_reading_that_it_means()
    {
        // The oil's new viscosity is 46 mm²/s: 10 % above it is 50.6.
        var limit = new Limit(
            Measurands.Viscosity40,
            LimitKind.PercentChangeFromNew,
            new LimitBand(null, 10),
            null,
            Drawn.AnySource
        );
        var assessment = Drawn.Assess(Measurands.Viscosity40, [(0, new Reading(46))], [limit]);

        TrendChart.Of(assessment, Measurands.Viscosity40).Scene.Levels.Single().Text.ShouldBe("alarm above 50.6 mm²/s");
    }

    [Fact]
    public void A_treatment_is_a_stretch_from_its_start_to_its_end()
    {
        var run = new TreatmentRun(
            Invented.Start.AddDays(200),
            Invented.Start.AddDays(230),
            TreatmentKind.FineFiltration,
            Measurands.Particles4,
            640
        );

        var stretch = TrendChart.Of(Drawn.Rising(events: run), Acid).Layer<Boxes>("treatment").Corners.Single();

        stretch.From.X.ShouldBe(Drawn.Day(run.At));
        stretch.To.X.ShouldBe(Drawn.Day(run.EndedAt!.Value));
    }

    /// <summary>60 °C is 140 °F by the definition of the scale.</summary>
    [Fact]
    public void Us_customary_units_are_shown_where_they_differ()
    {
        var assessment = Drawn.Assess(
            Measurands.OilTemperature,
            Enumerable.Range(0, 5).Select(i => (30.0 * i, new Reading(50.0))),
            [Drawn.Above(Measurands.OilTemperature, null, 60)]
        );

        var chart = TrendChart.Of(
            assessment,
            Measurands.OilTemperature,
            new ChartOptions(ChartTexts.English.In(Sentences.Units.UsCustomary))
        );

        chart.Scene.Levels.Single().Text.ShouldBe("alarm above 140 °F");
        chart.Layer<Marks>("reading").Spots[0].Y.ShouldBe(122, 1e-9);
        chart.Scene.Y.Label.ShouldBe("oil temperature, °F");
    }

    /// <summary>Eight in the evening at Greenwich is the next day in a zone of five hours more; the axis says which zone it is.</summary>
    [Fact]
    public void Dates_are_those_of_the_offset_that_the_axis_states()
    {
        var assessment = Drawn.Assess(Acid, [(0.5, new Reading(0.1))], [Drawn.Above(Acid, 0.3, 0.4)], nowDays: 0.5);

        var here = TrendChart.Of(assessment, Acid);
        var there = TrendChart.Of(assessment, Acid, new ChartOptions(utcOffset: TimeSpan.FromHours(5)));

        here.Scene.Moments[0].Text.ShouldBe("now 2025-01-06");
        here.Scene.X.Label.ShouldBe("date, UTC+00:00");
        there.Scene.Moments[0].Text.ShouldBe("now 2025-01-07");
        there.Scene.X.Label.ShouldBe("date, UTC+05:00");
    }

    [Fact]
    public void Nothing_read_is_a_chart_that_says_so()
    {
        var chart = TrendChart.Of(Drawn.Assess(Acid, [], [Drawn.Above(Acid, 0.3, 0.4)]), Acid);

        chart.Description.ShouldBe("No readings.");
        chart.Words().ShouldBe(["M1 invented machine: acid number", "No readings."]);
    }

    [Fact]
    public void A_measurand_without_a_limit_is_refused_by_name()
    {
        var refused = Should.Throw<ArgumentException>(() => TrendChart.Of(Drawn.Rising(), Measurands.Iron));

        refused.Message.ShouldStartWith("measurand is iron; the assessment has limits for acid-number.");
    }

    [Fact]
    public void A_sudden_change_is_said_as_the_assessment_says_it()
    {
        var assessment = Drawn.Assess(
            Measurands.WaterContent,
            Enumerable.Range(0, 14).Select(i => (30.0 * i, new Reading(i < 12 ? 50 + i % 3 : 400 + i % 3))),
            [Drawn.Above(Measurands.WaterContent, 500, 900)]
        );
        assessment.Findings.ShouldContain(finding => finding.Code == FindingCode.SuddenChange);

        TrendChart
            .Of(assessment, Measurands.WaterContent)
            .Description.ShouldContain("changed at once from about 50 to 400 mg/kg (14 readings)");
    }

    [Fact]
    public void The_beginning_can_be_chosen()
    {
        var chart = TrendChart.Of(Drawn.Rising(), Acid, from: Invented.Start.AddDays(200));

        chart.Layer<Marks>("reading").Spots.Count.ShouldBe(6);
        chart.Scene.X.From.ShouldBeGreaterThan(Drawn.Day(Invented.Start.AddDays(150)));
    }

    /// <summary>Thirteen readings, 30 days apart: their middle is day 180, and the lines of the interval part by its width times 180 days at both ends.</summary>
    [Fact]
    public void A_trend_alone_has_its_readings_its_line_and_the_slopes_of_its_interval()
    {
        var trend = Drawn.Rising().States[0].Trend;
        var interval = trend.Assessment.SlopeInterval;

        var chart = TrendChart.Of(trend);

        chart
            .Layer<Marks>("reading")
            .Spots.Select(spot => spot.Y)
            .ShouldBe(trend.Judged.Points.Select(point => point.Reading.Value));
        var line = chart.Layer<Trace>("trend, rising").Spots;
        (line[^1].Y - line[0].Y).ShouldBe(360 * trend.Assessment.Slope, 1e-9);
        var slopes = chart.Layers<Shade>().Single();
        slopes.Key.ShouldBe("slopes of the interval, 99.6 %");
        foreach (var end in new[] { line[0], line[^1] })
        {
            var at = slopes.Outline.Where(spot => spot.X == end.X).Select(spot => spot.Y).ToList();
            (at.Max() - at.Min()).ShouldBe(180 * (interval.Upper!.Value - interval.Lower!.Value), 1e-9);
            at.Max().ShouldBeGreaterThan(end.Y);
            at.Min().ShouldBeLessThan(end.Y);
        }

        chart.Title.ShouldBe("acid number");
        chart.Description.ShouldBe("acid number: rising, 0.01 mgKOH/g per 30 days (13 readings).");
        chart.Scene.Y.Label.ShouldBe("acid number, mgKOH/g");
    }

    [Fact]
    public void A_series_without_an_even_trend_has_its_readings_and_no_line()
    {
        double[] level = [.. Enumerable.Range(0, 20).Select(i => 0.1 + 0.01 * (i * 7 % 5))];
        var chart = TrendChart.Of(SeriesTrend.Of(AllCharts.Values(Measurands.AcidNumber, level)));

        chart.Layers<Trace>().ShouldBeEmpty();
        chart.Layers<Shade>().ShouldBeEmpty();
        chart.Layer<Marks>("reading").Spots.Count.ShouldBe(20);
        chart.Description.ShouldStartWith("acid number: no significant trend (20 readings)");
        TrendChart
            .Of(SeriesTrend.Of(AllCharts.Values(Measurands.AcidNumber, [])))
            .ToString()
            .ShouldBe("acid number. No readings.");
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(3, false)]
    public void Readings_of_0_on_a_logarithmic_scale_are_told(double first, bool isTold)
    {
        double[] counts = [first, .. Enumerable.Range(0, 12).Select(i => 100 + 10.0 * (i % 3))];
        TrendChart
            .Of(SeriesTrend.Of(AllCharts.Values(Measurands.Particles4, counts)))
            .Description.Contains("Readings of 0 stand at the foot", StringComparison.Ordinal)
            .ShouldBe(isTold);
    }

    [Fact]
    public void A_wild_reading_of_a_trend_alone_is_set_aside()
    {
        double[] level = [.. Enumerable.Range(0, 20).Select(i => i == 9 ? 3 : 0.1 + 0.01 * (i * 7 % 5))];
        var chart = TrendChart.Of(SeriesTrend.Of(AllCharts.Values(Measurands.AcidNumber, level)));

        chart.Layer<Marks>("set aside").Spots.Single().Y.ShouldBe(3);
        chart.Layer<Marks>("reading").Spots.Count.ShouldBe(19);
        chart.Scene.Y.To.ShouldBeGreaterThan(3);
    }
}
