using Microsoft.Data.Analysis;
using OilCondition.DataFrames;
using OilCondition.Tests.Reference;
using ParquetSharp;

namespace OilCondition.Tests.DataFrames;

/// <summary>Frames go into Parquet and Arrow files and come back; other implementations of the formats read and write the same.</summary>
public class FrameFileTests
{
    private static readonly DateTime At = new DateTime(2026, 3, 14, 5, 15, 0, 123, DateTimeKind.Utc).AddTicks(4567);

    public static TheoryData<string> Frames =>
        new([
            "every type",
            "long",
            "wide",
            "lives",
            "machines",
            "findings",
            "evidence",
            "options",
            "no rows",
            "all null",
        ]);

    [Theory]
    [MemberData(nameof(Frames))]
    public async Task A_frame_comes_back_from_a_parquet_file(string which)
    {
        using var stream = new MemoryStream();
        await ParquetFrame.WriteAsync(Frame(which), stream);
        stream.Position = 0;

        ShouldBeSame(await ParquetFrame.ReadAsync(stream), Frame(which));
        stream.CanRead.ShouldBeTrue("the stream stays open");
    }

    [Theory]
    [MemberData(nameof(Frames))]
    public void A_frame_comes_back_from_an_arrow_file(string which)
    {
        using var stream = new MemoryStream();
        ArrowFrame.Write(Frame(which), stream);
        stream.Position = 0;

        ShouldBeSame(ArrowFrame.Read(stream), Frame(which));
    }

    /// <summary>Source: ParquetSharp, which reads by Apache Arrow's own C++ implementation of Parquet.</summary>
    [Theory]
    [MemberData(nameof(Frames))]
    public async Task Another_implementation_reads_the_same_cells_of_a_parquet_file(string which)
    {
        var frame = Frame(which);
        using var stream = new MemoryStream();
        await ParquetFrame.WriteAsync(frame, stream);
        stream.Position = 0;

        using var file = new ParquetFileReader(stream, leaveOpen: true);
        file.FileMetaData.NumRows.ShouldBe(frame.Rows.Count);
        file.FileMetaData.NumColumns.ShouldBe(frame.Columns.Count);
        using var group = file.RowGroup(0);
        for (var i = 0; i < frame.Columns.Count; i++)
        {
            using var column = group.Column(i);
            column.ColumnDescriptor.Name.ShouldBe(frame.Columns[i].Name);
            Cells(column, frame.Columns[i], (int)frame.Rows.Count)
                .ShouldBe(CellsOf(frame.Columns[i]), frame.Columns[i].Name);
        }
    }

    [Fact]
    public async Task A_parquet_file_of_another_implementation_is_read_with_its_row_groups_and_columns_without_nulls()
    {
        using var stream = new MemoryStream();
        Column[] columns =
        [
            new Column<string>("machine"),
            new Column<double>("value"),
            new Column<double?>("maybe"),
            new Column<DateTime>("atUtc", LogicalType.Timestamp(isAdjustedToUtc: true, TimeUnit.Micros)),
            new Column<DateTime>("local", LogicalType.Timestamp(isAdjustedToUtc: false, TimeUnit.Millis)),
            new Column<int>("line"),
            new Column<bool>("flag"),
        ];
        var second = new DateTime(2026, 3, 14, 5, 15, 0);
        using (var writer = new ParquetFileWriter(stream, columns, leaveOpen: true))
        {
            for (var i = 0; i < 2; i++)
            {
                using var group = writer.AppendRowGroup();
                Write(group, i == 0 ? ["M1", "M2"] : new[] { "M3" });
                Write(group, i == 0 ? [1.5, 2.5] : new[] { 3.5 });
                Write(group, i == 0 ? [1.5, null] : new double?[] { null });
                Write(group, i == 0 ? [second, second.AddTicks(70)] : new[] { second.AddDays(-30_000) });
                Write(group, i == 0 ? [second, second] : new[] { second });
                Write(group, i == 0 ? [2, 3] : new[] { 4 });
                Write(group, i == 0 ? [true, false] : new[] { true });
            }

            writer.Close();
        }

        stream.Position = 0;
        var frame = await ParquetFrame.ReadAsync(stream);

        CellsOf(frame["machine"]).ShouldBe(["M1", "M2", "M3"]);
        CellsOf(frame["value"]).ShouldBe([1.5, 2.5, 3.5]);
        CellsOf(frame["maybe"]).ShouldBe([1.5, null, null]);
        CellsOf(frame["atUtc"]).ShouldBe([second, second.AddTicks(70), second.AddDays(-30_000)]);
        ((DateTime)frame["atUtc"][0]).Kind.ShouldBe(DateTimeKind.Utc);
        ((DateTime)frame["local"][0]).Kind.ShouldBe(DateTimeKind.Unspecified);
        CellsOf(frame["line"]).ShouldBe([2, 3, 4]);
        CellsOf(frame["flag"]).ShouldBe([true, false, true]);
    }

