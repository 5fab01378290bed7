using OilCondition.Statistics;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Water;

/// <summary>Every public door of the Water room, and the field that its refusal names.</summary>
public class BadInputTests
{
    private static readonly SaturationCurve Oil = PublishedSaturationCurves.TransformerMineralOilSteeper;
    private static readonly Source Test = Source.UserData("test");
    private static readonly Density Rho = Density.FromKilogramsPerCubicMeter(870);
    private static readonly HumidAir Air = HumidAir.FromRelativeHumidity(C(20), RelativeHumidity.FromPercent(50));
    private static readonly MassFlow OneKilogram = MassFlow.FromKilogramsPerHour(1);
    private static readonly VacuumStage Stage = new(Oil, C(65), Pressure.FromKilopascals(20));

    /// <summary>Doors, each opened with one wrong argument, and the name of that argument.</summary>
    private static readonly Dictionary<string, (string Field, Action Open)> Doors = new(StringComparer.Ordinal)
    {
        ["curve: below absolute zero"] = ("temperature", () => Oil.SaturationAt(C(-274))),
        ["curve: kelvin in a Celsius field"] = ("temperature", () => Oil.SaturationAt(C(333))),
        ["curve: no temperature"] = ("temperature", () => Oil.SaturationAt(default)),
        ["fit: no measurements"] = ("measurements", () => SaturationFit.TryFit("x", null!, Test, out _, out _)),
        ["band: confidence 1"] = ("confidence", () => Fitted().BandAt(C(40), 1, BandKind.Mean)),
        ["band: confidence NaN"] = ("confidence", () => Fitted().BandAt(C(40), double.NaN, BandKind.Mean)),
        ["band: 2000 °C"] = ("temperature", () => Fitted().BandAt(C(2000), 0.9, BandKind.Mean)),
        ["separation band: negative ppm"] = ("content", () => Fitted().SeparationBand(Ppm(-1), 0.9)),
        ["separation band: confidence 0"] = ("confidence", () => Fitted().SeparationBand(Ppm(50), 0)),
        ["split: negative ppm"] = ("total", () => Oil.Split(Ppm(-1), C(20))),
        ["split: more than all"] = ("total", () => Oil.Split(Ppm(1_000_001), C(20))),
        ["cool: negative ppm"] = ("total", () => Oil.Cool(Ppm(-1), C(60), C(20))),
        ["cool: to below absolute zero"] = ("temperature", () => Oil.Cool(Ppm(1), C(60), C(-300))),
        ["cool: no state"] = ("state", () => Oil.Cool(null!, C(20))),
        ["at temperature: no state"] = ("state", () => Oil.AtTemperature(null!, C(20))),
        ["cool between: no saturation"] = ("from", () => CoolDown.Between(null!, Oil.SaturationAt(C(20)), Ppm(1))),
        ["cool between: no end"] = ("to", () => CoolDown.Between(Oil.SaturationAt(C(20)), null!, Ppm(1))),
        ["cool: negative mass"] = (
            "oilMass",
            () => Oil.Cool(Ppm(300), C(60), C(20)).SeparatedMass(Mass.FromKilograms(-1))
        ),
        ["separation: negative ppm"] = ("content", () => Oil.SeparationPoint(Ppm(-0.1))),
        ["sensor: above the grace"] = ("relativeSaturation", () => Oil.FromSensor(Share(1.0051), C(20))),
        ["sensor: below the grace"] = ("relativeSaturation", () => Oil.FromSensor(Share(-0.0051), C(20))),
        ["sensor: per cent as a share"] = ("relativeSaturation", () => Oil.DissolvedAt(Share(45), C(20))),
        ["sensor: error"] = ("sensorError", () => Oil.FromSensor(Share(0.5), C(20), Share(0.3))),
        ["equilibrium: no air"] = ("air", () => Oil.EquilibriumWith(null!, C(20))),
        ["equilibrium: oil temperature"] = ("temperature", () => Oil.EquilibriumWith(Air, C(-280))),
        ["equilibrium: negative pressure"] = (
            "vapourPressure",
            () => Oil.SaturationAt(C(20)).EquilibriumWith(Pressure.FromPascals(-1))
        ),
        ["coefficients: A not a number"] = ("a", () => Curve(double.NaN, 1670)),
        ["coefficients: A infinite"] = ("a", () => Curve(double.PositiveInfinity, 1670)),
        ["coefficients: A for base e"] = ("a", () => Curve(17.085, 1670)),
        ["coefficients: B not a number"] = ("bKelvin", () => Curve(7.42, double.NaN)),
        ["coefficients: B negative"] = ("bKelvin", () => Curve(7.42, -1670)),
        ["coefficients: B infinite"] = ("bKelvin", () => Curve(7.42, double.PositiveInfinity)),
        ["coefficients: ends swapped"] = (
            "highest",
            () => SaturationCurve.FromCoefficients("x", 7.42, 1670, C(60), C(20), Test)
        ),
        ["coefficients: no name"] = (
            "name",
            () => SaturationCurve.FromCoefficients(" ", 7.42, 1670, C(20), C(60), Test)
        ),
        ["coefficients: no source"] = (
            "source",
            () => SaturationCurve.FromCoefficients("x", 7.42, 1670, C(20), C(60), null!)
        ),
        ["two points: one temperature"] = ("secondTemperature", () => Points(40, 100, 40, 200)),
        ["two points: falling"] = ("secondSaturation", () => Points(20, 200, 60, 100)),
        ["two points: falling, given from the warm end"] = ("secondSaturation", () => Points(60, 100, 20, 200)),
        ["two points: equal saturations"] = ("secondSaturation", () => Points(20, 100, 60, 100)),
        ["two points: first saturation zero"] = ("firstSaturation", () => Points(20, 0, 60, 100)),
        ["two points: second saturation negative"] = ("secondSaturation", () => Points(20, 100, 60, -5)),
        ["two points: below absolute zero"] = ("firstTemperature", () => Points(-274, 100, 60, 200)),
        ["two points: too steep"] = ("bKelvin", () => Points(20, 1, 21, 900)),
        ["one point: no measurement"] = ("measurement", () => SaturationCurve.FromOnePoint("x", null!, 1600, Test)),
        ["one point: slope"] = ("assumedBKelvin", () => OnePoint(-1)),
        ["one point: slope not a number"] = ("assumedBKelvin", () => OnePoint(double.NaN)),
        ["hydrocarbon: ratio"] = (
            "hydrogenToCarbon",
            () => SaturationCurve.FromHydrocarbon("x", 1.9, MolarMass.FromGramsPerMole(400))
        ),
        ["hydrocarbon: molar mass"] = (
            "molarMass",
            () => SaturationCurve.FromHydrocarbon("x", 0.16, MolarMass.FromGramsPerMole(0.4))
        ),
        ["solubility: ratio"] = ("hydrogenToCarbon", () => HydrocarbonSolubility.MoleFraction(double.NaN, C(20))),
        ["aged: factor zero"] = ("factor", () => Oil.Aged(Share(0), Test)),
        ["aged: factor above 10"] = ("factor", () => Oil.Aged(Share(11), Test)),
        ["aged: no source"] = ("source", () => Oil.Aged(Share(2), null!)),
        ["measurement: sensor at saturation"] = (
            "relativeSaturation",
            () => SaturationMeasurement.FromSensor(C(20), Share(0.995), Ppm(50))
        ),
        ["measurement: sensor at zero"] = (
            "relativeSaturation",
            () => SaturationMeasurement.FromSensor(C(20), Share(0), Ppm(50))
        ),
        ["measurement: no water"] = ("content", () => SaturationMeasurement.FromSensor(C(20), Share(0.5), Ppm(0))),
        ["measurement: saturation"] = ("saturation", () => SaturationMeasurement.Saturated(C(20), Ppm(-5))),
        ["measurement: standard error"] = (
            "standardError",
            () => SaturationMeasurement.Saturated(C(20), Ppm(50), Ppm(0))
        ),
        ["volume ppm: negative"] = ("content", () => WaterContent.ByVolume(Ppm(-1), Rho)),
        ["volume ppm: relative density for density"] = (
            "oilDensity",
            () => WaterContent.ByVolume(Ppm(1), Density.FromKilogramsPerCubicMeter(0.87))
        ),
        ["mass ppm: negative"] = (
            "volumeContent",
            () => WaterContent.ByMass(VolumeConcentration.FromPartsPerMillion(-1), Rho)
        ),
        ["water in an oil: volume"] = ("oilVolume", () => WaterContent.VolumeIn(Volume.FromLiters(-1), Rho, Ppm(1))),
        ["water in an oil: water density"] = (
            "waterDensity",
            () => WaterContent.ByVolume(Ppm(1), Rho, Density.FromKilogramsPerCubicMeter(1))
        ),
        ["vapour: below absolute zero"] = ("temperature", () => WaterVapour.SaturationPressure(C(-274))),
        ["vapour: above the critical point"] = ("temperature", () => WaterVapour.SaturationPressure(C(374))),
        ["vapour: liquid below freezing"] = ("temperature", () => WaterVapour.PressureOverLiquid(C(-0.1))),
        ["vapour: ice above melting"] = ("temperature", () => WaterVapour.PressureOverIce(C(0.1))),
        ["vapour: pressure zero"] = ("absolutePressure", () => WaterVapour.SaturationTemperature(Pressure.Zero)),
        ["vapour: negative pressure"] = (
            "absolutePressure",
            () => WaterVapour.SaturationTemperature(Pressure.FromPascals(-80_000))
        ),
        ["vapour: latent heat of ice"] = ("temperature", () => WaterVapour.LatentHeat(C(-10))),
        ["vapour: volume"] = ("temperature", () => WaterVapour.SaturatedVapourVolume(C(360))),
        ["vapour: liquid volume"] = ("temperature", () => WaterVapour.LiquidVolume(C(-1))),
        ["vapour: flow"] = ("waterFlow", () => WaterVapour.HeatToEvaporate(MassFlow.FromKilogramsPerHour(-1), C(60))),
        ["vapour: pump"] = ("absolutePressure", () => WaterVapour.VolumeFlowOf(OneKilogram, C(60), Pressure.Zero)),
        ["vapour: flash"] = (
            "heatCapacity",
            () =>
                WaterVapour.CoolingByEvaporation(Ppm(100), C(60), SpecificEntropy.FromKilojoulesPerKilogramKelvin(0.2))
        ),
        ["gauge: negative"] = ("reading", () => Gauge(-1, 101_325)),
        ["gauge: more than the atmosphere"] = ("reading", () => Gauge(101_325, 101_325)),
        ["gauge: no atmosphere"] = ("localAtmosphere", () => Gauge(10, 0)),
        ["gauge: atmosphere in kPa as Pa"] = ("localAtmosphere", () => Gauge(10, 101.325)),
        ["gauge: absolute above atmosphere"] = (
            "absolutePressure",
            () => GaugeVacuum.FromAbsolute(Pressure.FromPascals(101_400), StandardAtmosphere.SeaLevel)
        ),
        ["gauge: to boil"] = ("temperature", () => GaugeVacuum.ToBoilAt(C(-300), StandardAtmosphere.SeaLevel)),
        ["gauge: error"] = (
            "gaugeError",
            () =>
                GaugeVacuum
                    .FromReading(Pressure.FromKilopascals(50), StandardAtmosphere.SeaLevel)
                    .BoilingPointWithin(Pressure.FromPascals(-1))
        ),
        ["atmosphere: altitude"] = ("altitude", () => StandardAtmosphere.PressureAt(Length.FromMeters(20_000))),
        ["atmosphere: geometric altitude"] = (
            "geometricAltitude",
            () => StandardAtmosphere.PressureAtGeometric(Length.FromMeters(-2000))
        ),
        ["air: humidity above the grace"] = (
            "relativeHumidity",
            () => HumidAir.FromRelativeHumidity(C(20), RelativeHumidity.FromPercent(101))
        ),
        ["air: temperature"] = (
            "airTemperature",
            () => HumidAir.FromRelativeHumidity(C(-274), RelativeHumidity.FromPercent(50))
        ),
        ["air: dew point above the air"] = ("dewPoint", () => HumidAir.FromDewPoint(C(20), C(21))),
        ["air: dew point beyond any dryer"] = ("dewPoint", () => HumidAir.FromDewPoint(C(20), C(-111))),
        ["air: boiling"] = ("absolutePressure", () => Air.HumidityRatioAt(Pressure.FromPascals(1000))),
        ["sweep: negative"] = ("dryAir", () => SweepAir.Dry(MassFlow.FromKilogramsPerHour(-1))),
        ["sweep: no air"] = ("air", () => SweepAir.FromAir(OneKilogram, null!, StandardAtmosphere.SeaLevel)),
        ["sweep: intake below the vapour pressure"] = (
            "absolutePressure",
            () => SweepAir.FromAir(OneKilogram, Air, Pressure.FromPascals(100))
        ),
        ["stage: no curve"] = ("curve", () => new VacuumStage((SaturationCurve)null!, C(65), Pressure.FromPascals(1))),
        ["stage: too hot"] = ("oilTemperature", () => new VacuumStage(Oil, C(151), Pressure.FromPascals(1000))),
        ["stage: frozen"] = ("oilTemperature", () => new VacuumStage(Oil, C(-1), Pressure.FromPascals(1000))),
        ["stage: gauge for absolute"] = (
            "absolutePressure",
            () => new VacuumStage(Oil, C(65), Pressure.FromKilopascals(-81))
        ),
        ["stage: fraction"] = ("waterMoleFraction", () => Stage.Floor(Share(1.01))),
        ["stage: no sweep"] = ("sweep", () => Stage.Floor(null!)),
        ["stage: no oil"] = ("oilFlow", () => Stage.Outlet(MassFlow.Zero, Ppm(100), SweepAir.None)),
        ["stage: inlet"] = ("inlet", () => Stage.Outlet(OneKilogram, Ppm(-1), SweepAir.None)),
        ["stage: no gas"] = ("waterFlow", () => VacuumStage.MoleFraction(MassFlow.Zero, MassFlow.Zero)),
        ["columns: negative ppm"] = (
            "totalsMgPerKg[1]",
            () => Oil.Split([1, -1], [20, 20], new double[2], new double[2])
        ),
        ["columns: lengths"] = ("saturationsMgPerKg", () => Oil.Saturations([20, 30], new double[3])),
        ["columns: not a number"] = (
            "contentsMgPerKg[0]",
            () => Oil.SeparationTemperatures([double.NaN], new double[1])
        ),
        ["columns: sensor"] = ("relativeSaturations[1]", () => Oil.Dissolved([0.5, 1.01], [20, 20], new double[2])),
        ["columns: infinity"] = (
            "totalsMgPerKg[0]",
            () => Oil.RelativeSaturations([double.PositiveInfinity], [20], new double[1])
        ),
    };

