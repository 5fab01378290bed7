extern alias charts;

using charts::OilCondition.Charts;
using charts::OilCondition.Charts.Drawing;
using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.ControlCharts;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Tests.Planning;
using OilCondition.Tests.Sampling;
using OilCondition.Tests.Treatment;
using OilCondition.Treatment;
using ScottPlot;
using UnitsNet;

namespace OilCondition.Tests.Charts;

/// <summary>Saturation, cleanup, cleanliness, control, options and schedule: what is drawn, held against the models.</summary>
public class OtherChartTests
{
    private static readonly Temperature Warm = Temperature.FromDegreesCelsius(60);
    private static readonly Temperature Cold = Temperature.FromDegreesCelsius(20);

    /// <summary>The invented oil holds 400 mg/kg at 60 °C and 100 at 20 °C: of 250 all is dissolved when it runs, 150 drops out.</summary>
    [Fact]
    public void Water_that_drops_out_is_shaded_and_written()
    {
        var chart = SaturationChart.Of(Invented.Curve, Warm, Cold, MassFraction.FromPartsPerMillion(250));

        var area = chart.Layer<Shade>("drops out on cooling: 150 mg/kg");
        area.Outline.Min(spot => spot.X).ShouldBe(20, 1e-9);
        area.Outline.Min(spot => spot.Y).ShouldBe(100, 0.5);
        area.Outline.Max(spot => spot.Y).ShouldBe(250, 0.5);
        chart.Description.ShouldContain("With 250 mg/kg of water, 150 mg/kg drops out on cooling.");
        chart.Words().ShouldContain("drops out on cooling: 150 mg/kg");
    }

    [Fact]
    public void Water_that_is_free_already_is_not_counted_as_dropping_out()
    {
        var chart = SaturationChart.Of(Invented.Curve, Warm, Cold, MassFraction.FromPartsPerMillion(500));

        chart.Description.ShouldContain("Of 500 mg/kg of water 100 mg/kg is free already when it runs.");
        chart.Layer<Shade>("drops out on cooling: 300 mg/kg").Outline.Max(spot => spot.Y).ShouldBe(400, 0.5);
    }

    [Fact]
    public void A_fit_shows_its_band_and_measurements_and_a_curve_alone_has_none()
    {
        var fit = AllCharts.Fit();
        var at = Temperature.FromDegreesCelsius(40);
        var expected = fit.BandAt(at, 0.9, BandKind.Mean);

        var chart = SaturationChart.Of(fit, Temperature.FromDegreesCelsius(80), Temperature.FromDegreesCelsius(5));

        var outline = chart.Layer<Shade>("band of the curve, 90 %").Outline;
        outline
            .Where(spot => Math.Abs(spot.X - 40) < 0.8)
            .Max(spot => spot.Y)
            .ShouldBe(expected.Upper.Content.PartsPerMillion, 12);
        outline
            .Where(spot => Math.Abs(spot.X - 40) < 0.8)
            .Min(spot => spot.Y)
            .ShouldBe(expected.Lower.Content.PartsPerMillion, 12);
        chart.Layer<Marks>("measured saturation").Spots.Count.ShouldBe(5);
        SaturationChart.Of(Invented.Curve, Warm, Cold).Layers<Shade>().ShouldBeEmpty();
    }

    /// <summary>No machine is asked for, so that none runs or stands still on the chart.</summary>
    [Fact]
    public void A_fit_alone_tells_what_was_measured_and_of_no_machine()
    {
        var chart = SaturationChart.Of(AllCharts.Fit());

        chart.Layer<Marks>("measured saturation").Spots.Count.ShouldBe(5);
        chart.Scene.Moments.ShouldBeEmpty();
        chart.Description.ShouldStartWith("Measured from 15 °C to 75 °C: the oil holds ");
        chart.Description.ShouldNotContain("running");
    }

    [Fact]
    public void Outside_its_measurements_the_curve_is_dotted()
    {
        var chart = SaturationChart.Of(
            Invented.Curve,
            Temperature.FromDegreesCelsius(80),
            Temperature.FromDegreesCelsius(30)
        );

        chart.Layer<Trace>("extrapolated").Dash.ShouldBe(Dash.Dots);
        chart.Layer<Trace>("extrapolated").Spots.ShouldContain(spot => spot.X > 60);
        chart.Layer<Trace>("saturation: all that the oil holds dissolved").Spots.ShouldAllBe(spot => spot.X <= 60.001);
        chart.Description.ShouldEndWith("The curve is extrapolated there.");
    }

