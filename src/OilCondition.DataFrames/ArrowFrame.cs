using Apache.Arrow;
using Apache.Arrow.Ipc;
using Apache.Arrow.Types;
using Microsoft.Data.Analysis;
using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>Frames as Arrow files (the IPC file format): the same columns, types and nulls, times to the tick.</summary>
/// <remarks>
/// Texts, Double, Single, Int32, Int64, Boolean and DateTime. Times are nanoseconds, with the zone UTC where they are; finer than a tick (100 ns) is cut when
/// read. Dictionaries of texts are read as texts. Compressed files are not read.
/// </remarks>
/// <example>
/// <code>
/// ArrowFrame.Write(readings, "readings.arrow");
/// var again = ArrowFrame.Read("readings.arrow");
/// </code>
/// </example>
public static class ArrowFrame
{
    private const string Utc = "UTC";

    /// <summary>Writes a frame to a file; one that is there is replaced.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="path">Path of the file.</param>
    /// <exception cref="ArgumentException">There are no columns, or some of types that are not written: all of them are named, and no file is made.</exception>
    public static void Write(DataFrame frame, string path)
    {
        FileColumns.Check(Guard.NotNull(frame));
        using var file = File.Create(Guard.NotBlank(path));
        Write(frame, file);
    }

    /// <summary>Writes a frame to a stream, which stays open.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="stream">The stream.</param>
    /// <exception cref="ArgumentException">There are no columns, or some of types that are not written: all of them are named.</exception>
    public static void Write(DataFrame frame, Stream stream)
    {
        FileColumns.Check(Guard.NotNull(frame));
        var schema = new Schema(frame.Columns.Select(column => new Field(column.Name, TypeOf(column), true)), null);
        using var writer = new ArrowFileWriter(Guard.NotNull(stream), schema, leaveOpen: true);
        writer.WriteStart();
        var from = 0L;
        // The library writes the schema with the first part: without any it would be missing where the format has it.
        do
        {
            var length = (int)Math.Min(FileColumns.RowsOfPart, frame.Rows.Count - from);
            using var batch = new RecordBatch(
                schema,
                frame.Columns.Select(column => ArrayOf(column, from, length)),
                length
            );
            writer.WriteRecordBatch(batch);
            from += length;
        } while (from < frame.Rows.Count);

        writer.WriteEnd();
    }

    /// <summary>Reads a file as a frame.</summary>
    /// <param name="path">Path of the file.</param>
    /// <returns>The frame.</returns>
    /// <exception cref="FormatException">
    /// Columns are of types that a frame has not, or there twice: all of them are named. Or a column has a time outside the years 1 to 9999.
    /// </exception>
    /// <exception cref="InvalidDataException">It is no Arrow file, or not a whole one.</exception>
    public static DataFrame Read(string path)
    {
        using var file = File.OpenRead(Guard.NotBlank(path));
        return Read(file);
    }

    /// <summary>Reads a stream as a frame.</summary>
    /// <param name="stream">The stream, which can be read from any place; it stays open.</param>
    /// <returns>The frame.</returns>
    /// <exception cref="FormatException">
    /// Columns are of types that a frame has not, or there twice: all of them are named. Or a column has a time outside the years 1 to 9999.
    /// </exception>
    /// <exception cref="InvalidDataException">It is no Arrow file, or not a whole one.</exception>
    public static DataFrame Read(Stream stream)
    {
        using var reader = new ArrowFileReader(Guard.NotNull(stream), leaveOpen: true);
        var fields = reader.Schema.FieldsList;
        var columns = FileColumns.Empty(
            fields.Select(field => (field.Name, field.DataType.Name, EmptyColumn(field.Name, field.DataType)))
        );
        while (reader.ReadNextRecordBatch() is { } batch)
        {
            using (batch)
            {
                for (var i = 0; i < columns.Length; i++)
                {
                    Append(columns[i], batch.Column(i));
                }
            }
        }

        return new DataFrame(columns);
    }

    private static IArrowType TypeOf(DataFrameColumn column) =>
        column switch
        {
            StringDataFrameColumn => StringType.Default,
            PrimitiveDataFrameColumn<double> => DoubleType.Default,
            PrimitiveDataFrameColumn<float> => FloatType.Default,
            PrimitiveDataFrameColumn<int> => Int32Type.Default,
            PrimitiveDataFrameColumn<long> => Int64Type.Default,
            PrimitiveDataFrameColumn<bool> => BooleanType.Default,
            _ => new TimestampType(TimeUnit.Nanosecond, FrameTimes.IsUtc(column) ? Utc : null),
        };

