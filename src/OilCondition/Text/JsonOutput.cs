using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace OilCondition.Text;

/// <summary>A document that is written when it is asked for, as text or as UTF-8: indented, the same bytes for the same facts on every framework.</summary>
/// <param name="format">Its format and version, which come first.</param>
/// <param name="members">Writes its members.</param>
internal sealed class JsonOutput(JsonFormat format, Action<Utf8JsonWriter> members)
{
    /// <summary>Our own documents are well formed, which tests read; the writer need not look again at each member.</summary>
    private static readonly JsonWriterOptions Options = new()
    {
        SkipValidation = true,
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Beyond it the room of a document is given back.</summary>
    private const int MostKept = 1 << 20;

    /// <summary>Room for one document, used again by the next one of this thread.</summary>
    [ThreadStatic]
    private static (MemoryStream Stream, Utf8JsonWriter Writer)? kept;

    /// <summary>The document as text.</summary>
    public override string ToString()
    {
        var room = Filled();
        var text = Encoding.UTF8.GetString(room.Stream.GetBuffer(), 0, (int)room.Stream.Length);
        Keep(room);
        return text;
    }

    /// <summary>Writes the same as UTF-8 to a stream, which stays open.</summary>
    public void WriteTo(Stream stream)
    {
        Guard.NotNull(stream);
        var room = Filled();
        room.Stream.WriteTo(stream);
        Keep(room);
    }

    private (MemoryStream Stream, Utf8JsonWriter Writer) Filled()
    {
        var (stream, json) = kept ?? NewRoom();
        kept = null;
        json.WriteStartObject();
        json.WriteString("format", format.Id);
        json.WriteString("version", format.Version);
        members(json);
        json.WriteEndObject();
        json.Flush();
        stream.WriteByte((byte)'\n');
        return (stream, json);
    }

    private static void Keep((MemoryStream Stream, Utf8JsonWriter Writer) room)
    {
        if (room.Stream.Capacity <= MostKept)
        {
            room.Stream.SetLength(0);
            room.Writer.Reset();
            kept = room;
        }
    }

    private static (MemoryStream Stream, Utf8JsonWriter Writer) NewRoom()
    {
        var stream = new MemoryStream();
        return (stream, new Utf8JsonWriter(stream, Options));
    }
}
