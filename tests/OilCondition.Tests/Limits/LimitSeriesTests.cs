using OilCondition.Limits;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Limits;

/// <summary>Limits over a series of readings: dead band, confirmations, rate of change.</summary>
public class LimitSeriesTests
{
    private static readonly Source AnySource = Source.CommonPractice("invented");

    private static MeasurandSeries Water(params double[] readings) =>
        Water([.. readings.Select(value => new Reading(value))]);

    private static MeasurandSeries Water(params Reading[] readings) =>
        Invented
            .History(readings.Select((reading, i) => Invented.Sample(i, 30 * i, (Measurands.WaterContent, reading))))
            .SampleSeries(Measurands.WaterContent, Invented.Start, Invented.Start.AddDays(1000));

    private static Limit Upper(double deadBand = 0, int confirmations = 1) =>
        new(
            Measurands.WaterContent,
            LimitKind.Absolute,
            new LimitBand(200, 500),
            null,
            AnySource,
            deadBand,
            confirmations
        );

    private static LimitState StateOf(Limit limit, params double[] readings) =>
        limit.Evaluate(Invented.Oil, Water(readings)).State;

    [Fact]
    public void Without_a_dead_band_the_state_falls_as_soon_as_the_reading_does() =>
        StateOf(Upper(), 100, 210, 199).ShouldBe(LimitState.Normal);

    [Fact]
    public void Within_the_dead_band_the_state_stays()
    {
        StateOf(Upper(20), 100, 210, 199).ShouldBe(LimitState.Alert);
        StateOf(Upper(20), 100, 210, 181).ShouldBe(LimitState.Alert);
        StateOf(Upper(20), 100, 210, 180).ShouldBe(LimitState.Normal);
        StateOf(Upper(20), 100, 199).ShouldBe(LimitState.Normal); // it never rose
    }

    [Fact]
    public void From_alarm_it_falls_to_alert_with_the_alert_figure()
    {
        var evaluation = Upper(20).Evaluate(Invented.Oil, Water(510, 490, 470));

        evaluation.State.ShouldBe(LimitState.Alert);
        evaluation.Figure.ShouldBe(200);
        evaluation.Since.ShouldBe(Invented.Start);
        StateOf(Upper(20), 510, 490).ShouldBe(LimitState.Alarm);
    }

    [Fact]
    public void What_fell_to_normal_counts_anew_from_its_next_exceedance()
    {
        Upper().Evaluate(Invented.Oil, Water(210, 100)).Since.ShouldBeNull();
        Upper().Evaluate(Invented.Oil, Water(210, 100, 220)).Since.ShouldBe(Invented.Start.AddDays(60));
    }

    [Fact]
    public void A_first_exceedance_waits_for_its_confirmation_and_is_told()
    {
        var first = Upper(confirmations: 2).Evaluate(Invented.Oil, Water(100, 520));

        first.State.ShouldBe(LimitState.Normal);
        first.Reason.ShouldBe(LimitReason.AwaitingConfirmation);
        first.Pending.ShouldBe(LimitState.Alarm);
        first.Figure.ShouldBe(500);

        var second = Upper(confirmations: 2).Evaluate(Invented.Oil, Water(100, 520, 530));
        second.State.ShouldBe(LimitState.Alarm);
        second.Reason.ShouldBe(LimitReason.Compared);
        second.Since.ShouldBe(Invented.Start.AddDays(30));
    }

    [Fact]
    public void Two_readings_in_different_zones_confirm_the_lower_one() =>
        StateOf(Upper(confirmations: 2), 520, 230).ShouldBe(LimitState.Alert);

    [Fact]
    public void A_reading_between_two_exceedances_starts_the_count_anew() =>
        StateOf(Upper(confirmations: 2), 520, 100, 520).ShouldBe(LimitState.Normal);

    [Fact]
    public void A_bound_that_does_not_decide_is_said_but_takes_no_alarm_away()
    {
        var below = new Reading(300, Qualifier.LessThan);

        Upper().Evaluate(Invented.Oil, Water(new Reading(100), below)).Reason.ShouldBe(LimitReason.BoundDoesNotDecide);
        Upper().Evaluate(Invented.Oil, Water(new Reading(510), below)).State.ShouldBe(LimitState.Alarm);

        // Below 200 less the dead band of 20 the bound decides; within the dead band it takes no alarm away either.
        LimitState After(double atMost) =>
            Upper(20).Evaluate(Invented.Oil, Water(new Reading(510), new Reading(atMost, Qualifier.LessThan))).State;
        After(190).ShouldBe(LimitState.Alarm);
        After(180).ShouldBe(LimitState.Normal);
    }

