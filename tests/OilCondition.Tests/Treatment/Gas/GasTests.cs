using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Thermal;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;
using Gases = OilCondition.Treatment.GasSolubility.Gas;

namespace OilCondition.Tests.Treatment.Gas;

public class GasTests
{
    private static OilProperties Oil(double density = 870) =>
        OilProperties.FromDensityAt15(Density.FromKilogramsPerCubicMeter(density));

    /// <summary>By its own definition the coefficient of an oil of 0.85 kg/L at 0 °C is L₀ (the constants, from memory).</summary>
    [Theory]
    [InlineData(Gases.Air, 0.095)]
    [InlineData(Gases.Nitrogen, 0.075)]
    [InlineData(Gases.Oxygen, 0.15)]
    public void At_0_degrees_it_is_the_constant_of_the_gas(Gases gas, double constant) =>
        GasSolubility.OstwaldAt(gas, Oil(850), Sump.Celsius(0)).DecimalFractions.ShouldBe(constant, 0.003 * constant);

    /// <summary>Coefficients of mineral insulating oil at 25 °C, as for dissolved-gas analysis (from memory): nitrogen 0.091, oxygen 0.172.</summary>
    [Theory]
    [InlineData(Gases.Nitrogen, 0.091)]
    [InlineData(Gases.Oxygen, 0.172)]
    public void It_agrees_with_coefficients_of_insulating_oil(Gases gas, double known) =>
        GasSolubility.OstwaldAt(gas, Oil(855), Sump.Celsius(25)).DecimalFractions.ShouldBe(known, 0.1 * known);

    /// <summary>Common practice: mineral oil that has stood in air holds 8 to 10 % of its volume.</summary>
    [Fact]
    public void Oil_in_air_holds_eight_to_ten_percent()
    {
        var content = GasSolubility.ContentAt(Gases.Air, Oil(), Sump.Celsius(25), StandardAtmosphere.SeaLevel);

        content.Percent.ShouldBeInRange(8, 10);
        (content / 2).Percent.ShouldBe(
            GasSolubility.ContentAt(Gases.Air, Oil(), Sump.Celsius(25), StandardAtmosphere.SeaLevel / 2).Percent,
            1e-9
        );
    }

    /// <summary>25 L/min with 8.7 % dissolved: 0.0812 · 1.5 m³/h · 1.293 kg/m³; a perfect stage leaves 60/1013 of it.</summary>
    [Fact]
    public void A_vacuum_stage_leaves_what_its_pressure_holds()
    {
        var load = Load();

        load.After.Percent.ShouldBe(load.Before.Percent * 60 / 1013.25, 1e-9);
        load.Released.KilogramsPerHour.ShouldBe((load.Before - load.After).DecimalFractions * 25 * 0.06 * 1.293, 1e-3);
        Load(0.5).After.Percent.ShouldBe((load.Before.Percent + load.After.Percent) / 2, 1e-9);
        load.ToString().ShouldStartWith("air ");
    }

    /// <summary>Bubbles of 1 %: 15 L/h at 1013 hPa swell to 253 L/h at 60 hPa.</summary>
    [Fact]
    public void Bubbles_swell()
    {
        var more = Load(entrained: 0.01).AtChamberPressure - Load().AtChamberPressure;

        more.CubicMetersPerHour.ShouldBe(0.015 * 1013.25 / 60, 1e-6);
    }

    [Fact]
    public void Outside_its_scope_nothing_is_told()
    {
        GasSolubility.Covers(Oil(950), Sump.Celsius(25)).ShouldBeFalse();
        GasSolubility.Covers(Oil(), Sump.Celsius(160)).ShouldBeFalse();
        GasSolubility.Covers(Oil(), Sump.Celsius(60)).ShouldBeTrue();
        Kit.Refused(() => GasSolubility.OstwaldAt(Gases.Air, Oil(950), Sump.Celsius(25)), "oilProperties");
        Kit.Refused(() => GasSolubility.OstwaldAt(Gases.Air, Oil(), Sump.Celsius(160)), "temperature");
        Kit.Refused(() => GasSolubility.OstwaldAt((Gases)9, Oil(), Sump.Celsius(60)), "gas");
        Kit.Refused(() => Load(0), "removalPerPass");
        Kit.Refused(() => Load(entrained: 2), "entrained");
        GasSolubility.Source.Kind.ShouldBe(SourceKind.FromMemory);
    }

    [Fact]
    public void Denser_oil_holds_less_and_content_goes_with_pressure() =>
        Gen.Select(Gen.Double[640, 890], Gen.Double[-40, 140], Gen.Double[1, 1000])
            .Holds(
                (density, celsius, millibar) =>
                {
                    var light = GasSolubility.OstwaldAt(Gases.Oxygen, Oil(density), Sump.Celsius(celsius));
                    var heavy = GasSolubility.OstwaldAt(Gases.Oxygen, Oil(density + 5), Sump.Celsius(celsius));
                    heavy.DecimalFractions.ShouldBeLessThan(light.DecimalFractions);
                    heavy.DecimalFractions.ShouldBeInRange(0.01, 1);
                    GasSolubility
                        .ContentAt(Gases.Air, Oil(density), Sump.Celsius(celsius), Pressure.FromMillibars(millibar))
                        .DecimalFractions.ShouldBeGreaterThan(0);
                }
            );

    private static GasLoad Load(double removal = 1, double entrained = 0) =>
        GasLoad.Of(
            Oil(),
            VolumeFlow.FromLitersPerMinute(25),
            Sump.Celsius(60),
            StandardAtmosphere.SeaLevel,
            Pressure.FromMillibars(60),
            Ratio.FromDecimalFractions(removal),
            Ratio.FromDecimalFractions(entrained)
        );
}
