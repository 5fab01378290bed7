using MaintenanceBridge;

// dotnet run --project examples/MaintenanceBridge -c Release [-- --store FILE --port 5080]
var app = BridgeApp.Create(BridgeSettings.From(args));
app.Run();
