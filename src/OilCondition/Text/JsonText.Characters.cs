using System.Text.Encodings.Web;

namespace OilCondition.Text;

/// <content>Characters: commas, lines, indents, quotes.</content>
internal sealed partial class JsonText
{
    private const int Indent = 2;

    private void NewMember(string name)
    {
        NewValue();
        AddQuoted(name);
        Add(": ");
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

    /// <summary>A text without anything to escape is given back as it is.</summary>
    private void AddQuoted(string value)
    {
        Add('"');
        Add(JavaScriptEncoder.UnsafeRelaxedJsonEscaping.Encode(value));
        Add('"');
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