    public static TheoryData<string> AllDoors() => [.. Doors.Keys];

    [Theory]
    [MemberData(nameof(AllDoors))]
    public void Wrong_input_is_refused_by_name(string door)
    {
        var (field, open) = Doors[door];
        var error = Should.Throw<ArgumentException>(open);
        error.ParamName.ShouldBe(field);
        error.Message.ShouldContain(field.Split('[')[0]);
    }

    /// <summary>The quantities themselves refuse these, before any door of this library; held here because all doors rely on it.</summary>
    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void Quantities_that_are_no_numbers_do_not_come_in(double value)
    {
        Should.Throw<ArgumentException>(() => Oil.SaturationAt(C(value)));
        Should.Throw<ArgumentException>(() => Oil.Split(Ppm(value), C(20)));
        Should.Throw<ArgumentException>(() => Oil.FromSensor(Share(value), C(20)));
        Should.Throw<ArgumentException>(() => Gauge(value, 101_325));
        Should.Throw<ArgumentException>(() => SweepAir.Dry(MassFlow.FromKilogramsPerHour(value)));
    }

    [Theory]
    [InlineData(1.005, 1)]
    [InlineData(1.004, 1)]
    [InlineData(-0.005, 0)]
    public void Readings_within_the_rounding_grace_are_taken_as_the_end(double reading, double activity) =>
        Oil.FromSensor(Share(reading), C(20)).RelativeSaturation.DecimalFractions.ShouldBe(activity, 1e-12);

