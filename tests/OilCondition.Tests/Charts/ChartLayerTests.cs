extern alias charts;

using charts::OilCondition.Charts;
using charts::OilCondition.Charts.Drawing;
using charts::OilCondition.Charts.Pictures;
using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.ControlCharts;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Tests.Sampling;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Charts;

/// <summary>What the pictures of docs/charts.md do not show: other units, other zones, other sides, odd readings.</summary>
public class ChartLayerTests
{
    private static readonly Measurand Acid = Measurands.AcidNumber;
    private static readonly ChartOptions Us = new(ChartTexts.English.In(Sentences.Units.UsCustomary));

    /// <summary>A sum of 5 °C is one of 9 °F: a difference is not shifted by the zero of the scale.</summary>
    [Fact]
    public void Sums_of_a_temperature_are_differences_in_degrees_fahrenheit()
    {
        var cusum = new CusumChart(40, 0.5, 5);

        var chart = ControlChart.Of(cusum, AllCharts.Values(Measurands.OilTemperature, [40, 43, 44]), options: Us);

        chart.Scene.Levels.Select(level => level.Text).ShouldBe(["signal above 9 °F", "signal below -9 °F"]);
        chart.Scene.Levels.Select(level => level.At).ShouldBe([9, -9], 1e-9);

        // 43 − 40 − 0.5 and 2.5 + 44 − 40 − 0.5, in °C.
        chart.Layer<Marks>("sum above the target").Spots.Select(spot => spot.Y).ShouldBe([0, 4.5, 10.8], 1e-9);
    }

    [Fact]
    public void Limits_of_a_moving_average_are_those_of_the_latest_reading()
    {
        var ewma = new EwmaChart(5, 1);
        double[] values = [5, 6, 5, 6];

        var chart = ControlChart.Of(ewma, AllCharts.Values(Measurands.Iron, values));

        chart.Scene.Levels[1].At.ShouldBe(ewma.Plot(values)[3].UpperLimit);
        chart.Scene.Levels[1].At.ShouldNotBe(ewma.Plot(values)[0].UpperLimit);
    }

    /// <summary>Of 464 mg/kg, known to some 46, 400 are dissolved at 60 °C: what is left is known to tens.</summary>
    [Fact]
    public void A_part_of_the_water_is_known_no_better_than_all_of_it() =>
        SaturationChart
            .Of(
                Invented.Curve,
                Temperature.FromDegreesCelsius(60),
                Temperature.FromDegreesCelsius(20),
                MassFraction.FromPartsPerMillion(464)
            )
            .Description.ShouldContain("Of 464 mg/kg of water 60 mg/kg is free already when it runs.");

    [Fact]
    public void Marks_stand_at_the_days_of_the_stated_offset()
    {
        var options = new ChartOptions(utcOffset: TimeSpan.FromHours(6));

        TrendChart
            .Of(Drawn.Rising(), Acid, options)
            .Layer<Marks>("reading")
            .Spots[0]
            .X.ShouldBe(Drawn.Day(Invented.Start) + 0.25, 1e-9);
    }

    [Fact]
    public void Between_powers_of_ten_stand_2_and_5_where_there_is_room() =>
        NumberAxis
            .Around("", [1.5, 90], true, ChartTexts.English)
            .Ticks(12)
            .Select(tick => tick.Text)
            .ShouldBe(["2", "5", "10", "20", "50", "100"]);

    [Fact]
    public void A_rate_of_change_is_no_level_of_the_reading()
    {
        var rate = new Limit(
            Acid,
            LimitKind.RateOfChange,
            new LimitBand(null, 0.1),
            null,
            Drawn.AnySource,
            per: TimeSpan.FromDays(30)
        );
        var readings = Enumerable.Range(0, 4).Select(i => (30.0 * i, new Reading(0.1 + 0.01 * i)));

        TrendChart.Of(Drawn.Assess(Acid, readings, [rate]), Acid).Scene.Levels.ShouldBeEmpty();
    }

    [Fact]
    public void A_limit_of_the_machines_own_history_says_so()
    {
        var own = new Limit(Acid, LimitKind.OwnHistory, new LimitBand(95, null), null, Drawn.AnySource);
        var readings = Enumerable.Range(0, 20).Select(i => (30.0 * i, new Reading(0.1 + 0.01 * (i * 7 % 3))));

        var level = TrendChart.Of(Drawn.Assess(Acid, readings, [own]), Acid).Scene.Levels.Single();

        level.Text.ShouldEndWith(", by own history");
        level.Dash.ShouldBe(Dash.Dots);
    }

