using System.Text;

namespace HarrowPoint;

/// <summary>Passes text on in lines of at most 100 columns: a longer line goes on below, further in than it began.</summary>
public sealed class NarrowWriter(TextWriter to) : TextWriter
{
    private const int Columns = 100;

    public override Encoding Encoding => to.Encoding;

    public override void Write(char value) => to.Write(value);

    public override void Write(string? value) => to.Write(value);

    public override void WriteLine() => to.WriteLine();

    public override void WriteLine(string? value)
    {
        foreach (var line in (value ?? "").Split('\n').SelectMany(Narrow))
        {
            to.WriteLine(line);
        }
    }

    private static IEnumerable<string> Narrow(string line)
    {
        var indent = new string(' ', line.Length - line.TrimStart().Length + 4);
        while (line.Length > Columns && line.LastIndexOf(' ', Columns) is var at && at > indent.Length)
        {
            yield return line[..at].TrimEnd();
            line = indent + line[(at + 1)..].TrimStart();
        }

        yield return line;
    }
}
