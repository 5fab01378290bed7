using System.Diagnostics;
using System.Globalization;
using OilCondition.Planning;

namespace OilCondition.Benchmarks;

/// <summary>Invented plants of so many machines: how far the plan of the one mobile unit is proven, what it saves against two rules, and how long it takes.</summary>
internal static class ScheduleRuns
{
    private static readonly DateTimeOffset Start = new(2026, 3, 2, 6, 0, 0, TimeSpan.Zero);

    public static void Run(int machines, int runs)
    {
        Console.WriteLine($"{machines} machines, {runs} invented plants of each kind, effort 10, grid 15 min");
        Console.WriteLine(
            "plant                           optimal  gap, median and worst  median s  worst s  saved vs urgency  vs due date"
        );
        Report("few dates, free access", machines, runs, tight: 1.6, hasWindows: false, hasCrew: false);
        Report("tight dates, free access", machines, runs, tight: 0.9, hasWindows: false, hasCrew: false);
        Report("tight dates, outages", machines, runs, tight: 0.9, hasWindows: true, hasCrew: false);
        Report("tight dates, outages, day crew", machines, runs, tight: 0.9, hasWindows: true, hasCrew: true);
    }

    private static void Report(string name, int machines, int runs, double tight, bool hasWindows, bool hasCrew)
    {
        var plans = Enumerable
            .Range(1, runs)
            .Select(seed => Timed(() => Plan(seed, machines, tight, hasWindows, hasCrew)))
            .ToList();
        var gaps = plans.Select(plan => Share(plan.Plan.MostWeightedHoursFromBest, plan.Plan)).Order().ToList();
        var seconds = plans.Select(plan => plan.Seconds).Order().ToList();
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{name, -32}{plans.Count(plan => plan.Plan.IsOptimal)} of {runs, -5}{gaps[runs / 2], 10:P1} {gaps[^1], 10:P1} {seconds[runs / 2], 10:0.0} {seconds[^1], 8:0.0}  {Saved(plans.Select(one => one.Plan), plan => plan.GainOverUrgency), 12:P0}  {Saved(plans.Select(one => one.Plan), plan => plan.GainOverDueDate), 12:P0}"
            )
        );
    }

    private static double Share(double part, ScheduleOutcome.Planned plan) =>
        part == 0 ? 0 : part / plan.Schedule.WeightedLatenessHours;

    /// <summary>Of the weighted lateness of a rule, over all plants in which its plan fits.</summary>
    private static double Saved(IEnumerable<ScheduleOutcome.Planned> plans, Func<ScheduleOutcome.Planned, double?> gain)
    {
        var fitting = plans.Where(plan => gain(plan) is not null).ToList();
        var saved = fitting.Sum(plan => gain(plan)!.Value);
        return saved == 0 ? 0 : saved / (saved + fitting.Sum(plan => plan.Schedule.WeightedLatenessHours));
    }

    /// <summary>Processor time: other work on the same machine does not count.</summary>
    private static (ScheduleOutcome.Planned Plan, double Seconds) Timed(Func<ScheduleOutcome.Planned> plan)
    {
        using var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        var made = plan();
        process.Refresh();
        return (made, (process.TotalProcessorTime - before).TotalSeconds);
    }

    private static ScheduleOutcome.Planned Plan(int seed, int machines, double tight, bool hasWindows, bool hasCrew)
    {
        var random = new Random(seed);
        string[] places = ["hall", "dam", "gate", "intake", "switchyard", "workshop"];
        var legs = new List<(string, string, TimeSpan)>();
        for (var i = 0; i < places.Length; i++)
        {
            for (var k = i + 1; k < places.Length; k++)
            {
                legs.Add((places[i], places[k], TimeSpan.FromHours(1 + random.Next(0, 6) / 2.0)));
            }
        }

        var hours = Enumerable.Range(0, machines).Select(_ => random.Next(8, 49)).ToArray();
        var total = hours.Sum() + 6 * machines;
        var tasks = new List<UnitTask>();
        for (var i = 0; i < machines; i++)
        {
            var opens = random.Next(0, total / 2);
            WorkWindow[] windows =
                hasWindows && random.Next(3) == 0
                    ?
                    [
                        new WorkWindow(Start.AddHours(opens), Start.AddHours(opens + random.Next(120, 240))),
                        new WorkWindow(Start.AddHours(total), Start.AddHours(3 * total)),
                    ]
                    : [];
            tasks.Add(
                new UnitTask(
                    string.Create(CultureInfo.InvariantCulture, $"M{i:00}"),
                    places[random.Next(places.Length)],
                    Start,
                    Start.AddHours(total * (0.1 + tight * random.NextDouble())),
                    TimeSpan.FromHours(hours[i]),
                    random.Next(1, 11),
                    connect: TimeSpan.FromHours(1 + random.Next(0, 3) / 2.0),
                    heatUp: TimeSpan.FromHours(random.Next(0, 9) / 2.0),
                    disconnect: TimeSpan.FromHours(1),
                    windows: windows
                )
            );
        }

        var unit = new MobileUnit(
            "unit",
            "workshop",
            new TravelTimes(legs),
            hasCrew ? WorkWindow.Daily(Start, Start.AddHours(12), 300) : null
        );
        return (ScheduleOutcome.Planned)UnitSchedule.Plan(tasks, unit, new SchedulingOptions(Start));
    }
}
