using System.Buffers.Binary;
using System.Text;

namespace OilCondition.Tests.DataFrames;

/// <summary>
/// The cells of an Arrow file, read from its bytes by the text of the format alone: no code of the library that writes the files is called.
/// </summary>
/// <remarks>
/// Source: Arrow columnar format 1.5, 'IPC file format' and 'Encapsulated message format' (arrow.apache.org/docs/format/Columnar.html); the tables of
/// Schema.fbs, Message.fbs and File.fbs there; the layout of a table after the FlatBuffers internals (flatbuffers.dev/internals).
/// </remarks>
internal sealed class ArrowBytes
{
    private static readonly byte[] Magic = Encoding.ASCII.GetBytes("ARROW1");

    private readonly byte[] file;

    public ArrowBytes(byte[] file)
    {
        this.file = file;
        file.AsSpan(0, 6).SequenceEqual(Magic).ShouldBeTrue("a file begins with its magic word");
        file.AsSpan(file.Length - 6).SequenceEqual(Magic).ShouldBeTrue("a file ends with its magic word");
        Int(8).ShouldBe(-1, "a message begins with FFFFFFFF");
        BeginsWithSchema = TableAt(16).Byte(1) == 1;
        var footer = TableAt(file.Length - 10 - Int(file.Length - 10));
        footer.Table(1).Short(0).ShouldBe((short)0, "bytes are in the order that is read here");
        Columns = Vector(footer.Table(1).Field(1), 4).Select(at => new Column(TableAt(at))).ToList();
        foreach (var block in Vector(footer.Field(3), 24))
        {
            Read((int)Long(block), Int(block + 8));
        }
    }

    /// <summary>Whether the first message is a schema, so that the file can be read from its begin on as a stream, too.</summary>
    public bool BeginsWithSchema { get; }

    public List<Column> Columns { get; }

    /// <summary>A message, continued by its length, and the buffers of one batch after it, on places that are multiples of eight.</summary>
    private void Read(int at, int metadataLength)
    {
        Int(at).ShouldBe(-1, "a message begins with FFFFFFFF");
        (Int(at + 4) + 8).ShouldBe(metadataLength);
        (metadataLength % 8).ShouldBe(0);
        const byte RecordBatch = 3;
        var message = TableAt(at + 8);
        message.Byte(1).ShouldBe(RecordBatch);
        var batch = message.Table(2);
        batch.Field(3).ShouldBe(0, "the body is not compressed");
        var rows = (int)batch.Long(0);
        var buffers = Vector(batch.Field(2), 16).Select(one => at + metadataLength + (int)Long(one)).ToList();
        buffers.ShouldAllBe(start => start % 8 == 0);
        var nodes = Vector(batch.Field(1), 16).ToList();
        var next = 0;
        for (var i = 0; i < Columns.Count; i++)
        {
            Long(nodes[i]).ShouldBe(rows);
            var nulls = (int)Long(nodes[i] + 8);
            var (column, validity, values) = (Columns[i], buffers[next], buffers[next + 1]);
            var texts = column.IsText ? buffers[next + 2] : 0;
            next += column.IsText ? 3 : 2;
            var before = column.Cells.Count;
            for (var row = 0; row < rows; row++)
            {
                column.Cells.Add(nulls > 0 && !Bit(validity, row) ? null : Cell(column, values, texts, row));
            }

            column.Cells.Skip(before).Count(cell => cell is null).ShouldBe(nulls, column.Name);
        }
    }

    private object Cell(Column column, int values, int texts, int row) =>
        column.Type switch
        {
            _ when column.IsDictionary => Int(values + 4 * row),
            "Int32" => Int(values + 4 * row),
            "Int64" => Long(values + 8 * row),
            "Single" => BinaryPrimitives.ReadSingleLittleEndian(file.AsSpan(values + 4 * row)),
            "Double" => BinaryPrimitives.ReadDoubleLittleEndian(file.AsSpan(values + 8 * row)),
            "Bool" => Bit(values, row),
            "Utf8" => Encoding.UTF8.GetString(
                file,
                texts + Int(values + 4 * row),
                Int(values + 4 * row + 4) - Int(values + 4 * row)
            ),
            _ => Long(values + 8 * row),
        };

    private bool Bit(int start, int row) => (file[start + row / 8] >> (row % 8) & 1) == 1;

    private int Int(int at) => BinaryPrimitives.ReadInt32LittleEndian(file.AsSpan(at));

    private long Long(int at) => BinaryPrimitives.ReadInt64LittleEndian(file.AsSpan(at));

    /// <summary>The table that a field points to; a message and the footer begin with such a field.</summary>
    private FlatTable TableAt(int field) => new(this, field + Int(field));

    /// <summary>Where the elements of a vector stand.</summary>
    private IEnumerable<int> Vector(int field, int size)
    {
        var start = field + Int(field);
        return Enumerable.Range(0, Int(start)).Select(i => start + 4 + i * size);
    }

    /// <summary>A table of a FlatBuffer: its fields stand where the table of offsets before it says.</summary>
    internal readonly struct FlatTable(ArrowBytes bytes, int at)
    {
        /// <summary>Where a field stands; 0 where it has its default.</summary>
        public int Field(int index)
        {
            var offsets = at - bytes.Int(at);
            var place = 4 + 2 * index;
            var size = BinaryPrimitives.ReadUInt16LittleEndian(bytes.file.AsSpan(offsets));
            var field = place < size ? BinaryPrimitives.ReadUInt16LittleEndian(bytes.file.AsSpan(offsets + place)) : 0;
            return field == 0 ? 0 : at + field;
        }

        public FlatTable Table(int index) => bytes.TableAt(Field(index));

        public byte Byte(int index) => Field(index) is var field and > 0 ? bytes.file[field] : (byte)0;

        public short Short(int index) =>
            Field(index) is var field and > 0
                ? BinaryPrimitives.ReadInt16LittleEndian(bytes.file.AsSpan(field))
                : (short)0;

        public int Int(int index) => Field(index) is var field and > 0 ? bytes.Int(field) : 0;

        public long Long(int index) => Field(index) is var field and > 0 ? bytes.Long(field) : 0;

        public string? Text(int index)
        {
            if (Field(index) is not (var field and > 0))
            {
                return null;
            }

            var start = field + bytes.Int(field);
            return Encoding.UTF8.GetString(bytes.file, start + 4, bytes.Int(start));
        }
    }

    /// <summary>A column: its field of the schema, and its cells as the buffers have them; a time as its count.</summary>
    internal sealed class Column
    {
        public Column(FlatTable field)
        {
            Name = field.Text(0) ?? "";
            IsNullable = field.Byte(1) == 1;
            IsDictionary = field.Field(4) > 0;
            var type = field.Table(3);
            Type = field.Byte(2) switch
            {
                2 => $"Int{type.Int(0)}",
                3 => type.Short(0) switch
                {
                    1 => "Single",
                    2 => "Double",
                    _ => "Half",
                },
                5 => "Utf8",
                6 => "Bool",
                10 => $"Timestamp {type.Short(0)} {type.Text(1)}".TrimEnd(),
                var other => $"type {other}",
            };
        }

        public string Name { get; }

        public bool IsNullable { get; }

        /// <summary>Whether its buffers hold places in a list of words.</summary>
        public bool IsDictionary { get; }

        /// <summary>A timestamp with its unit, 0 for seconds to 3 for nanoseconds, and its zone.</summary>
        public string Type { get; }

        public bool IsText => Type == "Utf8" && !IsDictionary;

        public List<object?> Cells { get; } = [];
    }
}
