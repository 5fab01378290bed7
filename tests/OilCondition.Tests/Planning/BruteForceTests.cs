using System.Collections.Concurrent;
using System.Globalization;
using OilCondition.Planning;
using static OilCondition.Tests.Planning.Plant;

namespace OilCondition.Tests.Planning;

/// <summary>The plan beside the best of all orders, each followed hour by hour with the plain words of the rules and none of the package's arithmetic.</summary>
public class BruteForceTests
{
    private const int Machines = 7;

    private const int Cases = 40;

    private const int Horizon = 2000;

    private static readonly ConcurrentDictionary<int, (double Lateness, double Free)?> BestOf = new();

    public static TheoryData<int> Seeds() => [.. Enumerable.Range(1, Cases)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_plan_is_the_best_of_all_orders(int seed)
    {
        var (tasks, unit) = Draw(seed);
        var best = Best(seed);
        var outcome = UnitSchedule.Plan(tasks, unit, new SchedulingOptions(Start, TimeSpan.FromHours(1), effort: 0.1));
        var note = $"seed {seed}";

        if (best is not { } least)
        {
            outcome.ShouldBeOfType<ScheduleOutcome.DoesNotFit>(note).IsProven.ShouldBeTrue(note);
            return;
        }

        var planned = outcome.ShouldBeOfType<ScheduleOutcome.Planned>(note);
        planned.Schedule.WeightedLatenessHours.ShouldBe(least.Lateness, 1e-6, note);
        planned.Schedule.UnitHours.TotalHours.ShouldBe(least.Free, note);
        planned.IsOptimal.ShouldBeTrue(note);
        planned.MostUnitHoursFromBest.ShouldBe(TimeSpan.Zero, note);
        new Orders(tasks, unit).Follow(planned.Schedule.Visits.Select(visit => visit.Task.Id)).ShouldBe(least, note);
    }

    /// <summary>The cases are of both kinds, and lateness and waiting occur.</summary>
    [Fact]
    public void The_drawn_cases_are_not_all_alike()
    {
        var best = Enumerable.Range(1, Cases).Select(Best).ToList();

        best.Count(one => one is null).ShouldBeInRange(1, 20);
        best.Count(one => one is { Lateness: > 0 }).ShouldBeGreaterThan(20);
    }

    private static (double Lateness, double Free)? Best(int seed) =>
        BestOf.GetOrAdd(seed, _ => new Orders(Draw(seed).Tasks, Draw(seed).Unit).Best());

    private static (UnitTask[] Tasks, MobileUnit Unit) Draw(int seed)
    {
        var random = new Random(seed);
        string[] places = ["hall", "dam", "gate"];
        var legs = new List<(string, string, double)>();
        foreach (var from in places)
        {
            foreach (var to in places.Where(to => to != from))
            {
                legs.Add((from, to, random.Next(0, 8)));
            }
        }

        var tasks = Enumerable
            .Range(0, Machines)
            .Select(i => (Id: i, Process: random.Next(2, 40)))
            .Select(one =>
                Task(
                    string.Create(CultureInfo.InvariantCulture, $"M{one.Id}"),
                    one.Process,
                    random.Next(10, 200),
                    random.Next(0, 6),
                    places[random.Next(3)],
                    random.Next(3) == 0 ? random.Next(0, 100) : 0,
                    random.Next(0, 3),
                    random.Next(0, 4),
                    random.Next(0, 2),
                    random.Next(3) == 0 ? random.Next(150, 420) : null,
                    isAttended: one.Process < 6,
                    random.Next(3) == 0
                        ? [Hours(random.Next(0, 60), random.Next(100, 160)), Hours(random.Next(200, 240), 1400)]
                        : []
                )
            )
            .ToArray();
        var unit = Unit(
            random.Next(2) == 0 ? WorkWindow.Daily(At(0), At(random.Next(8, 16)), 60) : null,
            random.Next(2) == 0 ? [Hours(random.Next(40, 90), random.Next(90, 130))] : null,
            Travel([.. legs]),
            hiredUntil: random.Next(4) == 0 ? random.Next(300, 500) : null
        );
        return (tasks, unit);
    }

    /// <summary>All orders of a few tasks, followed hour by hour.</summary>
    private sealed class Orders(UnitTask[] tasks, MobileUnit unit)
    {
        private (double Lateness, double Free)? best;

        public (double Lateness, double Free)? Best()
        {
            Try(new bool[tasks.Length], 0, unit.Place, 0, 0);
            return best;
        }

        public (double Lateness, double Free)? Follow(IEnumerable<string> order)
        {
            var (lateness, free, place) = (0.0, 0, unit.Place);
            foreach (var task in order.Select(id => tasks.Single(one => one.Id == id)))
            {
                if (Visit(task, place, free) is not { } visit)
                {
                    return null;
                }

                lateness += visit.Lateness;
                (free, place) = (visit.Free, task.Place);
            }

            return (lateness, free);
        }

        private void Try(bool[] done, int count, string place, int free, double lateness)
        {
            if (best is { } known && lateness > known.Lateness)
            {
                return;
            }

            if (count == tasks.Length)
            {
                if (best is not { } least || (lateness, (double)free).CompareTo(least) < 0)
                {
                    best = (lateness, free);
                }

                return;
            }

            for (var i = 0; i < tasks.Length; i++)
            {
                if (!done[i] && Visit(tasks[i], place, free) is { } visit)
                {
                    done[i] = true;
                    Try(done, count + 1, tasks[i].Place, visit.Free, lateness + visit.Lateness);
                    done[i] = false;
                }
            }
        }

        private (int Free, double Lateness)? Visit(UnitTask task, string place, int free)
        {
            var way = (int)unit.Travel.Between(place, task.Place).TotalHours;
            var leave = free;
            while (way > 0 && !IsAvailable(leave, leave + way))
            {
                if (++leave > Horizon)
                {
                    return null;
                }
            }

            for (var connect = leave + way; connect < Horizon; connect++)
            {
                var process = connect + (int)(task.Connect + task.HeatUp).TotalHours;
                var done = process + (int)task.Process.TotalHours;
                var hands = task.IsAttended ? done : connect + (int)task.Connect.TotalHours;
                if (At(connect) < task.EarliestStart || !HasCrew(connect, hands))
                {
                    continue;
                }

                var off = done;
                while (off < Horizon && !HasCrew(off, off + (int)task.Disconnect.TotalHours))
                {
                    off++;
                }

                var end = off + (int)task.Disconnect.TotalHours;
                var isOpen =
                    task.Windows.Count == 0
                    || task.Windows.Any(window => window.From <= At(connect) && At(end) <= window.To);
                if (off < Horizon && isOpen && IsAvailable(connect, end))
                {
                    return At(end) > task.LatestEnd
                        ? null
                        : (end, task.Weight * Math.Max(0, (At(done) - task.Due).TotalHours));
                }
            }

            return null;
        }

        private bool HasCrew(int from, int to) =>
            from == to
            || unit.CrewHours.Count == 0
            || unit.CrewHours.Any(shift => shift.From <= At(from) && At(to) <= shift.To);

        private bool IsAvailable(int from, int to) =>
            !unit.Unavailable.Any(window => window.From < At(to) && At(from) < window.To)
            && (unit.HiredUntil is null || At(to) <= unit.HiredUntil);
    }
}
