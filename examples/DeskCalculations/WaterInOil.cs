using OilCondition;
using OilCondition.Statistics;
using OilCondition.Water;
using UnitsNet;

namespace DeskCalculations;

/// <summary>How much of the water is dissolved, and what falls out when the unit stands.</summary>
internal static class WaterInOil
{
    private static readonly Source Laboratory = Source.UserData("site laboratory, invented");

    /// <summary>The bearing oil, from two measured saturations.</summary>
    public static SaturationCurve Oil { get; } =
        SaturationCurve.FromTwoPoints("bearing oil", Celsius(20), Ppm(85), Celsius(60), Ppm(310), Laboratory);

    public static void Write(Sheet sheet)
    {
        sheet.Topic("Water");
        sheet.Line("curve from two measurements", Oil);
        sheet.Line("how it came about", Oil.Basis);
        sheet.Line("saturation at 40 °C", Oil.SaturationAt(Celsius(40)));
        Fitted(sheet);
        foreach (var published in PublishedSaturationCurves.All)
        {
            sheet.Line("  a published curve", $"{published.SaturationAt(Celsius(40))}, {published.Name}");
        }

        var titrated = Ppm(180);
        sheet.Line("titrated 180 mg/kg, 55 °C, running", Oil.Split(titrated, Celsius(55)));
        sheet.Line("the same at standstill, 12 °C", Oil.Split(titrated, Celsius(12)));
        var cooled = Oil.Cool(titrated, Celsius(55), Celsius(12));
        sheet.Line("cool-down", cooled);
        var rho = Density.FromKilogramsPerCubicMeter(870);
        sheet.Line(
            "free water in 2000 L then",
            $"{cooled.SeparatedVolume(Volume.FromLiters(2000), rho).Liters:0.00} L"
        );
        sheet.Line("so", Oil.SeparationPoint(titrated));
        sheet.Line("180 mg/kg by volume", $"{WaterContent.ByVolume(titrated, rho).PartsPerMillion:0} ppm");
        sheet.Line("sensor 62 % at 45 °C", Oil.FromSensor(Ratio.FromPercent(62), Celsius(45)));
        var wet = Oil.FromSensor(Ratio.FromPercent(100), Celsius(45));
        sheet.Line("sensor 100 % at 45 °C", wet);
        if (wet.Knowledge == WaterKnowledge.AtLeast)
        {
            sheet.Line("", "the sensor sees no free water: titrate");
        }
    }

    private static void Fitted(Sheet sheet)
    {
        SaturationMeasurement[] measured =
        [
            SaturationMeasurement.Saturated(Celsius(15), Ppm(72)),
            SaturationMeasurement.Saturated(Celsius(30), Ppm(121)),
            SaturationMeasurement.FromSensor(Celsius(45), Ratio.FromPercent(40), Ppm(80)),
            SaturationMeasurement.Saturated(Celsius(60), Ppm(305)),
        ];
        sheet.Line("sensor and titration, one sample", measured[2]);
        if (!SaturationFit.TryFit("bearing oil", measured, Laboratory, out var fit, out var reason))
        {
            sheet.Line("no fitted curve", reason);
            return;
        }

        sheet.Line("curve fitted to four", fit);
        sheet.Line("  at 12 °C", fit.BandAt(Celsius(12), 0.95, BandKind.Mean));
        sheet.Line("  with 180 mg/kg", fit.SeparationBand(Ppm(180), 0.95));
        sheet.Line("  pull of the hottest point", $"{fit.Leverage(measured[3]):0.00} (mean 0.50)");
    }

    private static Temperature Celsius(double celsius) => Temperature.FromDegreesCelsius(celsius);

    private static MassFraction Ppm(double ppm) => MassFraction.FromPartsPerMillion(ppm);
}
