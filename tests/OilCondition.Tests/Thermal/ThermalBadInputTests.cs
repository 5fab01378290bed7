using OilCondition.Thermal;
using UnitsNet;

namespace OilCondition.Tests.Thermal;

/// <summary>Every public door of the Thermal room, and the field that its refusal names.</summary>
public class ThermalBadInputTests
{
    private static readonly Source Test = Source.UserData("test");
    private static readonly SpecificEntropy Capacity = SpecificEntropy.FromKilojoulesPerKilogramKelvin(2);
    private static readonly HeatedTank Tank = new(Entropy.FromKilojoulesPerKelvin(1700), 60);
    private static readonly OilProperties Oil = OilProperties.FromDensityAt15(Rho(870));
    private static readonly Power Kilowatt = Power.FromKilowatts(1);

    private static readonly Dictionary<string, (string Field, Action Open)> Doors = new(StringComparer.Ordinal)
    {
        ["tank: no capacity"] = ("heatCapacity", () => new HeatedTank(Entropy.FromJoulesPerKelvin(0), 60)),
        ["tank: loss negative"] = ("lossWattPerKelvin", () => new HeatedTank(Entropy.FromJoulesPerKelvin(10), -1)),
        ["tank: loss not a number"] = (
            "lossWattPerKelvin",
            () => new HeatedTank(Entropy.FromJoulesPerKelvin(10), double.NaN)
        ),
        ["tank: loss infinite"] = (
            "lossWattPerKelvin",
            () => new HeatedTank(Entropy.FromJoulesPerKelvin(10), double.PositiveInfinity)
        ),
        ["tank: mass"] = ("oilMass", () => HeatedTank.FromOil(Mass.FromKilograms(-1), Capacity, 60)),
        ["tank: specific heat in kJ as J"] = (
            "heatCapacity",
            () => HeatedTank.FromOil(Mass.FromKilograms(1), SpecificEntropy.FromJoulesPerKilogramKelvin(2), 60)
        ),
        ["tank: start"] = ("start", () => Tank.TimeTo(C(60), C(-274), Kilowatt, C(20))),
        ["tank: target"] = ("target", () => Tank.TimeTo(C(333), C(20), Kilowatt, C(20))),
        ["tank: ambient"] = ("ambient", () => Tank.TimeTo(C(60), C(20), Kilowatt, C(-100))),
        ["tank: power"] = ("power", () => Tank.TimeTo(C(60), C(20), Power.FromWatts(-1), C(20))),
        ["tank: time"] = ("time", () => Tank.TemperatureAfter(C(20), Kilowatt, C(20), TimeSpan.FromHours(-1))),
        ["tank: steady power"] = ("power", () => Tank.TrySteadyTemperature(Power.FromWatts(-1), C(20), out _)),
        ["rise: no flow"] = ("flow", () => OilHeating.RisePerPass(Kilowatt, VolumeFlow.Zero, Rho(870), Capacity)),
        ["rise: power"] = ("power", () => OilHeating.RisePerPass(Power.FromWatts(-1), Litre(10), Rho(870), Capacity)),
        ["rise: density"] = ("density", () => OilHeating.RisePerPass(Kilowatt, Litre(10), Rho(0.87), Capacity)),
        ["power: rise"] = (
            "rise",
            () => OilHeating.PowerForRise(Litre(10), Rho(870), Capacity, TemperatureDelta.FromKelvins(-1))
        ),
        ["power: flow"] = (
            "flow",
            () => OilHeating.PowerForRise(Litre(-10), Rho(870), Capacity, TemperatureDelta.FromKelvins(1))
        ),
        ["energy: mass"] = (
            "oilMass",
            () => OilHeating.EnergyToWarm(Mass.FromKilograms(-1), Capacity, TemperatureDelta.FromKelvins(1))
        ),
        ["power to warm: no time"] = (
            "time",
            () =>
                OilHeating.PowerToWarm(Mass.FromKilograms(1), Capacity, TemperatureDelta.FromKelvins(1), TimeSpan.Zero)
        ),
        ["oil: density"] = ("densityAt15", () => OilProperties.FromDensityAt15(Rho(0.87))),
        ["oil: observed density"] = ("observed", () => OilProperties.FromObservedDensity(Rho(1600), C(20))),
        ["oil: relative density"] = ("relativeDensity", () => OilProperties.FromRelativeDensity(870)),
        ["oil: relative density not a number"] = (
            "relativeDensity",
            () => OilProperties.FromRelativeDensity(double.NaN)
        ),
        ["oil: temperature"] = ("temperature", () => Oil.At(C(-274))),
        ["oil: volume"] = ("volume", () => Oil.VolumeAt(Volume.FromLiters(-1), C(20), C(60))),
        ["oil: volume to"] = ("temperature", () => Oil.VolumeAt(Volume.FromLiters(1), C(20), C(201))),
        ["factor 54D"] = ("densityAt15", () => VolumeCorrection.Table54D(Rho(499), C(20))),
        ["factor 6D"] = ("densityAt60F", () => VolumeCorrection.Table6D(Rho(1501), C(20))),
        ["factor 2004: temperature"] = ("temperature", () => VolumeCorrection.Api2004(Rho(870), C(-61))),
        ["expansion: per °C as %"] = (
            "coefficient",
            () => VolumeCorrection.Api2004(CoefficientOfThermalExpansion.FromPerKelvin(0.07), Rho(950), C(20))
        ),
        ["expansion: K0 not a number"] = (
            "k0",
            () => ThermalExpansion.FromConstants(double.NaN, 0.3, 0, Rho(700), Rho(900), Test)
        ),
        ["expansion: range swapped"] = (
            "highest",
            () => ThermalExpansion.FromConstants(0, 0.3, 0, Rho(900), Rho(700), Test)
        ),
        ["loss: coefficient"] = (
            "coefficient",
            () => TankHeatLoss.FromCoefficient(HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(-1))
        ),
        ["loss: area"] = (
            "area",
            () =>
                TankHeatLoss
                    .FromCoefficient(HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(1))
                    .WattPerKelvin(Area.FromSquareMeters(-1))
        ),
        ["loss: difference"] = (
            "difference",
            () =>
                TankHeatLoss
                    .FromCoefficient(HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(1))
                    .Loss(Area.FromSquareMeters(1), TemperatureDelta.FromKelvins(300))
        ),
        ["loss: guide"] = ("temperature", () => TankHeatLoss.Guide(TankSurface.ExposedInsulated, C(-274))),
        ["loss: no such surface"] = ("surface", () => TankHeatLoss.Guide((TankSurface)7, C(20))),
    };

    public static TheoryData<string> AllDoors() => [.. Doors.Keys];

    [Theory]
    [MemberData(nameof(AllDoors))]
    public void Wrong_input_is_refused_by_name(string door)
    {
        var (field, open) = Doors[door];
        var error = Should.Throw<ArgumentException>(open);
        error.ParamName.ShouldBe(field);
        error.Message.ShouldContain(field);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void Quantities_that_are_no_numbers_do_not_come_in(double value)
    {
        Should.Throw<ArgumentException>(() => Oil.At(C(value)));
        Should.Throw<ArgumentException>(() => OilProperties.FromDensityAt15(Rho(value)));
        Should.Throw<ArgumentException>(() => Tank.TimeTo(C(60), C(20), Power.FromWatts(value), C(20)));
    }

    private static Temperature C(double celsius) => Temperature.FromDegreesCelsius(celsius);

    private static Density Rho(double value) => Density.FromKilogramsPerCubicMeter(value);

    private static VolumeFlow Litre(double perMinute) => VolumeFlow.FromLitersPerMinute(perMinute);
}
