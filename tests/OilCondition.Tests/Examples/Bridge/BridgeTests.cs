using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using MaintenanceBridge;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;

namespace OilCondition.Tests.Examples.Bridge;

/// <summary>The bridge as a maintenance system calls it, over HTTP.</summary>
public sealed class BridgeTests : IAsyncLifetime, IDisposable
{
    private const long Largest = 20_000;

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("bridge-");
    private readonly Microsoft.AspNetCore.Builder.WebApplication app;
    private HttpClient client = new();

    public BridgeTests() =>
        app = BridgeApp.Create(
            new BridgeSettings(
                Path.Combine(folder.FullName, "bridge.db"),
                0,
                Path.Combine(AppContext.BaseDirectory, "Station"),
                Largest
            )
        );

    public async Task InitializeAsync()
    {
        await app.StartAsync();
        client = new HttpClient { BaseAddress = new Uri(Address) };
    }

    private string Address =>
        app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();

    public void Dispose() => client.Dispose();

    public async Task DisposeAsync()
    {
        await app.DisposeAsync();
        folder.Delete(recursive: true);
    }

    private static Uri At(string path) => new(path, UriKind.Relative);

    private async Task<HttpResponseMessage> Post(string path, string body, string type = "text/csv") =>
        await client.PostAsync(At(path), new StringContent(body, Encoding.UTF8, type));

    private const string Wet = "Machine,Sample number,Taken at,Water [mg/kg]\nHP-CWP2,S1,2026-06-20 08:00,900\n";

    private async Task<string> Text(string path) => await client.GetStringAsync(At(path));

    private async Task<PendingChange[]> Pending() =>
        await client.GetFromJsonAsync<PendingChange[]>(At("work-requests/pending")) ?? [];

    /// <summary>What is refused is told as problem details (RFC 9457), with the reason.</summary>
    private static async Task Refused(HttpResponseMessage answer, HttpStatusCode status, string detail)
    {
        answer.StatusCode.ShouldBe(status);
        answer.Content.Headers.ContentType!.MediaType.ShouldBe("application/problem+json");
        (await answer.Content.ReadAsStringAsync()).ShouldContain(detail);
    }

    [Fact]
    public async Task From_a_laboratory_file_to_a_confirmed_and_acknowledged_request()
    {
        var import = await (
            await Post("imports/laboratory?name=june.csv", Wet)
        ).Content.ReadFromJsonAsync<ImportResult>();
        (import!.IsNew, import.Samples).ShouldBe((true, 1));
        import.Machines.ShouldBe(["HP-CWP2"]);

        var change = (await Pending()).Single(one => one.Key.EndsWith("/water", StringComparison.Ordinal));
        change.Kind.ShouldBe("Raised");
        change.Statement.ShouldContain("900 mg/kg");
        change.Evidence.ShouldNotBeEmpty();
        (
            await client.PostAsJsonAsync(At("work-requests/confirm"), new Confirmation(change.Id, "WO-1"))
        ).EnsureSuccessStatusCode();
        (
            await client.PostAsJsonAsync(At("work-requests/acknowledge"), new Acknowledgement(change.Key, "R. Voss"))
        ).EnsureSuccessStatusCode();

        (await Pending()).ShouldNotContain(one => one.Key == change.Key);
        var request = (await client.GetFromJsonAsync<WorkRequest[]>(At("work-requests/")))!.Single(one =>
            one.Key == change.Key
        );
        (request.WorkOrder, request.AcknowledgedBy, request.State, request.IsActive).ShouldBe(
            ("WO-1", "R. Voss", "AcknowledgedActive", true)
        );
        (await Text("machines/assessment?machine=HP-CWP2")).ShouldContain("\"limit-passed\"");
        OilHistory.Parse(await Text("machines/history?machine=HP-CWP2")).Samples.Single().SampleNumber.ShouldBe("S1");
    }

    [Fact]
    public async Task The_same_bytes_again_change_nothing()
    {
        await Post("imports/laboratory", Wet);
        var before = await Text("work-requests/pending");
        var again = await (
            await Post("imports/laboratory?name=again.csv", Wet)
        ).Content.ReadFromJsonAsync<ImportResult>();

        again!.IsNew.ShouldBeFalse();
        (await Text("work-requests/pending")).ShouldBe(before);
    }

    [Fact]
    public async Task Sensor_batches_and_history_json_come_in_as_well()
    {
        var sensors = await Post(
            "imports/sensors?machine=HP-DTG1",
            "Time,Saturation [%],Oil temperature [°C]\n2026-06-20T08:00Z,40,50\n2026-06-20T09:00Z,41,50\n"
        );
        (await sensors.Content.ReadFromJsonAsync<ImportResult>())!.SensorReadings.ShouldBe(2);

        await Post("imports/laboratory", Wet);
        var history = (await Text("machines/history?machine=HP-CWP2")).Replace(
            "\"S1\"",
            "\"S2\"",
            StringComparison.Ordinal
        );
        var import = await (
            await Post("imports/history", history, "application/json")
        ).Content.ReadFromJsonAsync<ImportResult>();
        import!.Samples.ShouldBe(1);
        OilHistory.Parse(await Text("machines/history?machine=HP-CWP2")).Samples.Count.ShouldBe(2);
    }

