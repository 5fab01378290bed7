using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Sampling;

/// <summary>Small invented records for the tests.</summary>
public static class Invented
{
    public static readonly DateTimeOffset Start = new(2025, 1, 6, 8, 0, 0, TimeSpan.Zero);

    /// <summary>100 mg/kg at 20 °C, 400 at 60 °C.</summary>
    public static SaturationCurve Curve { get; } =
        SaturationCurve.FromTwoPoints(
            "invented oil",
            Temperature.FromDegreesCelsius(20),
            MassFraction.FromPartsPerMillion(100),
            Temperature.FromDegreesCelsius(60),
            MassFraction.FromPartsPerMillion(400),
            Source.UserData("invented")
        );

    public static Oil Oil { get; } =
        new(
            "invented oil",
            new Dictionary<Measurand, Reading>
            {
                [Measurands.AcidNumber] = new(0.1),
                [Measurands.Viscosity40] = new(46),
                [Measurands.Density15] = new(870),
            },
            Curve
        );

    public static Machine Machine { get; } =
        new(
            "M1",
            "invented machine",
            Oil,
            Volume.FromLiters(1000),
            Temperature.FromDegreesCelsius(60),
            Temperature.FromDegreesCelsius(20)
        );

    public static OilSample Sample(int number, double days, params (Measurand Measurand, Reading Reading)[] readings) =>
        new($"S{number}", Start.AddDays(days), readings.ToDictionary(pair => pair.Measurand, pair => pair.Reading));

    public static OilHistory History(IEnumerable<OilSample> samples, params OilEvent[] events) =>
        OilHistory.Create(Machine, samples, [], events);
}
