using OilCondition.LabFiles;

namespace OilCondition.Tests.LabFiles;

/// <summary>Headers as laboratories write them (invented files): what each is read as, and in which unit.</summary>
public class HeaderTests
{
    private static ColumnReport Column(string header, string cell = "1")
    {
        var text = $"Machine;Sample No;Date;{header}\nM1;S1;2026-03-14;{cell}\n";
        return LabFile.Read(new StringReader(text), "lab.csv", ColumnMap.Default).Columns[3];
    }

    [Theory]
    [InlineData("Particles >=4 um(c)", "particles-4um", "per mL", UnitOrigin.Assumed)]
    [InlineData("≥ 4 µm(c)", "particles-4um", "per mL", UnitOrigin.Assumed)]
    [InlineData("PARTICLES ≥ 14 µm(c)", "particles-14um", "per mL", UnitOrigin.Assumed)]
    [InlineData("Particles > 6 µm [per 100 mL]", "particles-6um", "per 100 mL", UnitOrigin.File)]
    [InlineData(">6um/mL", "particles-6um", "/mL", UnitOrigin.File)]
    [InlineData("particles-14um", "particles-14um", "per mL", UnitOrigin.Assumed)]
    [InlineData("ISO 4406 >4", "particles-4um", "iso-4406", UnitOrigin.Assumed)]
    [InlineData("ISO Code (14)", "particles-14um", "iso-4406", UnitOrigin.Assumed)]
    [InlineData("Water", "water-content", "ppm", UnitOrigin.Assumed)]
    [InlineData("WATER % (m/m)", "water-content", "% (m/m)", UnitOrigin.File)]
    [InlineData("Water content, mg/kg", "water-content", "mg/kg", UnitOrigin.File)]
    [InlineData("Water (ASTM D6304) [ppm]", "water-content", "ppm", UnitOrigin.File)]
    [InlineData("Karl-Fischer", "water-content", "ppm", UnitOrigin.Assumed)]
    [InlineData("Fe (Iron) ppm", "iron", "ppm", UnitOrigin.File)]
    [InlineData("Iron (Fe)", "iron", "mg/kg", UnitOrigin.Assumed)]
    [InlineData("Al", "aluminium", "mg/kg", UnitOrigin.Assumed)]
    [InlineData("Na (mg/kg)", "sodium", "mg/kg", UnitOrigin.File)]
    [InlineData("Sulphur", "sulfur", "mg/kg", UnitOrigin.Assumed)]
    [InlineData("KV40", "viscosity-40c", "mm²/s", UnitOrigin.Assumed)]
    [InlineData("Viscosity @ 104 °F (SUS)", "viscosity-40c", "SUS", UnitOrigin.File)]
    [InlineData("Kinematic viscosity at 100°C, cSt", "viscosity-100c", "cSt", UnitOrigin.File)]
    [InlineData("Viscosity [cSt] (40 °C)", "viscosity-40c", "cSt", UnitOrigin.File)]
    [InlineData("Visc. 212F", "viscosity-100c", "mm²/s", UnitOrigin.Assumed)]
    [InlineData("Density 15 [g/mL]", "density-15c", "g/mL", UnitOrigin.File)]
    [InlineData("Acid number mgKOH/g", "acid-number", "mgKOH/g", UnitOrigin.File)]
    [InlineData("TAN", "acid-number", "mgKOH/g", UnitOrigin.Assumed)]
    [InlineData("Viscosity index", "viscosity-index", "", UnitOrigin.None)]
    [InlineData("Water activity", "relative-saturation", "aw", UnitOrigin.Assumed)]
    [InlineData("Water, % m/m", "water-content", "% m/m", UnitOrigin.File)]
    [InlineData("FE_PPM", "iron", "PPM", UnitOrigin.File)]
    [InlineData("Lead (Pb) - mg/kg", "lead", "mg/kg", UnitOrigin.File)]
    [InlineData("Kin. Viscosity 40°C [mm²/s]", "viscosity-40c", "mm²/s", UnitOrigin.File)]
    [InlineData("Viscosity at 40 deg C", "viscosity-40c", "mm²/s", UnitOrigin.Assumed)]
    [InlineData("Viscosity (cSt @ 40C)", "viscosity-40c", "cSt", UnitOrigin.File)]
    [InlineData("ISO 4406 Code 4µm(c)", "particles-4um", "iso-4406", UnitOrigin.Assumed)]
    [InlineData("Oil temp (°F)", "oil-temperature", "°F", UnitOrigin.File)]
    public void A_header_is_read_with_its_unit(string header, string id, string unit, UnitOrigin origin)
    {
        var column = Column(header);

        column.Measurand.ShouldNotBeNull(header).Id.ShouldBe(id);
        column.Unit.ShouldBe(unit);
        column.UnitFrom.ShouldBe(origin);
        column.Use.ShouldBe(ColumnUse.Reading);
    }

