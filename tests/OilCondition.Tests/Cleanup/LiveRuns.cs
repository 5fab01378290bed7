using OilCondition.Cleanup;
using OilCondition.Tests.Sampling;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Cleanup;

/// <summary>Invented runs with a known truth: 2000 L, 1200 L/h, 870 kg/m³, so 1740 kg of oil and 0.6 turnovers an hour.</summary>
public static class LiveRuns
{
    public static CleanupLoop Loop { get; } = new(Volume.FromLiters(2000), VolumeFlow.FromLitersPerHour(1200));

    public static Density Oil870 { get; } = Density.FromKilogramsPerCubicMeter(870);

    public static MassFraction Ppm(double ppm) => MassFraction.FromPartsPerMillion(ppm);

    public static Temperature Celsius(double celsius) => Temperature.FromDegreesCelsius(celsius);

    public static PlannedPerformance Planned(double eta = 0.7, double floor = 20, double gramPerHour = 0) =>
        new(Loop, Oil870, Ratio.FromDecimalFractions(eta), Ppm(floor), MassFlow.FromGramsPerHour(gramPerHour));

    /// <summary>The exact fall of a tank with these figures, with a scatter that repeats every three readings.</summary>
    public static CleanupCurve Curve(
        double eta,
        double floor,
        double gramPerHour,
        double start = 800,
        double hours = 24,
        int count = 49,
        double scatter = 0.3
    )
    {
        var rate = eta * 0.6;
        var level = floor + 1e3 * gramPerHour / 1740 / rate;
        var at = Runs.Evenly(count, hours);
        return CleanupCurve.Fit(
            Runs.Moments(at),
            [
                .. at.Select(
                    (hour, i) => new Reading(Runs.Exponential(hour, start, level, rate) + scatter * (i % 3 - 1))
                ),
            ],
            new CleanupOptions(detectSlowStart: false)
        );
    }

    public static CleanupMonitorOptions Warm(
        double targetPpm = 100,
        double holdHours = 4,
        double warmCelsius = 45,
        int mostCells = 1024,
        double? gapHours = null
    ) =>
        CleanupMonitorOptions.WhileWarm(
            Invented.Start,
            new TreatmentTarget(Ppm(targetPpm)),
            Invented.Curve,
            TimeSpan.FromHours(holdHours),
            Celsius(warmCelsius),
            gapHours is { } gap ? TimeSpan.FromHours(gap) : null,
            mostCells: mostCells
        );

    /// <summary>A sensor reading of a content in oil at a temperature.</summary>
    public static CleanupReading Sensor(double hour, double ppm, double celsius = 50) =>
        CleanupReading.Sensor(
            Runs.At(hour),
            Ratio.FromDecimalFractions(
                Math.Min(1, ppm / Invented.Curve.SaturationAt(Celsius(celsius)).Content.PartsPerMillion)
            ),
            Celsius(celsius)
        );

    /// <summary>Warming at 3 °C an hour from 20 °C; free water until it is warm; then 280 to 60 mg/kg at 0.3 1/h, every half hour.</summary>
    public static IEnumerable<CleanupReading> WholeRun(double hours = 30, double floor = 60) =>
        Enumerable
            .Range(0, (int)(2 * hours) + 1)
            .Select(i => i / 2.0)
            .Select(hour =>
                hour < 10
                    ? Sensor(hour, 5000, 20 + 3 * hour)
                    : Sensor(hour, Runs.Exponential(hour - 10, 280, floor, 0.3) + 0.3 * ((int)(2 * hour) % 3 - 1))
            );

    /// <summary>All that a status answers, to compare two of them.</summary>
    public static string Answers(CleanupStatus status) =>
        FormattableString.Invariant(
            $"{status.Phase} {status.AsOf:O} {status.FollowsSensor} {status.Latest} {status.Temperature?.DegreesCelsius:R} {status.LowestTemperature?.DegreesCelsius:R} {status.HighestTemperature?.DegreesCelsius:R} {status.IsMet} {status.MetAt:O} {status.HoldingSince:O} {status.ReboundAt:O} {status.Curve.Status} {status.Curve.Count} {status.Curve.Floor:R} {status.Curve.RatePerHour:R} {status.CurveArrival} {status.LatestParticles} {status.StallSign} {status.StalledPart?.Id} {string.Join(' ', status.StallEvidence)} {status.Arrival} {status.Reason} {status.RulingPart.Id} {status.Contradiction}"
        );
}
