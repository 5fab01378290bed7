using OilCondition.Prognosis;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Prognosis;

/// <summary>How the types of this room print themselves, against texts written by hand; the dates are those of the cases.</summary>
public class PrognosisTextTests
{
    private static readonly DateTimeOffset Now = Invented.Start.AddDays(560);
    private static readonly double[] Days = [0, 90, 210, 260, 380, 450, 560];
    private static readonly double[] Rising = [0.100, 0.112, 0.123, 0.131, 0.142, 0.155, 0.163];

    private static RemainingLife Acid(double limit, LifeModel model = LifeModel.LineItself) =>
        LifeForecast.Of(
            InventedSeries.Of(Measurands.AcidNumber, Days, Rising),
            limit,
            LimitSide.Upper,
            Now,
            new LifeOptions(model)
        );

    private static string Day(DateTimeOffset at) => at.ToString("yyyy-MM-dd");

    [Fact]
    public void A_crossing_prints_its_three_dates()
    {
        var life = Acid(0.2).ShouldBeOfType<RemainingLife.Crosses>();

        life.ToString()
            .ShouldBe(
                $"acid number to 0.2 mgKOH/g: 10 % by {Day(life.P10)}, 50 % by {Day(life.P50)}, 90 % by {Day(life.P90)}"
            );
        FirstCrossing.Of([life], Now).ToString().ShouldStartWith("acid number to 0.2 mgKOH/g first with ");
    }

    [Fact]
    public void What_has_no_dates_says_so()
    {
        Acid(0.15).ToString().ShouldBe("acid number to 0.15 mgKOH/g: passed already");
        Acid(40).ToString().ShouldBe("acid number to 40 mgKOH/g: not within 30 years");
        LifeForecast
            .Of(InventedSeries.Of(Measurands.Rpvot, [0, 30], [900, 890]), 225, LimitSide.Lower, Now)
            .ToString()
            .ShouldBe("RPVOT to 225 min: 2 of 5 readings needed");
        FirstCrossing.Of([Acid(0.15)], Now).ToString().ShouldBe("acid number to 0.15 mgKOH/g passed already");
        FirstCrossing.Of([], Now).ToString().ShouldBe("nothing to forecast");
    }

    [Fact]
    public void Plans_and_samples_print_their_dates_and_risks()
    {
        var plan = new SamplingPlan(Ratio.FromPercent(5), TimeSpan.FromDays(14), TimeSpan.FromDays(180));

        plan.ToString().ShouldBe("5 % risk, every 14 to 180 days");
        NextSample.After([Acid(0.15)], Now, plan, Now).ToString().ShouldBe("2026-08-03 (limit crossed, 100 % unseen)"); // 14 days after 2026-07-20
        NextSample
            .After([], Now, plan, Now.AddDays(200))
            .ToString()
            .ShouldBe("2027-01-16 (nothing to forecast, 0 % unseen, overdue)");
    }

    [Fact]
    public void What_a_fleet_teaches_prints_from_how_many()
    {
        FleetKnowledge
            .From([InventedSeries.Of(Measurands.AcidNumber, Days, Rising)])
            .ToString()
            .ShouldBe("acid number, too little learnt from 1 machines");
        FleetLife.From([TimeSpan.FromHours(5000)], []).ToString().ShouldBe("too few failures to learn from");
    }
}
