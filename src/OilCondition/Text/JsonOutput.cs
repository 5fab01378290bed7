using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace OilCondition.Text;

/// <summary>
/// A document that is written when it is asked for: as text over many lines, for people, or as UTF-8 on one line, for what reads a document a line. The same bytes for the
/// same facts on every framework.
/// </summary>
/// <param name="format">Its format and version, which come first.</param>
/// <param name="members">Writes its members.</param>
internal sealed class JsonOutput(JsonFormat format, Action<Utf8JsonWriter> members)
{
    // Used again by the next document of this thread.
    [ThreadStatic]
    private static Room? ofText;

    [ThreadStatic]
    private static Room? ofLine;

    /// <summary>The document as text.</summary>
    public override string ToString()
    {
        var room = Filled(ref ofText, indented: true);
        var text = Encoding.UTF8.GetString(room.Stream.GetBuffer(), 0, (int)room.Stream.Length);
        room.KeepAs(ref ofText);
        return text;
    }

    /// <summary>Writes the same as UTF-8 on one line to a stream, which stays open.</summary>
    public void WriteTo(Stream stream)
    {
        Guard.NotNull(stream);
        var room = Filled(ref ofLine, indented: false);
        room.Stream.WriteTo(stream);
        room.KeepAs(ref ofLine);
    }

    /// <summary>Takes the room that was kept, so that what an error leaves in it is not in the next document.</summary>
    private Room Filled(ref Room? kept, bool indented)
    {
        var room = kept ?? new Room(indented);
        kept = null;
        var json = room.Writer;
        json.WriteStartObject();
        json.WriteString("format", format.Id);
        json.WriteString("version", format.Version);
        members(json);
        json.WriteEndObject();
        json.Flush();
        room.Stream.WriteByte((byte)'\n');
        return room;
    }

    /// <summary>Room for one document.</summary>
    private sealed class Room
    {
        /// <summary>Beyond it the room of a document is given back.</summary>
        private const int MostKept = 1 << 20;

        public Room(bool indented) =>
            Writer = new Utf8JsonWriter(
                Stream,
                new JsonWriterOptions
                {
                    // Our own documents are well formed, which tests read; the writer need not look again at each member.
                    SkipValidation = true,
                    Indented = indented,
                    NewLine = "\n",
                    Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
                }
            );

        public MemoryStream Stream { get; } = new();

        public Utf8JsonWriter Writer { get; }

        public void KeepAs(ref Room? kept)
        {
            if (Stream.Capacity <= MostKept)
            {
                Stream.SetLength(0);
                Writer.Reset();
                kept = this;
            }
        }
    }
}
