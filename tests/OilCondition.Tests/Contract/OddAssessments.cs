using OilCondition.Limits;
using OilCondition.Tests.Limits;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Contract;

/// <summary>Machines of which something is odd: no curve, no samples of a kind, a sensor only, treatments under way that go well or not.</summary>
internal static class OddAssessments
{
    private static readonly DateTimeOffset Started = Invented.Start.AddDays(300);

    public static IEnumerable<ConditionAssessment> All() =>
        Runs()
            .Concat(Trends())
            .Concat(Overdue())
            .Append(SensorOnly())
            .Append(Water(0))
            .Append(Water(500_000))
            .Append(WithoutCurve())
            .Append(Unrecorded())
            .Append(OfSmallFleet());

    /// <summary>Falls of any kind that are read every half hour or by samples, to targets that are met, far off or out of reach.</summary>
    private static IEnumerable<ConditionAssessment> Runs()
    {
        for (var seed = 0; seed < 30; seed++)
        {
            var random = new Random(seed);
            var floor = 30 + 100 * random.NextDouble();
            var rate = 0.02 + 0.3 * random.NextDouble();
            var target = random.Next(3) == 0 ? floor * 0.7 : floor * (1 + random.NextDouble());
            var hours = 2 + random.Next(0, 80);
            var apart = seed % 4 == 0 ? 40 + 40 * random.NextDouble() : 0;
            double At(double hour) => floor + 400 * Math.Exp(-rate * hour) + random.NextDouble();
            var rows = Enumerable
                .Range(0, 2 * hours)
                .Select(i => new SensorReading(
                    Started.AddHours(i / 2.0),
                    seed % 3 == 0
                        ? new Dictionary<Measurand, Reading>
                        {
                            [Measurands.RelativeSaturation] = new(Math.Min(100, At(i / 2.0) / 4)),
                            [Measurands.OilTemperature] = new(60),
                        }
                        : new Dictionary<Measurand, Reading> { [Measurands.WaterContent] = new(At(i / 2.0)) }
                ));
            var samples = Enumerable
                .Range(0, 6)
                .Select(i => new OilSample(
                    $"R{seed}-{i}",
                    Started.AddHours(hours * i / 6.0),
                    new Dictionary<Measurand, Reading> { [Measurands.WaterContent] = new(At(hours * i / 6.0) + apart) }
                ));
            var run = new TreatmentRun(
                Started,
                null,
                TreatmentKind.VacuumDehydration,
                Measurands.WaterContent,
                target,
                planned: seed % 4 < 2
                    ? new(
                        VolumeFlow.FromLitersPerHour(1200),
                        Ratio.FromDecimalFractions(0.5),
                        MassFraction.FromPartsPerMillion(20)
                    )
                    : null
            );
            yield return Assess(
                OilHistory.Create(Invented.Machine, seed % 2 == 0 ? samples : [], seed % 10 == 4 ? [] : rows, [run]),
                Started.AddHours(hours + (seed % 6 == 0 ? 200 : 0))
            );
        }
    }

