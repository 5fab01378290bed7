using System.Net.Sockets;
using MaintenanceBridge;

namespace OilCondition.Tests.Examples.Bridge;

/// <summary>The bridge killed in the middle of imports and confirmations: what it holds in the end is as if it had never been.</summary>
public sealed class BridgeKillTests : IDisposable
{
    private const int Seed = 2026;

    /// <summary>A start takes a second, so that the whole hundred is for the build server; what it is has no other part in the test.</summary>
    private static readonly int Kills = Environment.GetEnvironmentVariable("CI") == "true" ? 100 : 15;

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("bridge-kill-");

    public void Dispose() => folder.Delete(recursive: true);

    /// <summary>The maintenance system: it keeps the ids of the changes that reached it, and opens a request for each raise.</summary>
    private sealed class Maintenance
    {
        private readonly Dictionary<string, string> delivered = [];

        public List<string> Opened { get; } = [];

        public string Deliver(string id, string kind)
        {
            if (!delivered.TryGetValue(id, out var number))
            {
                if (kind is nameof(JournalChangeKind.Raised) or nameof(JournalChangeKind.RaisedAgain))
                {
                    Opened.Add(id);
                }

                delivered.Add(id, number = $"WR-{delivered.Count + 1}");
            }

            return number;
        }
    }

    [Fact]
    public async Task Killed_again_and_again_it_loses_no_sample_and_doubles_no_alert()
    {
        var undisturbed = new Maintenance();
        var expected = Undisturbed(undisturbed);
        var path = Path.Combine(folder.FullName, "killed.db");
        var random = new Random(Seed);
        var maintenance = new Maintenance();
        var (next, inside) = (0, 0);
        for (var kill = 0; kill < Kills; kill++)
        {
            using var bridge = await BridgeProcess.Start(path);
            var work = Work(bridge, maintenance, () => next, done => next = done);
            // From at once to the time of some imports: most kills fall into one.
            await Task.Delay(random.Next(0, 120));
            bridge.Kill();
            var error = await Record.ExceptionAsync(() => work);
            // The connection broke; one that breaks while it is made comes as the socket's own error. A refusal would have a status.
            (error is IOException or SocketException or HttpRequestException { StatusCode: null }).ShouldBeTrue(
                $"kill {kill}, seed {Seed}: {error}"
            );
            inside += error is HttpIOException || error?.InnerException is IOException ? 1 : 0;
        }

        using (var last = await BridgeProcess.Start(path))
        {
            for (; next < BridgeFiles.All.Count; next++)
            {
                await last.Import(BridgeFiles.All[next]);
                await Deliver(last, maintenance);
            }
        }

        // Most of them fell into a request, not between two.
        inside.ShouldBeGreaterThan(Kills / 2);
        var store = new Store(path);
        store.Received().Select(one => one.Id).ShouldBe(BridgeFiles.All.Select(one => one.Id));
        store.Journal().Journal.ToJson().ShouldBe(expected.ToJson());
        store.Journal().Journal.Pending.ShouldBeEmpty();
        maintenance.Opened.ShouldBe(undisturbed.Opened);
        maintenance.Opened.ShouldBeUnique();
        maintenance.Opened.Count.ShouldBeGreaterThan(5);
    }

    /// <summary>Sends on from where it was; once all is in, sends the last part again and again, which changes nothing.</summary>
    private static async Task Work(BridgeProcess bridge, Maintenance maintenance, Func<int> next, Action<int> done)
    {
        while (true)
        {
            var at = Math.Min(next(), BridgeFiles.All.Count - 1);
            await bridge.Import(BridgeFiles.All[at]);
            // Whoever sends goes on only when what follows is delivered: so the order is that of the undisturbed run.
            await Deliver(bridge, maintenance);
            done(at + 1);
        }
    }

    private static async Task Deliver(BridgeProcess bridge, Maintenance maintenance)
    {
        foreach (var change in await bridge.Pending())
        {
            await bridge.Confirm(change.Id, maintenance.Deliver(change.Id, change.Kind));
        }
    }

    private AlertJournal Undisturbed(Maintenance maintenance)
    {
        var bridge = new MaintenanceBridge.Bridge(
            BridgeStation.Read(Path.Combine(AppContext.BaseDirectory, "Station")),
            new Store(Path.Combine(folder.FullName, "undisturbed.db")),
            TimeProvider.System
        );
        foreach (var received in BridgeFiles.All)
        {
            bridge.Import(received);
            foreach (var change in bridge.Journal.Pending)
            {
                bridge.Confirm(change.Id, maintenance.Deliver(change.Id, change.Kind.ToString()));
            }
        }

        return bridge.Journal;
    }
}
