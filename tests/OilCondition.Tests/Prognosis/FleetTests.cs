using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Prognosis;

public class FleetTests
{
    [Fact]
    public void Other_machines_narrow_the_forecast_of_a_short_series()
    {
        var fleet = FleetKnowledge.From([
            .. Enumerable.Range(10, 8).Select(seed => InventedSeries.Wandering(seed, 16)),
        ]);
        fleet.IsLearnt.ShouldBeTrue();
        fleet.Machines.ShouldBe(8);

        // Truth: 0.016 per 60 days; spread of a mean of 15 steps with scatter 0.005 is 0.0013 per 60 days.
        fleet.Prior.Lesson!.Drift.ShouldBe(0.016 / 60, 0.0015 / 60);
        fleet.Prior.Lesson!.DriftStandardDeviation.ShouldBeInRange(0.0005 / 60, 0.003 / 60);
        fleet.Prior.Weights.Sum().ShouldBe(1, 1e-9);

        // Of five readings: the late end has a bound more often, and the middle is nearer to when it came.
        var (bounded, boundedAlone) = (0, 0);
        var (off, offAlone) = (0.0, 0.0);
        for (var seed = 100; seed < 120; seed++)
        {
            var series = InventedSeries.Wandering(seed, 5);
            var truth = InventedSeries.Wandering(seed, 80).Points.First(point => point.Reading.Value > 0.4).At;
            Ask(InventedSeries.Default(series, 0.4), ref boundedAlone, ref offAlone);
            Ask(Taught(series, 0.4, fleet), ref bounded, ref off);

            void Ask(RemainingLife life, ref int count, ref double days)
            {
                count += life is RemainingLife.Crosses ? 1 : 0;
                var found = ((RemainingLife.Forecast)life).Crossing.TryAt(0.5, out var median);
                days += found ? Math.Abs((median - truth).TotalDays) : 3000;
            }
        }

        bounded.ShouldBeGreaterThan(boundedAlone);
        off.ShouldBeLessThan(0.6 * offAlone);
    }

    [Fact]
    public void Four_machines_give_a_forecast_from_three_readings()
    {
        // Without them three readings are too few. The truth is 0.1 a year from 0.1, so that 0.4 comes after three years.
        var fleet = FleetKnowledge.From([
            .. Enumerable.Range(30, 4).Select(seed => InventedSeries.Wandering(seed, 16)),
        ]);
        fleet.IsLearnt.ShouldBeTrue();
        LifeForecast.FewestReadingsWithFleet.ShouldBe(3);
        var inside = 0;
        const int Runs = 40;
        for (var seed = 300; seed < 300 + Runs; seed++)
        {
            var series = InventedSeries.Wandering(seed, 3);
            InventedSeries
                .Default(series, 0.4)
                .ShouldBeOfType<RemainingLife.TooFewReadings>()
                .Needed.ShouldBe(LifeForecast.FewestReadings);
            var truth = InventedSeries.Wandering(seed, 80).Points.First(point => point.Reading.Value > 0.4).At;
            var life = Taught(series, 0.4, fleet).ShouldBeAssignableTo<RemainingLife.Forecast>()!;
            var chance = life.Crossing.ChanceBefore(truth);
            inside += chance is >= 0.05 and <= 0.95 ? 1 : 0;
            life.Crossing.TryAt(0.5, out var median).ShouldBeTrue();
            (median - Invented.Start).TotalDays.ShouldBeInRange(600, 1600);
        }

        inside.ShouldBeGreaterThanOrEqualTo(34); // 90 % less two standard errors
        Taught(InventedSeries.Wandering(300, 2), 0.4, fleet)
            .ShouldBeOfType<RemainingLife.TooFewReadings>()
            .Needed.ShouldBe(3);
    }

    [Fact]
    public void Series_that_are_all_alike_teach_nothing()
    {
        var same = InventedSeries.Wandering(4, 12);
        var fleet = FleetKnowledge.From([same, same, same, same, same]);
        fleet.IsLearnt.ShouldBeFalse();
        Taught(InventedSeries.Wandering(1, 4), 0.4, fleet)
            .ShouldBeOfType<RemainingLife.TooFewReadings>()
            .Needed.ShouldBe(5);

        // The same readings on another machine teach a drift as sure as it can be, with a scatter that does not vary.
        var one = InventedSeries.Wandering(9, 12);
        var alike = FleetKnowledge.From([same, same, same, one]);
        alike.IsLearnt.ShouldBeTrue();
        Taught(InventedSeries.Wandering(1, 4), 0.4, alike).ShouldBeAssignableTo<RemainingLife.Forecast>();
    }