    [Fact]
    public void A_lower_limit_mirrors_the_upper_one()
    {
        var limit = new Limit(
            Measurands.Viscosity40,
            LimitKind.PercentChangeFromNew,
            null,
            new LimitBand(-5, -10),
            AnySource,
            deadBand: 1
        );
        var series = Invented
            .History(
                new[] { 46.0, 43.6, 44.5 }.Select(
                    (v, i) => Invented.Sample(i, i, (Measurands.Viscosity40, new Reading(v)))
                )
            )
            .SampleSeries(Measurands.Viscosity40, Invented.Start, Invented.Start.AddDays(9));

        // 46 less 5 % is 43.7; the dead band ends at 44.7.
        var evaluation = limit.Evaluate(Invented.Oil, series);
        evaluation.State.ShouldBe(LimitState.Alert);
        evaluation.Figure!.Value.ShouldBe(43.7, 1e-9);
        evaluation.Lower!.Alarm!.Value.ShouldBe(41.4, 1e-9);
    }

    [Fact]
    public void A_rate_of_change_is_scaled_to_its_span()
    {
        var limit = Rate(TimeSpan.FromDays(100), 40, 80);

        // 100 to 115 mg/kg in 30 days are 50 per 100 days, by hand (x2 - x1) / (t2 - t1) x span.
        var evaluation = limit.Evaluate(Invented.Oil, Water(100, 115));
        evaluation.Rate!.Value.ShouldBe(50, 1e-9);
        evaluation.State.ShouldBe(LimitState.Alert);
        evaluation.Figure.ShouldBe(40);
        limit.Evaluate(Invented.Oil, Water(100, 115, 115)).State.ShouldBe(LimitState.Normal);
    }

    [Fact]
    public void A_rate_per_oil_hours_does_not_count_the_rest()
    {
        var limit = Rate(TimeSpan.FromHours(1000), 40, 80, overOilHours: true);
        var samples = new[] { (0.0, 100.0, 0.0), (30, 115, 300), (60, 116, 302) }.Select(
            (one, i) =>
                Invented.Sample(
                    i,
                    one.Item1,
                    (Measurands.WaterContent, new Reading(one.Item2)),
                    (Measurands.OilHours, new Reading(one.Item3))
                )
        );
        var series = Invented
            .History(samples)
            .SampleSeries(Measurands.WaterContent, Invented.Start, Invented.Start.AddDays(99));

        // 15 mg/kg in 300 h are 50 per 1000 h; 1 mg/kg in 2 h are 500 per 1000 h.
        limit.Evaluate(Invented.Oil, series).Rate!.Value.ShouldBe(500, 1e-6);
        limit.Evaluate(Invented.Oil, Water(100, 115)).Reason.ShouldBe(LimitReason.TooFewReadings);
    }

    [Theory]
    [InlineData(0.2, 0)]
    [InlineData(0.9, 0)]
    [InlineData(1, -300 / 29.0)] // from 110 on day 1 to 100 on day 30
    public void Two_readings_of_one_day_make_no_rate(double second, double expected)
    {
        var limit = Rate(TimeSpan.FromDays(30), 10, 20);
        var samples = new[] { 0, second, 30 }.Select(
            (day, i) => Invented.Sample(i, day, (Measurands.WaterContent, new Reading(i == 1 ? 110 : 100)))
        );
        var series = Invented
            .History(samples)
            .SampleSeries(Measurands.WaterContent, Invented.Start, Invented.Start.AddDays(99));

        limit.Evaluate(Invented.Oil, series).Rate!.Value.ShouldBe(expected, 1e-9);
    }

    [Fact]
    public void A_rate_without_span_and_a_span_without_rate_are_refused()
    {
        Should.Throw<ArgumentException>(() => Rate(null, 1, 2)).Message.ShouldContain("RateOfChange");
        Should.Throw<ArgumentException>(() =>
            new Limit(
                Measurands.Iron,
                LimitKind.Absolute,
                new LimitBand(1, 2),
                null,
                AnySource,
                per: TimeSpan.FromDays(30)
            )
        );
    }

    [Fact]
    public void A_series_of_another_measurand_is_refused() =>
        Should
            .Throw<ArgumentException>(() =>
                new Limit(Measurands.Iron, LimitKind.Absolute, new LimitBand(1, 2), null, AnySource).Evaluate(
                    Invented.Oil,
                    Water(1, 2)
                )
            )
            .Message.ShouldContain("series is one of water-content; the limit is one of iron");

    private static Limit Rate(TimeSpan? per, double alert, double alarm, bool overOilHours = false) =>
        new(
            Measurands.WaterContent,
            LimitKind.RateOfChange,
            new LimitBand(alert, alarm),
            null,
            AnySource,
            per: per,
            overOilHours: overOilHours
        );
}
