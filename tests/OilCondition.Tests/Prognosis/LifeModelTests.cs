using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Prognosis;

public class LifeModelTests
{
    private static readonly double[] Days = [0, 90, 210, 260, 380, 450, 560];
    private static readonly double[] Rising = [0.100, 0.112, 0.123, 0.131, 0.142, 0.155, 0.163];
    private static readonly double[] Rpvot = [980, 910, 800, 790, 700, 660, 610];
    private static readonly DateTimeOffset Now = Invented.Start.AddDays(560);

    public static TheoryData<LifeModel> Models() => [.. Enum.GetValues<LifeModel>()];

    [Theory]
    [MemberData(nameof(Models))]
    public void Every_model_gives_dates_in_order_with_the_chances_that_they_state(LifeModel model)
    {
        var falls = model == LifeModel.FirstOrderLoss;
        var life = LifeForecast
            .Of(
                InventedSeries.Of(falls ? Measurands.Rpvot : Measurands.AcidNumber, Days, falls ? Rpvot : Rising),
                falls ? 400 : 0.2,
                falls ? LimitSide.Lower : LimitSide.Upper,
                Now,
                new LifeOptions(model)
            )
            .ShouldBeOfType<RemainingLife.Crosses>();

        life.Model.ShouldBe(model);
        life.P10.ShouldBeGreaterThan(Now);
        life.P50.ShouldBeGreaterThan(life.P10);
        life.P90.ShouldBeGreaterThan(life.P50);
        foreach (var (at, chance) in new[] { (life.P10, 0.1), (life.P50, 0.5), (life.P90, 0.9) })
        {
            life.Crossing.ChanceBefore(at).ShouldBe(chance, 1e-4);
        }

        life.Crossing.TryAt(0.25, out var quarter).ShouldBeTrue();
        quarter.ShouldBeInRange(life.P10, life.P50);
        life.Crossing.ChanceBefore(Now).ShouldBe(0);
        life.Crossing.ChanceBefore(DateTimeOffset.MaxValue).ShouldBeInRange(0.9, 1);
    }

    [Fact]
    public void Line_itself_and_new_reading_answer_different_questions()
    {
        var series = InventedSeries.Of(Measurands.AcidNumber, Days, Rising);
        var itself = Ask(series, LifeModel.LineItself);
        var reading = Ask(series, LifeModel.LineNewReading);
        var walk = Ask(series, LifeModel.RandomWalk);
        var family = Ask(series, LifeModel.Family);

        // Same line, so nearly the same middle; the scatter of a reading widens the ends, and wandering more so.
        Math.Abs((itself.P50 - reading.P50).TotalDays).ShouldBeLessThan(3);
        Width(reading).ShouldBeGreaterThan(Width(itself));
        Width(walk).ShouldBeGreaterThan(Width(itself));
        Width(family).ShouldBeGreaterThan(Width(itself));

        RemainingLife.Crosses Ask(MeasurandSeries of, LifeModel model) =>
            LifeForecast
                .Of(of, 0.22, LimitSide.Upper, Now, new LifeOptions(model))
                .ShouldBeOfType<RemainingLife.Crosses>();
        static double Width(RemainingLife.Crosses life) => (life.P90 - life.P10).TotalDays;
    }

    [Fact]
    public void Exponential_growth_is_the_line_through_the_logarithms()
    {
        double[] growing = [.. Rising.Select(value => Math.Exp(10 * value))];
        var growth = LifeForecast
            .Of(
                InventedSeries.Of(Measurands.AcidNumber, Days, growing),
                Math.Exp(2),
                LimitSide.Upper,
                Now,
                new LifeOptions(LifeModel.ExponentialGrowth)
            )
            .ShouldBeOfType<RemainingLife.Crosses>();
        var line = LifeForecast
            .Of(
                InventedSeries.Of(Measurands.AcidNumber, Days, Rising),
                0.2,
                LimitSide.Upper,
                Now,
                new LifeOptions(LifeModel.LineItself)
            )
            .ShouldBeOfType<RemainingLife.Crosses>();

        growth.P10.ShouldBe(line.P10, TimeSpan.FromMinutes(2));
        growth.P90.ShouldBe(line.P90, TimeSpan.FromMinutes(2));
    }

    [Fact]
    public void An_uncertain_slope_leaves_the_late_end_open()
    {
        // g = (t s)² / (b² Sxx) above 1 at 80 %: Fieller's interval has no upper end.
        double[] scattered = [0.12, 0.16, 0.11, 0.17, 0.12, 0.18, 0.15];
        var life = LifeForecast
            .Of(
                InventedSeries.Of(Measurands.AcidNumber, Days, scattered),
                0.3,
                LimitSide.Upper,
                Now,
                new LifeOptions(LifeModel.LineItself)
            )
            .ShouldBeOfType<RemainingLife.NoLatestDate>();
        life.P10.ShouldBeGreaterThan(Now);
        life.Crossing.TryAt(0.9, out var none).ShouldBeFalse();
        none.ShouldBe(Now);
        life.Crossing.ChanceBefore(Now.AddDays(1e5)).ShouldBeLessThan(0.9);
    }