    [Fact]
    public void Coverage_holds_with_a_fleet_as_prior()
    {
        // 400 machines of the same kind, each with its own drift, five readings; seed in the series.
        var fleet = FleetKnowledge.From([
            .. Enumerable.Range(10, 8).Select(seed => InventedSeries.Wandering(seed, 16)),
        ]);
        var inside = 0;
        var early = 0;
        const int Runs = 400;
        for (var seed = 1000; seed < 1000 + Runs; seed++)
        {
            // The rest of the same walk tells when it crossed.
            var whole = InventedSeries.Wandering(seed, 80);
            var crossed = whole.Points.First(point => point.Reading.Value > 0.4).At;
            var series = InventedSeries.Wandering(seed, 5);
            var life = (RemainingLife.Forecast)
                LifeForecast.Of(
                    series,
                    0.4,
                    LimitSide.Upper,
                    InventedSeries.End(series),
                    new LifeOptions(fleet: fleet)
                );
            var chance = life.Crossing.ChanceBefore(crossed.AddDays(-30));
            inside += chance is >= 0.05 and <= 0.95 ? 1 : 0;
            early += chance < 0.05 ? 1 : 0;
        }

        (100.0 * inside / Runs).ShouldBeGreaterThan(85);
        (100.0 * early / Runs).ShouldBeLessThan(10);
    }

    [Fact]
    public void Too_few_machines_teach_nothing_and_mixed_ones_are_refused()
    {
        var few = FleetKnowledge.From([InventedSeries.Wandering(1), InventedSeries.Wandering(2)]);
        few.IsLearnt.ShouldBeFalse();
        few.Prior.ShouldBe(DegradationPrior.Default);
        Should.Throw<ArgumentException>(() => FleetKnowledge.From([])).ParamName.ShouldBe("fleet");
        var iron = InventedSeries.Of(Measurands.Iron, [0, 1], [1, 2]);
        Should.Throw<ArgumentException>(() => FleetKnowledge.From([InventedSeries.Wandering(1), iron]));
        Should
            .Throw<ArgumentException>(() =>
                LifeForecast.Of(iron, 5, LimitSide.Upper, Invented.Start.AddDays(9), new LifeOptions(fleet: few))
            )
            .ParamName.ShouldBe("options");
    }

    [Fact]
    public void Lives_of_a_fleet_speak_for_a_machine_without_a_trend()
    {
        // NIST/SEMATECH e-Handbook 8.4.1.3: shape 1.72, scale 606.5 h; B10 164.0 h (computed from it).
        double[] failed = [54, 187, 216, 240, 244, 335, 361, 373, 375, 386];
        var fleet = FleetLife.From(
            [.. failed.Select(hours => TimeSpan.FromHours(hours))],
            [.. Enumerable.Repeat(TimeSpan.FromHours(500), 10)]
        );
        fleet.IsDetermined.ShouldBeTrue();
        fleet.AgeAt(Ratio.FromPercent(10)).TotalHours.ShouldBe(164.022, 1e-2);
        fleet.MeanResidualLife(TimeSpan.FromHours(500)).TotalHours.ShouldBe(303.117, 1e-2);

        // R(600)/R(500) = 0.7677 (life.csv WB1.Rcond).
        var forecast = fleet.Forecast(TimeSpan.FromHours(500), Invented.Start);
        forecast.ChanceBefore(Invented.Start.AddHours(100)).ShouldBe(1 - 0.767726207, 1e-3);
        forecast.TryAt(0.5, out var median).ShouldBeTrue();
        forecast.ChanceBefore(median).ShouldBe(0.5, 1e-6);

        var nothing = FleetLife.From([], []);
        nothing.IsDetermined.ShouldBeFalse();
        Should.Throw<InvalidOperationException>(() => nothing.Forecast(TimeSpan.FromHours(1), Invented.Start));
    }

    private static RemainingLife Taught(MeasurandSeries series, double limit, FleetKnowledge fleet) =>
        LifeForecast.Of(series, limit, LimitSide.Upper, InventedSeries.End(series), new LifeOptions(fleet: fleet));
}
