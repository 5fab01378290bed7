using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Advice;

/// <summary>Forecasts of hand-made histories, held against what came by counting them here once more.</summary>
public class BacktestForecastTests
{
    private const double Alarm = 40;

    private static readonly LimitSet IronLimits = new(
        "invented",
        [
            new Limit(
                Measurands.Iron,
                LimitKind.Absolute,
                new LimitBand(30, Alarm),
                null,
                Source.CommonPractice("invented")
            ),
        ]
    );

    private static DateTimeOffset Day(double day) => Invented.Start.AddDays(day);

    private static OilHistory History(IEnumerable<double> iron, params OilEvent[] events) =>
        Invented.History(
            iron.Select((value, i) => Invented.Sample(i, 30 * i, (Measurands.Iron, new Reading(value)))),
            events
        );

    private static Backtest Of(OilHistory history) =>
        Backtest.Of([history], IronLimits, new BacktestOptions(Day(0), Day(2000)));

    /// <summary>What was forecast on a day, asked of the forecast itself.</summary>
    private static CrossingForecast? ForecastOn(OilHistory history, double day)
    {
        var known = history.Until(Day(day));
        var series = known.SampleSeries(Measurands.Iron, known.ChargeAt(Day(day)).Since, Day(day));
        return (LifeForecast.Of(series, Alarm, LimitSide.Upper, Day(day)) as RemainingLife.Forecast)?.Crossing;
    }

    /// <summary>1.5 mg/kg more each month with scatter of 1: 40 mg/kg is passed with the sample of day 750.</summary>
    private static readonly double[] Rising =
    [
        .. Enumerable.Range(0, 30).Select(i => 4 + 1.5 * i + new[] { 0.8, -0.9, 0.3, -0.4, 0.2 }[i % 5]),
    ];

    /// <summary>A slow rise that grows five times as fast after a year: what was forecast in that year comes too early. It ends two samples after the crossing.</summary>
    private static readonly double[] Hastening =
    [
        .. Enumerable
            .Range(0, 28)
            .Select(i => 4 + 0.4 * i + 2 * Math.Max(0, i - 11) + new[] { 0.3, -0.4, 0.1, -0.2, 0.2 }[i % 5]),
    ];

    [Fact]
    public void A_steady_rise_is_counted_day_by_day() => CountedDayByDay(Rising).ShouldBe(1);

    [Fact]
    public void A_rise_that_hastens_is_counted_day_by_day() => CountedDayByDay(Hastening).ShouldBeInRange(0.05, 0.99);

    [Fact]
    public void What_is_forecast_after_a_crossing_does_not_count()
    {
        var upToCrossing = Hastening.Take(Array.FindIndex(Hastening, value => value > Alarm) + 1).ToList();
        var andBackInside = upToCrossing.Concat(Enumerable.Range(0, 10).Select(i => 30 + i % 3 * 0.1));

        var total = Of(History(andBackInside)).Total;

        total.Held.Part.ShouldBe(Of(History(upToCrossing)).Total.Held.Part, 1e-12);
        total.Held.Part.ShouldBeInRange(0.05, 0.99);
    }

    private static double CountedDayByDay(double[] iron)
    {
        var history = History(iron);
        var backtest = Of(history);

        var crossingAt = backtest.Crossings.ShouldHaveSingleItem().Point.At;
        crossingAt.ShouldBe(Day(30 * Array.FindIndex(iron, value => value > Alarm)));
        var forecasts = Enumerable
            .Range(0, 30)
            .Select(i => 30.0 * i)
            .Where(day => Day(day) < crossingAt)
            .Select(day => (Day: day, Forecast: ForecastOn(history, day)))
            .Where(one => one.Forecast is not null)
            .Select(one => (one.Day, Forecast: one.Forecast!))
            .ToList();
        forecasts.Count.ShouldBeGreaterThan(10);
        var chances = forecasts.ConvertAll(one => one.Forecast.ChanceBefore(crossingAt));
        double Share(Func<double, bool> counts) => (double)chances.Count(counts) / chances.Count;
        backtest.Total.Held.Count.ShouldBe(1);
        backtest.Total.Held.Part.ShouldBe(Share(chance => chance is >= 0.05 and <= 0.95), 1e-9);
        backtest.Total.CrossedBefore.Part.ShouldBe(Share(chance => chance < 0.05), 1e-9);
        backtest.Total.CrossedAfter.Part.ShouldBe(Share(chance => chance > 0.95), 1e-9);
        backtest.Total.RunningPastInterval.Count.ShouldBe(0);

        // Width and score by their definitions, in days.
        var ends = forecasts.ConvertAll(one =>
        {
            var isP5 = one.Forecast.TryAt(0.05, out var p5);
            var isP95 = one.Forecast.TryAt(0.95, out var p95);
            const double Years = 30 * 365.25;
            var lower = isP5 ? (p5 - Day(one.Day)).TotalDays : Years;
            var upper = isP95 ? (p95 - Day(one.Day)).TotalDays : Years;
            var came = (crossingAt - Day(one.Day)).TotalDays;
            return (
                Width: isP95 ? upper - lower : double.PositiveInfinity,
                Score: upper - lower + 20 * Miss(lower, upper, came)
            );
        });
        var widths = ends.Select(one => one.Width).Order().ToList();
        var median = (widths[(widths.Count - 1) / 2] + widths[widths.Count / 2]) / 2;
        if (double.IsInfinity(median))
        {
            backtest.Total.MedianWidth.ShouldBeNull();
        }
        else
        {
            backtest.Total.MedianWidth!.Value.TotalDays.ShouldBe(median, 1e-3);
        }

        backtest.Total.IntervalScoreDays!.Value.ShouldBe(ends.Average(one => one.Score), 1e-3);

        // Days whose planning horizon of 180 days ends with the last sample, or before.
        var within = forecasts.Where(one => one.Day + 180 <= 30 * (iron.Length - 1)).ToList();
        backtest.Total.CameWithinHorizon.Count.ShouldBe(1);
        backtest.Total.ForetoldWithinHorizon.ShouldBe(
            within.Average(one => one.Forecast.ChanceBefore(Day(one.Day + 180))),
            1e-9
        );
        backtest.Total.CameWithinHorizon.Part.ShouldBe(
            within.Average(one => crossingAt <= Day(one.Day + 180) ? 1.0 : 0),
            1e-9
        );
        return backtest.Total.Held.Part;
    }