    [Fact]
    public void A_temperature_beyond_the_range_is_refused_with_the_range()
    {
        var refused = Should.Throw<ArgumentOutOfRangeException>(() =>
            SaturationChart.Of(Invented.Curve, Temperature.FromDegreesCelsius(250), Cold)
        );

        refused.Message.ShouldContain("runningTemperature is 250 °C; allowed: -60 to 200 °C");
    }

    [Fact]
    public void A_cleanup_shows_readings_by_kind_curve_target_and_completion()
    {
        var chart = AllCharts.Cleanup(24);

        chart.Layer<Marks>("titration").Spots.Count.ShouldBe(2);
        chart.Layer<Marks>("titration").Shape.ShouldBe(MarkerShape.FilledSquare);
        chart.Layer<Marks>("sensor: more than (>)").Spots.ShouldAllBe(spot => Math.Abs(spot.Y - 400) < 1e-6);
        chart.Scene.Levels.Single().Text.ShouldBe("target 100 mg/kg");

        // The truth behind the readings: 50 + 550 exp(−t/8 h).
        var curve = chart.Layer<Trace>("fitted curve").Spots;
        curve.ShouldAllBe(spot =>
            Math.Abs(spot.Y - (50 + 550 * Math.Exp(-(spot.X - Drawn.Day(Invented.Start)) * 3))) < 12
        );
        chart.Description.ShouldContain("Completion expected 2025-01-07");
        chart.Scene.Moments.ShouldContain(moment =>
            moment.Text.StartsWith("expected 2025-01-07", StringComparison.Ordinal)
        );
    }

    /// <summary>The truth behind the readings: 50 + 550 exp(−t/8 h), and one reading that is 60 too high.</summary>
    [Fact]
    public void A_curve_alone_shows_its_readings_its_floor_and_what_does_not_fit()
    {
        var curve = CleanupCurve.Fit(
            [.. Enumerable.Range(0, 30).Select(i => Invented.Start.AddHours(i))],
            [.. Enumerable.Range(0, 30).Select(i => 50 + 550 * Math.Exp(-i / 8.0) + (i % 2 - 0.5) + (i == 11 ? 60 : 0))]
        );

        var chart = CleanupChart.Of(curve);

        chart.Layer<Marks>("reading").Spots.Count.ShouldBe(29);
        chart
            .Layer<Marks>("does not fit the others")
            .Spots.Single()
            .Y.ShouldBe(50 + 550 * Math.Exp(-11 / 8.0) + 60.5, 0.01);
        chart
            .Layer<Trace>("fitted curve")
            .Spots.ShouldAllBe(spot =>
                Math.Abs(spot.Y - (50 + 550 * Math.Exp(-(spot.X - Drawn.Day(Invented.Start)) * 3))) < 20
            );
        chart.Scene.Levels.Single().At.ShouldBe(50, 5);
        chart.Description.ShouldBe("30 readings from 2025-01-06 08:00 to 2025-01-07 13:00.");
    }

    [Fact]
    public void A_life_alone_shows_its_readings_its_limit_and_its_dates()
    {
        var life = Drawn.Rising().States[0].Lives.Single().ShouldBeOfType<RemainingLife.Crosses>();

        var chart = LifeChart.Of(life);

        chart.Layer<Marks>("reading").Spots.Count.ShouldBe(13);
        chart.Scene.Levels.Single().At.ShouldBe(0.4);
        chart.Scene.Levels.Single().Text.ShouldBe("limit 0.4 mgKOH/g");
        chart
            .Scene.Moments.Select(moment => moment.At)
            .ShouldBe(
                [Drawn.Day(Drawn.Rising().Options.AsOf), Drawn.Day(life.P10), Drawn.Day(life.P90), Drawn.Day(life.P50)],
                1e-6
            );
        chart.Description.ShouldStartWith(
            $"The limit 0.4 mgKOH/g is passed by {life.P10:yyyy-MM-dd} in one case of ten"
        );
    }

    [Fact]
    public void Readings_while_the_oil_warms_up_are_marked_as_not_fitted()
    {
        var chart = AllCharts.WarmingCleanup();

        chart.Layer<Marks>("sensor: before the fit").Shape.ShouldBe(MarkerShape.Eks);
        chart.Layer<Marks>("sensor: before the fit").Spots.Count.ShouldBeGreaterThan(2);
    }

