namespace OilCondition.LabFiles;

/// <summary>The beginning of a text: its first characters up to the end of a line.</summary>
internal sealed class TextStart(TextReader reader, Func<double?>? fractionRead) : FileStart
{
    private const int FirstPart = 1 << 17;

    private static readonly char[] Delimiters = [',', ';', '\t', '|'];

    private string text = ReadPart(reader, FirstPart).TrimStart('\uFEFF');
    private bool isWhole;

    public override IEnumerable<RowSource> Ways(ColumnMap map)
    {
        var stated = StatedDelimiter() ?? map.Delimiter;
        var whole = WholeLines();
        char[] delimiters = stated is { } one ? [one] : [.. Delimiters.OrderByDescending(CountInFirstLine)];
        return delimiters.Select(delimiter => new DelimitedText(whole, TextReader.Null, delimiter));
    }

    public override RowSource Again(RowSource way) =>
        new DelimitedText(WholeLines(), TextReader.Null, ((DelimitedText)way).Delimiter);

    public override RowSource All(RowSource way) =>
        new DelimitedText(text, reader, ((DelimitedText)way).Delimiter, fractionRead);

    public override bool CommasDivideCells(RowSource way) => ((DelimitedText)way).Delimiter == ',';

    public override FormatException? EncodingFault(string file) =>
        string.IsNullOrWhiteSpace(text) ? new FormatException($"{file} is empty; a header line and rows are expected.")
        : LineOf('\0') is { } nul
            ? new FormatException(
                $"{file}, line {nul}: NUL characters stand there, as in UTF-16 without a byte order mark, in a spreadsheet or in a PDF. "
                    + "Save it as text in UTF-8, or state \"encoding\": \"utf-16\" in the column map."
            )
        : LineOf('\uFFFD') is { } damaged
            ? new FormatException(
                $"{file}, line {damaged}: bytes stand there that are no text in this encoding, as those of Windows-1252 are not in UTF-8. "
                    + "Save it in UTF-8, or state \"encoding\": \"windows-1252\" in the column map."
            )
        : null;

    private int? LineOf(char letter)
    {
        var position = text.IndexOf(letter);
        return position < 0 ? null : 1 + text.Take(position).Count(one => one == '\n');
    }

    public override bool Grow()
    {
        if (isWhole || text.Length > DelimitedText.LongestRow)
        {
            return false;
        }

        var more = ReadPart(reader, 3 * Math.Max(text.Length, FirstPart));
        isWhole = more.Length == 0;
        text += more;
        return true;
    }

    /// <summary>'sep=;' above everything is how spreadsheet programs are told the delimiter.</summary>
    private char? StatedDelimiter()
    {
        var first = text.AsSpan().TrimStart();
        return
            first.StartsWith("sep=".AsSpan(), StringComparison.OrdinalIgnoreCase)
            && first.Length > 5
            && first[5] is '\r' or '\n'
            ? first[4]
            : null;
    }

    private string WholeLines()
    {
        // A line that goes on is none yet.
        var isOpen = !isWhole && text.Length >= FirstPart - 1;
        return isOpen ? text.Substring(0, text.LastIndexOf('\n') + 1) : text;
    }

    private int CountInFirstLine(char delimiter)
    {
        var first = text.AsSpan().TrimStart();
        var end = first.IndexOfAny('\r', '\n');
        var count = 0;
        foreach (var letter in end < 0 ? first : first.Slice(0, end))
        {
            count += letter == delimiter ? 1 : 0;
        }

        return count;
    }

    private static string ReadPart(TextReader reader, int size)
    {
        var part = new char[size];
        var length = 0;
        for (var count = 1; count > 0 && length < size; length += count)
        {
            count = reader.Read(part, length, size - length);
        }

        return new string(part, 0, length);
    }
}
