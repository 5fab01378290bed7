using OilCondition.Cleanliness;
using OilCondition.Thermal;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Treatment;

/// <summary>
/// An invented guide-bearing sump of the invented Harrow Point station, and a purifier for it. No figure is plant data. The purifier's heater and pump have no
/// limit of their own, so that closed forms hold; <see cref="PlainUnit"/> has those of common practice.
/// </summary>
public static class Sump
{
    public static SaturationCurve Mineral => PublishedSaturationCurves.TransformerMineralOilSteeper;

    public static SaturationCurve Turbine { get; } =
        SaturationCurve.FromTwoPoints(
            "invented turbine oil",
            Celsius(20),
            Ppm(100),
            Celsius(70),
            Ppm(480),
            Source.UserData("invented")
        );

    public static ViscosityTemperatureLine Vg46 { get; } = Line(46, 6.8);

    public static ViscosityTemperatureLine Vg320 { get; } = Line(320, 24);

    public static ViscosityTemperatureLine Vg460 { get; } = Line(460, 30.5);

    public static Temperature Celsius(double celsius) => Temperature.FromDegreesCelsius(celsius);

    public static MassFraction Ppm(double ppm) => MassFraction.FromPartsPerMillion(ppm);

    public static TreatedOil Oil(
        SaturationCurve? curve = null,
        ViscosityTemperatureLine? line = null,
        double highest = 150
    ) =>
        new(
            OilProperties.FromDensityAt15(Density.FromKilogramsPerCubicMeter(870)),
            curve ?? Mineral,
            line ?? Vg46,
            Celsius(highest)
        );

    public static Reservoir Tank(
        double litres = 2000,
        double start = 20,
        double ambient = 20,
        double loss = 40,
        double ingressGramPerHour = 0,
        ParticleIngression? ingression = null,
        double highest = 150,
        double heatWatt = 0
    ) =>
        new(
            Volume.FromLiters(litres),
            Celsius(start),
            Celsius(ambient),
            loss,
            MassFlow.FromGramsPerHour(ingressGramPerHour),
            ingression,
            Celsius(highest),
            heatInput: Power.FromWatts(heatWatt)
        );

    public static TreatmentJob Job(
        double ppm,
        double targetPpm,
        Reservoir? tank = null,
        TreatedOil? oil = null,
        double emulsified = 0,
        string code = "20/18/15",
        string? targetCode = null,
        double horizonHours = 2400
    ) =>
        new(
            oil ?? Oil(),
            tank ?? Tank(),
            new Contamination(
                Ppm(ppm),
                Ratio.FromDecimalFractions(emulsified),
                ParticleLevels.FromCode(CleanlinessCode.Parse(code))
            ),
            new TreatmentTarget(Ppm(targetPpm), targetCode is null ? null : CleanlinessCode.Parse(targetCode)),
            TimeSpan.FromHours(horizonHours)
        );

    public static PurificationUnit Unit(
        double litrePerMinute = 20,
        double kilowatt = 18,
        double celsius = 65,
        double pascal = 6510,
        double airKilogramPerHour = 0,
        double eta = 0.7,
        VacuumChamber? chamber = null,
        FilterRatings? filter = null,
        double viscosity = 700,
        double startViscosity = 2e7,
        double motorKilowatt = 0,
        double rise = 150
    ) =>
        new(
            new PumpViscosityLimit(
                VolumeFlow.FromLitersPerMinute(litrePerMinute),
                KinematicViscosity.FromCentistokes(viscosity)
            ),
            Power.FromKilowatts(kilowatt),
            Celsius(celsius),
            chamber
                ?? new VacuumChamber(
                    Pressure.FromPascals(pascal),
                    SweepAir.Dry(MassFlow.FromKilogramsPerHour(airKilogramPerHour))
                ),
            Ratio.FromDecimalFractions(eta),
            filter,
            Power.FromKilowatts(motorKilowatt),
            startViscosity: KinematicViscosity.FromCentistokes(startViscosity),
            highestRise: TemperatureDelta.FromKelvins(rise)
        );

    public static FilterRatings Filter { get; } = new(new FilterBeta(75), new FilterBeta(200), new FilterBeta(1000));

    /// <summary>A unit as its maker ships it, with the rise per pass and the start viscosity of common practice.</summary>
    public static PurificationUnit PlainUnit(double kilowatt = 18, double eta = 0.7) =>
        new(
            new PumpViscosityLimit(VolumeFlow.FromLitersPerMinute(20), KinematicViscosity.FromCentistokes(700)),
            Power.FromKilowatts(kilowatt),
            Celsius(65),
            new VacuumChamber(Pressure.FromPascals(6510)),
            Ratio.FromDecimalFractions(eta)
        );

    public static TimeSpan Coarse { get; } = TimeSpan.FromHours(24);

    private static ViscosityTemperatureLine Line(double at40, double at100) =>
        ViscosityTemperatureLine.FromTwoPoints(
            Celsius(40),
            KinematicViscosity.FromCentistokes(at40),
            Celsius(100),
            KinematicViscosity.FromCentistokes(at100)
        );
}
