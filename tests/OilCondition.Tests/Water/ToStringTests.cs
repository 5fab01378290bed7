using OilCondition.Statistics;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Water;

/// <summary>What the results of the room print.</summary>
public class ToStringTests
{
    private static readonly SaturationCurve Oil = PublishedSaturationCurves.TransformerMineralOil;

    public static TheoryData<string, object> Results()
    {
        var hall = HumidAir.FromRelativeHumidity(C(25), RelativeHumidity.FromPercent(60));
        var gauge = GaugeVacuum.FromReading(Pressure.FromInchesOfMercury(24), StandardAtmosphere.SeaLevel);
        var stage = new VacuumStage(Oil, C(65), Pressure.FromPascals(6510));
        return new()
        {
            { "transformer mineral oil: log10 S = 7.09 - 1567 K/T, 0 to 100 °C", Oil },
            // water.csv: 55.477 mg/kg at 20 °C, 243.17 at 60 °C.
            { "55.5 mg/kg at 20 °C", Oil.SaturationAt(C(20)) },
            // 10^(7.0895 − 1567/274.15) and 10^(7.0895 − 1567/268.15).
            { "23.6 mg/kg at 1 °C", Oil.SaturationAt(C(1)) },
            { "17.6 mg/kg at -5 °C, extrapolated", Oil.SaturationAt(C(-5)) },
            { "100 mg/kg at 60 °C, dissolved, 41 % of saturation", Oil.Split(Ppm(100), C(60)) },
            { "100 mg/kg at 20 °C: 60 dissolved, 40 free", Oil.Split(Ppm(100), C(20)) },
            { "at least 240 mg/kg at 60 °C, saturated", Oil.FromSensor(Ratio.FromPercent(100), C(60)) },
            { "60 to 20 °C: 40 mg/kg separates", Oil.Cool(Ppm(100), C(60), C(20)) },
            { "20 to 60 °C: 40 mg/kg can go back into solution", Oil.Cool(Ppm(100), C(20), C(60)) },
            { "60 to 20 °C: nothing separates", Oil.Cool(Ppm(30), C(60), C(20)) },
            // T = 1567/(7.0895 − 2) = 307.9 K.
            { "water separates below 34.7 °C", Oil.SeparationPoint(Ppm(100)) },
            { "the water stays dissolved down to -60 °C, extrapolated", Oil.SeparationPoint(Ppm(0)) },
            { "free water is present even at 200 °C, extrapolated", Oil.SeparationPoint(Ppm(400_000)) },
            { "200 mg/kg at 45 °C", SaturationMeasurement.FromSensor(C(45), Ratio.FromPercent(40), Ppm(80)) },
            { "55 mg/kg at 20 °C ± 5 %", SaturationMeasurement.Saturated(C(20), Ppm(55), Ppm(2.75)) },
            { "20.1 kPa absolute, 81.3 kPa below atmosphere: water boils at 60.1 °C", gauge },
            { "25 °C, 60 % relative humidity", hall },
            { "no sweep air", SweepAir.None },
            // W at 25 °C, 60 %: 0.621945 × 1902/(101325 − 1902) = 0.01190 kg/kg.
            {
                "2 kg/h dry air with 0.0238 kg/h water",
                SweepAir.FromAir(MassFlow.FromKilogramsPerHour(2), hall, StandardAtmosphere.SeaLevel)
            },
            { "65 °C at 6.51 kPa absolute", stage },
            // CommonPracticeTests: 0.1 kg/h of water and 0.229 kg/h of air, 13.46 mol/h × 8.3145 × 338.15/20 052 Pa.
            {
                "100 mg/kg at 65 °C, 0.1 kg/h evaporates, gas 1.89 m³/h",
                new VacuumStage(
                    PublishedSaturationCurves.TransformerMineralOilSteeper,
                    C(65),
                    gauge.AbsolutePressure
                ).Outlet(
                    MassFlow.FromKilogramsPerHour(1000),
                    Ppm(200),
                    SweepAir.Dry(MassFlow.FromKilogramsPerHour(0.229))
                )
            },
        };
    }

    [Theory]
    [MemberData(nameof(Results), DisableDiscoveryEnumeration = true)]
    public void A_result_prints_itself(string text, object result) => result.ToString().ShouldBe(text);

    /// <summary>20, 40 and 60 °C with a scatter of a tenth: constants and ends carry as many digits as that bears.</summary>
    [Fact]
    public void A_fit_prints_as_many_digits_as_its_scatter_bears()
    {
        var fit = Fit();
        // x̄ = 0.0032021, Sxx = 8.3989e-8, slope −1570.1, s = 0.0340: B ± s/√Sxx = 117, A ± s √(1/3 + x̄²/Sxx) = 0.376.
        fit.ToString().ShouldBe("A 7.1 ± 0.4, B 1600 ± 100 K, 3 measurements");
        // lg S = 2.0994 at 40 °C; ± t s √(1/3 + 0.0009) = 0.01966 with t = 1 of one degree of freedom.
        fit.BandAt(C(40), 0.5, BandKind.Mean).ToString().ShouldBe("126 mg/kg at 40 °C (120 to 132, 50 %)");
    }

    private static SaturationFit Fit()
    {
        SaturationFit.TryFit(
            "x",
            [
                SaturationMeasurement.Saturated(C(20), Ppm(55.5)),
                SaturationMeasurement.Saturated(C(40), Ppm(134)),
                SaturationMeasurement.Saturated(C(60), Ppm(243)),
            ],
            Source.UserData("invented"),
            out var fit,
            out _
        );
        return fit!;
    }

    private static Temperature C(double celsius) => Temperature.FromDegreesCelsius(celsius);

    private static MassFraction Ppm(double ppm) => MassFraction.FromPartsPerMillion(ppm);
}
