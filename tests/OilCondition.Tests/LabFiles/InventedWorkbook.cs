using System.IO.Compression;
using System.Security;

namespace OilCondition.Tests.LabFiles;

/// <summary>A workbook written part by part after ECMA-376, so that cells hold just what a test wants, broken things included.</summary>
internal sealed class InventedWorkbook : IDisposable
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Package = "http://schemas.openxmlformats.org/package/2006";

    /// <summary>A workbook of sheets, each its name and the XML of its rows.</summary>
    public InventedWorkbook(params (string Name, string Rows)[] sheets)
        : this("", sheets) { }

    /// <param name="properties">Attributes of the workbook's properties.</param>
    /// <param name="sheets">Name and rows of each sheet.</param>
    public InventedWorkbook(string properties, params (string Name, string Rows)[] sheets)
    {
        Path = System.IO.Path.Combine(System.IO.Path.GetTempPath(), $"lab-{Guid.NewGuid():N}.xlsx");
        using var archive = ZipFile.Open(Path, ZipArchiveMode.Create);
        var parts = Enumerable.Range(1, sheets.Length).ToList();
        Add(
            archive,
            "[Content_Types].xml",
            $"<Types xmlns=\"{Package}/content-types\"><Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
                + Type("workbook", "sheet.main")
                + Type("styles", "styles")
                + Type("sharedStrings", "sharedStrings")
                + string.Concat(parts.Select(i => Type($"worksheets/sheet{i}", "worksheet")))
                + "</Types>"
        );
        Add(
            archive,
            "_rels/.rels",
            $"<Relationships xmlns=\"{Package}/relationships\"><Relationship Id=\"r0\" Type=\"{Relations}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>"
        );
        Add(
            archive,
            "xl/workbook.xml",
            $"<workbook xmlns=\"{Main}\" xmlns:r=\"{Relations}\"><workbookPr {properties}/><sheets>"
                + string.Concat(
                    sheets.Select((sheet, i) => $"<sheet name=\"{sheet.Name}\" sheetId=\"{i + 1}\" r:id=\"r{i + 1}\"/>")
                )
                + "</sheets></workbook>"
        );
        Add(
            archive,
            "xl/_rels/workbook.xml.rels",
            $"<Relationships xmlns=\"{Package}/relationships\">"
                + $"<Relationship Id=\"s\" Type=\"{Relations}/styles\" Target=\"styles.xml\"/>"
                + $"<Relationship Id=\"t\" Type=\"{Relations}/sharedStrings\" Target=\"sharedStrings.xml\"/>"
                + string.Concat(
                    parts.Select(i =>
                        $"<Relationship Id=\"r{i}\" Type=\"{Relations}/worksheet\" Target=\"worksheets/sheet{i}.xml\"/>"
                    )
                )
                + "</Relationships>"
        );
        // Style 1 is date and time (22), 2 a date of its own format, 3 a time (20), 4 a number with a unit (no date, for all its 'm').
        Add(
            archive,
            "xl/styles.xml",
            $"<styleSheet xmlns=\"{Main}\"><numFmts count=\"2\"><numFmt numFmtId=\"164\" formatCode=\"dd\\.mm\\.yyyy\"/><numFmt numFmtId=\"165\" formatCode=\"0.0&quot; mg/kg&quot;\"/></numFmts>"
                + "<cellXfs count=\"5\"><xf numFmtId=\"0\"/><xf numFmtId=\"22\"/><xf numFmtId=\"164\"/><xf numFmtId=\"20\"/><xf numFmtId=\"165\"/></cellXfs></styleSheet>"
        );
        Add(
            archive,
            "xl/sharedStrings.xml",
            $"<sst xmlns=\"{Main}\"><si><t>M1</t></si><si><r><t>tr</t></r><r><t>üb</t></r><rPh sb=\"0\" eb=\"1\"><t>not part of it</t></rPh></si></sst>"
        );
        for (var i = 0; i < sheets.Length; i++)
        {
            Add(
                archive,
                $"xl/worksheets/sheet{i + 1}.xml",
                $"<worksheet xmlns=\"{Main}\"><sheetData>{sheets[i].Rows}</sheetData></worksheet>"
            );
        }
    }

    public string Path { get; }

    public void Dispose() => File.Delete(Path);

    /// <summary>A row of texts.</summary>
    public static string Texts(int number, params string[] texts) =>
        Row(number, [.. texts.Select(text => $"t=\"inlineStr\"><is><t>{SecurityElement.Escape(text)}</t></is>")]);

    /// <summary>A row of cells, each what stands between <c>&lt;c r="…" </c> and its end; blank for a cell that is left out.</summary>
    public static string Row(int number, params string[] cells) =>
        $"<row r=\"{number}\">"
        + string.Concat(
            cells.Select((cell, i) => cell.Length == 0 ? "" : $"<c r=\"{(char)('A' + i)}{number}\" {cell}</c>")
        )
        + "</row>";

    private static string Type(string part, string kind) =>
        $"<Override PartName=\"/xl/{part}.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.{kind}+xml\"/>";

    private static void Add(ZipArchive archive, string name, string text)
    {
        using var writer = new StreamWriter(archive.CreateEntry(name).Open());
        writer.Write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>" + text);
    }
}
