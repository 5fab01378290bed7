using CsCheck;
using Microsoft.Data.Analysis;
using OilCondition.DataFrames;
using OilCondition.LabFiles;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.DataFrames;

/// <summary>Samples and sensor readings go into frames and come back as they were.</summary>
public class RecordFrameTests
{
    private static readonly DateTimeOffset At = new DateTimeOffset(
        2026,
        3,
        14,
        6,
        15,
        0,
        TimeSpan.FromHours(1)
    ).AddTicks(1_234_567);

    private static readonly Measurand[] Some =
    [
        Measurands.WaterContent,
        Measurands.Iron,
        Measurands.AcidNumber,
        Measurands.ViscosityIndex,
        Measurands.Particles4,
    ];

    private static readonly Gen<Reading> Readings =
        from value in Gen.Double[0, 100]
        from qualifier in Gen.Enum<Qualifier>()
        from method in Gen.OneOf("", "ASTM D6304", "ISO 4407")
        select new Reading(value, qualifier, method);

    private static readonly Gen<OilSample> Samples =
        from number in Gen.Int[0, 9]
        from ticks in Gen.Long[0, TimeSpan.TicksPerDay * 900]
        from offset in Gen.Int[-14 * 60, 14 * 60]
        from readings in Gen.Dictionary(Gen.OneOf(Some), Readings)[0, Some.Length]
        from texts in Gen.Dictionary(Gen.OneOf("Remark", "iron", "Ölfarbe; \"dunkel\""), Gen.OneOf("", "ok", "né\n2"))[
            0,
            3
        ]
        select new OilSample(
            number == 0 ? "" : $"S{number}",
            new DateTimeOffset(At.UtcDateTime.AddTicks(ticks)).ToOffset(TimeSpan.FromMinutes(offset)),
            readings,
            texts
        );

    private static readonly Gen<List<OilSample>> Lists = Samples.List[0, 12];

    [Fact]
    public void A_history_comes_back_from_a_long_and_from_a_wide_frame_to_the_last_byte()
    {
        foreach (var (history, _) in HarrowPointFleet.Station.Machines)
        {
            foreach (var back in BothWays(OilRecords.Of(history)))
            {
                var again = OilHistory.Create(
                    history.Machine,
                    back.SamplesOf(history.Machine.Id),
                    back.SensorReadingsOf(history.Machine.Id),
                    history.Events
                );
                // What was wrong with the records of the files is no longer in the records themselves.
                WithoutIssues(again.ToJson()).ShouldBe(WithoutIssues(history.ToJson()));
                back.Problems.ShouldBeEmpty();
                back.OtherColumns.ShouldBeEmpty();
            }
        }
    }

    [Fact]
    public void Drawn_samples_come_back_with_qualifiers_methods_texts_and_offsets() =>
        Lists.Holds(
            samples =>
            {
                var history = OilHistory.Create(HarrowPointFleet.Histories[0].Machine, samples, [], []);
                var id = history.Machine.Id;
                foreach (var back in BothWays(OilRecords.Of(history)))
                {
                    back.SamplesOf(id).Select(Written).ShouldBe(history.Samples.Select(Written));
                    back.SamplesOf(id).ShouldAllBe(sample => sample.TakenAt.Ticks != 0);
                }
            },
            iter: 200
        );

    [Fact]
    public void A_second_report_of_one_bottle_stays_a_report_of_its_own()
    {
        var first = new OilSample("S1", At, new Dictionary<Measurand, Reading> { [Measurands.Iron] = new(5) });
        var second = new OilSample("S1", At, new Dictionary<Measurand, Reading> { [Measurands.Iron] = new(6) });
        var text = new StringReader("Machine,Sample No,Date,Iron\nM1,S1,2026-03-14,5\nM1,S1,2026-03-14,6\n");
        var records = OilRecords.Of(LabFile.Read(text, "lab.csv", ColumnMap.Default));

        foreach (var back in BothWays(records))
        {
            back.SamplesOf("M1").Select(one => one.Readings[Measurands.Iron].Value).ShouldBe([5, 6]);
        }

        Written(first).ShouldNotBe(Written(second));
    }

