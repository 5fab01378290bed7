using OilCondition;

namespace FirstCalls;

public sealed record WorkRequest(string Number, string Key, bool IsOpen, Severity Priority, string Text);
