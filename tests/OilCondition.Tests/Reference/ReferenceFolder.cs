using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace OilCondition.Tests.Reference;

/// <summary>
/// The folder of reference files: the one that the environment variable OILCONDITION_REFERENCE names, else the copy beside the tests.
/// A file that the given folder lacks is skipped there and read from the copy; a file that the copy lacks as well is an error.
/// </summary>
public static class ReferenceFolder
{
    private static readonly string? Given = Environment.GetEnvironmentVariable("OILCONDITION_REFERENCE");

    private static readonly string Copy = System.IO.Path.Combine(AppContext.BaseDirectory, "Reference");

    /// <summary>Full path of a file: in the given folder where it has one, else in the copy.</summary>
    public static string PathOf(string file)
    {
        var given = System.IO.Path.Combine(string.IsNullOrEmpty(Given) ? Copy : Given, file);
        return File.Exists(given) ? given : System.IO.Path.Combine(Copy, file);
    }

    /// <summary>The cases of one file.</summary>
    public static IReadOnlyList<ReferenceCase> Cases(string file) =>
        [
            .. Rows(file)
                .Select(row => new ReferenceCase(
                    file,
                    row["id"],
                    row["quantity"],
                    row["inputs"],
                    row["value"],
                    row["unit"],
                    row["tolerance"],
                    row["source_class"],
                    row["source"]
                )),
        ];

    /// <summary>The rows of any table in the folder, by column name. Comment lines start with #.</summary>
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Rows(string file)
    {
        var configuration = new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            AllowComments = true,
            Comment = '#',
            TrimOptions = TrimOptions.Trim,
        };
        using var reader = new StreamReader(PathOf(file));
        using var csv = new CsvReader(reader, configuration);
        csv.Read();
        csv.ReadHeader();
        var header = csv.HeaderRecord ?? [];
        var rows = new List<IReadOnlyDictionary<string, string>>();
        while (csv.Read())
        {
            rows.Add(header.ToDictionary(name => name, name => csv.GetField(name) ?? "", StringComparer.Ordinal));
        }

        return rows;
    }

    /// <summary>Theory data: file, row id, and what a reader of the test list wants to see.</summary>
    public static TheoryData<string, string, string> Theory(string file, Func<ReferenceCase, bool> select)
    {
        var data = new TheoryData<string, string, string>();
        foreach (var row in Cases(file).Where(select))
        {
            data.Add(file, row.Id, $"{row.Quantity} | {row.Source}");
        }

        return data;
    }

    /// <summary>Asserts that every quantity of a file has an answer, or a reason why it is left out: a new row cannot go unnoticed.</summary>
    public static void ShouldAnswerFor(string file, Func<string, bool> isKnown) =>
        Cases(file).Select(row => row.Quantity).Distinct().Where(quantity => !isKnown(quantity)).ShouldBeEmpty();

    public static ReferenceCase Case(string file, string id) =>
        Cases(file).Single(row => string.Equals(row.Id, id, StringComparison.Ordinal));
}