    /// <summary>Source: the Arrow columnar format, whose text <see cref="ArrowBytes"/> follows byte by byte.</summary>
    [Theory]
    [MemberData(nameof(Frames))]
    public void The_bytes_of_an_arrow_file_are_those_of_the_format(string which)
    {
        var frame = Frame(which);
        using var stream = new MemoryStream();
        ArrowFrame.Write(frame, stream);

        var read = new ArrowBytes(stream.ToArray());

        read.BeginsWithSchema.ShouldBeTrue("the format asks for it, of a file without rows as well");
        read.Columns.Select(column => column.Name).ShouldBe(frame.Columns.Select(column => column.Name));
        read.Columns.ShouldAllBe(column => column.IsNullable && !column.IsDictionary);
        for (var i = 0; i < frame.Columns.Count; i++)
        {
            read.Columns[i].Type.ShouldBe(ArrowTypeOf(frame.Columns[i]), frame.Columns[i].Name);
            read.Columns[i].Cells.ShouldBe(CellsOf(frame.Columns[i]).Select(Counted), frame.Columns[i].Name);
        }
    }

    /// <summary>That what reads the bytes above reads them right: another implementation wrote these, see tests/Reference/SOURCES.md.</summary>
    [Fact]
    public void The_bytes_of_another_implementation_are_read_by_the_same_rules()
    {
        var columns = new ArrowBytes(File.ReadAllBytes(ReferenceFolder.PathOf("frames/other-writer.arrow"))).Columns;
        ArrowBytes.Column Of(string name) => columns.Single(column => column.Name == name);

        Of("value").Cells.ShouldBe([0.1, null, -1e300]);
        Of("line").Cells.ShouldBe([2, null, -7]);
        Of("count").Cells.ShouldBe([9007199254740993L, null, -1L]);
        Of("isChoice").Cells.ShouldBe([true, null, false]);
        Of("machine").Cells.ShouldBe(["M1", null, "Öl \"2\"\n"]);
        Of("atUtc").Type.ShouldEndWith(" UTC");
        Of("local").Type.ShouldNotEndWith(" UTC");
    }

    /// <summary>Source: tests/Reference/frames/other-writer.arrow, written by the implementation for JavaScript.</summary>
    [Fact]
    public void An_arrow_file_of_another_implementation_is_read()
    {
        var frame = ArrowFrame.Read(ReferenceFolder.PathOf("frames/other-writer.arrow"));

        var moment = new DateTime(2026, 3, 14, 5, 15, 0, 123);
        var before = new DateTime(1969, 12, 31, 23, 59, 59, 999);
        CellsOf(frame["machine"]).ShouldBe(["M1", null, "Öl \"2\"\n"]);
        CellsOf(frame["unit"]).ShouldBe(["mg/kg", "mg/kg", null]);
        CellsOf(frame["value"]).ShouldBe([0.1, null, -1e300]);
        CellsOf(frame["line"]).ShouldBe([2, null, -7]);
        CellsOf(frame["count"]).ShouldBe([9007199254740993L, null, -1L]);
        CellsOf(frame["isChoice"]).ShouldBe([true, null, false]);
        CellsOf(frame["atUtc"]).ShouldBe([moment, null, before]);
        ((DateTime)frame["atUtc"][0]).Kind.ShouldBe(DateTimeKind.Utc);
        ((DateTime)frame["local"][0]).Kind.ShouldBe(DateTimeKind.Unspecified);
    }

    [Fact]
    public async Task Files_on_disk_are_written_and_read()
    {
        var folder = Directory.CreateTempSubdirectory();
        var frame = Frame("long");
        var (parquet, arrow) = (Path.Combine(folder.FullName, "a.parquet"), Path.Combine(folder.FullName, "a.arrow"));

        await ParquetFrame.WriteAsync(frame, parquet);
        ArrowFrame.Write(frame, arrow);

        ShouldBeSame(await ParquetFrame.ReadAsync(parquet), frame);
        ShouldBeSame(ArrowFrame.Read(arrow), frame);
        OilRecords.FromLong(ArrowFrame.Read(arrow)).Problems.ShouldBeEmpty();
        await Should.ThrowAsync<ArgumentException>(() =>
            ParquetFrame.WriteAsync(new DataFrame(new CharDataFrameColumn("c", 1)), parquet)
        );
        ShouldBeSame(await ParquetFrame.ReadAsync(parquet), frame);
        folder.Delete(recursive: true);
    }

