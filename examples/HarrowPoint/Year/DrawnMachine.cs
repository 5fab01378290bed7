using OilCondition;

namespace HarrowPoint.Year;

/// <summary>A machine of the station with a truth that is drawn: what comes in, what its oil really holds, how well a unit really dries it.</summary>
/// <remarks>
/// Water rises evenly by what comes in. A leak multiplies that from a drawn day on, until somebody who treats the oil also finds it, in half of the cases. The
/// machine stands for eight hours a day. Nothing of this is known to whoever decides: they see monthly titrations with 8 % scatter.
/// </remarks>
public sealed class DrawnMachine
{
    public const double StandingShare = 8 / 24.0;

    private const double Scatter = 0.08;
    private const double FindsTheLeak = 0.5;

    private readonly Random random;
    private readonly double runningPpm;
    private readonly double standingPpm;
    private readonly double leakDay;
    private readonly double leakPerDay;
    private readonly List<OilSample> samples = [];
    private readonly List<OilEvent> events = [];
    private double waterPpm;
    private bool isFound;

    public DrawnMachine(StationMachine machine, DateTimeOffset start, int seed)
    {
        Machine = machine;
        Start = start;
        random = new Random(seed);
        var oil = machine.Machine.Oil.SaturationCurve!;
        var aged = Math.Exp(0.1 * Normal());
        runningPpm = aged * oil.SaturationAt(machine.Machine.RunningTemperature).Content.PartsPerMillion;
        standingPpm = aged * oil.SaturationAt(machine.Machine.StandstillTemperature).Content.PartsPerMillion;
        PerDay = 0.25 * Math.Exp(Normal());
        var leaks = random.NextDouble() < 0.5;
        leakDay = leaks ? random.Next(0, 365) : double.PositiveInfinity;
        leakPerDay = 3 * Math.Exp(0.6 * Normal());
        RemovalPerPass = 0.11 * Math.Exp(0.2 * Normal());
        waterPpm = 0.4 * standingPpm;
    }

    public StationMachine Machine { get; }

    public DateTimeOffset Start { get; }

    /// <summary>Rise without a leak, mg/kg a day.</summary>
    public double PerDay { get; }

    /// <summary>What the unit really removes of the excess per pass.</summary>
    public double RemovalPerPass { get; }

    public double HoursRunningWet { get; private set; }

    public double HoursStandingWet { get; private set; }

    public OilHistory History() => OilHistory.Create(Machine.Machine, samples, [], events);

    /// <summary>One day, day 0 being the start of the year.</summary>
    public void Pass(int day, bool counts)
    {
        waterPpm += PerDay + (day >= leakDay && !isFound ? leakPerDay : 0);
        if (counts)
        {
            HoursRunningWet += waterPpm > runningPpm ? 24 * (1 - StandingShare) : 0;
            HoursStandingWet += waterPpm > standingPpm ? 24 * StandingShare : 0;
        }
    }

    public double Sample(int day)
    {
        var read = waterPpm * Math.Exp(Scatter * Normal());
        samples.Add(
            new OilSample(
                $"Y{day + 1000}",
                Start.AddDays(day),
                new Dictionary<Measurand, Reading> { [Measurands.WaterContent] = new(Math.Round(read, 1)) }
            )
        );
        return read;
    }

    /// <summary>Dries the oil to a target, as far as the unit gets in 72 h; gives the hours that it takes.</summary>
    public double Treat(int day, double targetPpm, double litresPerHour)
    {
        const double Floor = 20;
        const double MostHours = 72;
        var perHour = RemovalPerPass * litresPerHour / Machine.Machine.ChargeVolume.Liters;
        var wanted = Math.Max(Floor + 1, targetPpm);
        var hours =
            waterPpm <= wanted ? 0 : Math.Min(MostHours, Math.Log((waterPpm - Floor) / (wanted - Floor)) / perHour);
        var before = Math.Max(waterPpm, wanted);
        waterPpm = Floor + (before - Floor) * Math.Exp(-perHour * hours);
        isFound |= day >= leakDay && random.NextDouble() < FindsTheLeak;
        events.Add(
            new TreatmentRun(
                Start.AddDays(day),
                Start.AddDays(day).AddHours(Math.Max(1, hours)),
                TreatmentKind.VacuumDehydration,
                Measurands.WaterContent,
                Math.Round(wanted)
            )
        );
        return hours;
    }

    private double Normal()
    {
        var (one, two) = (1 - random.NextDouble(), random.NextDouble());
        return Math.Sqrt(-2 * Math.Log(one)) * Math.Cos(2 * Math.PI * two);
    }
}