    [Fact]
    public void Generous_make_up_holds_the_antioxidant_for_ever()
    {
        var series = InventedSeries.Of(Measurands.Rpvot, Days, Rpvot);
        // 1.2 L a day into 1000 L, as % of the oil fill per year of 365.25 days.
        const double Generous = 0.12 * 365.25;
        var held = LifeForecast
            .Of(series, 250, LimitSide.Lower, Now, new LifeOptions(LifeModel.FirstOrderLoss, Generous, 1000))
            .ShouldBeOfType<RemainingLife.HeldByMakeUp>();

        held.ChanceEver.ShouldBeLessThan(0.1);
        held.LongRunLevel.ShouldBeGreaterThan(250);
        held.Crossing.ChanceBefore(Now.AddYears(20)).ShouldBeLessThan(0.1);

        var without = LifeForecast
            .Of(series, 250, LimitSide.Lower, Now, new LifeOptions(LifeModel.FirstOrderLoss))
            .ShouldBeOfType<RemainingLife.Crosses>();
        without.P50.ShouldBeLessThan(Now.AddYears(5));
    }

    [Fact]
    public void A_later_now_without_news_puts_every_date_later()
    {
        var series = InventedSeries.Of(Measurands.AcidNumber, Days, Rising);
        var now = LifeForecast.Of(series, 0.2, LimitSide.Upper, Now).ShouldBeOfType<RemainingLife.Crosses>();
        var later = LifeForecast
            .Of(series, 0.2, LimitSide.Upper, Now.AddDays(60))
            .ShouldBeOfType<RemainingLife.Crosses>();

        later.P10.ShouldBeGreaterThan(now.P10);
        later.P90.ShouldBeGreaterThan(now.P90);

        // What nobody has seen since the last reading does not depend on the calendar of the one who asks.
        var at = Now.AddDays(200);
        later.Crossing.ChanceUnseenBefore(at).ShouldBe(now.Crossing.ChanceUnseenBefore(at), 1e-12);
        later.Crossing.ChanceBefore(at).ShouldBeLessThan(later.Crossing.ChanceUnseenBefore(at));
    }

    [Fact]
    public void Twice_the_ageing_halves_the_time_that_is_left()
    {
        var life = LifeForecast
            .Of(InventedSeries.Of(Measurands.AcidNumber, Days, Rising), 0.2, LimitSide.Upper, Now)
            .ShouldBeOfType<RemainingLife.Crosses>();
        var warmer = life.Crossing.WithAgeing(ThermalAgeing.TenDegreeRule(TemperatureDelta.FromDegreesCelsius(10)));
        warmer.TryAt(0.5, out var half).ShouldBeTrue();

        (half - Now).TotalDays.ShouldBe((life.P50 - Now).TotalDays / 2, 0.01);
        Should.Throw<ArgumentOutOfRangeException>(() => life.Crossing.WithAgeing(Ratio.FromPercent(0)));
    }

    [Fact]
    public void Wrong_questions_are_refused()
    {
        var series = InventedSeries.Of(Measurands.AcidNumber, Days, Rising);
        Should
            .Throw<ArgumentException>(() =>
                LifeForecast.Of(series, 1, LimitSide.Upper, Now, new LifeOptions(LifeModel.FirstOrderLoss))
            )
            .ParamName.ShouldBe("side");
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                LifeForecast.Of(series, 0, LimitSide.Upper, Now, new LifeOptions(LifeModel.ExponentialGrowth))
            )
            .ParamName.ShouldBe("limit");
        Should.Throw<ArgumentOutOfRangeException>(() => LifeForecast.Of(series, double.NaN, LimitSide.Upper, Now));
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                new LifeOptions(LifeModel.FirstOrderLoss, makeUpPercentPerYear: -1)
            )
            .ParamName.ShouldBe("makeUpPercentPerYear");
        Should
            .Throw<ArgumentOutOfRangeException>(() => LifeForecast.Of(series, 1, LimitSide.Both, Now))
            .ParamName.ShouldBe("side");
    }

    [Fact]
    public void Five_samples_of_one_moment_are_no_trend() =>
        LifeForecast
            .Of(
                InventedSeries.Of(Measurands.AcidNumber, [0, 0, 0, 0, 0, 0], [0.10, 0.11, 0.12, 0.13, 0.14, 0.15]),
                0.3,
                LimitSide.Upper,
                Now
            )
            .ShouldBeOfType<RemainingLife.TooFewReadings>()
            .Count.ShouldBe(1);
}
