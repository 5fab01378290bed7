using System.IO.Compression;
using DocumentFormat.OpenXml.Packaging;
using OilCondition.LabFiles;

namespace OilCondition.Spreadsheets;

/// <summary>Opens workbooks for reading, and refuses what is none or would fill the memory.</summary>
internal static class Workbook
{
    /// <summary>No sheet that people look at has more.</summary>
    private const long MostCharacters = 1L << 30;

    /// <summary>Packed tables shrink to a tenth or so; what shrinks to a two-hundredth was made to.</summary>
    private const long MostTimesPacked = 200;

    private const long SmallBytes = 1L << 26;

    public static IEnumerable<TableSheet> Sheets(string path)
    {
        var file = Path.GetFileName(path);
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        RefuseWhatIsNone(stream, file);
        using var document = Faults.Told(
            file,
            () =>
                SpreadsheetDocument.Open(
                    stream,
                    isEditable: false,
                    new OpenSettings { MaxCharactersInPart = MostCharacters }
                )
        );
        var content = Faults.Told(file, () => new WorkbookContent(document, file));
        foreach (var (name, part) in content.Sheets)
        {
            yield return new TableSheet(name, Faults.Told(file, new SheetContent(part, content).Rows()));
        }
    }

    private static void RefuseWhatIsNone(FileStream stream, string file)
    {
        var start = new byte[4];
        var count = stream.Read(start, 0, start.Length);
        stream.Position = 0;
        if (count == 4 && start[0] == 0xD0 && start[1] == 0xCF)
        {
            throw new FormatException(
                $"{file} is a workbook of the old kind (.xls) or one with a password. Save it as .xlsx without a password."
            );
        }

        if (count < 4 || start[0] != 'P' || start[1] != 'K')
        {
            throw new FormatException($"{file} is not a workbook (.xlsx). A text file is read by LabFile.");
        }

        using var archive = Faults.Told(file, () => new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true));
        var unpacked = Faults.Told(file, () => archive.Entries.Sum(entry => entry.Length));
        var isMadeToFill = unpacked > SmallBytes && unpacked > MostTimesPacked * stream.Length;
        if (isMadeToFill || unpacked > 4 * MostCharacters)
        {
            throw new FormatException(
                $"{file} has {stream.Length:N0} bytes and would unpack to {unpacked:N0}; such a workbook is not read. Ask for the table as CSV."
            );
        }

        stream.Position = 0;
    }
}