    [Fact]
    public void Keys_lead_back_to_the_charge_and_to_the_line_of_the_file()
    {
        using var file = LabFile.Open(HarrowPointFleet.LabFilePath, ColumnMap.Default);
        var wide = FileAccount.Of(file).Records.ToWideFrame();
        var lines = System.IO.File.ReadAllLines(HarrowPointFleet.LabFilePath);
        var (line, number) = ((Int32DataFrameColumn)wide["line"], (StringDataFrameColumn)wide["sampleNumber"]);
        for (var row = 0; row < wide.Rows.Count; row++)
        {
            lines[line[row]!.Value - 1].Split(',')[1].ShouldBe(number[row]);
        }
    }

    [Fact]
    public void Each_row_has_the_charge_that_was_in_the_machine_when_it_was_taken()
    {
        OilSample Of(int day) => new($"S{day}", At.AddDays(day), new Dictionary<Measurand, Reading>());
        SensorReading Read(int day) =>
            new(At.AddDays(day), new Dictionary<Measurand, Reading> { [Measurands.OilTemperature] = new(50) });
        var history = OilHistory.Create(
            HarrowPointFleet.Histories[0].Machine,
            [Of(0), Of(10), Of(11), Of(20), Of(40)],
            [Read(5), Read(15), Read(16), Read(45)],
            [new OilChange(At.AddDays(10)), new OilChange(At.AddDays(10.5)), new OilChange(At.AddDays(30))]
        );

        ((StringDataFrameColumn)OilRecords.Of(history).ToWideFrame()["charge"]).ShouldBe(
        // Two changes within a day are one, by the later of them; the first sample after the change is of the new oil.
        [
            "undated",
            "2026-03-24",
            "2026-03-24",
            "2026-03-24",
            "2026-04-13",
            "undated",
            "2026-03-24",
            "2026-03-24",
            "2026-04-13",
        ]);
    }

    [Fact]
    public void A_wide_frame_heads_its_columns_as_a_laboratory_file_may()
    {
        var wide = OilRecords.Of(HarrowPointFleet.Histories[0]).ToWideFrame();
        var samples = wide.Filter(wide["origin"].ElementwiseEquals("sample"));
        var file = LabFile.Read(
            [samples.ToTableSheet("wide")],
            "frame",
            ColumnMap.Parse("""{ "takenAt": ["atUtc"] }""")
        );

        file.SamplesOf(HarrowPointFleet.Histories[0].Machine.Id)
            .Select(Values)
            .ShouldBe(HarrowPointFleet.Histories[0].Samples.Select(Values), ignoreOrder: true);
    }

    [Fact]
    public void Bad_rows_are_reported_with_row_field_value_and_range_and_the_good_ones_kept()
    {
        DateTime?[] at = [.. Enumerable.Repeat<DateTime?>(At.UtcDateTime, 9)];
        at[3] = null;
        at[4] = new DateTime(1066, 10, 14, 0, 0, 0, DateTimeKind.Utc);
        var frame = new DataFrame(
            new StringDataFrameColumn("machine", ["M1", null, "M1", "M1", "M1", "M1", "M1", "M1", "M1"]),
            new StringDataFrameColumn("origin", [null, "sample", "robot", null, null, null, null, null, null]),
            new StringDataFrameColumn("sampleNumber", ["S0", "S1", "S2", "S3", "S4", "S5", "S6", "S7", "S8"]),
            new DateTimeDataFrameColumn("atUtc", at),
            new StringDataFrameColumn(
                "measurand",
                ["iron", "iron", "iron", "iron", "iron", "irno", "iron", "water-content", "iron"]
            ),
            new DoubleDataFrameColumn("value", [5, 5, 5, 5, 5, 5, double.NaN, -12, 7]),
            new StringDataFrameColumn("qualifier", [null, null, null, null, null, null, null, null, "=<"])
        );

        var read = OilRecords.FromLong(frame);

        read.Problems.Select(one => (one.Row, one.Column))
            .ShouldBe([
                (1, "machine"),
                (2, "origin"),
                (3, "atUtc"),
                (4, "atUtc"),
                (5, "measurand"),
                (6, "value"),
                (7, "value"),
                (8, "qualifier"),
            ]);
        read.Problems[3].Reason.ShouldContain("1900 to 2199");
        read.Problems[4].Reason.ShouldContain("did you mean 'iron'");
        read.Problems[6]
            .ToString()
            .ShouldBe("row 7, value: '-12': water content is -12 mg/kg; allowed: 0 to 500000 mg/kg");
        read.SamplesOf("M1")
            .Select(one => (one.SampleNumber, one.Readings.Count))
            .ShouldBe([("S0", 1), ("S5", 0), ("S6", 0), ("S7", 0), ("S8", 0)]);
    }