    [Fact]
    public void A_reading_of_another_oil_in_an_earlier_charge_is_set_aside()
    {
        var history = Invented.History(
            Enumerable
                .Range(0, 10)
                .Select(i =>
                    Invented.Sample(
                        i,
                        30 * i,
                        (Measurands.Viscosity40, new Reading(i == 6 ? 321 : 46 + 0.1 * (i % 3))),
                        (Measurands.Zinc, new Reading(i == 6 ? 15 : 410 + 4 * (i % 4))),
                        (Measurands.Particles4, new Reading(i == 6 ? 9000 : 700)),
                        (Measurands.Particles6, new Reading(i == 6 ? 9000 : 100)),
                        (Measurands.Particles14, new Reading(i == 6 ? 9000 : 10))
                    )
                ),
            new OilChange(Invented.Start.AddDays(285))
        );
        ConditionAssessment At(double days) =>
            ConditionAssessor.Assess(
                history,
                new LimitSet(
                    "invented",
                    [
                        Drawn.Above(Measurands.Viscosity40, 50, 60),
                        Drawn.Above(Measurands.Particles4, 640, 1300),
                        Drawn.Above(Measurands.Particles4, 320, 1300),
                    ]
                ),
                new AssessmentOptions(Invented.Start.AddDays(days))
            );

        TrendChart.Of(At(290), Measurands.Viscosity40).Layer<Marks>("set aside").Spots.Single().Y.ShouldBe(321);

        // The bottle of the day before the last is not the oil of this machine; of two limits the stricter one is asked for.
        var cleanliness = CleanlinessChart.Of(At(185));
        cleanliness.Layer<Marks>("counted").Spots.Select(spot => spot.Y).ShouldBe([700, 100, 10]);
        cleanliness.Layer<Strokes>("not to be exceeded").Lines.Single().From.Y.ShouldBe(320);
    }

    [Fact]
    public void A_reading_of_0_is_told_of_where_a_scale_of_logarithms_cannot_show_it()
    {
        var assessment = Drawn.Assess(
            Measurands.Particles4,
            Enumerable.Range(0, 9).Select(i => (30.0 * i, new Reading(i == 4 ? 0 : 100))),
            [Drawn.Above(Measurands.Particles4, 640, 1300)]
        );

        TrendChart
            .Of(assessment, Measurands.Particles4)
            .Description.ShouldEndWith("Readings of 0 stand at the foot of the scale.");
        TrendChart.Of(Drawn.Rising(), Acid).Description.ShouldNotContain("stand at the foot");
    }

    [Fact]
    public void The_trend_of_a_logarithm_is_drawn_as_the_reading_that_it_means()
    {
        var line = TrendChart.Of(Doubling(), Measurands.Particles4).Layer<Trace>("trend, rising").Spots;

        line[0].Y.ShouldBe(100, 8);
        line[^1].Y.ShouldBe(800, 60);
    }

    [Fact]
    public void A_bound_does_not_move_the_trend_line()
    {
        var readings = Enumerable
            .Range(0, 13)
            .Select(i => (30.0 * i, new Reading(0.1 + 0.01 * i + (i % 2 == 0 ? 0.004 : -0.004))))
            .Concat(Enumerable.Range(0, 36).Select(i => (10.0 * i + 5, new Reading(0.5, Qualifier.LessThan))));

        var line = TrendChart.Of(Drawn.Assess(Acid, readings, [Drawn.Above(Acid, 0.6, 0.8)]), Acid).Layers<Trace>();

        line.First(one => one.Key == "trend, rising").Spots[12].Y.ShouldBe(0.16, 0.01);
    }

    [Fact]
    public void The_trend_line_begins_where_the_chart_does()
    {
        var from = Invented.Start.AddDays(200);

        TrendChart
            .Of(Drawn.Rising(), Acid, from: from)
            .Layer<Trace>("trend, rising")
            .Spots.ShouldAllBe(spot => spot.X >= Drawn.Day(from));
    }

    /// <summary>Where the line has passed the limit and the latest reading has not, the fan begins at the reading.</summary>
    [Theory]
    [InlineData(0.3, 0.3)]
    [InlineData(0.5, 0.224)]
    public void The_fan_begins_on_the_sound_side_of_its_limit(double lineEnd, double expected)
    {
        var state = Drawn.Rising().States[0];
        var line = new Trace(null, Ink.Blue, Dash.Solid, [new Spot(0, 0.1), new Spot(1, lineEnd)]);

        Fan(state, line, daysAhead: 3000).Outline[0].Y.ShouldBe(expected, 1e-9);
    }

