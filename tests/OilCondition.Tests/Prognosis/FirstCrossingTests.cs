using OilCondition.Prognosis;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Prognosis;

public class FirstCrossingTests
{
    private static readonly MeasurandSeries Series = InventedSeries.Wandering(5);
    private static readonly DateTimeOffset Now = InventedSeries.End(Series);

    [Fact]
    public void Shares_and_dates_are_those_of_simulated_races()
    {
        // Second route: a date from each forecast by its own quantiles, 4000 races, seed 3.
        RemainingLife.Forecast[] lives =
        [
            (RemainingLife.Forecast)InventedSeries.Default(Series, 0.32),
            (RemainingLife.Forecast)InventedSeries.Default(Series, 0.36),
            (RemainingLife.Forecast)InventedSeries.Default(Series, 0.5),
        ];
        var first = FirstCrossing.Of(lives, Now);
        var random = new Random(3);
        var wins = new int[3];
        var dates = new List<DateTimeOffset>();
        const int Races = 4000;
        for (var race = 0; race < Races; race++)
        {
            var dated = lives
                .Select(life =>
                    life.Crossing.TryAt(0.0005 + 0.999 * random.NextDouble(), out var at) ? at : DateTimeOffset.MaxValue
                )
                .ToList();
            wins[dated.IndexOf(dated.Min())]++;
            dates.Add(dated.Min());
        }

        first.Shares.Sum(share => share.Chance).ShouldBe(1 - first.ChanceOfNone, 2e-3);
        first.Shares[0].Life.ShouldBe(lives[0]);
        foreach (var share in first.Shares)
        {
            share.Chance.ShouldBe(wins[Array.IndexOf(lives, share.Life)] / (double)Races, 0.03);
        }

        first.TryAt(0.5, out var median).ShouldBeTrue();
        dates.Count(date => date <= median).ShouldBeInRange(1880, 2120);
        first.ChanceBefore(median).ShouldBe(0.5, 1e-3);
    }

    [Fact]
    public void Shares_are_the_integral_of_the_chances_of_being_first()
    {
        // Second route: ∫ Π (1 − Fj) dFi in 20000 steps.
        RemainingLife.Forecast[] lives =
        [
            (RemainingLife.Forecast)InventedSeries.Default(Series, 0.34),
            (RemainingLife.Forecast)InventedSeries.Default(Series, 0.4),
            (RemainingLife.Forecast)InventedSeries.Default(InventedSeries.Wandering(8), 0.38),
        ];
        var first = FirstCrossing.Of(lives, Now);
        var shares = new double[3];
        var before = new double[3];
        const int Steps = 20000;
        for (var step = 1; step <= Steps; step++)
        {
            var at = Now.AddDays(LifeForecast.HorizonDays * Math.Pow((double)step / Steps, 3));
            double[] after = Array.ConvertAll(lives, life => life.Crossing.ChanceBefore(at));
            for (var i = 0; i < 3; i++)
            {
                var others = 1.0;
                for (var j = 0; j < 3; j++)
                {
                    others *= j == i ? 1 : 1 - (before[j] + after[j]) / 2;
                }

                shares[i] += (after[i] - before[i]) * others;
            }

            before = after;
        }

        foreach (var (life, chance) in first.Shares)
        {
            chance.ShouldBe(shares[Array.IndexOf(lives, life)], 4e-3); // steps of a twenty-fifth
        }

        first.Shares.Sum(share => share.Chance).ShouldBe(1 - first.ChanceOfNone, 2e-3);
        first.Shares.Select(share => share.Chance).ShouldBeInOrder(SortDirection.Descending);
        foreach (var days in new[] { 30.0, 200, 600, 3000 })
        {
            var none = lives.Aggregate(
                1.0,
                (intact, life) => intact * (1 - life.Crossing.ChanceBefore(Now.AddDays(days)))
            );
            first.ChanceBefore(Now.AddDays(days)).ShouldBe(1 - none, 0.008); // between two points of the common law
        }
    }

    [Fact]
    public void Two_equal_limits_share_equally_and_come_sooner_than_one()
    {
        var life = InventedSeries.Default(Series, 0.35).ShouldBeOfType<RemainingLife.Crosses>();
        var first = FirstCrossing.Of([life, life], Now);
        first.Shares[0].Chance.ShouldBe(first.Shares[1].Chance, 1e-12);
        first.TryAt(0.5, out var median).ShouldBeTrue();
        median.ShouldBeLessThan(life.P50);
        FirstCrossing.Of([life], Now).TryAt(0.5, out var alone).ShouldBeTrue();
        alone.ShouldBe(life.P50, TimeSpan.FromMinutes(5));
    }

    [Fact]
    public void A_limit_that_is_crossed_comes_first_and_nothing_to_forecast_is_said()
    {
        var crossed = InventedSeries.Default(Series, 0.11);
        var first = FirstCrossing.Of([InventedSeries.Default(Series, 0.35), crossed], Now);
        first.IsCrossed.ShouldBeTrue();
        first.Shares.Single().Life.ShouldBe(crossed);
        first.ChanceBefore(Now).ShouldBe(1);
        first.ChanceOfNone.ShouldBe(0);
        FirstCrossing.Of([crossed, crossed], Now).Shares.Select(share => share.Chance).ShouldBe([0.5, 0.5]);

        var none = FirstCrossing.Of([], Now);
        none.Shares.ShouldBeEmpty();
        none.ChanceOfNone.ShouldBe(1);
        none.TryAt(0.5, out _).ShouldBeFalse();
        Should.Throw<ArgumentException>(() => FirstCrossing.Of([InventedSeries.Default(Series, 0.35)], Now.AddDays(1)));
    }
}