    private static IArrowArray ArrayOf(DataFrameColumn column, long from, int length)
    {
        TBuilder Built<T, TArray, TBuilder>(
            IArrowArrayBuilder<T, TArray, TBuilder> builder,
            PrimitiveDataFrameColumn<T> cells
        )
            where T : unmanaged
            where TArray : IArrowArray
            where TBuilder : IArrowArrayBuilder<TArray>
        {
            builder.Reserve(length);
            for (var i = 0; i < length; i++)
            {
                _ = cells[from + i] is { } cell ? builder.Append(cell) : builder.AppendNull();
            }

            return (TBuilder)builder;
        }

        return column switch
        {
            StringDataFrameColumn texts => Texts(texts, from, length),
            PrimitiveDataFrameColumn<double> cells => Built(new DoubleArray.Builder(), cells).Build(),
            PrimitiveDataFrameColumn<float> cells => Built(new FloatArray.Builder(), cells).Build(),
            PrimitiveDataFrameColumn<int> cells => Built(new Int32Array.Builder(), cells).Build(),
            PrimitiveDataFrameColumn<long> cells => Built(new Int64Array.Builder(), cells).Build(),
            PrimitiveDataFrameColumn<bool> cells => Built(new BooleanArray.Builder(), cells).Build(),
            _ => Times((PrimitiveDataFrameColumn<DateTime>)column, from, length),
        };
    }

    private static StringArray Texts(StringDataFrameColumn texts, long from, int length)
    {
        var builder = new StringArray.Builder();
        for (var i = 0; i < length; i++)
        {
            _ = texts[from + i] is { } text ? builder.Append(text) : builder.AppendNull();
        }

        return builder.Build();
    }

    private static TimestampArray Times(PrimitiveDataFrameColumn<DateTime> moments, long from, int length)
    {
        var builder = new TimestampArray.Builder((TimestampType)TypeOf(moments));
        for (var i = 0; i < length; i++)
        {
            _ = moments[from + i] is { } at
                ? builder.Append(new DateTimeOffset(DateTime.SpecifyKind(at, DateTimeKind.Utc)))
                : builder.AppendNull();
        }

        return builder.Build();
    }

    private static DataFrameColumn? EmptyColumn(string name, IArrowType type) =>
        type switch
        {
            StringType or DictionaryType { ValueType: StringType } => new StringDataFrameColumn(name, 0),
            DoubleType => new DoubleDataFrameColumn(name, 0),
            FloatType => new SingleDataFrameColumn(name, 0),
            Int32Type => new Int32DataFrameColumn(name, 0),
            Int64Type => new Int64DataFrameColumn(name, 0),
            BooleanType => new BooleanDataFrameColumn(name, 0),
            TimestampType => new DateTimeDataFrameColumn(name, 0),
            _ => null,
        };

    private static void Append(DataFrameColumn column, IArrowArray array)
    {
        for (var i = 0; i < array.Length; i++)
        {
            switch (array)
            {
                case StringArray texts:
                    ((StringDataFrameColumn)column).Append(texts.GetString(i));
                    break;
                case DictionaryArray words:
                    ((StringDataFrameColumn)column).Append(Word(words, i));
                    break;
                case DoubleArray cells:
                    ((DoubleDataFrameColumn)column).Append(cells.GetValue(i));
                    break;
                case FloatArray cells:
                    ((SingleDataFrameColumn)column).Append(cells.GetValue(i));
                    break;
                case Int32Array cells:
                    ((Int32DataFrameColumn)column).Append(cells.GetValue(i));
                    break;
                case Int64Array cells:
                    ((Int64DataFrameColumn)column).Append(cells.GetValue(i));
                    break;
                case BooleanArray cells:
                    ((BooleanDataFrameColumn)column).Append(cells.GetValue(i));
                    break;
                case TimestampArray cells:
                    ((DateTimeDataFrameColumn)column).Append(Moment(column.Name, cells, i));
                    break;
            }
        }
    }

    private static string? Word(DictionaryArray words, int index) =>
        words.IsNull(index)
            ? null
            : ((StringArray)words.Dictionary).GetString(
                words.Indices switch
                {
                    Int32Array indices => indices.GetValue(index)!.Value,
                    Int16Array indices => indices.GetValue(index)!.Value,
                    Int8Array indices => indices.GetValue(index)!.Value,
                    var other => throw new FormatException(
                        $"A dictionary of texts has indices of type {other.Data.DataType.Name}; allowed: int8, int16, int32."
                    ),
                }
            );

    private static DateTime? Moment(string name, TimestampArray times, int index)
    {
        if (times.GetValue(index) is not { } count)
        {
            return null;
        }

        var type = (TimestampType)times.Data.DataType;
        var ticks = type.Unit switch
        {
            TimeUnit.Nanosecond => count / 100m,
            TimeUnit.Microsecond => count * (decimal)TimeSpan.TicksPerMicrosecond,
            TimeUnit.Millisecond => count * (decimal)TimeSpan.TicksPerMillisecond,
            _ => count * (decimal)TimeSpan.TicksPerSecond,
        };
        var sinceYearOne = decimal.Truncate(ticks) + DateTime.UnixEpoch.Ticks;
        if (sinceYearOne < 0 || sinceYearOne > DateTime.MaxValue.Ticks)
        {
            throw new FormatException(
                FormattableString.Invariant(
                    $"column '{name}' has a time {count} {type.Unit} from 1970; allowed: the years 1 to 9999."
                )
            );
        }

        var at = new DateTime((long)sinceYearOne, DateTimeKind.Utc);
        return type.Timezone is null ? DateTime.SpecifyKind(at, DateTimeKind.Unspecified) : at;
    }
}
