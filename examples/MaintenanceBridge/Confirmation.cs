namespace MaintenanceBridge;

/// <summary>Says that a change was delivered, and as which work order.</summary>
public sealed record Confirmation(string ChangeId, string WorkOrder = "");
