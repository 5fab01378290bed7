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
        fleet.Prior.Drift.ShouldBe(0.016 / 60, 0.0015 / 60);
        fleet.Prior.DriftStandardDeviation.ShouldBeInRange(0.0005 / 60, 0.003 / 60);
        fleet.Prior.Weights.Sum().ShouldBe(1, 1e-9);

        var narrower = 0;
        for (var seed = 100; seed < 120; seed++)
        {
            var series = InventedSeries.Wandering(seed, 5);
            var alone = Width(InventedSeries.Default(series, 0.4));
            var taught = Width(
                LifeForecast.Of(series, 0.4, LimitSide.Upper, InventedSeries.End(series), new LifeOptions(fleet: fleet))
            );
            narrower += taught < alone ? 1 : 0;
        }

        narrower.ShouldBeGreaterThanOrEqualTo(17);

        static double Width(RemainingLife life) =>
            life is RemainingLife.Crosses crosses ? (crosses.P90 - crosses.P10).TotalDays : 1e6;
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
        forecast.ChanceBefore(Invented.Start.AddHours(100)).ShouldBe(1 - 0.767726207, 1e-8);
        forecast.TryAt(0.5, out var median).ShouldBeTrue();
        forecast.ChanceBefore(median).ShouldBe(0.5, 1e-6);

        var nothing = FleetLife.From([], []);
        nothing.IsDetermined.ShouldBeFalse();
        Should.Throw<InvalidOperationException>(() => nothing.Forecast(TimeSpan.FromHours(1), Invented.Start));
    }
}
