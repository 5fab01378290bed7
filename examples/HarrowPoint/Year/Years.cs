using OilCondition;
using OilCondition.Treatment;

namespace HarrowPoint.Year;

/// <summary>A year of the invented station, drawn again and again: what each policy gives in hours of free water, hours of the unit and money.</summary>
public static class Years
{
    private const int FirstSeed = 5000;
    private const int Days = 365;
    private const int Month = 30;
    private const double ConnectHours = 6;
    private const double TravelHours = 4;
    private const double PricePerHour = 30;

    public static void Write(TextWriter to, Station station, int count)
    {
        var unit = (VacuumDehydration)station.Equipment.First(one => one.Id == "HP-VDU").Treatment;
        var litresPerHour = unit.Unit.Pump.FullFlow.LitersPerHour;
        Policy[] policies = [Policy.AtTheAlarm, Policy.EveryQuarter, Policy.EveryQuarterDry, Policy.Options(station)];
        var years = Enumerable
            .Range(FirstSeed, count)
            .AsParallel()
            .AsOrdered()
            .Select(seed => policies.Select(policy => Of(station, policy, seed, litresPerHour)).ToArray())
            .ToList();
        to.WriteLine(
            $"{count} years of the invented station, seeds {FirstSeed} to {FirstSeed + count - 1}; mean of a year with 90 % interval of the mean"
        );
        to.WriteLine($"{"", -24}{"free, running, h", -22}{"free, standing, h", -22}{"unit, h", -18}{"runs", -16}cost");
        for (var i = 0; i < policies.Length; i++)
        {
            string Cell(Func<Outcome, double> of) => Mean([.. years.Select(year => of(year[i]))]);
            to.WriteLine(
                $"{policies[i].Name, -24}{Cell(one => one.RunningWet), -22}{Cell(one => one.StandingWet), -22}{Cell(one => one.UnitHours), -18}{Cell(one => one.Runs), -16}{Cell(one => one.Cost)}"
            );
        }

        for (var i = 0; i + 1 < policies.Length; i++)
        {
            string Cell(Func<Outcome, double> of) => Mean([.. years.Select(year => of(year[^1]) - of(year[i]))]);
            to.WriteLine(
                $"options less '{policies[i].Name}', same years: free, running {Cell(one => one.RunningWet)} h; standing {Cell(one => one.StandingWet)} h; unit {Cell(one => one.UnitHours)} h; cost {Cell(one => one.Cost)}"
            );
        }
    }

    /// <summary>A year of history without a treatment, then a year with the policy; one unit, in the order of urgency.</summary>
    private static Outcome Of(Station station, Policy policy, int seed, double litresPerHour)
    {
        var start = station.AsOf!.Value;
        DrawnMachine[] machines =
        [
            .. station
                .Machines.Where(one => one.Machine.Oil.SaturationCurve is not null)
                .Select((one, i) => new DrawnMachine(one, start, 1000 * seed + i)),
        ];
        var (unitHours, runs, freeAt) = (0.0, 0, 0.0);
        var queue = new List<(DrawnMachine Machine, double Target, double Urgency)>();
        for (var day = -Days; day < Days; day++)
        {
            foreach (var machine in machines)
            {
                machine.Pass(day, counts: day >= 0);
            }

            if (day % Month == 0)
            {
                var read = machines.ToDictionary(machine => machine, machine => machine.Sample(day));
                queue =
                    day < 0
                        ? []
                        :
                        [
                            .. machines
                                .Select(machine => (Machine: machine, Asked: policy.Ask(machine, day, read[machine])))
                                .Where(one => one.Asked is not null)
                                .Select(one => (one.Machine, one.Asked!.Value.TargetPpm, one.Asked.Value.Urgency))
                                .OrderBy(one => one.Urgency),
                        ];
            }

            while (queue.Count > 0 && freeAt <= day)
            {
                var (machine, target, _) = queue[0];
                queue.RemoveAt(0);
                var bound = machine.Treat(day, target, litresPerHour) + ConnectHours + TravelHours;
                unitHours += bound;
                runs++;
                freeAt = Math.Max(freeAt, day) + bound / 24;
            }
        }

        return new Outcome(
            machines.Sum(one => one.HoursRunningWet),
            machines.Sum(one => one.HoursStandingWet),
            unitHours,
            runs,
            PricePerHour * unitHours
        );
    }

    private static string Mean(double[] values)
    {
        const double Z = 1.645;
        var mean = values.Average();
        var error =
            values.Length < 2
                ? 0
                : Math.Sqrt(values.Sum(one => (one - mean) * (one - mean)) / (values.Length - 1) / values.Length);
        return $"{mean:0} ({mean - Z * error:0} to {mean + Z * error:0})";
    }

    private sealed record Outcome(double RunningWet, double StandingWet, double UnitHours, int Runs, double Cost);
}
