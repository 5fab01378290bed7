using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>
/// How the documents are read and written: without reflection, so that it can be trimmed and compiled ahead of time. What has no value is left out.
/// </summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    WriteIndented = true,
    NewLine = "\n",
    AllowDuplicateProperties = false
)]
[JsonSerializable(typeof(AssessmentDocument))]
[JsonSerializable(typeof(DecisionDocument))]
[JsonSerializable(typeof(CleanupRecordDocument))]
[JsonSerializable(typeof(HistoryDocument))]
[JsonSerializable(typeof(LimitSetDocument))]
[JsonSerializable(typeof(StationDocument))]
[JsonSerializable(typeof(ColumnMapDocument))]
[JsonSerializable(typeof(JournalDocument))]
public sealed partial class ContractJson : JsonSerializerContext;
