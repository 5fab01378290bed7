using OilCondition;

namespace HarrowPoint;

/// <summary>Whether to trust the library here: the station's own past, replayed month by month.</summary>
public static class Trust
{
    public static Backtest Replay(StationRecords station)
    {
        var histories = station.Machines.Select(one => one.History).ToList();
        var limits = station.Machines.ToDictionary(one => one.History.Machine.Id, one => one.Limits);
        var from = new DateTimeOffset(2023, 1, 1, 0, 0, 0, TimeSpan.Zero);

        return Backtest.Of(histories, machine => limits[machine.Id], new BacktestOptions(from, station.AsOf));
    }

    public static void Write(TextWriter to, StationRecords station)
    {
        var backtest = Replay(station);
        to.WriteLine();
        to.WriteLine("== What the library would have said so far, each month with what was known then");
        to.WriteLine(backtest);
        to.WriteLine("   Limits crossed:");
        foreach (var crossing in backtest.Crossings)
        {
            to.WriteLine($"   {crossing}");
        }

        to.WriteLine("   Alerts:");
        foreach (var alert in backtest.Alerts)
        {
            to.WriteLine($"   {alert}");
        }
    }
}