    /// <summary>Rises, falls and steps, with oil hours and top-ups, after treatments and without.</summary>
    private static IEnumerable<ConditionAssessment> Trends()
    {
        for (var seed = 0; seed < 24; seed++)
        {
            var random = new Random(1000 + seed);
            var count = random.Next(1, 24);
            double[] slopes = [.. Enumerable.Range(0, 6).Select(_ => random.NextDouble() - 0.3)];
            var step = random.Next(3) == 0 ? random.Next(1, count + 1) : count;
            var samples = Enumerable
                .Range(0, count)
                .Select(i =>
                {
                    double Noise() => 1 + 0.03 * (random.NextDouble() - 0.5);
                    var after = i >= step ? 1.7 : 1;
                    return Invented.Sample(
                        i,
                        20 * i,
                        (Measurands.WaterContent, new(Math.Max(5, (100 + 20 * slopes[0] * i) * Noise() * after))),
                        (Measurands.AcidNumber, new(Math.Max(0.01, 0.12 + 0.012 * slopes[1] * i) * Noise())),
                        (Measurands.Iron, new(Math.Max(1, 10 + 2 * slopes[2] * i) * Noise() * after)),
                        (Measurands.Copper, new(Math.Max(1, 5 + 3 * slopes[1] * i) * Noise())),
                        (Measurands.Viscosity40, new(46 * (1 + 0.006 * slopes[3] * i) * Noise())),
                        (Measurands.Particles4, new(1500 * Math.Exp(0.1 * slopes[4] * i) * Noise())),
                        (Measurands.Particles6, new(400 * Math.Exp(0.1 * slopes[4] * i) * Noise())),
                        (Measurands.Particles14, new(40 * Math.Exp(0.1 * slopes[4] * i) * Noise())),
                        (Measurands.OilHours, new(1000 + (100 + 200 * slopes[5]) * i))
                    );
                });
            OilEvent[] events = (seed % 3) switch
            {
                0 => [],
                1 => [new TopUp(Invented.Start.AddDays(50), UnitsNet.Volume.FromLiters(30 + 900 * (seed % 2)))],
                _ =>
                [
                    new TreatmentRun(
                        Invented.Start.AddDays(35),
                        Invented.Start.AddDays(38),
                        TreatmentKind.VacuumDehydration,
                        Measurands.WaterContent,
                        60
                    ),
                ],
            };
            yield return ConditionAssessor.Assess(
                Invented.History(samples, events),
                AnyLimits.Set,
                new AssessmentOptions(Invented.Start.AddDays(20 * count), overOilHours: seed % 2 == 0)
            );
        }
    }

    private static IEnumerable<ConditionAssessment> Overdue() =>
        [
            Assess(
                Invented.History([Invented.Sample(1, 0, (Measurands.WaterContent, new(50)))]),
                Invented.Start.AddDays(400)
            ),
        ];

    private static ConditionAssessment SensorOnly() =>
        Assess(
            OilHistory.Create(
                Invented.Machine,
                [],
                Enumerable
                    .Range(0, 40)
                    .Select(i => new SensorReading(
                        Invented.Start.AddDays(i),
                        new Dictionary<Measurand, Reading>
                        {
                            [Measurands.RelativeSaturation] = new(40 + i),
                            [Measurands.OilTemperature] = new(60),
                        }
                    )),
                []
            ),
            Invented.Start.AddDays(41)
        );

    private static ConditionAssessment Water(double content) =>
        Assess(
            Invented.History([Invented.Sample(1, 0, (Measurands.WaterContent, new(content)))]),
            Invented.Start.AddDays(1)
        );

    private static ConditionAssessment WithoutCurve()
    {
        var one = Invented.Machine;
        var machine = new Machine(
            "M2",
            "no curve",
            new Oil("unknown", new Dictionary<Measurand, Reading>()),
            one.ChargeVolume,
            one.RunningTemperature,
            one.StandstillTemperature
        );
        return Assess(
            OilHistory.Create(machine, [Invented.Sample(1, 0, (Measurands.WaterContent, new(50)))], [], []),
            Invented.Start.AddDays(1)
        );
    }

    /// <summary>Acid and iron both fall between two samples: an oil change that nobody wrote down.</summary>
    private static ConditionAssessment Unrecorded() =>
        Assess(
            Invented.History(
                Enumerable
                    .Range(0, 16)
                    .Select(i =>
                        Invented.Sample(
                            i,
                            30 * i,
                            (Measurands.AcidNumber, new(i < 10 ? 0.25 + 0.002 * (i % 3) : 0.1 + 0.002 * (i % 3))),
                            (Measurands.Iron, new(i < 10 ? 15 + 0.3 * (i % 3) : 3 + 0.3 * (i % 3)))
                        )
                    )
            ),
            Invented.Start.AddDays(460)
        );

    /// <summary>Thirty machines give an alert at the 90th percentile and no alarm at the 98th.</summary>
    private static ConditionAssessment OfSmallFleet()
    {
        var fleet = Enumerable
            .Range(0, 30)
            .Select(i => Invented.History([Invented.Sample(1, 0, (Measurands.WaterContent, new(50 + i)))]))
            .ToList();
        var limits = AnyLimits.Set.WithFleet(fleet);
        return ConditionAssessor.Assess(fleet[29], limits, new AssessmentOptions(Invented.Start.AddDays(1)));
    }

    private static ConditionAssessment Assess(OilHistory history, DateTimeOffset asOf) =>
        ConditionAssessor.Assess(history, AnyLimits.Set, new AssessmentOptions(asOf));
}
