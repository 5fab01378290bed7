using OilCondition.LabFiles;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.LabFiles;

/// <summary>Machines, sample numbers, dates and zones.</summary>
public class KeyTests
{
    private static LabFileResult Read(string text, string map = "{}") =>
        LabFile.Read(new StringReader(text), "lab.csv", ColumnMap.Parse(map));

    private static string At(string text, string map = "{}") =>
        string.Join(
            " ",
            Read(text, map).SamplesOf("M1").Select(sample => sample.TakenAt.ToString("yyyy-MM-ddTHH:mmzzz"))
        );

    [Fact]
    public void All_missing_key_columns_are_named_at_once() =>
        Should
            .Throw<FormatException>(() => Read("Fe,Cu\n1,2\n"))
            .Message.ShouldMatch(
                "^lab.csv has no column for the date of sampling \\(one of: .*\\), nor for the machine \\(one of: .*\\)\\. Found: Fe, Cu\\."
            );

    [Fact]
    public void Every_day_of_the_years_allowed_is_read_as_it_is_written()
    {
        var first = new DateTime(1900, 1, 1);
        var days = Enumerable
            .Range(0, (new DateTime(2199, 12, 31) - first).Days + 1)
            .Select(i => first.AddDays(i))
            .ToList();
        var text = "Machine,Date,Water [ppm]\n" + string.Concat(days.Select(day => $"M1,{day:yyyy-MM-dd},50\n"));

        var file = Read(text);

        file.Problems.ShouldBeEmpty();
        file.SamplesOf("M1").Select(sample => sample.TakenAt.DateTime).ShouldBe(days);
    }

    [Theory]
    [InlineData("2026-02-29")]
    [InlineData("2100-02-29")]
    [InlineData("2026-13-01")]
    [InlineData("2026-00-10")]
    [InlineData("2026-04-31")]
    [InlineData("2026-04-00")]
    [InlineData("1899-12-31")]
    [InlineData("2200-01-01")]
    [InlineData("2026-0٣-14")]
    [InlineData("2026-03-1")]
    public void What_is_no_day_is_refused_with_the_forms_that_are_read(string day)
    {
        var problem = Read($"Machine,Date,Water [ppm]\nM1,{day},50\nM1,2026-03-14,60\n").Problems.Single();

        problem.Line.ShouldBe(2);
        problem.Reason.ShouldStartWith($"'{day}' is not a date; expected: ISO 8601");
    }

    [Fact]
    public void A_form_that_the_map_states_comes_before_the_usual_one() =>
        At("Machine,Date,Water [ppm]\nM1,2026-03-11,50\n", """{ "dateFormats": ["yyyy-dd-MM"] }""")
            .ShouldBe("2026-11-03T00:00+00:00");

    [Fact]
    public void Constants_stand_for_missing_columns_one_machine_a_file()
    {
        var map = """{ "constants": { "machine": "HP/GOV/1", "takenAt": "2026-03-14" } }""";
        var file = Read("Water [ppm];Remark\n55;clear\n60;dark\n", map);

        file.MachineIds.ShouldBe(["HP/GOV/1"]);
        file.SamplesOf("HP/GOV/1").Select(sample => sample.SampleNumber).ShouldBe(["2026-03-14", "2026-03-14"]);
        ColumnMap.Default.ForMachine("M7").ToString().ShouldEndWith(", machine M7");
        LabFile
            .Read(new StringReader("Date,AN\n2026-03-14,0.1\n"), "m7.csv", ColumnMap.Default.ForMachine("M7"))
            .SamplesOf("M7")
            .Count.ShouldBe(1);
        Should
            .Throw<FormatException>(() =>
                ColumnMap.Parse("""{ "constants": { "takenAt": "14.3.2026", "site": "x" } }""")
            )
            .Message.ShouldContain("$.constants.takenAt: '14.3.2026' is not a date");
    }