    [Fact]
    public void Bad_cells_of_a_wide_frame_cost_their_reading_only()
    {
        var wide = OilRecords.Of(HarrowPointFleet.Histories[0]).ToWideFrame();
        var all = OilRecords.FromWide(wide);
        wide["water-content [mg/kg]"][0] = 900_000.0;
        wide["iron [mg/kg]"][1] = double.NegativeInfinity;

        var read = OilRecords.FromWide(wide);

        read.Problems.Select(one => (one.Row, one.Column))
            .ShouldBe([(0, "water-content [mg/kg]"), (1, "iron [mg/kg]")]);
        var id = HarrowPointFleet.Histories[0].Machine.Id;
        read.SamplesOf(id)
            .Sum(one => one.Readings.Count)
            .ShouldBe(all.SamplesOf(id).Sum(one => one.Readings.Count) - 2);
    }

    [Fact]
    public void All_missing_columns_and_all_wrong_types_are_named_at_once()
    {
        var frame = new DataFrame(
            new SingleDataFrameColumn("value", [1.5f]),
            new Int32DataFrameColumn("measurand", [1]),
            new StringDataFrameColumn("line", ["2"])
        );

        var fault = Should.Throw<FormatException>(() => OilRecords.FromLong(frame)).Message;

        foreach (
            var word in (string[])
                [
                    "'machine' is missing",
                    "'atUtc' is missing",
                    "'measurand' is Int32",
                    "'value' is Single",
                    "'line' is String",
                ]
        )
        {
            fault.ShouldContain(word);
        }

        Should
            .Throw<FormatException>(() => OilRecords.FromWide(new DataFrame(new DoubleDataFrameColumn("iron [%]", 0))))
            .Message.ShouldContain("allowed: 'iron [mg/kg]'");
    }

    [Fact]
    public void Times_of_a_computers_own_zone_are_refused()
    {
        var local = DateTime.SpecifyKind(At.UtcDateTime, DateTimeKind.Local);
        var frame = new DataFrame(
            new StringDataFrameColumn("machine", ["M1"]),
            new DateTimeDataFrameColumn("atUtc", [local]),
            new StringDataFrameColumn("measurand", ["iron"]),
            new DoubleDataFrameColumn("value", [5.0])
        );

        Should.Throw<FormatException>(() => OilRecords.FromLong(frame)).Message.ShouldContain("Kind Local");
        Should.Throw<ArgumentException>(() => frame.ToTableSheet("t")).Message.ShouldContain("'atUtc'");
    }

    [Fact]
    public void An_empty_frame_and_columns_without_a_value_give_no_records()
    {
        var none = OilRecords.Of(Array.Empty<OilHistory>());
        foreach (var back in BothWays(none))
        {
            back.MachineIds.ShouldBeEmpty();
        }

        // A loader makes texts of columns without a value.
        var blank = new DataFrame(
            new StringDataFrameColumn("machine", 2),
            new StringDataFrameColumn("atUtc", 2),
            new StringDataFrameColumn("measurand", 2),
            new StringDataFrameColumn("value", 2)
        );
        var read = OilRecords.FromLong(blank);
        read.MachineIds.ShouldBeEmpty();
        read.Problems.Count.ShouldBe(2);
    }

