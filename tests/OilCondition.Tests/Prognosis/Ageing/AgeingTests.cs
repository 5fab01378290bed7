using MathNet.Numerics.OdeSolvers;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using UnitsNet;

namespace OilCondition.Tests.Prognosis.Ageing;

public class AgeingTests
{
    private static Temperature Celsius(double value) => Temperature.FromDegreesCelsius(value);

    [Theory]
    [InlineData(40)]
    [InlineData(60)]
    [InlineData(95)]
    public void The_ten_degree_rule_is_the_arrhenius_law_at_its_own_energy(double celsius)
    {
        var energy = ThermalAgeing.TenDegreeActivationEnergy(Celsius(celsius));
        ThermalAgeing
            .Acceleration(energy, Celsius(celsius), Celsius(celsius + 10))
            .DecimalFractions.ShouldBe(
                ThermalAgeing.TenDegreeRule(TemperatureDelta.FromDegreesCelsius(10)).DecimalFractions,
                1e-9
            );

        // A step further the two part: the rule of thumb is no activation energy.
        ThermalAgeing
            .Acceleration(energy, Celsius(celsius), Celsius(celsius + 40))
            .DecimalFractions.ShouldBeLessThan(15);
    }

    [Fact]
    public void There_and_back_is_no_ageing_at_all()
    {
        var energy = MolarEnergy.FromKilojoulesPerMole(80);
        var there = ThermalAgeing.Acceleration(energy, Celsius(50), Celsius(70)).DecimalFractions;
        var back = ThermalAgeing.Acceleration(energy, Celsius(70), Celsius(50)).DecimalFractions;
        (there * back).ShouldBe(1, 1e-12);
        there.ShouldBeGreaterThan(1);
        Should
            .Throw<ArgumentOutOfRangeException>(() => ThermalAgeing.Acceleration(energy, Celsius(50), Celsius(700)))
            .ParamName.ShouldBe("to");
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                ThermalAgeing.Acceleration(MolarEnergy.FromKilojoulesPerMole(-1), Celsius(50), Celsius(70))
            )
            .ParamName.ShouldBe("activationEnergy");
    }

    [Fact]
    public void The_papers_double_in_their_own_steps()
    {
        // IEEE Std C57.91: about 6.9 °C near 110 °C; IEC 60076-7 (recalled): 6 °C.
        double Of(InsulationPaper paper, double celsius) =>
            InsulationAgeing.Acceleration(paper, Celsius(celsius)).DecimalFractions;
        Of(InsulationPaper.Upgraded65Rise, 116.9).ShouldBe(2, 0.02);
        Of(InsulationPaper.KraftSixDegreeRule, 104).ShouldBe(2, 1e-12);
        Of(InsulationPaper.Kraft55Rise, 95).ShouldBe(1, 1e-12);
        Should.Throw<ArgumentException>(() => InsulationAgeing.MeanAcceleration(InsulationPaper.Kraft55Rise, []));
        Should.Throw<ArgumentOutOfRangeException>(() => Of((InsulationPaper)9, 95)).ParamName.ShouldBe("paper");
    }

    [Theory]
    [InlineData(60, 5, 10)]
    [InlineData(75, 3, 0)]
    [InlineData(40, 8, 0.004)]
    [InlineData(90, 8, 30)]
    public void The_severity_brings_the_balance_to_the_reading(double remaining, double years, double makeUp)
    {
        // Second route: dX/dt = −B + M (100 − X)/100 by Runge and Kutta, from new.
        var severity = TurbineSeverity.FromReading(
            Ratio.FromPercent(remaining),
            TimeSpan.FromDays(365.25 * years),
            makeUp
        );
        var path = RungeKutta.FourthOrder(
            100,
            0,
            years,
            401,
            (_, x) => -severity.PercentPerYear + makeUp * (100 - x) / 100
        );
        path[400].ShouldBe(remaining, 1e-8);
        severity
            .YearsTo(Ratio.FromPercent(remaining))
            .ShouldBeOfType<Arrival<double>.Expected>()
            .Estimate.ShouldBe(years, 1e-6);
    }

    [Fact]
    public void Without_make_up_there_is_no_long_run_level()
    {
        var plain = TurbineSeverity.FromReading(Ratio.FromPercent(60), TimeSpan.FromDays(365.25 * 5), 0);
        plain.HasLongRunLevel.ShouldBeFalse();
        Should.Throw<InvalidOperationException>(() => plain.LongRunLevel());
        plain.YearsTo(Ratio.FromPercent(100)).ShouldBeOfType<Arrival<double>.Already>();
        TurbineSeverity
            .FromReading(Ratio.FromPercent(100), TimeSpan.FromDays(100), 0)
            .YearsTo(Ratio.FromPercent(25))
            .ShouldBeOfType<Arrival<double>.Never>();
        TurbineSeverity
            .FromReading(Ratio.FromPercent(90), TimeSpan.FromDays(365.25 * 8), 30)
            .YearsTo(Ratio.FromPercent(25))
            .ShouldBeOfType<Arrival<double>.Never>();
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                TurbineSeverity.FromReading(Ratio.FromPercent(160), TimeSpan.FromDays(9), 0)
            )
            .ParamName.ShouldBe("remaining");
    }

    [Fact]
    public void Wear_with_make_up_solves_its_balance_and_the_correction_takes_it_out()
    {
        // Second route: V dC/dt = w − q C by Runge and Kutta; then the correction must bring back w t / V.
        var balance = new WearBalance(
            MassFlow.FromMilligramsPerSecond(50.0 / 3600),
            VolumeFlow.FromLitersPerHour(0.5),
            Volume.FromLiters(1000)
        );
        var path = RungeKutta.FourthOrder(0, 0, 3000, 301, (_, c) => (50 - 0.5 * c) / 1000);
        balance.ConcentrationAfter(TimeSpan.FromHours(3000)).MilligramsPerLiter.ShouldBe(path[300], 1e-6);

        var corrected = WearCorrection.WithoutLoss(path, [.. path.Select(_ => 5.0)], Volume.FromLiters(1000));
        corrected[300].ShouldBe(150, 1e-3);
        var still = new WearBalance(
            MassFlow.FromMilligramsPerSecond(1),
            VolumeFlow.FromLitersPerHour(0),
            Volume.FromLiters(10)
        );
        still.LevelsOff.ShouldBeFalse();
        Should.Throw<InvalidOperationException>(() => still.SteadyConcentration());
        Should
            .Throw<ArgumentException>(() => WearCorrection.WithoutLoss([1, 2], [1], Volume.FromLiters(10)))
            .ParamName.ShouldBe("lostLitres");
    }
}
