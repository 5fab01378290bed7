using Microsoft.Data.Analysis;
using OilCondition.Text;
using Parquet;
using Parquet.Schema;

namespace OilCondition.DataFrames;

/// <summary>Frames as Parquet files: the same columns, types and nulls, times to the tick.</summary>
/// <remarks>
/// Texts, Double, Single, Int32, Int64, Boolean and DateTime. Times are nanoseconds, marked as UTC where they are; finer than a tick (100 ns) is cut when read.
/// </remarks>
/// <example>
/// <code>
/// await ParquetFrame.WriteAsync(readings, "readings.parquet");
/// var again = await ParquetFrame.ReadAsync("readings.parquet");
/// </code>
/// </example>
public static class ParquetFrame
{
    /// <summary>Writes a frame to a file; one that is there is replaced.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="path">Path of the file.</param>
    /// <param name="cancellationToken">Stops between two columns.</param>
    /// <returns>When it is written.</returns>
    /// <exception cref="ArgumentException">There are no columns, or some of types that are not written: all of them are named, and no file is made.</exception>
    public static async Task WriteAsync(DataFrame frame, string path, CancellationToken cancellationToken = default)
    {
        FileColumns.Check(Guard.NotNull(frame));
        using var file = File.Create(Guard.NotBlank(path));
        await WriteAsync(frame, file, cancellationToken).ConfigureAwait(false);
    }

    /// <summary>Writes a frame to a stream, which stays open.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="stream">The stream.</param>
    /// <param name="cancellationToken">Stops between two columns.</param>
    /// <returns>When it is written.</returns>
    /// <exception cref="ArgumentException">There are no columns, or some of types that are not written: all of them are named.</exception>
    public static async Task WriteAsync(DataFrame frame, Stream stream, CancellationToken cancellationToken = default)
    {
        FileColumns.Check(Guard.NotNull(frame));
        DataField[] fields = [.. frame.Columns.Select(FieldOf)];
        var writer = await ParquetWriter
            .CreateAsync(
                new ParquetSchema(fields.Cast<Field>()),
                Guard.NotNull(stream),
                cancellationToken: cancellationToken
            )
            .ConfigureAwait(false);
        await using var closed = writer.ConfigureAwait(false);
        var from = 0L;
        do
        {
            var length = (int)Math.Min(FileColumns.RowsOfPart, frame.Rows.Count - from);
            using var group = writer.CreateRowGroup();
            for (var i = 0; i < fields.Length; i++)
            {
                cancellationToken.ThrowIfCancellationRequested();
                await WriteAsync(group, fields[i], frame.Columns[i], from, length, cancellationToken)
                    .ConfigureAwait(false);
            }

            from += length;
        } while (from < frame.Rows.Count);
    }

    /// <summary>Reads a file as a frame.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="cancellationToken">Stops between two columns.</param>
    /// <returns>The frame.</returns>
    /// <exception cref="FormatException">Columns are of types that a frame has not, or there twice: all of them are named.</exception>
    /// <exception cref="IOException">It is no Parquet file, or not a whole one.</exception>
    public static async Task<DataFrame> ReadAsync(string path, CancellationToken cancellationToken = default)
    {
        using var file = File.OpenRead(Guard.NotBlank(path));
        return await ReadAsync(file, cancellationToken).ConfigureAwait(false);
    }

    /// <summary>Reads a stream as a frame.</summary>
    /// <param name="stream">The stream, which can be read from any place; it stays open.</param>
    /// <param name="cancellationToken">Stops between two columns.</param>
    /// <returns>The frame.</returns>
    /// <exception cref="FormatException">Columns are of types that a frame has not, or there twice: all of them are named.</exception>
    /// <exception cref="IOException">It is no Parquet file, or not a whole one.</exception>
    public static async Task<DataFrame> ReadAsync(Stream stream, CancellationToken cancellationToken = default)
    {
        var reader = await ParquetReader
            .CreateAsync(Guard.NotNull(stream), cancellationToken: cancellationToken)
            .ConfigureAwait(false);
        await using var closed = reader.ConfigureAwait(false);
        var fields = reader.Schema.DataFields;
        var columns = FileColumns.Empty(
            fields.Select(field => (field.Path.ToString(), field.ClrType.Name, EmptyColumn(field)))
        );
        for (var index = 0; index < reader.RowGroupCount; index++)
        {
            using var group = reader.OpenRowGroupReader(index);
            for (var i = 0; i < fields.Length; i++)
            {
                cancellationToken.ThrowIfCancellationRequested();
                await ReadAsync(group, fields[i], columns[i], cancellationToken).ConfigureAwait(false);
            }
        }

        return new DataFrame(columns);
    }

