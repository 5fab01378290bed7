using OilCondition.Water;
using UnitsNet;

namespace DeskCalculations;

/// <summary>Where water boils behind a gauge at 500 m, how dry the air lets the oil get, and what a vacuum stage leaves.</summary>
internal static class AirAndVacuum
{
    public static void Write(Sheet sheet)
    {
        sheet.Topic("Air and vacuum");
        var local = StandardAtmosphere.PressureAt(Length.FromMeters(500));
        sheet.Line("atmosphere at 500 m", $"{local.Kilopascals:0.0} kPa");
        var gauge = GaugeVacuum.FromReading(Pressure.FromInchesOfMercury(24), local);
        sheet.Line("gauge at 24 inHg", gauge);
        var (coldest, warmest) = gauge.BoilingPointWithin(Pressure.FromInchesOfMercury(0.5));
        sheet.Line("  gauge out by 0.5 inHg", $"{coldest.DegreesCelsius:0.0} to {warmest.DegreesCelsius:0.0} °C");
        sheet.Line("to boil at 45 °C", GaugeVacuum.ToBoilAt(Celsius(45), local));

        var hall = HumidAir.FromRelativeHumidity(Celsius(25), RelativeHumidity.FromPercent(60));
        sheet.Line("air in the hall", hall);
        if (hall.TryDewPoint(out var dewPoint))
        {
            sheet.Line("  dew point", $"{dewPoint.DegreesCelsius:0.0} °C");
        }

        sheet.Line("  oil at 40 °C beside it", WaterInOil.Oil.EquilibriumWith(hall, Celsius(40)));
        var dried = HumidAir.FromDewPoint(Celsius(25), Celsius(-40));
        sheet.Line("  behind a dryer, dew point -40 °C", WaterInOil.Oil.EquilibriumWith(dried, Celsius(40)));

        var stage = new VacuumStage(WaterInOil.Oil, Celsius(60), gauge.AbsolutePressure);
        sheet.Line("vacuum stage", stage);
        sheet.Line("  floor without sweep air", stage.Floor(SweepAir.None));
        var sweep = SweepAir.FromAir(MassFlow.FromKilogramsPerHour(2), hall, local);
        sheet.Line("  sweep air", sweep);
        sheet.Line("  floor with it", stage.Floor(sweep));
        sheet.Line(
            "  1000 kg/h in at 180 mg/kg",
            stage.Outlet(MassFlow.FromKilogramsPerHour(1000), MassFraction.FromPartsPerMillion(180), sweep)
        );
        var perHour = MassFlow.FromKilogramsPerHour(0.1);
        sheet.Line("heat for 0.1 kg/h of vapour", $"{WaterVapour.HeatToEvaporate(perHour, Celsius(60)).Watts:0} W");
        sheet.Line("caution", "hot oil and vacuum: makers' limits and local codes come first");
    }

    private static Temperature Celsius(double celsius) => Temperature.FromDegreesCelsius(celsius);
}
