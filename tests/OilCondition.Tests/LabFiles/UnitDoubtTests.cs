using OilCondition.LabFiles;
using OilCondition.Limits;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.LabFiles;

/// <summary>Units that nobody states: said to be assumed, and not taken where the values can only be in another one.</summary>
public class UnitDoubtTests
{
    private static LabFileResult Read(string header, ColumnMap? map, params string[] cells)
    {
        var rows = cells.Select((cell, i) => $"M1,S{i},2025-01-{i + 1:00},{cell}\n");
        return LabFile.Read(
            new StringReader($"Machine,Sample No,Date,{header}\n" + string.Concat(rows)),
            "lab.csv",
            map ?? ColumnMap.Default
        );
    }

    private static string Statement(LabFileResult file)
    {
        var limits = LimitSet.Parse(
            """
            { "name": "sump", "limits": [ { "measurand": "water-content", "kind": "absolute", "upper": { "alert": 200, "alarm": 500 },
              "source": { "kind": "user-data", "text": "invented" } } ] }
            """
        );
        var assessment = ConditionAssessor.Assess(
            OilHistory.Create(Invented.Machine, file.SamplesOf("M1"), [], []),
            limits,
            new AssessmentOptions(new DateTimeOffset(2025, 1, 20, 0, 0, 0, TimeSpan.Zero))
        );
        return $"{assessment.Worst}: " + string.Join(" ", assessment.Problems.Select(problem => problem.Statement));
    }

    [Fact]
    public void A_per_cent_sheet_without_units_is_not_read_as_normal_and_with_its_unit_it_is_an_alarm()
    {
        string[] cells = ["0.03", "0.05", "0.48"];
        var file = Read("WATER", null, cells);

        var problem = file.Problems.Single();
        problem
            .ToString()
            .ShouldBe(
                "lab.csv:1, WATER: 'WATER': nobody states the unit, and the values (0.03 to 0.48) fit % better than ppm; state it in the header or in the column map"
            );
        file.Cells.Rejected.ShouldBe(3);
        file.SamplesOf("M1").ShouldAllBe(sample => sample.Readings.Count == 0);
        Statement(file).ShouldNotContain("water");

        var map = ColumnMap.Parse(
            """{ "columns": [ { "names": ["WATER"], "measurand": "water-content", "unit": "%" } ] }"""
        );
        var stated = Read("WATER", map, cells);
        stated.Columns[3].UnitFrom.ShouldBe(UnitOrigin.Map);
        stated.Doubts.ShouldBeEmpty();
        stated.SamplesOf("M1")[2].Readings[Measurands.WaterContent].Value.ShouldBe(4800, 1e-9);
        Statement(stated)
            .ShouldStartWith(
                "Alarm: Water: water content 4800 mg/kg on 2025-01-03, above the alarm limit of 500 mg/kg"
            );
    }

    [Theory]
    [InlineData("Water", "%", "0.02", "<0.05", "0.11", "1.9")]
    [InlineData("Water", "%", "<0.05")]
    [InlineData("Water", "%", "0.5", "0.6", "0.4", "2.5")]
    [InlineData("Water", "%", "0.02", "NA", "0", "0.3")]
    [InlineData("Saturation", "aw", "0.42", "0.08", "0.95", "1")]
    [InlineData("Oil temperature", "K", "313", "318.2", "333")]
    [InlineData("Oil temperature", "°F", "125", "131", "149", "140")]
    [InlineData("Flash point", "°F", "420", "435", "445")]
    [InlineData("Density", "g/mL", "0.872", "0.869")]
    [InlineData(">4", "ISO 4406", "18", "19", "17")]
    [InlineData(">6um", "ISO 4406", "16", "15", "17")]
    [InlineData("Zinc", "%", "0.042", "0.039", "0.045")]
    [InlineData("Ca", "%", "0.25", "0.31", "0.28")]
    [InlineData("Iron", "%", "0.002", "0.0035", "0.011")]
    [InlineData("Sulfur", "%", "0.6", "1.1", "0.8")]
    public void Values_that_only_fit_another_unit_are_not_taken_over(string header, string unit, params string[] cells)
    {
        var file = Read(header, null, cells);

        file.Problems.Where(problem => problem.Line == 1)
            .ShouldHaveSingleItem()
            .Reason.ShouldContain($"fit {unit} better");
        file.SamplesOf("M1").ShouldAllBe(sample => sample.Readings.Count == 0);
        file.Cells.All.ShouldBe(4 * cells.Length);
    }

