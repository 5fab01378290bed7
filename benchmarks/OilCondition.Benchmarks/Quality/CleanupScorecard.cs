using System.Diagnostics;

namespace OilCondition.Benchmarks.Quality;

/// <summary>How a running cleanup is read where the truth is known. Fixed seeds, held-out processes, public calls only.</summary>
public static class CleanupScorecard
{
    public static void Run(int runs)
    {
        Console.WriteLine("| what happens in the cleanup | measured | must be | runs |");
        Console.WriteLine("|---|---|---|---|");
        var clock = Stopwatch.StartNew();
        foreach (var row in Rows(runs))
        {
            Console.WriteLine($"| {row.Plant} | {row.Measured} | {row.MustBe} | {row.Runs} |");
        }

        Console.Error.WriteLine($"{clock.Elapsed.TotalSeconds:F0} s");
    }

    private static IEnumerable<ScoreRow> Rows(int runs) => CurveRows.Of(runs);
}
