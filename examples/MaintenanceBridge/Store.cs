using System.Globalization;
using Microsoft.Data.Sqlite;
using OilCondition;

namespace MaintenanceBridge;

/// <summary>The SQLite file: what was received, as it came, and the journal. A change is all of it or nothing, whenever the process is killed.</summary>
public sealed class Store
{
    private readonly string connection;

    public Store(string path)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        connection = new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString();
        using var open = Open();
        Run(
            open,
            null,
            """
            CREATE TABLE IF NOT EXISTS received (
              number INTEGER PRIMARY KEY AUTOINCREMENT, id TEXT NOT NULL UNIQUE, kind TEXT NOT NULL, name TEXT NOT NULL,
              machine TEXT NOT NULL, content TEXT NOT NULL);
            CREATE TABLE IF NOT EXISTS journal (one INTEGER PRIMARY KEY CHECK (one = 1), runs INTEGER NOT NULL, json TEXT NOT NULL);
            """
        );
    }

    /// <summary>All that was received, in order.</summary>
    public IReadOnlyList<Received> Received()
    {
        using var open = Open();
        using var command = open.CreateCommand();
        command.CommandText = "SELECT id, kind, name, machine, content FROM received ORDER BY number";
        using var reader = command.ExecuteReader();
        var received = new List<Received>();
        while (reader.Read())
        {
            received.Add(
                new Received(
                    reader.GetString(0),
                    Enum.Parse<ReceivedKind>(reader.GetString(1)),
                    reader.GetString(2),
                    reader.GetString(3),
                    reader.GetString(4)
                )
            );
        }

        return received;
    }

    /// <summary>The journal, and how many runs have written it.</summary>
    public (AlertJournal Journal, int Runs) Journal()
    {
        using var open = Open();
        using var command = open.CreateCommand();
        command.CommandText = "SELECT json, runs FROM journal";
        using var reader = command.ExecuteReader();
        return reader.Read() ? (AlertJournal.Parse(reader.GetString(0)), reader.GetInt32(1)) : (AlertJournal.Empty, 0);
    }

    /// <summary>Keeps what was received, if anything, and the journal that follows from it, in one transaction.</summary>
    public void Keep(Received? received, AlertJournal journal, int runs)
    {
        using var open = Open();
        using var transaction = open.BeginTransaction();
        if (received is not null)
        {
            Run(
                open,
                transaction,
                "INSERT INTO received (id, kind, name, machine, content) VALUES ($id, $kind, $name, $machine, $content)",
                ("$id", received.Id),
                ("$kind", received.Kind.ToString()),
                ("$name", received.Name),
                ("$machine", received.MachineId),
                ("$content", received.Content)
            );
        }

        Run(
            open,
            transaction,
            "INSERT INTO journal (one, runs, json) VALUES (1, $runs, $json) ON CONFLICT (one) DO UPDATE SET runs = $runs, json = $json",
            ("$runs", runs.ToString(CultureInfo.InvariantCulture)),
            ("$json", journal.ToJson())
        );
        transaction.Commit();
    }

    private SqliteConnection Open()
    {
        var open = new SqliteConnection(connection);
        open.Open();
        // Written through to the disk before a request is answered.
        Run(open, null, "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;");
        return open;
    }

    private static void Run(
        SqliteConnection open,
        SqliteTransaction? transaction,
        string sql,
        params (string Name, string Value)[] values
    )
    {
        using var command = open.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = sql;
        foreach (var (name, value) in values)
        {
            command.Parameters.AddWithValue(name, value);
        }

        command.ExecuteNonQuery();
    }
}
