using System.Net;
using System.Text;
using Microsoft.AspNetCore.Diagnostics;

namespace MaintenanceBridge;

/// <summary>The service: routes, limits and errors. It listens on the loopback interface only, and no text of a request becomes a path.</summary>
public static class BridgeApp
{
    private const int LongestText = 200;

    public static WebApplication Create(BridgeSettings settings, TimeProvider? clock = null)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.Limits.MaxRequestBodySize = settings.LargestUploadBytes;
            kestrel.Listen(IPAddress.Loopback, settings.Port);
        });
        // A page in a browser on this machine must not reach the bridge under another name.
        builder.Services.AddHostFiltering(options => options.AllowedHosts = ["localhost", "127.0.0.1"]);
        builder.Services.AddOpenApi();
        builder.Services.AddProblemDetails();
        // A parameter that is missing is told by name.
        builder.Services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = true);
        builder.Services.AddSingleton(
            new Bridge(
                BridgeStation.Read(settings.StationFolder),
                new Store(settings.Store),
                clock ?? TimeProvider.System
            )
        );
        var app = builder.Build();
        app.UseHostFiltering();
        app.UseExceptionHandler(errors => errors.Run(Problem));
        app.UseStatusCodePages();
        app.MapOpenApi();
        Imports(app.MapGroup("/imports"));
        Machines(app.MapGroup("/machines"));
        Requests(app.MapGroup("/work-requests"));
        return app;
    }

    private static void Imports(RouteGroupBuilder group)
    {
        group
            .MapPost(
                "/laboratory",
                async (HttpRequest request, Bridge bridge, string name = "laboratory.csv") =>
                    bridge.Import(Received.Of(ReceivedKind.LaboratoryFile, Text(name), "", await Body(request)))
            )
            .WithSummary("A laboratory's CSV file.")
            .Accepts<string>("text/csv")
            .ProducesProblem(400)
            .ProducesProblem(413);
        group
            .MapPost(
                "/sensors",
                async (HttpRequest request, Bridge bridge, string machine = "", string name = "sensors.csv") =>
                    bridge.Import(Received.Of(ReceivedKind.SensorLog, Text(name), Text(machine), await Body(request)))
            )
            .WithSummary("A batch of sensor readings as CSV; the machine where its rows do not name it.")
            .Accepts<string>("text/csv")
            .ProducesProblem(400)
            .ProducesProblem(413);
        group
            .MapPost(
                "/history",
                async (HttpRequest request, Bridge bridge, string name = "history.json") =>
                    bridge.Import(Received.Of(ReceivedKind.History, Text(name), "", await Body(request)))
            )
            .WithSummary("A machine's records as history JSON.")
            .Accepts<string>("application/json")
            .ProducesProblem(400)
            .ProducesProblem(413);
    }

    private static void Machines(RouteGroupBuilder group)
    {
        group
            .MapGet("/assessment", (string machine, Bridge bridge) => Json(bridge.Assessment(Text(machine)).ToJson()))
            .WithSummary("A machine's assessment.")
            .ProducesProblem(400);
        group
            .MapGet(
                "/history",
                (string machine, Bridge bridge) => Json(bridge.Assessment(Text(machine)).History.ToJson())
            )
            .WithSummary("A machine's records, with what is wrong with them.")
            .ProducesProblem(400);
    }

    private static void Requests(RouteGroupBuilder group)
    {
        group
            .MapGet("/", (Bridge bridge) => bridge.Journal.Entries.Select(WorkRequest.Of))
            .WithSummary("Every alert with where it stands.");
        group
            .MapGet("/pending", (Bridge bridge) => bridge.Journal.Pending.Select(PendingChange.Of))
            .WithSummary("What is to be delivered, in its order.");
        group
            .MapPost(
                "/confirm",
                (Confirmation one, Bridge bridge) => bridge.Confirm(Text(one.ChangeId), Text(one.WorkOrder))
            )
            .WithSummary("A change was delivered.")
            .ProducesProblem(400);
        group
            .MapPost(
                "/acknowledge",
                (Acknowledgement one, Bridge bridge) =>
                    bridge.Acknowledge(Text(one.Key), Text(one.By), Text(one.WorkOrder))
            )
            .WithSummary("Somebody has taken an alert on.")
            .ProducesProblem(400);
    }

    private static IResult Json(string json) => Results.Text(json, "application/json", Encoding.UTF8);

    /// <summary>UTF-8 that is what it says: bytes that are not are refused, not replaced.</summary>
    private static async Task<string> Body(HttpRequest request)
    {
        using var reader = new StreamReader(
            request.Body,
            new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true)
        );
        return await reader.ReadToEndAsync(request.HttpContext.RequestAborted);
    }

    private static string Text(string? text) =>
        text is null ? throw new BadRequestException("a text is missing.")
        : text.Length > LongestText || text.Any(char.IsControl)
            ? throw new BadRequestException($"a text has at most {LongestText} characters and no control characters.")
        : text;

    /// <summary>What whoever sent the request can mend is said with its reason; of all else only that it failed.</summary>
    private static Task Problem(HttpContext context)
    {
        var error = context.Features.Get<IExceptionHandlerFeature>()?.Error;
        var (status, detail) = error switch
        {
            BadHttpRequestException bad => (bad.StatusCode, bad.Message),
            BadRequestException or FormatException or ArgumentException or DecoderFallbackException => (
                400,
                error.Message
            ),
            _ => (500, "The request failed; the bridge's log has the reason."),
        };
        context.Response.StatusCode = status;
        return Results.Problem(detail, statusCode: status).ExecuteAsync(context);
    }
}
