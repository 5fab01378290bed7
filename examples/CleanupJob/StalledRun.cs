using OilCondition.Cleanup;
using UnitsNet;

namespace CleanupJob;

/// <summary>
/// The same sump had the cooler gone on leaking: INVENTED readings, from the balance of a mixed tank with 10 g/h of water, of a sensor that scatters by 0.2 %.
/// </summary>
public static class StalledRun
{
    private const double LeakGramPerHour = 10;
    private const double StartMgPerKg = 240;
    private const double WarmCelsius = 50;

    private static readonly Ratio Removal = Ratio.FromPercent(45);

    /// <summary>A reading every 20 minutes for 60 hours, in oil that is warm from the start.</summary>
    public static IEnumerable<CleanupReading> Log()
    {
        var random = new Random(10);
        var oil = Job.Loop.Charge.CubicMeters * Job.OilDensity.KilogramsPerCubicMeter;
        var level = Job.Loop.LevelWithIngress(
            Job.Plan.End.WaterFloor.PartsPerMillion,
            1000 * LeakGramPerHour / oil,
            Removal
        );
        var saturation = Job.Task.Oil.SaturationCurve.SaturationAt(Job.Celsius(WarmCelsius)).Content;
        for (var i = 0; i <= 180; i++)
        {
            var content = Job.Loop.ValueAfter(StartMgPerKg, level, Removal, TimeSpan.FromMinutes(20 * i));
            var scatter = 0.002 * (random.NextDouble() + random.NextDouble() + random.NextDouble() - 1.5) * 2;
            yield return CleanupReading.Sensor(
                Job.StartedAt.AddMinutes(20 * i),
                Ratio.FromDecimalFractions(content / saturation.PartsPerMillion + scatter),
                Job.Celsius(WarmCelsius)
            );
        }
    }
}
