using System.Xml;
using DocumentFormat.OpenXml.Packaging;

namespace OilCondition.Spreadsheets;

/// <summary>Turns what libraries throw at a broken workbook into one message that names the file.</summary>
internal static class Faults
{
    public static T Told<T>(string file, Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception error) when (IsOfTheFile(error))
        {
            throw Refusal(file, error);
        }
    }

    /// <summary>The same items, with faults told as they are met.</summary>
    public static IEnumerable<T> Told<T>(string file, IEnumerable<T> items)
    {
        using var source = items.GetEnumerator();
        while (Told(file, () => source.MoveNext()))
        {
            yield return source.Current;
        }
    }

    private static FormatException Refusal(string file, Exception error) =>
        new(
            $"{file} is not a workbook (.xlsx) that can be read: {error.Message} Open it and save it again, or ask for CSV.",
            error
        );

    private static bool IsOfTheFile(Exception error) =>
        error
            is OpenXmlPackageException
                or XmlException
                or InvalidDataException
                or FileFormatException
                or FormatException
                or InvalidOperationException
                or ArgumentException
                or KeyNotFoundException
                or OverflowException
                or UriFormatException
                or EndOfStreamException
                or NotSupportedException;
}