    /// <summary>Where its latest date lies beyond the axis, the fan is cut there: on a scale of logarithms by the same share of the logarithm.</summary>
    [Fact]
    public void The_fan_is_straight_on_a_scale_of_logarithms()
    {
        var state = Doubling().States[0];
        var life = state.Lives.OfType<RemainingLife.Crosses>().First();
        var last = state.Trend.Judged.Points[^1];
        var to = life.P50 - (life.P50 - life.P10) / 2;

        var outline = Fan(state, null, (to - last.At).TotalDays, life).Outline;

        var part = (to - last.At) / (life.P90 - last.At);
        outline[^1].Y.ShouldBe(last.Reading.Value * Math.Pow(life.Limit / last.Reading.Value, part), 2);
    }

    [Fact]
    public void A_forecast_without_a_latest_date_goes_on_beyond_the_axis()
    {
        var seen = 0;
        foreach (var (assessment, life) in Forecasts().Where(one => one.Life is RemainingLife.NoLatestDate))
        {
            var chart = TrendChart.Of(assessment, life.Series.Measurand);
            var fan = chart
                .Layers<Shade>()
                .SingleOrDefault(area => area.Key == "forecast: limit passed from the earliest date (10 %) on");
            if (fan is null)
            {
                continue;
            }

            var (start, first, end) = (fan.Outline[0], fan.Outline[1], fan.Outline[^1]);
            end.X.ShouldBe(chart.Scene.X.To);
            end.Y.ShouldNotBe(first.Y);
            end.Y.ShouldBe(start.Y, Math.Abs(first.Y - start.Y) * 0.01);
            seen++;
        }

        seen.ShouldBeGreaterThan(0);
    }

    [Fact]
    public void One_reading_leaves_its_limits_on_the_chart()
    {
        var chart = TrendChart.Of(Drawn.Assess(Acid, [(0, new Reading(0.12))], [Drawn.Above(Acid, 0.3, 0.4)]), Acid);

        chart.Scene.Levels.ShouldAllBe(level => chart.Scene.Y.Shows(level.At));
    }

    [Fact]
    public void A_limit_beyond_the_axis_has_no_line()
    {
        var assessment = Drawn.Assess(
            Acid,
            Enumerable.Range(0, 6).Select(i => (30.0 * i, new Reading(0.1 + 0.001 * i))),
            [Drawn.Above(Acid, null, 40)]
        );

        TrendChart.Of(assessment, Acid).ToSvg().ShouldNotContain(Ink.Vermilion.Hex, Case.Insensitive);
        TrendChart.Of(Drawn.Rising(), Acid).ToSvg().ShouldContain(Ink.Vermilion.Hex, Case.Insensitive);
    }

    [Fact]
    public void A_treatment_that_is_to_end_later_is_drawn_to_now()
    {
        var run = new TreatmentRun(
            Invented.Start.AddDays(340),
            Invented.Start.AddDays(380),
            TreatmentKind.FineFiltration,
            Measurands.Particles4,
            640
        );

        TrendChart
            .Of(Drawn.Rising(events: run), Acid)
            .Layer<Boxes>("treatment")
            .Corners.Single()
            .To.X.ShouldBe(Drawn.Day(Invented.Start.AddDays(365)));
    }

    /// <summary>A cleanup to a code is drawn by the size that rules it: here that of 6 µm(c).</summary>
    [Fact]
    public void A_cleanup_to_a_code_shows_the_counts_of_its_ruling_size()
    {
        var (watched, readings) = AllCharts.CodeCleanup("20/14/14", 5000, 4000, 50);
        var status = CleanupMonitor.Of(watched, readings).Status();
        status.RulingPart.ShouldBe(Measurands.Particles6);

        CleanupChart.Of("M1", status, readings).Layer<Marks>("sample").Spots[0].Y.ShouldBe(4000);
    }

    [Fact]
    public void Scale_numbers_are_thinned_where_there_are_many() =>
        CleanlinessChart.Of("oil", new ParticleLevels(2_000_000, 40, 0.01)).Scene.Levels.Count.ShouldBeInRange(5, 14);

    /// <summary>Scale number 0 ends at 0.01 per mL; a class is half as wide as the next (ISO 4406).</summary>
    [Fact]
    public void The_lowest_scale_number_is_a_class_like_the_others()
    {
        var box = CleanlinessChart
            .Of("oil", CleanlinessCode.Parse("0/0/0"))
            .Layer<Boxes>("what the scale number allows for")
            .Corners[0];

        (box.From.Y, box.To.Y).ShouldBe((0.005, 0.01));
    }

    [Fact]
    public void A_cost_without_a_price_of_a_part_is_a_least_one()
    {
        var said = AllCharts
            .Decided.SelectMany(decision =>
                decision.Options.Zip(
                    OptionsChart.OfCost(decision).Scene.Levels,
                    (option, level) => (option, level.Text)
                )
            )
            .Where(one => one.option.Cost?.P50 is not null)
            .ToList();

        said.ShouldNotBeEmpty();
        said.ShouldAllBe(one =>
            one.Text.Contains("at least ", StringComparison.Ordinal) != one.option.Cost!.IsComplete
        );
    }

