using CsCheck;
using OilCondition.Limits;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Limits;

/// <summary>Limits over a series: each side, each figure and each bound on its own.</summary>
public class LimitSidesTests
{
    private static readonly Source AnySource = Source.CommonPractice("invented");

    private static MeasurandSeries Viscosity(params Reading[] readings) =>
        Invented
            .History(readings.Select((reading, i) => Invented.Sample(i, i, (Measurands.Viscosity40, reading))))
            .SampleSeries(Measurands.Viscosity40, Invented.Start, Invented.Start.AddDays(1000));

    private static Reading[] Values(params double[] values) => [.. values.Select(value => new Reading(value))];

    private static LimitEvaluation Evaluate(
        LimitBand? upper,
        LimitBand? lower,
        Reading[] readings,
        double deadBand = 0,
        int confirmations = 1
    ) =>
        new Limit(
            Measurands.Viscosity40,
            LimitKind.Absolute,
            upper,
            lower,
            AnySource,
            deadBand,
            confirmations
        ).Evaluate(Invented.Oil, Viscosity(readings));

    [Fact]
    public void What_came_back_from_above_is_not_held_by_the_dead_band_of_the_lower_side() =>
        Evaluate(new LimitBand(50, null), new LimitBand(42, null), Values(46, 51, 42.5), deadBand: 1)
            .State.ShouldBe(LimitState.Normal);

    [Fact]
    public void From_one_side_to_the_other_the_figure_and_its_date_change()
    {
        var evaluation = Evaluate(new LimitBand(50, null), new LimitBand(42, null), Values(51, 41));

        evaluation.State.ShouldBe(LimitState.Alert);
        evaluation.Figure.ShouldBe(42);
        evaluation.Since.ShouldBe(Invented.Start.AddDays(1));
    }

    [Fact]
    public void One_reading_too_high_does_not_confirm_one_too_low() =>
        Evaluate(new LimitBand(50, null), new LimitBand(42, null), Values(51, 41), confirmations: 2)
            .State.ShouldBe(LimitState.Normal);

    [Fact]
    public void Two_successive_readings_beyond_the_alarm_confirm_it_after_an_alert()
    {
        var evaluation = Evaluate(new LimitBand(50, 60), null, Values(51, 61, 62), confirmations: 2);

        evaluation.State.ShouldBe(LimitState.Alarm);
        evaluation.Since.ShouldBe(Invented.Start);
    }

    [Fact]
    public void Beyond_a_confirmed_alert_an_alarm_waits()
    {
        var evaluation = Evaluate(new LimitBand(50, 60), null, Values(51, 52, 61), confirmations: 2);

        evaluation.State.ShouldBe(LimitState.Alert);
        evaluation.Figure.ShouldBe(50);
        evaluation.Pending.ShouldBe(LimitState.Alarm);
        evaluation.Reason.ShouldBe(LimitReason.AwaitingConfirmation);
    }

    [Fact]
    public void At_most_within_the_dead_band_clears_nothing()
    {
        var within = new Reading(49.5, Qualifier.LessThan);
        var inside = new Reading(49, Qualifier.LessThan);

        Evaluate(new LimitBand(50, null), null, [new Reading(51), within], deadBand: 1)
            .State.ShouldBe(LimitState.Alert);
        Evaluate(new LimitBand(50, null), null, [new Reading(51), inside], deadBand: 1)
            .State.ShouldBe(LimitState.Normal);
    }

    [Fact]
    public void At_least_takes_no_alarm_away()
    {
        Evaluate(new LimitBand(50, 60), null, [new Reading(61), new Reading(55, Qualifier.GreaterThan)])
            .State.ShouldBe(LimitState.Alarm);
        Evaluate(null, new LimitBand(50, 40), [new Reading(39), new Reading(45, Qualifier.LessThan)])
            .State.ShouldBe(LimitState.Alarm);
    }

    [Fact]
    public void Of_two_sides_the_undecided_one_leaves_the_state_open() =>
        Evaluate(new LimitBand(50, null), new LimitBand(42, null), [new Reading(46, Qualifier.LessThan)])
            .Reason.ShouldBe(LimitReason.BoundDoesNotDecide);

    private static readonly Gen<double[]> Readings = Gen.Int[300, 700].Select(i => i / 10.0).Array[1, 12];

    [Fact]
    public void Higher_readings_never_lower_the_state_of_an_upper_limit() =>
        Gen.Select(Readings, Gen.Int[0, 100], Gen.Int[0, 40], Gen.Int[1, 4])
            .Holds(
                (readings, raise, dead, confirmations) =>
                {
                    LimitState StateOf(double by) =>
                        Evaluate(
                            new LimitBand(50, 60),
                            null,
                            Values([.. readings.Select(value => value + by)]),
                            dead / 10.0,
                            confirmations
                        ).State;
                    ((int)StateOf(raise / 10.0)).ShouldBeGreaterThanOrEqualTo((int)StateOf(0));
                },
                iter: 300
            );

    [Fact]
    public void A_constant_added_to_readings_and_figures_changes_nothing() =>
        Gen.Select(Readings, Gen.Int[-16, 64], Gen.Int[0, 8], Gen.Int[1, 4])
            .Holds(
                (readings, add, dead, confirmations) =>
                {
                    LimitState StateOf(double by) =>
                        Evaluate(
                            new LimitBand(50 + by, 60 + by),
                            new LimitBand(40 + by, 35 + by),
                            Values([.. readings.Select(value => Math.Round(value * 4) / 4 + by)]),
                            dead / 4.0,
                            confirmations
                        ).State;
                    StateOf(add / 4.0).ShouldBe(StateOf(0)); // quarters are exact in binary
                },
                iter: 300
            );

    [Fact]
    public void The_lower_side_is_the_upper_one_of_the_mirrored_readings() =>
        Gen.Select(Readings, Gen.Int[0, 8], Gen.Int[1, 4])
            .Holds(
                (readings, dead, confirmations) =>
                {
                    var upper = Evaluate(new LimitBand(50, 60), null, Values(readings), dead, confirmations);
                    var mirror = readings.Select(value => 100 - value).ToArray();
                    var lower = Evaluate(null, new LimitBand(50, 40), Values(mirror), dead, confirmations);
                    (lower.State, lower.Since, lower.Pending).ShouldBe((upper.State, upper.Since, upper.Pending));
                },
                iter: 300
            );

    [Fact]
    public void Without_a_reading_beyond_a_figure_nothing_leaves_normal() =>
        Gen.Select(Gen.Int[350, 500].Select(i => i / 10.0).Array[1, 12], Gen.Int[0, 150], Gen.Int[1, 4])
            .Holds(
                (readings, dead, confirmations) =>
                    Evaluate(new LimitBand(50, 60), new LimitBand(35, 30), Values(readings), dead / 10.0, confirmations)
                        .State.ShouldBe(LimitState.Normal),
                iter: 300
            );
}
