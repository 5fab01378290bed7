using OilCondition.Limits;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Limits;

public class LimitTests
{
    private static readonly Source AnySource = Source.CommonPractice("invented");

    [Theory]
    [InlineData(Qualifier.None, 199, LimitState.Normal)]
    [InlineData(Qualifier.None, 200, LimitState.Normal)] // on the figure is not beyond it
    [InlineData(Qualifier.None, 201, LimitState.Alert)]
    [InlineData(Qualifier.None, 501, LimitState.Alarm)]
    [InlineData(Qualifier.LessThan, 10, LimitState.Normal)]
    [InlineData(Qualifier.LessThan, 200, LimitState.Normal)]
    [InlineData(Qualifier.LessThan, 300, LimitState.NotDetermined)]
    [InlineData(Qualifier.GreaterThan, 100, LimitState.NotDetermined)]
    [InlineData(Qualifier.GreaterThan, 200, LimitState.Alert)]
    [InlineData(Qualifier.GreaterThan, 500, LimitState.Alarm)]
    [InlineData(Qualifier.Approximately, 250, LimitState.Alert)]
    public void Upper_limit(Qualifier qualifier, double value, LimitState expected)
    {
        var limit = new Limit(Measurands.WaterContent, LimitKind.Absolute, new LimitBand(200, 500), null, AnySource);

        limit.Evaluate(Invented.Oil, new Reading(value, qualifier)).State.ShouldBe(expected);
    }

    [Theory]
    [InlineData(Qualifier.None, 44, LimitState.Normal)]
    [InlineData(Qualifier.None, 43.6, LimitState.Alert)] // 46 less 5 % is 43.7
    [InlineData(Qualifier.None, 41.3, LimitState.Alarm)] // 46 less 10 % is 41.4
    [InlineData(Qualifier.None, 48.4, LimitState.Alert)] // 46 and 5 % is 48.3
    [InlineData(Qualifier.None, 50.7, LimitState.Alarm)] // 46 and 10 % is 50.6
    public void Percent_change_from_new_on_both_sides(Qualifier qualifier, double value, LimitState expected)
    {
        var limit = new Limit(
            Measurands.Viscosity40,
            LimitKind.PercentChangeFromNew,
            new LimitBand(5, 10),
            new LimitBand(-5, -10),
            AnySource
        );

        limit.Evaluate(Invented.Oil, new Reading(value, qualifier)).State.ShouldBe(expected);
    }

    [Fact]
    public void A_change_from_new_says_which_figure_was_passed()
    {
        var limit = new Limit(Measurands.AcidNumber, LimitKind.ChangeFromNew, new LimitBand(0.2, 0.3), null, AnySource);
        var evaluation = limit.Evaluate(Invented.Oil, new Reading(0.35));

        evaluation.State.ShouldBe(LimitState.Alert);
        evaluation.Figure!.Value.ShouldBe(0.3, 1e-12);
    }

    [Fact]
    public void What_cannot_be_said_is_said_with_its_reason()
    {
        var change = new Limit(
            Measurands.Rpvot,
            LimitKind.PercentChangeFromNew,
            null,
            new LimitBand(-50, -75),
            AnySource
        );
        change.Evaluate(Invented.Oil, new Reading(400)).Reason.ShouldBe(LimitReason.NewOilValueMissing);

        var absolute = new Limit(
            Measurands.WaterContent,
            LimitKind.Absolute,
            new LimitBand(200, null),
            null,
            AnySource
        );
        absolute.Evaluate(Invented.Oil, reading: null).Reason.ShouldBe(LimitReason.NoReading);
    }

    [Fact]
    public void An_alarm_before_its_alert_is_refused() =>
        Should
            .Throw<ArgumentException>(() =>
                new Limit(Measurands.WaterContent, LimitKind.Absolute, new LimitBand(500, 200), null, AnySource)
            )
            .Message.ShouldContain("alarm (200) below its alert (500)");
}