    /// <summary>Upper counts of the scale numbers 16, 14 and 11 after the table of ISO 4406: 640, 160 and 20 per mL.</summary>
    [Fact]
    public void Counts_stand_beside_the_counts_that_the_target_allows()
    {
        var chart = CleanlinessChart.Of("oil", new ParticleLevels(700, 100, 20), CleanlinessCode.Parse("16/14/11"));

        chart.Layer<Strokes>("not to be exceeded").Lines.Select(line => line.From.Y).ShouldBe([640, 160, 20]);
        chart.Layer<Marks>("counted").Spots.Select(spot => spot.Y).ShouldBe([700, 100, 20]);
        chart.Description.ShouldBe("ISO 4406 17/14/11. Asked for: 16/14/11; exceeded at ≥4 µm(c).");
        chart.Words().ShouldContain("640");
    }

    /// <summary>Scale number 18 begins above 1300 and ends at 2500 per mL (ISO 4406).</summary>
    [Fact]
    public void A_code_alone_is_drawn_as_wide_as_it_knows()
    {
        var box = CleanlinessChart
            .Of("oil", CleanlinessCode.Parse("18/16/13"))
            .Layer<Boxes>("what the scale number allows for")
            .Corners[0];

        (box.From.Y, box.To.Y).ShouldBe((1300, 2500));
    }

    [Fact]
    public void Too_many_to_count_exceeds_what_is_asked_for() =>
        CleanlinessChart
            .Of("oil", CleanlinessCode.Parse("*/16/13"), CleanlinessCode.Parse("18/16/13"))
            .Description.ShouldEndWith("exceeded at ≥4 µm(c).");

    [Fact]
    public void A_control_chart_marks_what_the_chart_signals()
    {
        double[] sound = [4, 5, 6, 5, 4, 6, 5, 5, 4, 6];
        var individuals = IndividualsChart.Of(sound);
        double[] values = [5, 6, 14];

        var chart = ControlChart.Of(individuals, AllCharts.Values(Measurands.Iron, values), "M1");

        chart.Layer<Marks>("signal").Spots.Single().Y.ShouldBe(14);
        chart.Layer<Trace>("control limits").Spots.ShouldAllBe(spot => spot.Y == individuals.UpperLimit);
        chart
            .Scene.Levels.Select(level => level.At)
            .ShouldBe([individuals.Mean, individuals.UpperLimit, individuals.LowerLimit]);
        chart.Description.ShouldContain("Signals: 1 of 3, the first on 2025-01-20.");
    }

    [Fact]
    public void Cumulative_sums_of_a_fall_are_drawn_downwards()
    {
        var cusum = CusumChart.ForOneSigma(10, 1);
        double[] values = [10, 7, 6, 5];

        var chart = ControlChart.Of(cusum, AllCharts.Values(Measurands.Iron, values));

        chart
            .Layer<Marks>("sum below the target, drawn downwards")
            .Spots.Select(spot => spot.Y)
            .ShouldBe(cusum.Plot(values).Select(point => -point.Lower));
        chart.Layer<Marks>("signal").Spots.ShouldAllBe(spot => spot.Y < -cusum.DecisionInterval);
    }

    [Fact]
    public void Bounds_are_left_out_of_a_control_chart_and_counted()
    {
        var series = MeasurandSeries.FromColumns(
            Measurands.Iron,
            [Invented.Start, Invented.Start.AddDays(1)],
            [5, 2],
            [Qualifier.None, Qualifier.LessThan]
        );

        var chart = ControlChart.Of(new EwmaChart(5, 1), series);

        chart.Layer<Marks>("weighted moving average").Spots.Count.ShouldBe(1);
        chart.Description.ShouldEndWith("1 readings that are only bounds (< or >) are left out.");
    }

    [Fact]
    public void Options_are_bars_of_the_decision_and_the_recommended_one_is_named()
    {
        var decision = AllCharts.Decided.First(one => one.Assessment.History.Machine.Id == "HP-TGB1");
        var choice = decision.Choice.ShouldNotBeNull();
        var band = choice.Assessment!.Band!;

        var chart = OptionsChart.OfHours(decision);

        chart.Layer<Boxes>("recommended").Corners.Single().To.X.ShouldBe(band.TimeP50!.Value.TotalHours);
        chart.Description.ShouldContain($"Recommended: {choice.Name}");
        chart.Words().ShouldContain(word => word.StartsWith("► ", StringComparison.Ordinal));
        chart.Words().ShouldContain(word => word.StartsWith("recommended: ", StringComparison.Ordinal));
        var whiskers = chart.Layer<Strokes>("one to nine cases in ten").Lines;
        whiskers[0].From.X.ShouldBe(band.TimeP10!.Value.TotalHours);
        whiskers[0].To.X.ShouldBe(band.TimeP90!.Value.TotalHours);
    }