    [Theory]
    [InlineData("Water", "8", "12.4", "55")]
    [InlineData("Water", "0", "1", "2")] // whole numbers from a coulometer near its end
    [InlineData("Water", "0.8", "3.5", "6.1")] // dry insulating oil
    [InlineData("Water", "0", "0")]
    [InlineData("Water", "<10", "<10", "15")]
    [InlineData("Water", "<1", "<1", "1.2")]
    [InlineData("Water", "ND", "-", "")]
    [InlineData("Saturation", "0.9", "1.4", "2.2")]
    [InlineData("Saturation", "1", "0")]
    [InlineData("Oil temperature", "60", "125", "95")]
    [InlineData("Density", "870", "868.5")]
    [InlineData(">4", "18", "19", "640")]
    [InlineData(">14um", "13", "2", "7")] // counts of a clean oil
    [InlineData("Zinc", "0.1", "0.2", "0")] // traces
    [InlineData("Zinc", "395", "412")]
    [InlineData("Iron", "0.02", "0.15", "0.07")]
    [InlineData("Iron", "1.2", "0.35")]
    [InlineData("Viscosity index", "0.5")]
    [InlineData("AN", "0.05", "0.11")]
    public void Values_that_may_be_in_the_usual_unit_are_taken_over(string header, params string[] cells)
    {
        var file = Read(header, null, cells);

        file.Problems.Where(problem => problem.Line == 1).ShouldBeEmpty();
    }

    [Fact]
    public void A_stated_unit_is_questioned_and_taken_at_its_word()
    {
        var file = Read("Water [ppm]", null, "0.03", "0.48");

        file.Problems.ShouldBeEmpty();
        file.Doubts.Single().Reason.ShouldBe("the values (0.03 to 0.48) fit % better than ppm, which the file states");
        file.SamplesOf("M1")[1].Readings[Measurands.WaterContent].Value.ShouldBe(0.48);
    }

    [Fact]
    public void Three_columns_of_scale_numbers_under_the_headers_of_counts_are_all_questioned()
    {
        var file = LabFile.Read(
            new StringReader("Machine,Date,>4,>6,>14\nM1,2026-03-14,18,16,13\nM1,2026-03-15,19,17,14\n"),
            "lab.csv",
            ColumnMap.Default
        );

        file.Problems.Select(problem => problem.Column).ShouldBe([">4", ">6", ">14"]);
    }

    [Fact]
    public void Assumed_units_are_one_doubt_a_unit_and_stand_in_the_table()
    {
        var file = LabFile.Read(
            new StringReader("Machine,Date,Water,Fe,Cu,AN,Oil temp (°C)\nM1,2026-03-14,55,3,<1,0.1,\n"),
            "lab.csv",
            ColumnMap.Default
        );

        file.Doubts.Select(doubt => doubt.ToString())
            .ShouldBe([
                "lab.csv:1, Water: 'Water': the unit ppm is assumed; neither the file nor the column map states it",
                "lab.csv:1: 'Fe, Cu': the unit mg/kg is assumed; neither the file nor the column map states it",
            ]);
        file.ColumnTable()
            .ReplaceLineEndings("\n")
            .ShouldStartWith(
                """
                column         read as          unit     said by  read  blank  bounded  refused
                Machine        machine                               1      0        0        0
                Date           taken at                              1      0        0        0
                Water          water content    ppm      assumed     1      0        0        0
                Fe             iron             mg/kg    assumed     1      0        0        0
                Cu             copper           mg/kg    assumed     1      0        1        0
                AN             acid number      mgKOH/g  assumed     1      0        0        0
                Oil temp (°C)  oil temperature  °C       file        0      1        0        0
                Water: the unit ppm is assumed
                """
            );
        file.Columns[4]
            .ToString()
            .ShouldStartWith("Cu: copper in mg/kg (assumed); 1 read, 0 blank, 1 bounded, 0 refused");
    }
}
