using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using ExcelNumberFormat;

namespace OilCondition.Spreadsheets;

/// <summary>What all sheets of a workbook share: texts, which styles are dates, and from when dates count.</summary>
internal sealed class WorkbookContent
{
    private const long MostCharacters = 1L << 27;

    /// <summary>Days between the two origins of dates, 1900 and 1904.</summary>
    private const int DaysTo1904 = 1462;

    private readonly List<string> texts = [];
    private readonly bool[] isDate;
    private readonly bool isFrom1904;

    public WorkbookContent(SpreadsheetDocument document, string file)
    {
        var part = document.WorkbookPart ?? throw new FormatException($"{file} has no workbook in it.");
        isFrom1904 = part.Workbook?.WorkbookProperties?.Date1904?.Value ?? false;
        isDate = DatesOf(part.WorkbookStylesPart?.Stylesheet);
        ReadTexts(part.SharedStringTablePart);
        Sheets =
        [
            .. (part.Workbook?.Sheets?.Elements<Sheet>() ?? [])
                .Where(sheet => sheet.Id?.Value is not null)
                .Select(sheet =>
                    (Name: sheet.Name?.Value ?? "?", Part: part.GetPartById(sheet.Id!.Value!) as WorksheetPart)
                )
                .Where(sheet => sheet.Part is not null)
                .Select(sheet => (sheet.Name, sheet.Part!)),
        ];
    }

    /// <summary>The sheets with cells, in order.</summary>
    public IReadOnlyList<(string Name, WorksheetPart Part)> Sheets { get; }

    public string Text(int index) =>
        index >= 0 && index < texts.Count
            ? texts[index]
            : throw new FormatException($"a cell refers to text {index}, and there are {texts.Count}.");

    public bool IsDate(uint style) => style < isDate.Length && isDate[style];

    /// <summary>The date that a number stands for; a time of day below 1; the number itself where it is neither.</summary>
    public object Date(double number)
    {
        var days = isFrom1904 ? number + DaysTo1904 : number;
        return number is >= 0 and < 1 ? TimeSpan.FromSeconds(Math.Round(86_400 * number))
            : days is > 0 and < 2_900_000 ? DateTime.FromOADate(days)
            : number;
    }

    /// <summary>A text of a cell: its runs, without the readings that East Asian texts carry.</summary>
    public static string TextOf(OpenXmlElement? item) =>
        item is null
            ? ""
            : string.Concat(
                item.ChildElements.Select(child =>
                    child switch
                    {
                        DocumentFormat.OpenXml.Spreadsheet.Text text => text.Text,
                        Run run => run.Text?.Text ?? "",
                        _ => "",
                    }
                )
            );

    private void ReadTexts(SharedStringTablePart? part)
    {
        if (part is null)
        {
            return;
        }

        var characters = 0L;
        using var reader = OpenXmlReader.Create(part);
        while (reader.Read())
        {
            if (reader.ElementType != typeof(SharedStringItem) || !reader.IsStartElement)
            {
                continue;
            }

            texts.Add(TextOf(reader.LoadCurrentElement()));
            characters += texts[texts.Count - 1].Length;
            if (characters > MostCharacters)
            {
                throw new FormatException($"its texts have more than {MostCharacters:N0} characters.");
            }
        }
    }

    private static bool[] DatesOf(Stylesheet? styles)
    {
        var codes = (styles?.NumberingFormats?.Elements<NumberingFormat>() ?? [])
            .Where(format => format.NumberFormatId?.Value is not null)
            .GroupBy(format => format.NumberFormatId!.Value)
            .ToDictionary(format => format.Key, format => format.First().FormatCode?.Value ?? "");
        return
        [
            .. (styles?.CellFormats?.Elements<CellFormat>() ?? []).Select(cell =>
                IsDateFormat(cell.NumberFormatId?.Value ?? 0, codes)
            ),
        ];
    }

    /// <summary>The formats without a code of their own are those of ECMA-376, 18.8.30; 27 to 36 and 50 to 58 are dates of East Asian versions.</summary>
    private static bool IsDateFormat(uint id, Dictionary<uint, string> codes) =>
        codes.TryGetValue(id, out var code)
            ? new NumberFormat(code) is { IsValid: true, IsDateTimeFormat: true }
            : id is (>= 14 and <= 22) or (>= 27 and <= 36) or (>= 45 and <= 47) or (>= 50 and <= 58);
}
