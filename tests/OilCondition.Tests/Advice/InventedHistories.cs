using OilCondition.Limits;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Advice;

/// <summary>Random records of one machine, the same for the same seed: several measurands, charges, top-ups, a treatment, sensors, faults.</summary>
internal sealed class InventedHistories
{
    private static readonly Source AnySource = Source.CommonPractice("invented");

    private readonly Random random;

    public InventedHistories(int seed)
    {
        random = new Random(seed);
        Samples = MakeSamples();
        Sensors = MakeSensors();
        Events = MakeEvents();
    }

    public static LimitSet Limits { get; } =
        new(
            "invented",
            [
                Upper(Measurands.WaterContent, LimitKind.Absolute, 200, 500, deadBand: 20),
                Upper(Measurands.AcidNumber, LimitKind.ChangeFromNew, 0.2, 0.3),
                Upper(Measurands.Iron, LimitKind.Absolute, 20, 40, confirmations: 2),
                new Limit(
                    Measurands.Iron,
                    LimitKind.RateOfChange,
                    new LimitBand(10, null),
                    null,
                    AnySource,
                    per: TimeSpan.FromDays(30)
                ),
                Upper(Measurands.Iron, LimitKind.OwnHistory, 95, 99),
                Upper(Measurands.Particles4, LimitKind.Absolute, 2500, 10_000),
                Upper(Measurands.Particles6, LimitKind.Absolute, 640, 2500),
                new Limit(
                    Measurands.Viscosity40,
                    LimitKind.PercentChangeFromNew,
                    new LimitBand(5, 10),
                    new LimitBand(-5, -10),
                    AnySource
                ),
            ]
        );

    public IReadOnlyList<OilSample> Samples { get; }

    public IReadOnlyList<SensorReading> Sensors { get; }

    public IReadOnlyList<OilEvent> Events { get; }

    /// <summary>The last day of which there is a sample.</summary>
    public DateTimeOffset End => Samples.Max(sample => sample.TakenAt);

    public OilHistory History() => OilHistory.Create(Invented.Machine, Samples, Sensors, Events);

    private static Limit Upper(
        Measurand measurand,
        LimitKind kind,
        double alert,
        double alarm,
        double deadBand = 0,
        int confirmations = 1
    ) => new(measurand, kind, new LimitBand(alert, alarm), null, AnySource, deadBand, confirmations);

    private List<OilSample> MakeSamples()
    {
        var samples = new List<OilSample>();
        var count = random.Next(3, 20);
        var (water, iron, acid) = (random.Next(20, 300), random.Next(0, 25), random.Next(0, 20));
        var (moreWater, moreIron, moreAcid) = (random.Next(-5, 30), random.Next(-1, 4), random.Next(-1, 4));
        var swapped = random.Next(0, 3) == 0 ? random.Next(0, count) : -1;
        var day = 0.0;
        for (var i = 0; i < count; i++)
        {
            day += random.Next(0, 8) == 0 ? 0 : random.Next(1, 60);
            double Steps(int from, int more, int scatter) =>
                Math.Max(0, from + more * i + random.Next(-scatter, scatter + 1));
            var four = random.Next(500, 6000);
            var readings = new List<(Measurand, Reading)>
            {
                (Measurands.AcidNumber, new Reading(0.1 + Steps(acid, moreAcid, 2) / 100)),
                (Measurands.Particles4, new Reading(four)),
                (Measurands.Particles6, new Reading(four / 3)),
                (Measurands.Particles14, new Reading(four / 30)),
                (Measurands.Viscosity40, new Reading(i == swapped ? 321 : 46 + random.Next(-10, 11) / 10.0)),
                (Measurands.Zinc, new Reading(i == swapped ? 12 : 400 + random.Next(-9, 10))),
                (Measurands.Iron, Bounded(Steps(iron, moreIron, 3), 5)),
            };
            if (random.Next(0, 4) > 0)
            {
                readings.Add((Measurands.WaterContent, Bounded(Steps(water, moreWater, 30), 30)));
            }

            samples.Add(Invented.Sample(i, day, [.. readings]));
            if (random.Next(0, 12) == 0)
            {
                // A second report of the same bottle, with another figure and one more.
                samples.Add(
                    Invented.Sample(
                        i,
                        day,
                        (Measurands.Iron, new Reading(random.Next(0, 60))),
                        (Measurands.Tin, new Reading(1))
                    )
                );
            }
        }

        return samples;
    }

    private static Reading Bounded(double value, double limit) =>
        value < limit ? new Reading(limit, Qualifier.LessThan) : new Reading(value);

    private List<SensorReading> MakeSensors() =>
        [
            .. Enumerable
                .Range(0, random.Next(0, 20))
                .Select(_ => new SensorReading(
                    Invented.Start.AddDays(random.Next(0, 60) * 10),
                    new Dictionary<Measurand, Reading>
                    {
                        [Measurands.RelativeSaturation] = new(random.Next(5, 101)),
                        [Measurands.OilTemperature] = new(random.Next(20, 65)),
                    }
                )),
        ];

    private List<OilEvent> MakeEvents()
    {
        DateTimeOffset At() => Invented.Start.AddDays(random.Next(1, 600));
        var events = new List<OilEvent>();
        events.AddRange(Enumerable.Range(0, random.Next(0, 3)).Select(_ => new OilChange(At())));
        events.AddRange(
            Enumerable.Range(0, random.Next(0, 5)).Select(_ => new TopUp(At(), Volume.FromLiters(random.Next(5, 200))))
        );
        if (random.Next(0, 2) == 0)
        {
            var start = At();
            DateTimeOffset? end = random.Next(0, 2) == 0 ? start.AddDays(random.Next(1, 20)) : null;
            events.Add(
                new TreatmentRun(
                    start,
                    end,
                    TreatmentKind.VacuumDehydration,
                    Measurands.WaterContent,
                    random.Next(30, 90)
                )
            );
        }

        return events;
    }
}
