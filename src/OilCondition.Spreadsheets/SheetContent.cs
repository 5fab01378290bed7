using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using OilCondition.LabFiles;

namespace OilCondition.Spreadsheets;

/// <summary>The rows of one sheet, one at a time.</summary>
internal sealed class SheetContent(WorksheetPart part, WorkbookContent workbook)
{
    /// <summary>The last column of a sheet, XFD (ECMA-376).</summary>
    private const int MostColumns = 16_384;

    public IEnumerable<TableRow> Rows()
    {
        using var reader = OpenXmlReader.Create(part);
        var number = 0;
        while (reader.Read())
        {
            if (reader.ElementType == typeof(Row) && reader.IsStartElement)
            {
                var row = (Row)reader.LoadCurrentElement()!;
                number = row.RowIndex?.Value is { } stated ? checked((int)stated) : number + 1;
                yield return new TableRow(number, Cells(row));
            }
        }
    }

    private List<object?> Cells(Row row)
    {
        var cells = new List<object?>();
        foreach (var cell in row.Elements<Cell>())
        {
            var column = cell.CellReference?.Value is { } reference ? ColumnOf(reference) : cells.Count;
            if (column >= MostColumns)
            {
                throw new FormatException($"row {row.RowIndex} has a cell beyond column XFD.");
            }

            while (cells.Count <= column)
            {
                cells.Add(null);
            }

            cells[column] = Value(cell);
        }

        return cells;
    }

    private object? Value(Cell cell)
    {
        var text = cell.CellValue?.Text;
        if (cell.InlineString is { } inline)
        {
            return WorkbookContent.TextOf(inline);
        }

        if (string.IsNullOrEmpty(text))
        {
            // A formula that was never calculated is no blank cell.
            return cell.CellFormula is { } formula ? "=" + formula.Text : null;
        }

        var kind = cell.DataType?.Value;
        if (kind == CellValues.SharedString)
        {
            return workbook.Text(int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture));
        }

        if (kind == CellValues.Boolean)
        {
            return text == "0" ? "FALSE" : "TRUE";
        }

        if ((kind is not null && kind != CellValues.Number) || !TryNumber(text!, out var number))
        {
            // Texts of formulas, ISO dates, and errors such as #DIV/0!.
            return text;
        }

        return workbook.IsDate(cell.StyleIndex?.Value ?? 0) ? workbook.Date(number) : number;
    }

    private static bool TryNumber(string text, out double number) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out number)
        && !double.IsInfinity(number)
        && !double.IsNaN(number);

    /// <summary>The place of a column, counted from 0: A is 0, AA 26.</summary>
    private static int ColumnOf(string reference)
    {
        var column = 0;
        foreach (var letter in reference.TakeWhile(char.IsLetter).Take(4))
        {
            column = 26 * column + (char.ToUpperInvariant(letter) - 'A' + 1);
        }

        return column is > 0 and <= MostColumns ? column - 1 : throw new FormatException($"'{reference}' is no cell.");
    }
}
