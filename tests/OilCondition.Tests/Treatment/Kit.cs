using OilCondition.Treatment;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Treatment;

/// <summary>Equipment beside the sump of the invented station: loops, air, filters. No figure is plant data.</summary>
internal static class Kit
{
    public static SideLoop Loop(
        double litrePerMinute = 40,
        double? celsius = null,
        double kilowatt = 0,
        double motor = 0
    ) =>
        new(
            new PumpViscosityLimit(
                VolumeFlow.FromLitersPerMinute(litrePerMinute),
                KinematicViscosity.FromCentistokes(700)
            ),
            celsius is { } warm ? Sump.Celsius(warm) : null,
            Power.FromKilowatts(kilowatt),
            Power.FromKilowatts(motor)
        );

    public static Length Micrometres(double value) => Length.FromMicrometers(value);

    public static HumidAir DryAir(double dewPoint = -40) =>
        HumidAir.FromDewPoint(Sump.Celsius(20), Sump.Celsius(dewPoint));

    public static Centrifuge Spinner(double squareMetres = 2000) =>
        new(Loop(celsius: 50, kilowatt: 18), Area.FromSquareMeters(squareMetres), Micrometres(20), Micrometres(3));

    public static readonly Density Quartz = Density.FromKilogramsPerCubicMeter(2650);

    public static void Refused(Func<object> call, string name) =>
        Should.Throw<ArgumentOutOfRangeException>(call).ParamName.ShouldBe(name);
}