    [Fact]
    public async Task Columns_that_would_not_come_back_are_refused_all_at_once()
    {
        var frame = new DataFrame(
            new CharDataFrameColumn("letter", 1),
            new DateTimeDataFrameColumn("local", [DateTime.SpecifyKind(At, DateTimeKind.Local)]),
            new DecimalDataFrameColumn("cost", [1.1m]),
            new DateTimeDataFrameColumn("early", [DateTime.MinValue])
        );
        using var stream = new MemoryStream();

        var fault = (await Should.ThrowAsync<ArgumentException>(() => ParquetFrame.WriteAsync(frame, stream))).Message;

        foreach (
            var word in (string[])
                [
                    "'letter' is Char",
                    "'local' has times of a computer",
                    "'cost' is Decimal",
                    "'early' has times outside",
                ]
        )
        {
            fault.ShouldContain(word);
        }

        Should.Throw<ArgumentException>(() => ArrowFrame.Write(frame, stream)).Message.ShouldBe(fault);
        (
            await Should.ThrowAsync<ArgumentException>(() => ParquetFrame.WriteAsync(new DataFrame(), stream))
        ).Message.ShouldStartWith("frame has no columns; allowed: 1 or more.");
        stream.Length.ShouldBe(0);
        var mixed = new DateTimeDataFrameColumn("mixed", [At, DateTime.SpecifyKind(At, DateTimeKind.Unspecified)]);
        Should
            .Throw<ArgumentException>(() => ArrowFrame.Write(new DataFrame(mixed), stream))
            .Message.ShouldContain("'mixed'");
    }

    [Fact]
    public async Task Columns_of_a_file_that_a_frame_has_no_type_for_are_named()
    {
        using var stream = new MemoryStream();
        Column[] columns =
        [
            new Column<byte[]>("raw"),
            new Column<int>("line"),
            new Column<Guid>("id"),
            new Column<double[]>("list"),
        ];
        using (var writer = new ParquetFileWriter(stream, columns, leaveOpen: true))
        {
            writer.Close();
        }

        stream.Position = 0;
        var fault = (await Should.ThrowAsync<FormatException>(() => ParquetFrame.ReadAsync(stream))).Message;

        foreach (var word in (string[])["raw", "id", "list"])
        {
            fault.ShouldContain(word);
        }

        fault.ShouldNotContain("'line'");
    }

    [Fact]
    public async Task A_file_with_a_column_twice_is_refused()
    {
        using var parquet = new MemoryStream();
        using (
            var writer = new ParquetFileWriter(
                parquet,
                [new Column<int>("line"), new Column<int>("line")],
                leaveOpen: true
            )
        )
        {
            writer.Close();
        }

        parquet.Position = 0;
        (await Should.ThrowAsync<FormatException>(() => ParquetFrame.ReadAsync(parquet))).Message.ShouldContain(
            "'line' is there 2 times"
        );
    }

    [Fact]
    public async Task A_frame_longer_than_a_part_comes_back_whole()
    {
        const int Rows = 1_000_003;
        var frame = new DataFrame(
            new Int32DataFrameColumn("line", Enumerable.Range(0, Rows)),
            new StringDataFrameColumn("text", Enumerable.Range(0, Rows).Select(i => i % 7 == 0 ? null : "t"))
        );
        using var stream = new MemoryStream();
        ArrowFrame.Write(frame, stream);
        stream.Position = 0;
        var fromArrow = ArrowFrame.Read(stream);
        stream.SetLength(0);
        await ParquetFrame.WriteAsync(frame, stream);
        stream.Position = 0;
        var fromParquet = await ParquetFrame.ReadAsync(stream);

        foreach (var read in (DataFrame[])[fromArrow, fromParquet])
        {
            ((Int32DataFrameColumn)read["line"]).SequenceEqual((Int32DataFrameColumn)frame["line"]).ShouldBeTrue();
            ((StringDataFrameColumn)read["text"]).SequenceEqual((StringDataFrameColumn)frame["text"]).ShouldBeTrue();
        }
    }

