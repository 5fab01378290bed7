using System.Text;

namespace OilCondition.LabFiles;

/// <summary>A text file on disk, opened in the encoding that it has.</summary>
internal sealed class TextFile : IDisposable
{
    private readonly FileStream stream;

    public TextFile(string path, ColumnMap map)
    {
        stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 1 << 16);
        try
        {
            RefuseOtherKinds(Path.GetFileName(path));
            Reader = new StreamReader(
                stream,
                Encoding(map.Encoding) ?? new UTF8Encoding(false),
                detectEncodingFromByteOrderMarks: true,
                1 << 16
            );
        }
        catch
        {
            stream.Dispose();
            throw;
        }
    }

    public StreamReader Reader { get; }

    /// <summary>How much of the file has been read.</summary>
    public double? FractionRead => stream.Length == 0 ? 1 : (double)stream.Position / stream.Length;

    /// <summary>An encoding by its name; null where it is not known here.</summary>
    public static Encoding? Encoding(string name)
    {
        if (name.Length == 0)
        {
            return null;
        }

        try
        {
#if NET
            return CodePagesEncodingProvider.Instance.GetEncoding(name) ?? System.Text.Encoding.GetEncoding(name);
#else
            return System.Text.Encoding.GetEncoding(name);
#endif
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    public void Dispose() => Reader.Dispose();

    private void RefuseOtherKinds(string file)
    {
        var bytes = new byte[4];
        var count = stream.Read(bytes, 0, bytes.Length);
        stream.Position = 0;
        if (count < bytes.Length)
        {
            return;
        }

        var start = (bytes[0], bytes[1], bytes[2], bytes[3]);
        var kind =
            start == ((byte)'P', (byte)'K', 3, 4)
                ? "a workbook (.xlsx) or another archive; OilCondition.Spreadsheets reads workbooks"
            : start == (0xD0, 0xCF, 0x11, 0xE0)
                ? "a workbook of the old kind (.xls) or a protected one; save it as .xlsx or as CSV"
            : start == ((byte)'%', (byte)'P', (byte)'D', (byte)'F')
                ? "a PDF; ask the laboratory for a CSV file or a workbook"
            : "";
        if (kind.Length > 0)
        {
            throw new FormatException($"{file} is not a text file, but {kind}.");
        }
    }
}