    [Fact]
    public void Units_that_a_laboratory_writes_are_converted()
    {
        var frame = new DataFrame(
            new StringDataFrameColumn("machine", ["M1", "M1"]),
            new DateTimeDataFrameColumn("atUtc", [At.UtcDateTime, At.UtcDateTime.AddDays(1)]),
            new StringDataFrameColumn("measurand", ["water-content", "water-content"]),
            new DecimalDataFrameColumn("value", [0.02m, 5m]),
            new StringDataFrameColumn("unit", ["%", "furlong"])
        );

        var read = OilRecords.FromLong(frame);

        // 1 % is 10 000 mg/kg by definition.
        read.SamplesOf("M1")[0].Readings[Measurands.WaterContent].Value.ShouldBe(200, 1e-9);
        read.Problems.Single().Reason.ShouldContain("allowed: mg/kg");
    }

    [Fact]
    public void A_measurand_of_ones_own_is_found_in_the_catalog()
    {
        var own = new Measurand("soot", "soot", "%", LimitSide.Upper, NaturalScale.Linear, 0, 100);
        var sample = new OilSample(
            "S1",
            At,
            new Dictionary<Measurand, Reading> { [own] = new(0.4, Qualifier.LessThan) }
        );
        var history = OilHistory.Create(HarrowPointFleet.Histories[0].Machine, [sample], [], []);
        var wide = OilRecords.Of(history).ToWideFrame();

        OilRecords.FromWide(wide).OtherColumns.ShouldBe(["soot [%]", "soot qualifier"]);
        var read = OilRecords.FromWide(wide, MeasurandCatalog.BuiltIn.With(own));
        read.SamplesOf(history.Machine.Id).Select(Written).ShouldBe([Written(sample)]);
        wide.ValuesOf(own)[0].ShouldBeNull("a bound is no value");
    }

    [Fact]
    public void Empty_texts_of_a_loader_are_no_texts_and_a_text_without_a_header_is_kept()
    {
        var frame = new DataFrame(
            new StringDataFrameColumn("machine", ["M1", "M1"]),
            new DateTimeDataFrameColumn("atUtc", [At.UtcDateTime, At.UtcDateTime]),
            new StringDataFrameColumn("measurand", ["iron", ""]),
            new DoubleDataFrameColumn("value", [5.0, null]),
            new StringDataFrameColumn("header", ["", ""]),
            new StringDataFrameColumn("text", ["", "retest"])
        );

        var sample = OilRecords.FromLong(frame).SamplesOf("M1").Single();

        sample.Readings[Measurands.Iron].Value.ShouldBe(5);
        sample.Texts.ShouldBe(new Dictionary<string, string> { [""] = "retest" });
    }

    [Fact]
    public void A_history_that_is_null_is_named() =>
        Should
            .Throw<ArgumentNullException>(() => OilRecords.Of([HarrowPointFleet.Histories[0], null!]))
            .ParamName.ShouldBe("history");

    /// <summary>Ids are lower-case letters, digits and hyphens, so these five can be those of a key.</summary>
    [Theory]
    [InlineData("machine")]
    [InlineData("charge")]
    [InlineData("origin")]
    [InlineData("sheet")]
    [InlineData("line")]
    public void A_measurand_with_the_name_of_a_key_has_a_column_of_its_own(string id)
    {
        Measurand Own(string unit) => new(id, id, unit, LimitSide.Upper, NaturalScale.Linear, 0, 100);
        foreach (var (own, column) in new[] { (Own(""), $"{id} []"), (Own("%"), $"{id} [%]") })
        {
            var sample = new OilSample(
                "S1",
                At,
                new Dictionary<Measurand, Reading> { [own] = new(0.4, Qualifier.LessThan, "own") }
            );
            var records = OilRecords.Of(OilHistory.Create(HarrowPointFleet.Histories[0].Machine, [sample], [], []));
            var wide = records.ToWideFrame();

            wide.Columns.Select(one => one.Name).ShouldContain(column);
            foreach (
                var back in (OilRecords[])
                    [
                        OilRecords.FromWide(wide, MeasurandCatalog.BuiltIn.With(own)),
                        OilRecords.FromLong(records.ToLongFrame(), MeasurandCatalog.BuiltIn.With(own)),
                    ]
            )
            {
                back.SamplesOf(HarrowPointFleet.Histories[0].Machine.Id).Select(Written).ShouldBe([Written(sample)]);
                back.OtherColumns.ShouldBeEmpty();
            }

            OilRecords.FromWide(wide).OtherColumns.ShouldBe([column, $"{id} qualifier", $"{id} method"]);
        }
    }

