using OilCondition.Thermal;
using UnitsNet;

namespace DeskCalculations;

/// <summary>Density at temperature, heat loss of the tank, and how long it takes to warm or cool.</summary>
internal static class Heat
{
    public static void Write(Sheet sheet)
    {
        sheet.Topic("Heat");
        var oil = OilProperties.FromDensityAt15(Density.FromKilogramsPerCubicMeter(870));
        sheet.Line("oil", oil);
        sheet.Line("  at 60 °C", oil.At(Celsius(60)));
        var hot = oil.VolumeAt(Volume.FromLiters(2000), Celsius(15), Celsius(60));
        sheet.Line("  2000 L at 15 °C become at 60 °C", $"{hot.Liters:0} L");
        sheet.Line("  correction to 15 °C, Table 54D", VolumeCorrection.Table54D(oil.DensityAt15, Celsius(60)));
        var ester = CoefficientOfThermalExpansion.FromPerKelvin(0.00075);
        var esterDensity = Density.FromKilogramsPerCubicMeter(950);
        sheet.Line("  an ester, 0.00075 per K", VolumeCorrection.Api2004(ester, esterDensity, Celsius(60)));

        var loss = TankHeatLoss.Guide(TankSurface.ShelteredBare, Celsius(27));
        sheet.Line("loss of a bare tank indoors", loss);
        var area = Area.FromSquareMeters(8.1);
        sheet.Line("  8.1 m², 25 K above the hall", $"{loss.Loss(area, TemperatureDelta.FromKelvins(25)).Watts:0} W");
        var capacity = SpecificEntropy.FromKilojoulesPerKilogramKelvin(1.95);
        var tank = HeatedTank.FromOil(Mass.FromKilograms(870), capacity, 60);
        sheet.Line("tank of 870 kg, loses 60 W/K", tank);
        var (heater, hall) = (Power.FromKilowatts(6), Celsius(20));
        sheet.Line("  20 to 60 °C with 6 kW", tank.TimeTo(Celsius(60), hall, heater, hall));
        sheet.Line("  with 2 kW", tank.TimeTo(Celsius(60), hall, Power.FromKilowatts(2), hall));
        if (tank.TrySteadyTemperature(Power.FromKilowatts(2), hall, out var steady))
        {
            sheet.Line("  2 kW holds", $"{steady.DegreesCelsius:0.0} °C");
        }

        var flow = VolumeFlow.FromLitersPerMinute(38);
        var rise = OilHeating.RisePerPass(heater, flow, oil.DensityAt15, capacity);
        sheet.Line("6 kW in 38 L/min", $"{rise.Kelvins:0.0} K a pass");
        var needed = OilHeating.PowerToWarm(
            Mass.FromKilograms(870),
            capacity,
            TemperatureDelta.FromKelvins(40),
            TimeSpan.FromHours(3)
        );
        sheet.Line("870 kg by 40 K in 3 h, no losses", $"{needed.Kilowatts:0.0} kW");
        sheet.Line("caution", "the film on a heater is far hotter than the oil: makers' limits");
    }

    private static Temperature Celsius(double celsius) => Temperature.FromDegreesCelsius(celsius);
}
