using System.Globalization;
using System.Text.Encodings.Web;

namespace OilCondition.Text;

/// <content>Characters: commas, lines, indents, quotes.</content>
internal sealed partial class JsonText
{
    private const int Indent = 2;

    /// <summary>Names are ours and have nothing to escape, except where somebody else's are given.</summary>
    private void NewMember(string name)
    {
        NewValue();
        Add('"');
        Add(name);
        Add("\": ");
    }

    private void NewValue()
    {
        if (depth == 0)
        {
            return;
        }

        if (!isFirst)
        {
            Add(',');
        }

        isFirst = false;
        NewLine();
    }

    private void Open(char bracket)
    {
        Add(bracket);
        depth++;
        isFirst = true;
    }

    private void Close(char bracket)
    {
        depth--;
        if (!isFirst)
        {
            NewLine();
        }

        isFirst = false;
        Add(bracket);
    }

    private void NewLine()
    {
        Add('\n');
        Room(Indent * depth).Fill(' ');
        length += Indent * depth;
    }

    private void AddQuoted(string value)
    {
        Add('"');
        Add(Escaped(value));
        Add('"');
    }

    /// <summary>A text without anything to escape is given back as it is.</summary>
    private static string Escaped(string value) => JavaScriptEncoder.UnsafeRelaxedJsonEscaping.Encode(value);

    private void Add(int number)
    {
#if NET
        number.TryFormat(Room(11), out var count, provider: CultureInfo.InvariantCulture);
        length += count;
#else
        Add(number.ToString(CultureInfo.InvariantCulture));
#endif
    }

    private void Add(string characters)
    {
        characters.AsSpan().CopyTo(Room(characters.Length));
        length += characters.Length;
    }

    private void Add(char character)
    {
        Room(1)[0] = character;
        length++;
    }

    /// <summary>Room for so many characters more.</summary>
    private Span<char> Room(int count)
    {
        if (text.Length - length < count)
        {
            Array.Resize(ref text, Math.Max(2 * text.Length, length + count));
        }

        return text.AsSpan(length, count);
    }
}
