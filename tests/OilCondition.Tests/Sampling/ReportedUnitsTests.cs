using OilCondition.Statistics;

namespace OilCondition.Tests.Sampling;

public class ReportedUnitsTests
{
    [Theory]
    [InlineData("water-content", 0.0123, "%", 123)] // 1 % = 10 000 mg/kg, definition
    [InlineData("water-content", 85, "ppm", 85)]
    [InlineData("oil-temperature", 104, "°F", 40)] // definition
    [InlineData("oil-temperature", 313.15, "K", 40)]
    [InlineData("relative-saturation", 0.42, "aw", 42)]
    [InlineData("particles-4um", 125_000, "per 100 mL", 1250)]
    [InlineData("particles-6um", 16, "ISO 4406", 640)] // upper limit of scale number 16, ISO 4406 table 1
    [InlineData("viscosity-40c", 46.1, "cSt", 46.1)]
    [InlineData("rpvot", 5, "h", 300)]
    [InlineData("density-15c", 0.872, "g/cm³", 872)] // definition
    [InlineData("acid-number", 0.2, "mg KOH/g", 0.2)]
    public void Units_that_laboratories_write_are_converted(string id, double value, string unit, double expected)
    {
        MeasurandCatalog.BuiltIn.TryFind(id, out var measurand).ShouldBeTrue();

        measurand!.TryConvert(value, unit, out var converted).ShouldBeTrue();
        converted.ShouldBe(expected, expected * 1e-12);
    }

    [Theory]
    [InlineData("viscosity-40c", 214.24, 46, 0.03)] // reference row VIS-087, factor of 104 °F from memory
    [InlineData("viscosity-100c", 932.8, 200, 0.2)] // reference row VIS-085, ASTM D2161: SUS = 4.664 v at 210 °F
    public void Saybolt_seconds_become_square_millimetres(string id, double seconds, double expected, double tolerance)
    {
        MeasurandCatalog.BuiltIn.TryFind(id, out var measurand).ShouldBeTrue();
        measurand!.TryConvert(seconds, "SUS", out var converted).ShouldBeTrue();

        converted.ShouldBe(expected, tolerance);

        // Second route: forward again by ASTM D2161 with the temperature factor of 40 °C (104 °F) or 100 °C (212 °F).
        var fahrenheit = id == "viscosity-40c" ? 104 : 212;
        var v = converted;
        var back =
            (4.6324 * v + (1 + 0.03264 * v) / ((3930.2 + 262.7 * v + 23.97 * v * v + 1.646 * v * v * v) * 1e-5))
            * (1 + 0.000061 * (fahrenheit - 100));
        back.ShouldBe(seconds, 1e-6);
    }

    [Theory]
    [InlineData("water-content", "°F")]
    [InlineData("water-content", "ppm (v/v)")]
    [InlineData("viscosity-40c", "%")]
    [InlineData("particles-6um", "mg/L")]
    public void Other_units_are_refused(string id, string unit)
    {
        MeasurandCatalog.BuiltIn.TryFind(id, out var measurand).ShouldBeTrue();

        measurand!.TryConvert(40, unit, out _).ShouldBeFalse();
    }

    [Fact]
    public void A_mistyped_measurand_finds_its_neighbour() =>
        MeasurandCatalog.BuiltIn.Nearest("watr-content").ShouldBe("water-content");

    [Fact]
    public void A_measurand_of_the_users_own_joins_the_catalog()
    {
        var resistivity = new Measurand(
            "volume-resistivity",
            "volume resistivity",
            "GΩ·cm",
            LimitSide.Lower,
            NaturalScale.Logarithmic,
            0,
            1e6
        );

        MeasurandCatalog.BuiltIn.With(resistivity).TryFind("volume-resistivity", out var found).ShouldBeTrue();
        found.ShouldBe(resistivity);
        MeasurandCatalog.BuiltIn.TryFind("volume-resistivity", out _).ShouldBeFalse();
    }
}