    private static double Miss(double lower, double upper, double came) =>
        Math.Max(0, Math.Max(lower - came, came - upper));

    [Fact]
    public void A_leap_comes_before_the_intervals_of_quiet_readings()
    {
        var quiet = Enumerable.Range(0, 20).Select(i => 5 + (i % 3) / 10.0);

        var total = Of(History(quiet.Append(90))).Total;

        // Five readings do not exclude that something begins: the first days are held.
        total.CrossedBefore.Part.ShouldBeGreaterThan(0.8);
        total.CrossedBefore.Count.ShouldBe(1);
        (total.Held.Part + total.CrossedBefore.Part).ShouldBe(1, 1e-12);
        total.Silent.Part.ShouldBe(1);
    }

    [Fact]
    public void What_does_not_cross_is_counted_as_running_with_its_chance()
    {
        var history = History(Enumerable.Range(0, 20).Select(i => 5 + (i % 3) / 10.0));
        var total = Of(history).Total;

        total.Held.Count.ShouldBe(0);
        total.MedianWidth.ShouldBeNull();
        total.IntervalScoreDays.ShouldBeNull();
        total.RunningPastInterval.Count.ShouldBe(1);
        total.RunningPastInterval.Part.ShouldBe(0);
        total.RunningChance!.Value.ShouldBeLessThan(0.05);

        // Days up to 570; of these the horizon of 180 days is on record up to day 390.
        var chances = Enumerable
            .Range(0, 14)
            .Select(i => 30.0 * i)
            .Select(day => ForecastOn(history, day)?.ChanceBefore(Day(day + 180)))
            .OfType<double>()
            .ToList();
        chances.Count.ShouldBeGreaterThan(5);
        total.CameWithinHorizon.Count.ShouldBe(1);
        total.CameWithinHorizon.Part.ShouldBe(0);
        total.ForetoldWithinHorizon.ShouldBe(chances.Average(), 1e-9);
    }

    /// <summary>The oil is changed before the rise reaches its limit, so that nobody knows when it would have.</summary>
    [Fact]
    public void Stretches_before_and_after_an_oil_change_count_once_each()
    {
        var readings = Rising.Take(20).Concat(Rising.Take(20));

        var total = Of(History(readings, new OilChange(Day(595)))).Total;

        total.Silent.Count.ShouldBe(0);
        total.RunningPastInterval.Count.ShouldBe(2);
        total.CameWithinHorizon.Count.ShouldBe(2);
        total.CameWithinHorizon.Part.ShouldBe(0);
    }

    [Fact]
    public void Many_refits_of_one_rise_count_as_one()
    {
        var fine = Backtest.Of(
            [History(Rising)],
            IronLimits,
            new BacktestOptions(Day(0), Day(2000), step: TimeSpan.FromDays(5))
        );

        fine.DayCount.ShouldBe(175);
        fine.Total.Held.Count.ShouldBe(1);
        fine.Total.CameWithinHorizon.Count.ShouldBe(1);
    }

    /// <summary>The forecasts of a fast rise that then stops: its interval has passed, and nothing has crossed.</summary>
    [Fact]
    public void A_rise_that_stops_lets_its_intervals_pass()
    {
        var rise = Enumerable.Range(0, 9).Select(i => 2 + 4.0 * i + i % 2 * 0.1);
        var stopped = Enumerable.Range(0, 40).Select(i => 34 + i % 2 * 0.1);

        var total = Of(History(rise.Concat(stopped))).Total;

        total.Silent.Count.ShouldBe(0);
        total.RunningPastInterval.Part.ShouldBeGreaterThan(0);
    }
}
