using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>The alerts of a plant and what has become of them, as <c>AlertJournal.ToJson</c> writes and <c>AlertJournal.Parse</c> reads them. Fields of your own stay unread.</summary>
public sealed class JournalDocument : ContractDocument
{
    /// <summary>The alerts, in the order of their keys.</summary>
    [JsonRequired]
    public IReadOnlyList<JournalAlertData> Alerts { get; set; } = [];
}
