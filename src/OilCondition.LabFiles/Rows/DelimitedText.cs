using System.Text;
using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>Rows of delimited text after RFC 4180, read through one buffer.</summary>
/// <remarks>
/// Two things that parsers at hand do not do decide that this is our own: a quote that is never closed costs one line, not the rest of the
/// file; and a row of any length is bounded in memory. A quote inside an unquoted cell stands for itself, as in 1/2" hose.
/// </remarks>
internal sealed class DelimitedText : RowSource
{
    /// <summary>Longest row, in characters: beyond it the row is refused and no longer held.</summary>
    public const int LongestRow = 1 << 24;

    private const string NotClosed = "a quote is opened and not closed, or something follows the closing one";

    private readonly TextReader reader;
    private readonly char delimiter;
    private readonly Func<double?>? fractionRead;
    private readonly List<Field> fields = [];
    private char[] buffer;
    private int length;
    private int rowStart;
    private int next;
    private int nextLine = 1;
    private int rowEnd;
    private bool isAtEnd;
    private bool hasQuotes;
    private string? given;

    /// <summary>Rows of what was read already, and of what follows it.</summary>
    public DelimitedText(string start, TextReader rest, char delimiter, Func<double?>? fractionRead = null)
    {
        reader = rest;
        this.fractionRead = fractionRead;
        this.delimiter = delimiter;
        buffer = new char[Math.Max(1 << 16, start.Length)];
        start.CopyTo(0, buffer, 0, start.Length);
        length = start.Length;
    }

    public char Delimiter => delimiter;

    public override string Raw => given ?? PlainText.Cut(buffer.AsSpan(rowStart, rowEnd));

    public override double? FractionRead => fractionRead?.Invoke();

    public override bool Read()
    {
        rowStart = next;
        Line = nextLine;
        fields.Clear();
        Fault = "";
        given = null;
        hasQuotes = false;
        if (rowStart >= length && !Fill())
        {
            return false;
        }

        var position = 0;
        while (true)
        {
            position = SkipSpaces(position);
            var end = At(position) == '"' ? Quoted(position) : Plain(position);
            if (end < 0)
            {
                break;
            }

            position = end;
            if (At(position) != delimiter)
            {
                EndRow(position);
                break;
            }

            position++;
        }

        Count = fields.Count;
        return true;
    }

    public override ReadOnlySpan<char> Text(int index)
    {
        var field = fields[index];
        var text = buffer.AsSpan(rowStart + field.Start, field.Length);
        return field.HasDoubledQuotes ? text.ToString().Replace("\"\"", "\"").AsSpan() : text;
    }

    /// <summary>The character at a place of the row; NUL behind the end of the text.</summary>
    private char At(int position) => rowStart + position < length || Fill() ? buffer[rowStart + position] : '\0';

    private bool IsOver(int position) => rowStart + position >= length && !Fill();

    private int SkipSpaces(int position)
    {
        while (At(position) is ' ' or '\t' && At(position) != delimiter)
        {
            position++;
        }

        return position;
    }

    /// <summary>Takes an unquoted field; the place behind it, or less than 0 when the row was given up.</summary>
    private int Plain(int start)
    {
        var position = start;
        while (true)
        {
            var rest = buffer.AsSpan(rowStart + position, length - rowStart - position);
            var found = rest.IndexOfAny(delimiter, '\n', '\r');
            position += found < 0 ? rest.Length : found;
            if (found >= 0 || IsOver(position))
            {
                break;
            }

            if (position > LongestRow)
            {
                return GiveUp($"the row has more than {LongestRow:N0} characters");
            }
        }

        var end = position;
        while (end > start && buffer[rowStart + end - 1] is ' ' or '\t')
        {
            end--;
        }

        fields.Add(new Field(start, end - start, false));
        return position;
    }

    /// <summary>Takes a quoted field; the place behind it, or less than 0 when the row was given up.</summary>
    private int Quoted(int start)
    {
        var position = start + 1;
        var hasDoubledQuotes = false;
        hasQuotes = true;
        while (true)
        {
            var rest = buffer.AsSpan(rowStart + position, length - rowStart - position);
            var found = rest.IndexOf('"');
            position += found < 0 ? rest.Length : found;
            if (found < 0)
            {
                if (position > LongestRow || IsOver(position))
                {
                    return GiveUp(NotClosed);
                }

                continue;
            }

            if (At(position + 1) != '"')
            {
                break;
            }

            hasDoubledQuotes = true;
            position += 2;
        }

        var end = SkipSpaces(position + 1);
        if (At(end) != delimiter && At(end) is not ('\r' or '\n') && !IsOver(end))
        {
            return GiveUp(NotClosed);
        }

        fields.Add(new Field(start + 1, position - start - 1, hasDoubledQuotes));
        return end;
    }

    /// <summary>The row is its first line; what follows may be good again.</summary>
    private int GiveUp(string fault)
    {
        const int Piece = 1 << 16;
        Fault = fault;
        fields.Clear();
        hasQuotes = false;
        var start = new StringBuilder();
        var dropped = 0L;
        var position = 0;
        for (; !IsOver(position) && buffer[rowStart + position] is not ('\r' or '\n'); position++)
        {
            var letter = buffer[rowStart + position];
            if (start.Length <= PlainText.LongestCited)
            {
                start.Append(letter);
            }

            if (letter == delimiter)
            {
                fields.Add(default);
            }

            if (position == Piece)
            {
                // What was counted need not be held.
                rowStart += Piece;
                position -= Piece;
                dropped += Piece;
            }
        }

        fields.Add(default);
        EndRow(position);
        given = PlainText.Cut(start.ToString().AsSpan(), dropped + position);
        return -1;
    }

    private void EndRow(int position)
    {
        rowEnd = position;
        var lines = 0;
        for (var i = 0; hasQuotes && i < position; i++)
        {
            var found = buffer.AsSpan(rowStart + i, position - i).IndexOfAny('\n', '\r');
            if (found < 0)
            {
                break;
            }

            i += found;
            lines += buffer[rowStart + i] == '\r' && At(i + 1) == '\n' ? 0 : 1;
        }

        if (!IsOver(position))
        {
            var isPair = buffer[rowStart + position] == '\r' && At(position + 1) == '\n';
            position += isPair ? 2 : 1;
            lines++;
        }

        next = rowStart + position;
        nextLine = Line + lines;
    }

    /// <summary>Reads on; what stands before the row gives way. False at the end of the text.</summary>
    private bool Fill()
    {
        if (isAtEnd)
        {
            return false;
        }

        if (rowStart > 0)
        {
            Array.Copy(buffer, rowStart, buffer, 0, length - rowStart);
            length -= rowStart;
            next -= rowStart;
            rowStart = 0;
        }

        if (length == buffer.Length)
        {
            Array.Resize(ref buffer, 2 * buffer.Length);
        }

        var count = reader.Read(buffer, length, buffer.Length - length);
        isAtEnd = count == 0;
        length += count;
        return count > 0;
    }

    private readonly record struct Field(int Start, int Length, bool HasDoubledQuotes);
}
