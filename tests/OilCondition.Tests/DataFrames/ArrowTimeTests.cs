using Apache.Arrow;
using Apache.Arrow.Ipc;
using Apache.Arrow.Types;
using OilCondition.DataFrames;

namespace OilCondition.Tests.DataFrames;

public class ArrowTimeTests
{
    [Theory]
    [InlineData(100_000_000_000_000)]
    [InlineData(-100_000_000_000_000)]
    [InlineData(long.MaxValue)]
    public void A_time_that_no_frame_holds_is_refused_with_its_column(long seconds)
    {
        var type = new TimestampType(TimeUnit.Second, "UTC");
        var schema = new Schema([new Field("atUtc", type, true)], null);
        using var cells = new Int64Array.Builder().Append(seconds).Build();
        using var stream = new MemoryStream();
        using (var writer = new ArrowFileWriter(stream, schema, leaveOpen: true))
        {
            writer.WriteStart();
            writer.WriteRecordBatch(
                new RecordBatch(schema, [new TimestampArray(new ArrayData(type, 1, 0, 0, cells.Data.Buffers))], 1)
            );
            writer.WriteEnd();
        }

        stream.Position = 0;
        Should
            .Throw<FormatException>(() => ArrowFrame.Read(stream))
            .Message.ShouldBe(
                FormattableString.Invariant(
                    $"column 'atUtc' has a time {seconds} Second from 1970; allowed: the years 1 to 9999."
                )
            );
        Should.Throw<InvalidDataException>(() => ArrowFrame.Read(new MemoryStream(new byte[99])));
    }
}