    [Fact]
    public void Samples_without_numbers_and_numbers_that_begin_anew_make_a_history()
    {
        var file = Read(
            "Machine,Lab no,Date,Water [ppm],Remark\n"
                + "M1,17,2024-03-14,50,\nM1,17,2025-03-12,60,new year\nM1,,2025-06-01,70,\nM1,,2025-06-01,,second sheet\n"
        );
        var history = OilHistory.Create(Invented.Machine, file.SamplesOf("M1"), [], []);

        history.Samples.Select(sample => sample.SampleNumber).ShouldBe(["17", "17", "2025-06-01"]);
        history.Samples[1].Texts["Remark"].ShouldBe("new year");
        history.Samples[2].Texts["Remark"].ShouldBe("second sheet");
    }

    [Theory]
    [InlineData("HP/UNIT 1/GOV", 1)]
    [InlineData("Förderpumpe №3 \\ \"links\"", 1)]
    [InlineData("M\u00011", 0)]
    [InlineData("M\uFFFD1", 0)]
    [InlineData("M\01", 0)]
    public void A_machine_id_is_any_text_without_control_characters(string id, int expected)
    {
        var file = Read($"Machine;Date;AN\n{id};2026-03-14;0.1\n");

        file.SamplesOf(id).Count.ShouldBe(expected);
        file.Problems.Count.ShouldBe(1 - expected);
        file.Cells.All.ShouldBe(3);
    }

    [Theory]
    [InlineData("2026-03-14T06:15:00+01:00", "2026-03-14T06:15+01:00")]
    [InlineData("2026-03-14 06:15Z", "2026-03-14T06:15+00:00")]
    [InlineData("20260314", "2026-03-14T00:00+00:00")]
    [InlineData("2026/03/14 06:15", "2026-03-14T06:15+00:00")]
    [InlineData("14-Mar-2026", "2026-03-14T00:00+00:00")]
    [InlineData("14 March 2026", "2026-03-14T00:00+00:00")]
    [InlineData("14.03.2026", "")]
    [InlineData("03/04/2026", "")]
    [InlineData("14-Mar-26", "")]
    [InlineData("2026-02-30", "")]
    [InlineData("46095", "")]
    [InlineData("0001-01-01", "")]
    public void Dates_that_can_be_read_in_one_way_only(string date, string expected) =>
        At($"Machine;Date;AN\nM1;{date};0.1\n").ShouldBe(expected);

    [Theory]
    [InlineData("06:15", "2026-03-14T06:15+00:00")]
    [InlineData("6:15 PM", "2026-03-14T18:15+00:00")]
    [InlineData("", "2026-03-14T00:00+00:00")]
    [InlineData("noon", "")]
    public void A_column_with_the_time_of_day(string time, string expected) =>
        At($"Machine;Date;Time;AN\nM1;2026-03-14;{time};0.1\n").ShouldBe(expected);

    [Theory]
    [InlineData("2026-01-15 12:00", "2026-01-15T12:00+01:00", 0)]
    [InlineData("2026-07-15 12:00", "2026-07-15T12:00+02:00", 0)]
    [InlineData("2026-07-15", "2026-07-15T00:00+02:00", 0)]
    [InlineData("2026-03-29 02:30", "2026-03-29T03:30+02:00", 1)] // the clock went from 2 to 3
    [InlineData("2026-10-25 02:30", "2026-10-25T02:30+02:00", 1)] // and from 3 to 2: the first of the two
    public void A_named_zone_has_daylight_saving(string date, string expected, int doubts)
    {
        var map = """{ "timeZone": "Europe/Berlin" }""";
        var text = $"Machine;Date;AN\nM1;{date};0.1\n";

        At(text, map).ShouldBe(expected);
        Read(text, map).Doubts.Count.ShouldBe(doubts);
        At(text, """{ "timeZone": "W. Europe Standard Time" }""").ShouldBe(expected);
    }

    [Fact]
    public void A_day_that_begins_in_a_skipped_hour_begins_when_the_clock_does()
    {
        // Cuba goes forward at midnight; in 2024 on 10 March (tz database).
        var file = Read("Machine;Date;AN\nM1;2024-03-10;0.1\n", """{ "timeZone": "America/Havana" }""");

        file.SamplesOf("M1").Single().TakenAt.ToString("yyyy-MM-ddTHH:mmzzz").ShouldBe("2024-03-10T01:00-04:00");
        file.Doubts.ShouldBeEmpty();
    }

