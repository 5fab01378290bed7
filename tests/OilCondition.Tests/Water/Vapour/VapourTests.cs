using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Water;

public class VapourTests
{
    private static readonly Gen<double> BoilingKelvins = Gen.Double[273.17, 647];

    [Fact]
    public void If97_lies_within_150_ppm_of_Wagner_and_Pruss_from_5_to_120_degrees()
    {
        // Wagner and Pruss, second formula; its check value 245765.2635 Pa at 400 K holds the formula itself.
        WagnerPruss(400).ShouldBe(245765.2635, 1e-3);
        for (var celsius = 5; celsius <= 120; celsius++)
        {
            var other = WagnerPruss(celsius + 273.15);
            WaterVapour
                .SaturationPressure(Temperature.FromDegreesCelsius(celsius))
                .Pascals.ShouldBe(other, 1.5e-4 * other);
        }
    }

    [Fact]
    public void Temperature_and_pressure_are_inverses() =>
        BoilingKelvins.Holds(kelvins =>
            WaterVapour
                .SaturationTemperature(WaterVapour.SaturationPressure(Temperature.FromKelvins(kelvins)))
                .Kelvins.ShouldBe(kelvins, 1e-4)
        );

    [Fact]
    public void A_gauge_cannot_show_more_than_the_local_atmosphere()
    {
        // At 1500 m the standard atmosphere is 24.97 inHg.
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                GaugeVacuum.FromReading(
                    Pressure.FromInchesOfMercury(25.5),
                    StandardAtmosphere.PressureAt(Length.FromMeters(1500))
                )
            )
            .Message.ShouldContain("24.97 inHg");
    }

    private static double WagnerPruss(double kelvins)
    {
        var v = 1 - kelvins / 647.096;
        var sum =
            -7.85951783 * v
            + 1.84408259 * Math.Pow(v, 1.5)
            - 11.7866497 * Math.Pow(v, 3)
            + 22.6807411 * Math.Pow(v, 3.5)
            - 15.9618719 * Math.Pow(v, 4)
            + 1.80122502 * Math.Pow(v, 7.5);
        return 22.064e6 * Math.Exp(647.096 / kelvins * sum);
    }
}