    [Fact]
    public async Task A_machine_that_is_not_the_stations_does_not_hold_up_the_others()
    {
        var import = await (
            await Post("imports/laboratory", Wet + "ELSEWHERE,S9,2026-06-20 08:00,900\n")
        ).Content.ReadFromJsonAsync<ImportResult>();

        import!.Machines.ShouldBe(["HP-CWP2"]);
        import.Problems.ShouldContain(
            "machine 'ELSEWHERE' is not in the station file; its records are kept and not assessed"
        );
        await Refused(
            await Post("imports/laboratory", Wet.Replace("HP-CWP2", "ELSEWHERE", StringComparison.Ordinal)),
            HttpStatusCode.BadRequest,
            "None of its machines is in the station file"
        );
    }

    [Fact]
    public async Task What_cannot_be_read_is_refused_with_its_reason()
    {
        await Refused(await Post("imports/laboratory", ""), HttpStatusCode.BadRequest, "is empty");
        await Refused(await Post("imports/laboratory", "a,b\n1,2\n"), HttpStatusCode.BadRequest, "laboratory.csv");
        await Refused(
            await Post("imports/history", """{ "machine": 3 }""", "application/json"),
            HttpStatusCode.BadRequest,
            "$.machine"
        );
        await Refused(
            await client.PostAsync(
                At("imports/laboratory"),
                new ByteArrayContent([0x4D, 0xFC, 0x0A]) { Headers = { { "Content-Type", "text/csv" } } }
            ),
            HttpStatusCode.BadRequest,
            "byte"
        );
        await Refused(await Post("imports/laboratory", Wet, "image/png"), HttpStatusCode.UnsupportedMediaType, "415");
        await Refused(
            await client.PostAsJsonAsync(At("work-requests/confirm"), new Confirmation("x@y/raised")),
            HttpStatusCode.BadRequest,
            "no such change"
        );
        await Refused(
            await client.GetAsync(At("machines/assessment?machine=X")),
            HttpStatusCode.BadRequest,
            "no such machine"
        );
        await Refused(await client.GetAsync(At("machines/assessment")), HttpStatusCode.BadRequest, "machine");
        await Refused(await client.GetAsync(At("nowhere")), HttpStatusCode.NotFound, "404");
        (await Pending()).ShouldBeEmpty();
    }

    [Fact]
    public async Task A_body_beyond_the_limit_is_refused_and_leaves_nothing()
    {
        var rows = string.Concat(Enumerable.Range(0, 1000).Select(i => $"HP-CWP2,S{i},2026-06-20 08:00,900\n"));
        await Refused(
            await Post("imports/laboratory", "Machine,Sample number,Taken at,Water [mg/kg]\n" + rows),
            HttpStatusCode.RequestEntityTooLarge,
            "413"
        );
        new Store(Path.Combine(folder.FullName, "bridge.db")).Received().ShouldBeEmpty();
    }

    [Theory]
    [InlineData("../../../etc/passwd")]
    [InlineData("/etc/passwd")]
    [InlineData("..%2F..%2Fbridge.db")]
    public async Task A_name_is_never_a_path(string name)
    {
        var before = Directory.GetFiles(folder.FullName, "*", SearchOption.AllDirectories).Order();
        (await Post("imports/laboratory?name=" + name, Wet)).EnsureSuccessStatusCode();

        Directory.GetFiles(folder.FullName, "*", SearchOption.AllDirectories).Order().ShouldBe(before);
        await Refused(
            await Post("imports/laboratory?name=a%0Ab", Wet),
            HttpStatusCode.BadRequest,
            "control characters"
        );
    }

    [Fact]
    public async Task It_listens_to_this_machine_only_and_to_no_other_name()
    {
        new Uri(Address).IsLoopback.ShouldBeTrue();
        using var request = new HttpRequestMessage(HttpMethod.Get, At("work-requests/"));
        request.Headers.Host = "elsewhere.example";

        (await client.SendAsync(request)).StatusCode.ShouldBe(HttpStatusCode.BadRequest);
    }

    [Fact]
    public async Task Its_open_api_document_has_every_route()
    {
        using var document = JsonDocument.Parse(await Text("openapi/v1.json"));

        document
            .RootElement.GetProperty("paths")
            .EnumerateObject()
            .Select(path => path.Name)
            .ShouldBe(
                [
                    "/imports/laboratory",
                    "/imports/sensors",
                    "/imports/history",
                    "/machines/assessment",
                    "/machines/history",
                    "/work-requests",
                    "/work-requests/pending",
                    "/work-requests/confirm",
                    "/work-requests/acknowledge",
                ],
                ignoreOrder: true
            );
    }
}
