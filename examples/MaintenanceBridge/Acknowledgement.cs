namespace MaintenanceBridge;

/// <summary>Says who has taken an alert on.</summary>
public sealed record Acknowledgement(string Key, string By, string WorkOrder = "");