    private static DataField FieldOf(DataFrameColumn column) =>
        column is PrimitiveDataFrameColumn<DateTime>
            ? new DateTimeDataField(
                column.Name,
                DateTimeFormat.Timestamp,
                isAdjustedToUTC: FrameTimes.IsUtc(column),
                unit: DateTimeTimeUnit.Nanos,
                isNullable: true
            )
            : new DataField(column.Name, column.DataType, isNullable: true);

    private static Task WriteAsync(
        ParquetRowGroupWriter group,
        DataField field,
        DataFrameColumn column,
        long from,
        int length,
        CancellationToken cancellationToken
    )
    {
        Task Write<T>(PrimitiveDataFrameColumn<T> cells)
            where T : unmanaged
        {
            var part = new T?[length];
            for (var i = 0; i < length; i++)
            {
                part[i] = cells[from + i];
            }

            return group.WriteAsync<T>(field, part, cancellationToken: cancellationToken);
        }

        return column switch
        {
            StringDataFrameColumn texts => group.WriteAsync(field, TextsOf(texts, from, length)),
            PrimitiveDataFrameColumn<double> cells => Write(cells),
            PrimitiveDataFrameColumn<float> cells => Write(cells),
            PrimitiveDataFrameColumn<int> cells => Write(cells),
            PrimitiveDataFrameColumn<long> cells => Write(cells),
            PrimitiveDataFrameColumn<bool> cells => Write(cells),
            _ => Write((PrimitiveDataFrameColumn<DateTime>)column),
        };
    }

    /// <summary>The column's own way to a part of it refuses a part without rows.</summary>
    private static string[] TextsOf(StringDataFrameColumn texts, long from, int length)
    {
        var part = new string[length];
        for (var i = 0; i < length; i++)
        {
            part[i] = texts[from + i];
        }

        return part;
    }

    /// <summary>A column to read a field into; null where a frame has none of its type.</summary>
    private static DataFrameColumn? EmptyColumn(DataField field) =>
        field.IsArray || field.MaxRepetitionLevel > 0 || field.Path.Length > 1 ? null
        : IsText(field) ? new StringDataFrameColumn(field.Name, 0)
        : field.ClrType == typeof(double) ? new DoubleDataFrameColumn(field.Name, 0)
        : field.ClrType == typeof(float) ? new SingleDataFrameColumn(field.Name, 0)
        : field.ClrType == typeof(int) ? new Int32DataFrameColumn(field.Name, 0)
        : field.ClrType == typeof(long) ? new Int64DataFrameColumn(field.Name, 0)
        : field.ClrType == typeof(bool) ? new BooleanDataFrameColumn(field.Name, 0)
        : field.ClrType == typeof(DateTime) ? new DateTimeDataFrameColumn(field.Name, 0)
        : null;

    private static bool IsText(DataField field) =>
        field.ClrType == typeof(string) || field.ClrType == typeof(ReadOnlyMemory<char>);

    private static async Task ReadAsync(
        ParquetRowGroupReader group,
        DataField field,
        DataFrameColumn column,
        CancellationToken cancellationToken
    )
    {
        async Task Read<T>(PrimitiveDataFrameColumn<T> cells, Func<T, T>? made = null)
            where T : unmanaged
        {
            var part = new T?[group.RowCount];
            if (field.IsNullable)
            {
                await group.ReadAsync<T>(field, part, cancellationToken: cancellationToken).ConfigureAwait(false);
            }
            else
            {
                var whole = new T[group.RowCount];
                await group.ReadAsync<T>(field, whole, cancellationToken: cancellationToken).ConfigureAwait(false);
                part = Array.ConvertAll(whole, cell => (T?)cell);
            }

            foreach (var cell in part)
            {
                cells.Append(cell is { } value && made is not null ? made(value) : cell);
            }
        }

        async Task ReadTexts(StringDataFrameColumn texts)
        {
            var part = new string?[group.RowCount];
            await group.ReadAsync(field, part!, cancellationToken: cancellationToken).ConfigureAwait(false);
            foreach (var text in part)
            {
                texts.Append(text);
            }
        }

        var kind = field is DateTimeDataField { IsAdjustedToUTC: true } ? DateTimeKind.Utc : DateTimeKind.Unspecified;
        await (
            column switch
            {
                StringDataFrameColumn texts => ReadTexts(texts),
                PrimitiveDataFrameColumn<double> cells => Read(cells),
                PrimitiveDataFrameColumn<float> cells => Read(cells),
                PrimitiveDataFrameColumn<int> cells => Read(cells),
                PrimitiveDataFrameColumn<long> cells => Read(cells),
                PrimitiveDataFrameColumn<bool> cells => Read(cells),
                _ => Read((PrimitiveDataFrameColumn<DateTime>)column, moment => DateTime.SpecifyKind(moment, kind)),
            }
        ).ConfigureAwait(false);
    }
}