    [Fact]
    public void An_impossible_gauge_reading_is_refused_with_the_reason()
    {
        var message = Should.Throw<ArgumentOutOfRangeException>(() => Gauge(25.5 * 3386.389, 84_556)).Message;
        message.ShouldContain("25.5 inHg");
        message.ShouldContain("84.556 kPa");
        message.ShouldContain("no gauge can show more");
        message.ShouldContain("altitude or barometer");
    }

    private static Temperature C(double celsius) => Temperature.FromDegreesCelsius(celsius);

    private static MassFraction Ppm(double ppm) => MassFraction.FromPartsPerMillion(ppm);

    private static Ratio Share(double share) => Ratio.FromDecimalFractions(share);

    private static SaturationCurve Curve(double a, double bKelvin) =>
        SaturationCurve.FromCoefficients("x", a, bKelvin, C(20), C(60), Test);

    private static SaturationCurve Points(double t1, double s1, double t2, double s2) =>
        SaturationCurve.FromTwoPoints("x", C(t1), Ppm(s1), C(t2), Ppm(s2), Test);

    private static SaturationCurve OnePoint(double bKelvin) =>
        SaturationCurve.FromOnePoint("x", SaturationMeasurement.Saturated(C(40), Ppm(100)), bKelvin, Test);

    private static GaugeVacuum Gauge(double pascal, double local) =>
        GaugeVacuum.FromReading(Pressure.FromPascals(pascal), Pressure.FromPascals(local));

    private static SaturationFit Fitted()
    {
        SaturationFit
            .TryFit(
                "x",
                [
                    SaturationMeasurement.Saturated(C(20), Ppm(52)),
                    SaturationMeasurement.Saturated(C(40), Ppm(124)),
                    SaturationMeasurement.Saturated(C(60), Ppm(250)),
                    SaturationMeasurement.Saturated(C(70), Ppm(352)),
                ],
                Test,
                out var fit,
                out _
            )
            .ShouldBeTrue();
        return fit!;
    }
}
