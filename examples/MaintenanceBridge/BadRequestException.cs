namespace MaintenanceBridge;

/// <summary>The request asks for what cannot be: its message is for whoever sent it.</summary>
public sealed class BadRequestException(string message) : Exception(message);
