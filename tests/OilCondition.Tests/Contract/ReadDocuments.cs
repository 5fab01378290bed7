using OilCondition.LabFiles;
using OilCondition.Tests.Architecture;

namespace OilCondition.Tests.Contract;

/// <summary>Documents that the library reads: for each a fixture that has every field, and its reader.</summary>
internal static class ReadDocuments
{
    public static IReadOnlyList<string> Ids { get; } = ["column-map", "history", "journal", "limit-set", "station"];

    public static string Fixture(string id) =>
        RepositoryFiles.Read("tests", "OilCondition.Tests", "Contract", "fixtures", "v1", id + ".json");

    /// <summary>What the reader says of a text: null where it reads it.</summary>
    public static string? Refusal(string id, string json)
    {
        try
        {
            _ = id switch
            {
                "column-map" => (object)ColumnMap.Parse(json),
                "history" => OilHistory.Parse(json),
                "journal" => AlertJournal.Parse(json),
                "limit-set" => LimitSet.Parse(json),
                _ => OilCondition.Station.Parse(json),
            };
            return null;
        }
        catch (FormatException error)
        {
            return error.Message;
        }
    }
}
