using System.Diagnostics;

namespace OilCondition.Benchmarks.Quality;

/// <summary>How verdicts, alerts and forecasts hold up on processes that the library was not tuned to. Fixed seeds, public calls only.</summary>
public static class Scorecard
{
    public static void Run(int runs)
    {
        Console.WriteLine("| what happens in the plant | measured | must be | runs |");
        Console.WriteLine("|---|---|---|---|");
        var clock = Stopwatch.StartNew();
        var rows = JumpRows
            .Of(runs)
            .Concat(TrendRows.Of(runs))
            .Concat(ForecastRows.Of(runs))
            .Concat(PublishedRows.Of())
            .Concat(SeasonRows.Of(runs))
            .Concat(StarterRows.Of(runs));
        foreach (var row in rows)
        {
            Console.WriteLine($"| {row.Plant} | {row.Measured} | {row.MustBe} | {row.Runs} |");
        }

        // The table is the same in every run; the time is not, and stays out of it.
        Console.Error.WriteLine($"{clock.Elapsed.TotalSeconds:F0} s");
    }
}