    [Theory]
    [InlineData("Lead time")]
    [InlineData("Water separability")]
    [InlineData("Copper corrosion")]
    [InlineData("Iron > 5 um")]
    [InlineData("Colour")]
    [InlineData("Viscosity 98.9 °C")]
    [InlineData("Viscosity 210F (SUS)")]
    [InlineData("KV -20C")]
    [InlineData("KV -40C")] // no viscosity at 40 °C
    [InlineData("Viscosity @-40 °C (cP)")]
    [InlineData("Viscosity")]
    [InlineData("Test temperature")]
    public void What_is_no_measurand_is_kept_as_text(string header) => Column(header).Use.ShouldBe(ColumnUse.Text);

    [Theory]
    [InlineData("Viscosity 98.9 °C", "a viscosity at 98.9 °C is none at 40 or 100 °C")]
    [InlineData("Viscosity", "stated neither in the header nor in a column of its own")]
    [InlineData("Irno", "did you mean 'iron'?")]
    public void Why_it_is_kept_as_text_is_said(string header, string expected)
    {
        var text = $"Machine,Sample No,Date,{header}\nM1,S1,2026-03-14,46\n";
        var file = LabFile.Read(new StringReader(text), "lab.csv", ColumnMap.Default);

        file.Columns[3].Doubt.ShouldContain(expected);
        file.Doubts.Single().ToString().ShouldStartWith($"lab.csv:1, {header}: '{header}': ");
        file.SamplesOf("M1").Single().Texts[header].ShouldBe("46");
    }

    [Fact]
    public void A_unit_that_is_not_understood_refuses_its_cells_and_not_silently()
    {
        var text = "Machine,Sample No,Date,Water (vol%)\nM1,S1,2026-03-14,0.05\n";
        var file = LabFile.Read(new StringReader(text), "lab.csv", ColumnMap.Default);

        file.Problems.Single().Reason.ShouldBe("0.05 'vol%' cannot be converted to mg/kg");
    }

    [Fact]
    public void A_row_of_units_below_the_header_is_the_files_word()
    {
        var text = "Machine;Sample No;Date;Water;Visc 40;Iron;AN\n;;;%;[cSt];ppm;\nM1;S1;2026-03-14;0.012;46.1;3;0.2\n";
        var file = LabFile.Read(new StringReader(text), "lab.csv", ColumnMap.Default);

        file.SamplesOf("M1").Single().Readings[Measurands.WaterContent].Value.ShouldBe(120, 1e-9);
        file.Columns[3].UnitFrom.ShouldBe(UnitOrigin.File);
        file.Doubts.ShouldBeEmpty();
        file.Cells.All.ShouldBe(7);
    }

    [Fact]
    public void The_same_header_twice_and_a_blank_one_keep_their_texts_apart()
    {
        var text = "Machine,Date,Note,Note,,x\nM1,2026-03-14,a,b,c,d\n";
        var sample = LabFile.Read(new StringReader(text), "lab.csv", ColumnMap.Default).SamplesOf("M1").Single();

        sample
            .Texts.OrderBy(one => one.Key, StringComparer.Ordinal)
            .Select(one => $"{one.Key}={one.Value}")
            .ShouldBe(["Note=a", "Note (2)=b", "column 5=c", "x=d"]);
    }
}