    /// <summary>A visit under way has no way that is known: it begins where it was connected. Another planner's visits will do.</summary>
    [Fact]
    public void A_visit_under_way_begins_where_it_was_connected()
    {
        var chart = ScheduleChart.Of("VDU-1", [new Visit(Invented.Start, IsRunning: true)]);

        chart.Description.ShouldBe("Visits: 1, from 2025-01-06 10:00 to 2025-01-06 20:00; late: 0.");
        chart.Layer<Boxes>("travel").Corners.ShouldBeEmpty();
        ScheduleChart
            .Of("VDU-1", [new Visit(Invented.Start, IsRunning: false)])
            .Description.ShouldStartWith("Visits: 1, from 2025-01-06 08:00");
    }

    [Fact]
    public void Charts_of_an_alarm_come_first()
    {
        var history = Invented.History(
            Enumerable
                .Range(0, 3)
                .Select(i =>
                    Invented.Sample(i, 30 * i, (Measurands.WaterContent, new Reading(50)), (Acid, new Reading(0.5)))
                )
        );
        var assessment = ConditionAssessor.Assess(
            history,
            new LimitSet("invented", [Drawn.Above(Measurands.WaterContent, 200, 500), Drawn.Above(Acid, 0.3, 0.4)]),
            new AssessmentOptions(Invented.Start.AddDays(61))
        );

        AssessmentCharts.Of(assessment)[0].Title.ShouldEndWith(": acid number");
        AssessmentCharts.Of(assessment, assessment.Problems[0]).Single().Title.ShouldEndWith(": acid number");
    }

    private static IEnumerable<(ConditionAssessment Assessment, RemainingLife Life)> Forecasts() =>
        AllCharts
            .Assessments.Append(Wide(Acid, 0.1, 0.03))
            .Append(Wide(Measurands.Particles4, 100, 60))
            .SelectMany(assessment =>
                assessment.States.SelectMany(state =>
                    state
                        .Lives.Where(life => life is RemainingLife.Crosses or RemainingLife.NoLatestDate)
                        .Select(life => (assessment, life))
                )
            );

    /// <summary>A slow rise in a wide scatter: it may go on, or not.</summary>
    private static ConditionAssessment Wide(Measurand measurand, double level, double scatter) =>
        Drawn.Assess(
            measurand,
            Enumerable
                .Range(0, 16)
                .Select(i => (30.0 * i, new Reading(level * (1 + 0.02 * i) + scatter * ((i * 7 % 5) / 5.0 - 0.4)))),
            [Drawn.Above(measurand, 2 * level, 4 * level)]
        );

    /// <summary>Counts that double every 120 days.</summary>
    private static ConditionAssessment Doubling() =>
        Drawn.Assess(
            Measurands.Particles4,
            Enumerable
                .Range(0, 13)
                .Select(i => (30.0 * i, new Reading(100 * Math.Pow(2, i / 4.0) * (i % 2 == 0 ? 1.02 : 0.98)))),
            [Drawn.Above(Measurands.Particles4, 6400, 13_000)]
        );

    private static Shade Fan(MeasurandState state, Trace? line, double daysAhead, RemainingLife? life = null)
    {
        var last = state.Trend.Judged.Points[^1].At;
        return ForecastFan
            .Of(
                new Page(ChartTexts.English, TimeSpan.Zero),
                new Shown(ChartTexts.English, state.Measurand),
                state.Trend,
                life ?? state.Lives[0],
                line,
                new TimeAxis(last.AddDays(-400), last.AddDays(daysAhead), TimeSpan.Zero, ChartTexts.English)
            )!
            .Layers.OfType<Shade>()
            .Single();
    }

    private sealed record Visit(DateTimeOffset Leave, bool IsRunning) : TreatmentDecision.IVisit
    {
        public string MachineId => "M1";

        public DateTimeOffset Arrive => Leave.AddHours(1);

        public DateTimeOffset ConnectStart => Leave.AddHours(2);

        public DateTimeOffset ProcessStart => Leave.AddHours(3);

        public DateTimeOffset ProcessEnd => Leave.AddHours(10);

        public DateTimeOffset DisconnectStart => Leave.AddHours(11);

        public DateTimeOffset DisconnectEnd => Leave.AddHours(12);

        public DateTimeOffset Due => Leave.AddHours(20);

        public TimeSpan SlackToDue => Due - ProcessEnd;
    }
}
