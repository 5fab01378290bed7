using System.Globalization;

namespace OilCondition.Text;

/// <summary>Writes JSON: indented, the same characters for the same facts on every framework.</summary>
/// <remarks>
/// A night's run writes some six million fields. The writer of the framework makes bytes, of which a text is then made again, and looks through every
/// name twice; here the text is written once.
/// </remarks>
internal sealed partial class JsonText
{
    /// <summary>Beyond so many characters the room of a document is given back.</summary>
    private const int MostKept = 1 << 19;

    /// <summary>Room for one document, used again by the next one of this thread.</summary>
    [ThreadStatic]
    private static JsonText? room;

    private char[] text = new char[1 << 14];
    private int length;
    private int depth;
    private bool isFirst;

    private JsonText() { }

    /// <summary>A document: its format and version, then its members.</summary>
    public static string Write(JsonFormat format, Action<JsonText> members)
    {
        var json = room ?? new JsonText();
        room = null;
        (json.length, json.depth) = (0, 0);
        json.WriteStartObject();
        json.WriteString("format", format.Id);
        json.WriteString("version", format.Version);
        members(json);
        json.WriteEndObject();
        json.Add('\n');
        room = json.text.Length <= MostKept ? json : null;
        return new string(json.text, 0, json.length);
    }

    /// <summary>An object in a list, or the document.</summary>
    public void WriteStartObject()
    {
        NewValue();
        Open('{');
    }

    /// <summary>An object as a member.</summary>
    public void WriteStartObject(string name)
    {
        NewMember(name);
        Open('{');
    }

    /// <summary>The end of an object.</summary>
    public void WriteEndObject() => Close('}');

    /// <summary>A list as a member.</summary>
    public void WriteStartArray(string name)
    {
        NewMember(name);
        Open('[');
    }

    /// <summary>The end of a list.</summary>
    public void WriteEndArray() => Close(']');

    /// <summary>A text in a list.</summary>
    public void WriteStringValue(string value)
    {
        NewValue();
        AddQuoted(value);
    }

    /// <summary>A text as a member, empty or not.</summary>
    public void WriteString(string name, string value)
    {
        NewMember(name);
        AddQuoted(value);
    }

    /// <summary>Yes or no.</summary>
    public void WriteBoolean(string name, bool value)
    {
        NewMember(name);
        Add(value ? "true" : "false");
    }

    /// <summary>A count.</summary>
    public void WriteNumber(string name, int value)
    {
        NewMember(name);
        Add(value.ToString(CultureInfo.InvariantCulture));
    }

    /// <summary>ISO 8601 to the second, with its offset.</summary>
    public void WriteMoment(string name, DateTimeOffset at)
    {
        NewMember(name);
        var (clock, minutes) = (at.DateTime, (int)at.Offset.TotalMinutes);
        var digits = Room(27);
        Digits(digits, 1, 4, clock.Year);
        Digits(digits, 6, 2, clock.Month);
        Digits(digits, 9, 2, clock.Day);
        Digits(digits, 12, 2, clock.Hour);
        Digits(digits, 15, 2, clock.Minute);
        Digits(digits, 18, 2, clock.Second);
        Digits(digits, 21, 2, Math.Abs(minutes) / 60);
        Digits(digits, 24, 2, Math.Abs(minutes) % 60);
        (digits[0], digits[26]) = ('"', '"');
        (digits[5], digits[8], digits[11], digits[14], digits[17]) = ('-', '-', 'T', ':', ':');
        (digits[20], digits[23]) = (minutes < 0 ? '-' : '+', ':');
        length += 27;
    }

    private static void Digits(Span<char> text, int from, int count, int value)
    {
        for (var i = from + count - 1; i >= from; i--)
        {
            text[i] = (char)('0' + value % 10);
            value /= 10;
        }
    }

    /// <summary>Seven significant figures: more than any reading carries, and the same digits on every framework.</summary>
    public void WriteFigure(string name, double value)
    {
        NewMember(name);
#if NET
        value.TryFormat(Room(32), out var count, "G7", CultureInfo.InvariantCulture);
        length += count;
#else
        Add(value.ToString("G7", CultureInfo.InvariantCulture));
#endif
    }

    /// <summary>A figure to its last digit, so that it is read back as it was; the same digits on every framework.</summary>
    public void WriteExact(string name, double value)
    {
        NewMember(name);
#if NET
        Add(value.ToString("R", CultureInfo.InvariantCulture));
#else
        // There "R" does not always give the shortest digits that read back, and at times not even such as do.
        var digits = value.ToString("G15", CultureInfo.InvariantCulture);
        foreach (var form in new[] { "G16", "G17" })
        {
            if (!double.Parse(digits, CultureInfo.InvariantCulture).Equals(value))
            {
                digits = value.ToString(form, CultureInfo.InvariantCulture);
            }
        }

        Add(digits);
#endif
    }

    /// <summary>An exact figure; none where there is none.</summary>
    public void WriteExact(string name, double? value)
    {
        if (value is { } figure)
        {
            WriteExact(name, figure);
        }
    }

    /// <summary>A moment to its last tick, so that it is read back as it was.</summary>
    public void WriteExact(string name, DateTimeOffset at)
    {
        if (at.Ticks % TimeSpan.TicksPerSecond == 0)
        {
            WriteMoment(name, at);
        }
        else
        {
            WriteString(name, at.ToString("yyyy-MM-ddTHH:mm:ss.FFFFFFFzzz", CultureInfo.InvariantCulture));
        }
    }

    /// <summary>A text; none where it is empty.</summary>
    public void WriteText(string name, string? value)
    {
        if (!string.IsNullOrEmpty(value))
        {
            WriteString(name, value!);
        }
    }

    /// <summary>A figure; none where there is none.</summary>
    public void WriteFigure(string name, double? value)
    {
        if (value is { } figure)
        {
            WriteFigure(name, figure);
        }
    }

    /// <summary>A moment; none where there is none.</summary>
    public void WriteMoment(string name, DateTimeOffset? at)
    {
        if (at is { } moment)
        {
            WriteMoment(name, moment);
        }
    }

    /// <summary>A word: the name of an enumeration member in lower case with hyphens.</summary>
    public void WriteWord<T>(string name, T value)
        where T : struct, Enum => WriteString(name, PlainText.Kebab(value));

    /// <summary>A list of words.</summary>
    public void WriteWords<T>(string name, IEnumerable<T> values)
        where T : struct, Enum
    {
        WriteStartArray(name);
        foreach (var value in values)
        {
            WriteStringValue(PlainText.Kebab(value));
        }

        WriteEndArray();
    }

    /// <summary>An object as a member.</summary>
    public void WriteObject(string name, Action members)
    {
        WriteStartObject(name);
        members();
        WriteEndObject();
    }

    /// <summary>A list of objects.</summary>
    public void WriteList<T>(string name, IEnumerable<T> items, Action<T> members)
    {
        WriteStartArray(name);
        foreach (var item in items)
        {
            WriteStartObject();
            members(item);
            WriteEndObject();
        }

        WriteEndArray();
    }
}
