using OilCondition.Prognosis;
using OilCondition.Thermal;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace DeskCalculations;

/// <summary>Pumps of a purifier, a heater in the tank, air that the tank breathes and the oil holds, and the life of a filter element.</summary>
internal static class Equipment
{
    private static readonly OilProperties Oil = OilProperties.FromDensityAt15(Density.FromKilogramsPerCubicMeter(870));

    public static void Write(Sheet sheet)
    {
        sheet.Topic("Equipment");
        Pumps(sheet);
        Breath(sheet);
        Element(sheet);
        sheet.Line("caution", "vacuum and hot oil: prove interlocks before a start");
    }

    private static void Pumps(Sheet sheet)
    {
        var heater = new TankHeater(Power.FromKilowatts(9), Area.FromSquareMeters(0.3));
        sheet.Line("heater in the tank", heater);
        var bears = TankHeater.HighestWattDensity(KinematicViscosity.FromCentistokes(1000));
        sheet.Line("  oil of 1000 mm²/s bears", $"{bears.WattsPerSquareMeter / 1e4:0.0} W/cm²");

        var flow = VolumeFlow.FromCubicMetersPerHour(40);
        var ring = VacuumPump.LiquidRing(flow, Celsius(20));
        sheet.Line("vacuum pump", ring);
        sheet.Line("  at 60 hPa it swallows", $"{ring.CapacityAt(Millibar(60)).CubicMetersPerHour:0.0} m³/h");
        var sealedByOil = VacuumPump.OilSealed(flow, Millibar(30), hasGasBallast: true);
        sheet.Line("another", sealedByOil);
        var (vapour, air) = (MassFlow.FromKilogramsPerHour(1), MassFlow.FromKilogramsPerHour(0.5));
        sheet.Line("  with 1 kg/h of vapour", sealedByOil.Carry(Millibar(60), vapour, air, Celsius(20)));
        var gas = GasLoad.Of(
            Oil,
            VolumeFlow.FromLitersPerMinute(25),
            Celsius(60),
            StandardAtmosphere.SeaLevel,
            Millibar(60)
        );
        sheet.Line("25 L/min of oil that stood in air", gas);
        var oxygen = GasSolubility.OstwaldAt(GasSolubility.Gas.Oxygen, Oil, Celsius(25));
        sheet.Line("  oxygen, Ostwald, at 25 °C", $"{oxygen.DecimalFractions:0.00}");
    }

    private static void Breath(Sheet sheet)
    {
        var breathing = new TankBreathing(
            Volume.FromLiters(600),
            Volume.FromLiters(1800),
            Oil,
            Celsius(15),
            TemperatureDelta.FromKelvins(12),
            TemperatureDelta.FromKelvins(20)
        );
        var hall = HumidAir.FromRelativeHumidity(Celsius(20), RelativeHumidity.FromPercent(60));
        sheet.Line("a tank breathes", breathing);
        sheet.Line("  water with it", $"{breathing.WaterIn(hall).GramsPerDay:0.00} g a day at most");
        var breather = new DesiccantBreather(Mass.FromKilograms(0.7), Ratio.FromPercent(30));
        sheet.Line("desiccant breather", breather);
        if (breather.TryLife(breathing, hall, out var life))
        {
            sheet.Line("  lasts", $"{life.TotalDays:0} days");
        }
    }

    private static void Element(Sheet sheet)
    {
        var flow = VolumeFlow.FromLitersPerMinute(20);
        var viscosity = KinematicViscosity.FromCentistokes(32);
        var element = new FilterElement(
            flow,
            viscosity,
            Pressure.FromBars(0.25),
            Pressure.FromBars(2.5),
            Mass.FromGrams(60)
        );
        sheet.Line("filter", element);
        var fitted = new DateTimeOffset(2026, 1, 5, 8, 0, 0, TimeSpan.Zero);
        (int Day, double Bar)[] read = [(35, 0.35), (45, 0.46), (55, 0.61), (65, 0.88), (70, 1.01)];
        ElementReading[] readings =
        [
            .. read.Select(one => new ElementReading(
                fitted.AddDays(one.Day),
                Pressure.FromBars(one.Bar),
                flow,
                viscosity
            )),
        ];
        sheet.Line("  used at 1.01 bar", $"{element.ShareUsed(readings[^1]).Percent:0} %");
        sheet.Line("  on this course", ElementLife.Of(element, readings, fitted.AddDays(71)));
        sheet.Line(
            "  at a cold start, 400 mm²/s",
            $"{element.DropAt(element.ShareUsed(readings[^1]), flow, KinematicViscosity.FromCentistokes(400)).Bars:0.0} bar"
        );
        if (element.TryLifeByDirt(MassFlow.FromGramsPerHour(0.05), Ratio.FromPercent(50), out var life))
        {
            sheet.Line("  on 0.05 g/h of dirt", $"{life.TotalHours:0} h");
        }
    }

    private static Pressure Millibar(double value) => Pressure.FromMillibars(value);

    private static Temperature Celsius(double celsius) => Temperature.FromDegreesCelsius(celsius);
}
