using System.Diagnostics;
using System.Net.Http.Json;
using System.Text;
using MaintenanceBridge;

namespace OilCondition.Tests.Examples.Bridge;

/// <summary>The bridge as a process of its own, which can be killed at any moment.</summary>
internal sealed class BridgeProcess : IDisposable
{
    private const string Listening = "Now listening on: ";

    private readonly Process process;
    private readonly HttpClient client;

    private BridgeProcess(Process process, Uri address)
    {
        this.process = process;
        client = new HttpClient { BaseAddress = address };
    }

    public static async Task<BridgeProcess> Start(string store)
    {
        var started = new Process
        {
            StartInfo = new ProcessStartInfo("dotnet")
            {
                ArgumentList =
                {
                    Path.Combine(AppContext.BaseDirectory, "MaintenanceBridge.dll"),
                    "--store",
                    store,
                    "--port",
                    "0",
                },
                RedirectStandardOutput = true,
                UseShellExecute = false,
            },
        };
        started.Start();
        while (await started.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.IndexOf(Listening, StringComparison.Ordinal) is var at and >= 0)
            {
                // Read on, so that a full pipe never stops the process.
                _ = started.StandardOutput.ReadToEndAsync();
                return new BridgeProcess(started, new Uri(line[(at + Listening.Length)..].Trim()));
            }
        }

        throw new InvalidOperationException("The bridge ended before it listened.");
    }

    public async Task Import(Received received)
    {
        var path = received.Kind == ReceivedKind.LaboratoryFile ? "laboratory" : "sensors";
        using var content = new StringContent(received.Content, Encoding.UTF8, "text/csv");
        using var answer = await client.PostAsync(
            new Uri($"imports/{path}?name={received.Name}&machine={received.MachineId}", UriKind.Relative),
            content
        );
        answer.EnsureSuccessStatusCode();
    }

    public async Task<PendingChange[]> Pending() =>
        await client.GetFromJsonAsync<PendingChange[]>(new Uri("work-requests/pending", UriKind.Relative)) ?? [];

    public async Task Confirm(string changeId, string workOrder)
    {
        using var answer = await client.PostAsJsonAsync(
            new Uri("work-requests/confirm", UriKind.Relative),
            new Confirmation(changeId, workOrder)
        );
        answer.EnsureSuccessStatusCode();
    }

    /// <summary>SIGKILL: no handler runs, nothing is flushed.</summary>
    public void Kill()
    {
        process.Kill();
        process.WaitForExit();
    }

    public void Dispose()
    {
        client.Dispose();
        if (!process.HasExited)
        {
            Kill();
        }

        process.Dispose();
    }
}