    [Fact]
    public void Readings_of_one_id_in_two_units_have_no_wide_column_and_keep_their_unit_in_a_long_frame()
    {
        Measurand Soot(string unit) => new("soot", "soot", unit, LimitSide.Upper, NaturalScale.Linear, 0, 1e6);
        OilSample Of(string number, string unit, double value) =>
            new(number, At, new Dictionary<Measurand, Reading> { [Soot(unit)] = new(value) });
        var records = OilRecords.Of(
            OilHistory.Create(
                HarrowPointFleet.Histories[0].Machine,
                [Of("S1", "%", 0.2), Of("S2", "mg/kg", 3000), Of("S3", "mg/kg", 4000)],
                [],
                []
            )
        );

        Should
            .Throw<InvalidOperationException>(() => records.ToWideFrame())
            .Message.ShouldBe(
                "A column has one unit: soot has readings in '%' and in 'mg/kg'. A long frame has the unit in each row."
            );
        // 1 % is 10 000 mg/kg by definition.
        OilRecords
            .FromLong(records.ToLongFrame(), MeasurandCatalog.BuiltIn.With(Soot("mg/kg")))
            .SamplesOf(HarrowPointFleet.Histories[0].Machine.Id)
            .Select(one => one.Readings.Values.Single().Value)
            .ShouldBe([2000, 3000, 4000]);
    }

    [Fact]
    public void A_sign_without_its_values_is_told_as_a_column_that_was_not_read()
    {
        var frame = new DataFrame(
            new StringDataFrameColumn("machine", ["M1"]),
            new DateTimeDataFrameColumn("atUtc", [At.UtcDateTime]),
            new StringDataFrameColumn("iron qualifier", ["<"]),
            new DoubleDataFrameColumn("copper [mg/kg]", [5.0]),
            new StringDataFrameColumn("copper method", ["ASTM D5185"])
        );

        var read = OilRecords.FromWide(frame);

        read.OtherColumns.ShouldBe(["iron qualifier"]);
        read.SamplesOf("M1")[0].Readings[Measurands.Copper].Method.ShouldBe("ASTM D5185");
    }

    private static IEnumerable<OilRecords> BothWays(OilRecords records) =>
        [OilRecords.FromLong(records.ToLongFrame()), OilRecords.FromWide(records.ToWideFrame())];

    private static string Values(OilSample sample) =>
        string.Join(
            ";",
            sample
                .Readings.OrderBy(pair => pair.Key.Id, StringComparer.Ordinal)
                .Select(pair => $"{pair.Key.Id} {pair.Value.Value:R}")
        );

    private static string WithoutIssues(string json) => json[..json.IndexOf("\"issues\"", StringComparison.Ordinal)];

    private static string Written(OilSample sample) =>
        $"{sample.SampleNumber}|{sample.TakenAt:O}|"
        + string.Join(
            ";",
            sample
                .Readings.OrderBy(pair => pair.Key.Id, StringComparer.Ordinal)
                .Select(pair => $"{pair.Key.Id} {pair.Value.Qualifier} {pair.Value.Value:R} {pair.Value.Method}")
        )
        + "|"
        + string.Join(
            ";",
            sample.Texts.OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => $"{pair.Key}={pair.Value}")
        );
}