    [Fact]
    public void Costs_have_the_currency_of_the_station_and_cautions_stand_beside_options()
    {
        var decision = AllCharts.Decided.First(one => one.Choice?.Cost?.P50 is not null);

        var chart = OptionsChart.OfCost(decision);

        chart.Layer<Boxes>("recommended").Corners.Single().To.X.ShouldBe(decision.Choice!.Cost!.P50!.Value);
        chart.Scene.X.Label.ShouldBe($"cost, {decision.Choice.Cost.Currency}");
        chart.Description.ShouldContain("local codes and licensed people");
    }

    [Fact]
    public void A_comparison_is_bars_of_its_bands_and_recommends_nothing()
    {
        var comparison = AllCharts.Compared();
        var bands = comparison.Rows.Select(row => row.Band!).ToList();
        bands.Count(band => band.TimeP50 is not null).ShouldBe(3);
        bands.Count(band => band.TimeP90 is not null).ShouldBe(1);

        var chart = OptionsChart.OfHours(comparison);

        chart
            .Layer<Boxes>("possible")
            .Corners.Select(box => (box.From.X, box.To.X))
            .ShouldBe(bands.Take(3).Select(band => (0.0, band.TimeP50!.Value.TotalHours)));
        var whisker = chart.Layer<Strokes>("one to nine cases in ten").Lines;
        whisker.Count.ShouldBe(3, "one line and its two ends");
        whisker[0].From.X.ShouldBe(bands[0].TimeP10!.Value.TotalHours);
        whisker[0].To.X.ShouldBe(bands[0].TimeP90!.Value.TotalHours);
        chart
            .Scene.Levels.Select(level => (level.At, level.Text.Split("; ")[^1]))
            .ShouldBe([(0, "meets the target"), (1, "not sure"), (2, "not sure"), (3, "does not reach the target")]);
        chart.Description.ShouldStartWith("Quickest: drain and refill, 4 h; meets the target. The makers of");
        chart.Words().ShouldNotContain(word => word.Contains("recommended", StringComparison.Ordinal));
    }

    [Fact]
    public void A_comparison_in_which_nothing_gets_by_says_so()
    {
        OptionsChart
            .OfHours(TreatmentComparison.Of(Sump.Job(900, 10), new VacuumDehydration(Sump.Unit())))
            .Description.ShouldStartWith("Nothing at hand does it. The makers of");
        OptionsChart
            .OfHours(TreatmentComparison.Of(Sump.Job(900, 10)))
            .ToString()
            .ShouldBe("Ways to treat, hours. No options to compare.");
    }

    [Fact]
    public void A_schedule_has_a_row_a_machine_with_its_stretches_and_its_due_date()
    {
        var schedule = Plant
            .Planned([Plant.Task("A", 5, due: 16, connect: 1, disconnect: 1), Plant.Task("B", 7, due: 10)])
            .Schedule;

        var chart = ScheduleChart.Of("VDU-1", schedule.Visits, ["C"]);

        chart.Layer<Boxes>("treatment").Corners.Count.ShouldBe(2);
        chart
            .Layer<Boxes>("treatment")
            .Corners.Select(box => box.From.X)
            .ShouldBe(schedule.Visits.Select(visit => Drawn.Day(visit.ProcessStart)));
        chart
            .Layer<Marks>("due")
            .Spots.Select(spot => spot.X)
            .ShouldBe(schedule.Visits.Select(visit => Drawn.Day(visit.Task.Due)));
        chart.Words().ShouldContain("A");
        chart.Words().ShouldContain("B");
        chart.Description.ShouldStartWith("Visits: 2, from 2026-03-02 06:00");
        chart.Description.ShouldEndWith("Left out: C.");
    }

    [Fact]
    public void A_late_visit_is_told_by_how_much()
    {
        var chart = ScheduleChart.Of("VDU-1", Plant.Planned([Plant.Task("A", 5, due: 3)]).Schedule.Visits);

        chart.Words().ShouldContain("due 2026-03-02, 2 h late");
        chart.Description.ShouldEndWith("late: 1.");
    }
}