    [Fact]
    public void The_hour_that_comes_twice_is_told_apart_by_the_order_of_each_machines_rows()
    {
        var times = new[] { "02:00", "02:30", "02:00", "02:30", "03:00" };
        var rows = times.SelectMany(time => new[] { $"M1,2026-10-25 {time},50\n", $"M2,2026-10-25 {time},51\n" });
        var log = SensorLog.Read(
            new StringReader("Machine,Time,Oil temperature [°C]\n" + string.Concat(rows)),
            "log.csv",
            ColumnMap.Parse("""{ "timeZone": "Europe/Berlin" }""")
        );

        foreach (var id in log.MachineIds)
        {
            log.ReadingsOf(id)
                .Select(reading => reading.At.UtcDateTime.TimeOfDay.TotalMinutes)
                .ShouldBe([0, 30, 60, 90, 120]);
        }

        log.Doubts.Count.ShouldBe(8);
        log.Doubts[4]
            .Reason.ShouldBe(
                "02:00 comes twice on this day in Europe/Berlin, the clock goes back; read as the second one"
            );
    }

    [Theory]
    [InlineData("""{ "timeZone": "Harrow Point" }""", "$.timeZone: 'Harrow Point' is no known time zone")]
    [InlineData("""{ "timeZone": "Europe/Berlin", "offsetFromUtc": "+01:00" }""", "the time zone is stated too")]
    [InlineData("""{ "encoding": "klingon" }""", "$.encoding: 'klingon' is not known here")]
    [InlineData(
        """{ "columns": [ { "names": ["Gallium"], "measurand": "gallium" } ] }""",
        "'gallium' is not a known measurand."
    )]
    public void A_map_that_cannot_be_meant_is_refused(string map, string expected) =>
        Should.Throw<FormatException>(() => ColumnMap.Parse(map)).Message.ShouldContain(expected);

    [Fact]
    public void A_log_with_a_machine_column_is_of_several_machines()
    {
        var log = SensorLog.Read(
            new StringReader(
                "Machine,Time,Saturation [%],Status\nM1,2026-03-14 06:00,41,OK\nM2,2026-03-14 06:00,77,OK\n"
            ),
            "log.csv",
            ColumnMap.Default
        );

        log.MachineIds.ShouldBe(["M1", "M2"]);
        log.ReadingsOf("M2").Single().Readings[Measurands.RelativeSaturation].Value.ShouldBe(77);
        Should
            .Throw<InvalidOperationException>(() => log.Readings)
            .Message.ShouldContain("of 2 machines; ask for one of them: M1, M2");
        using var open = SensorLog.Open(
            new StringReader("Time,Temperature,Status\n2026-03-14,50,OK\n"),
            "l",
            ColumnMap.Default
        );
        open.Rows().Last().Texts["Status"].ShouldBe("OK");
    }

    [Theory]
    [InlineData("Viscosity;Test temperature", "46.1;40", "viscosity-40c")]
    [InlineData("Viscosity [cSt];Test temp (°F)", "46.1;104", "viscosity-40c")]
    [InlineData("Viscosity;Test temperature", "6.8;100.0", "viscosity-100c")]
    [InlineData("Viscosity;Test temperature", "7.1;98.9", "")]
    [InlineData("Viscosity;Test temperature", "46.1;", "")]
    [InlineData("Viscosity 100C;Test temperature", "7.1;98.9", "")]
    [InlineData("Viscosity 100C;Test temperature", "6.8;", "viscosity-100c")]
    public void A_viscosity_is_of_the_temperature_beside_it(string header, string cells, string expected)
    {
        var file = Read($"Machine;Date;{header}\nM1;2026-03-14;{cells}\n");

        var measurands = file.SamplesOf("M1").Single().Readings.Keys.Select(measurand => measurand.Id);
        string.Join(" ", measurands).ShouldBe(expected);
        file.Problems.Count.ShouldBe(expected.Length == 0 ? 1 : 0);
        file.Cells.All.ShouldBe(4);
    }
}
