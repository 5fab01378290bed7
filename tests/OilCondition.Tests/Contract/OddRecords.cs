using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.Tests.Cleanup;
using OilCondition.Tests.Sampling;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Contract;

/// <summary>Records of runs that end well, too early, stalled or lost again, with and without condensate, codes and titrations.</summary>
internal static class OddRecords
{
    public static IEnumerable<CleanupRecord> All()
    {
        for (var seed = 0; seed < 30; seed++)
        {
            var random = new Random(seed);
            var target = 45 + 80 * random.NextDouble();
            var options = CleanupMonitorOptions.WhileWarm(
                Invented.Start,
                new TreatmentTarget(LiveRuns.Ppm(target), seed % 3 == 0 ? CleanlinessCode.Parse("17/15/12") : null),
                Invented.Curve,
                TimeSpan.FromHours(4),
                LiveRuns.Celsius(45)
            );
            var status = CleanupMonitor.Of(options, Readings(seed, random)).Status();
            var diagnosis =
                seed % 2 == 0
                    ? StallDiagnosis.Of(
                        status.Curve,
                        LiveRuns.Ppm(target),
                        LiveRuns.Planned(0.3 + 0.6 * random.NextDouble(), 20 + 20 * random.NextDouble()),
                        new RunConditions(
                            LiveRuns.Celsius(40 + 20 * random.NextDouble()),
                            LiveRuns.Celsius(50),
                            LiveRuns.Ppm(20 + 40 * random.NextDouble()),
                            LiveRuns.Ppm(20)
                        )
                    )
                    : null;
            yield return CleanupRecord.Of(
                status,
                new CleanupRunFacts(
                    "HP-TGB1 (invented)",
                    LiveRuns.Loop,
                    LiveRuns.Oil870,
                    LiveRuns.Ppm(900),
                    seed % 5 == 0 ? Volume.FromLiters(30_000) : null,
                    seed % 4 == 0 ? null : Volume.FromLiters(0.8 + 1.4 * random.NextDouble()),
                    waterIngress: seed % 7 == 0 ? MassFlow.FromGramsPerHour(20) : null,
                    floorWithoutIngress: seed % 7 == 1 ? LiveRuns.Ppm(40) : null,
                    exhaustShare: seed % 3 == 1 ? Ratio.FromDecimalFractions(0.3 * random.NextDouble()) : null
                ),
                diagnosis
            );
        }
    }

    private static IEnumerable<CleanupReading> Readings(int seed, Random random)
    {
        if (seed == 2)
        {
            return
            [
                CleanupReading.OfTemperature(Runs.At(0), LiveRuns.Celsius(50)),
                CleanupReading.OfTemperature(Runs.At(2), LiveRuns.Celsius(52)),
            ];
        }

        var hours = random.Next(0, 60);
        var run = LiveRuns.WholeRun(hours, 40 + 40 * random.NextDouble()).ToList();
        var back = Enumerable.Range(1, 20).Select(i => LiveRuns.Sensor(hours + i / 2.0, 70 + 12 * i));
        var titrations = Enumerable
            .Range(0, 8)
            .Select(i =>
                CleanupReading.Titration(Runs.At(12 + 2 * i), LiveRuns.Ppm(240.0 / (1 + i) + 60 + 60 * (seed % 2)))
            );
        var counts = new[] { 0.0, hours / 2.0, hours }
            .Distinct()
            .Select(
                (hour, i) =>
                    CleanupReading.OfParticles(
                        Runs.At(hour),
                        new ParticleLevels(9000 / (1 + 3.0 * i), 2500 / (1 + 3.0 * i), 200 / (1 + 3.0 * i))
                    )
            );
        return run.Concat(seed % 6 == 0 ? back : [])
            .Concat(seed % 5 == 1 ? titrations : [])
            .Concat(seed % 3 == 0 ? counts : [])
            .OrderBy(one => one.At);
    }
}