    private static DataFrame Frame(string which) =>
        which switch
        {
            "every type" => new DataFrame(
                new StringDataFrameColumn("text [mg/kg]", ["a", null, "", "Öl \"2\"\n", "≈"]),
                new DoubleDataFrameColumn("double", [0.1, null, double.MinValue, double.NaN, double.Epsilon]),
                new SingleDataFrameColumn("single", [0.1f, null, float.MaxValue, 0, -0f]),
                new Int32DataFrameColumn("int", [1, null, int.MinValue, int.MaxValue, 0]),
                new Int64DataFrameColumn("long", [1, null, long.MinValue, long.MaxValue, 9007199254740993]),
                new BooleanDataFrameColumn("flag", [true, null, false, true, false]),
                new DateTimeDataFrameColumn("utc", [At, null, At.AddYears(-120), At.AddYears(170), DateTime.UnixEpoch]),
                new DateTimeDataFrameColumn(
                    "zoneless",
                    [DateTime.SpecifyKind(At, DateTimeKind.Unspecified), null, null, null, null]
                )
            ),
            "long" => OilRecords.Of(HarrowPointFleet.Histories).ToLongFrame(),
            "wide" => OilRecords.Of(HarrowPointFleet.Histories).ToWideFrame(),
            "lives" => FleetFrames.Lives(HarrowPointFleet.Assessments),
            "machines" => FleetFrames.Machines(HarrowPointFleet.Assessments),
            "findings" => FleetFrames.Findings(HarrowPointFleet.Assessments),
            "evidence" => FleetFrames.Evidence(HarrowPointFleet.Assessments),
            "options" => FleetFrames.Options(HarrowPointFleet.Decisions),
            "no rows" => FleetFrames.Lives([]),
            _ => new DataFrame(
                new StringDataFrameColumn("text", 3),
                new DoubleDataFrameColumn("number", 3),
                new DateTimeDataFrameColumn("utc", 3)
            ),
        };

    private static void ShouldBeSame(DataFrame read, DataFrame written)
    {
        read.Columns.Select(column => (column.Name, column.DataType))
            .ShouldBe(written.Columns.Select(column => (column.Name, column.DataType)));
        for (var i = 0; i < read.Columns.Count; i++)
        {
            CellsOf(read.Columns[i]).ShouldBe(CellsOf(written.Columns[i]), read.Columns[i].Name);
            if (written.Columns[i] is PrimitiveDataFrameColumn<DateTime> moments)
            {
                ((PrimitiveDataFrameColumn<DateTime>)read.Columns[i])
                    .Select(moment => moment?.Kind)
                    .ShouldBe(moments.Select(moment => moment?.Kind));
            }
        }
    }

    private static object?[] CellsOf(DataFrameColumn column)
    {
        var cells = new object?[column.Length];
        for (var row = 0; row < cells.Length; row++)
        {
            cells[row] = column[row];
        }

        return cells;
    }

    private static string ArrowTypeOf(DataFrameColumn column) =>
        column switch
        {
            StringDataFrameColumn => "Utf8",
            PrimitiveDataFrameColumn<double> => "Double",
            PrimitiveDataFrameColumn<float> => "Single",
            PrimitiveDataFrameColumn<int> => "Int32",
            PrimitiveDataFrameColumn<long> => "Int64",
            PrimitiveDataFrameColumn<bool> => "Bool",
            PrimitiveDataFrameColumn<DateTime> moments => moments.Any(at => at is { Kind: DateTimeKind.Unspecified })
                ? "Timestamp 3"
                : "Timestamp 3 UTC",
            _ => "",
        };

    /// <summary>A moment as nanoseconds since 1970; anything else as it is.</summary>
    private static object? Counted(object? cell) =>
        cell is DateTime at ? 100 * (at.Ticks - DateTime.UnixEpoch.Ticks) : cell;

    private static object?[] Cells(ColumnReader column, DataFrameColumn like, int length)
    {
        object?[] Read<T>(Func<T, object?> of)
        {
            using var reader = column.LogicalReader<T>();
            return [.. reader.ReadAll(length).Select(of)];
        }

        return like switch
        {
            StringDataFrameColumn => Read<string?>(cell => cell),
            PrimitiveDataFrameColumn<double> => Read<double?>(cell => cell),
            PrimitiveDataFrameColumn<float> => Read<float?>(cell => cell),
            PrimitiveDataFrameColumn<int> => Read<int?>(cell => cell),
            PrimitiveDataFrameColumn<long> => Read<long?>(cell => cell),
            PrimitiveDataFrameColumn<bool> => Read<bool?>(cell => cell),
            _ => Read<DateTimeNanos?>(cell => cell is { } at ? DateTime.UnixEpoch.AddTicks(at.Ticks / 100) : null),
        };
    }

    private static void Write<T>(RowGroupWriter group, T[] cells)
    {
        using var writer = group.NextColumn().LogicalWriter<T>();
        writer.WriteBatch(cells);
    }
}
