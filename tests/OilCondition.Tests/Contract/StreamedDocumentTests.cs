using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using HarrowPoint;

namespace OilCondition.Tests.Contract;

/// <summary>A document that is sent on as a line is the one that is kept as text.</summary>
public class StreamedDocumentTests
{
    private static readonly ConditionAssessment Assessment = WrittenDocuments.Assessments()[0];

    private static readonly Dictionary<string, (Func<string> Text, Action<Stream> Write)> Doors = new(
        StringComparer.Ordinal
    )
    {
        ["assessment"] = Of(Assessment, one => one.ToJson, one => one.WriteJson),
        ["decision"] = Of(
            Decisions.Of(WrittenDocuments.TheStation, [Assessment])[0],
            one => one.ToJson,
            one => one.WriteJson
        ),
        ["cleanup-record"] = Of(WrittenDocuments.Records().First(), one => one.ToJson, one => one.WriteJson),
        ["history"] = Of(Assessment.History, one => one.ToJson, one => one.WriteJson),
        ["journal"] = Of(AlertJournal.Empty.Reconcile(Assessment), one => one.ToJson, one => one.WriteJson),
        ["limit-set"] = Of(Assessment.Limits, one => one.ToJson, one => one.WriteJson),
    };

    public static TheoryData<string> Formats => WrittenDocumentTests.Formats;

    [Theory]
    [MemberData(nameof(Formats))]
    public void The_stream_has_the_document_on_one_line_and_stays_open(string format)
    {
        var (text, write) = Doors[format];
        using var stream = new MemoryStream();
        write(stream);
        write(stream);
        stream.CanWrite.ShouldBeTrue();
        var json = text();
        json.ShouldStartWith($"{{\n  \"format\": \"oilcondition/{format}\"");
        json.ShouldEndWith("}\n");
        var line = OnOneLine(json);
        Encoding.UTF8.GetString(stream.ToArray()).ShouldBe($"{line}\n{line}\n");
        line.ShouldNotContain('\n');
        Should.Throw<ArgumentNullException>(() => write(null!)).ParamName.ShouldBe("stream");
    }

    [Fact]
    public void No_text_is_made_of_what_is_sent_on()
    {
        using var stream = new MemoryStream();
        var length = Assessment.ToJson().Length;
        Assessment.WriteJson(stream);
        stream.SetLength(0);
        var text = Allocated(() => Assessment.ToJson());
        var bytes = Allocated(() => Assessment.WriteJson(stream));
        (text - bytes).ShouldBeGreaterThan(length);
    }

    [Fact]
    public void What_a_broken_stream_leaves_behind_is_not_in_the_next_document()
    {
        var json = Assessment.ToJson();
        using var full = new MemoryStream(new byte[10]);
        Should.Throw<NotSupportedException>(() => Assessment.WriteJson(full));
        Assessment.ToJson().ShouldBe(json);
    }

    /// <summary>The same members in the same order with the same digits, as the framework's reader has them, without a space between.</summary>
    private static string OnOneLine(string json)
    {
        using var document = JsonDocument.Parse(json);
        using var bytes = new MemoryStream();
        var options = new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        using (var writer = new Utf8JsonWriter(bytes, options))
        {
            document.WriteTo(writer);
        }

        return Encoding.UTF8.GetString(bytes.ToArray());
    }

    private static long Allocated(Action act)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        act();
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    private static (Func<string> Text, Action<Stream> Write) Of<T>(
        T one,
        Func<T, Func<string>> text,
        Func<T, Action<Stream>> write
    ) => (text(one), write(one));
}
