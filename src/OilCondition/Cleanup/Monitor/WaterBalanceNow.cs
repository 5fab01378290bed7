using OilCondition.Statistics;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>Where water does not leave at all: what comes in, by the balance of what the oil shows and what the unit takes out at that content.</summary>
/// <remarks>
/// Titrations: g = M (dC/dt + w(C)), slope and mean of the straight line through the stretch; w: what the unit takes out as its gauges read. A sensor that stands at
/// saturation S: the content was C₀ before and is S or more now, so that g ≥ M (w(S) − (C₀ − S)/t). Water collected, an hour, takes the place of M w. What the unit takes out is
/// taken as known to a tenth, condensate to 15 %, a titration to a tenth (ours). Derived from the balance of a well-mixed tank.
/// </remarks>
internal sealed class WaterBalanceNow
{
    private const double RemovalError = 0.1;
    private const double CondensateError = 0.15;
    private const double TitrationError = 0.1;

    private WaterBalanceNow(
        CleanupFigure<MassFlow> ingress,
        double? leastGramsPerHour,
        double contentPpm,
        double takenGramsPerHour,
        double slopePerHour
    )
    {
        Ingress = ingress;
        LeastGramsPerHour = leastGramsPerHour;
        ContentPpm = contentPpm;
        TakenGramsPerHour = takenGramsPerHour;
        SlopePerHour = slopePerHour;
    }

    public CleanupFigure<MassFlow> Ingress { get; }

    /// <summary>What comes in even if the unit takes out nothing; null where that is not known.</summary>
    public double? LeastGramsPerHour { get; }

    /// <summary>The content of the balance, mg/kg.</summary>
    public double ContentPpm { get; }

    /// <summary>What the unit takes out at that content, by plan or by the condensate.</summary>
    public double TakenGramsPerHour { get; }

    /// <summary>What the content rises by, mg/kg an hour: at saturation the fastest fall that the sensor could not see.</summary>
    public double SlopePerHour { get; }

    /// <summary>The content that it starts from, and for how long; none where it is that of a line.</summary>
    public IReadOnlyList<EvidenceItem> Evidence { get; private init; } = [];

    /// <summary>By a straight line through titrations.</summary>
    public static WaterBalanceNow OfStretch(
        RunStretch stretch,
        PlannedPerformance planned,
        RunConditions? conditions,
        double confidence
    )
    {
        var grams = planned.OilKilograms / 1000;
        var slope = stretch.Slope;
        var half = stretch.Half(confidence, IntervalSide.Both);
        var (taken, error) = Taken(stretch.MeanValue, planned, conditions);
        var estimate = slope * grams + taken;

        // Slope and removal are independent: their distances add as errors do.
        var apart = Math.Sqrt(Math.Pow(half * grams, 2) + Math.Pow(1.645 * error * taken, 2));
        return new WaterBalanceNow(
            Figure(estimate, estimate - apart, estimate + apart, confidence),
            (slope - half) * grams,
            stretch.MeanValue,
            taken,
            slope
        );
    }

    /// <summary>By a sensor that sees only that the oil is saturated: what was there before bounds what has come in since; null where nothing is known of that.</summary>
    /// <param name="status">The run; its sensor stands at saturation.</param>
    /// <param name="warmSince">Since when the oil has been warm: before that the unit takes out less, and circulation stirs up water that no sample saw.</param>
    /// <param name="planned">What was planned.</param>
    /// <param name="conditions">How the unit runs; null for as planned.</param>
    /// <param name="confidence">Two-sided confidence level.</param>
    public static WaterBalanceNow? AtSaturation(
        CleanupStatus status,
        DateTimeOffset warmSince,
        PlannedPerformance planned,
        RunConditions? conditions,
        double confidence
    )
    {
        var saturationPpm = status.SensorAtSaturation!.Value.Ppm;
        List<(DateTimeOffset At, double Ppm)> known = [.. status.Samples];
        if ((planned.Physics ?? conditions?.Physics) is { } physics)
        {
            known.Add((status.Options.StartedAt, Math.Max(physics.BeforePpm, known.Count == 0 ? 0 : known[0].Ppm)));
        }

        // Each content that is known bounds what has come in since: the best of the bounds counts.
        return known
            .Select(one => (one.Ppm, Hours: (status.AsOf - (warmSince > one.At ? warmSince : one.At)).TotalHours))
            .Where(one => one.Hours > 0)
            .Select(one => Since(one.Ppm, one.Hours))
            .OrderByDescending(one => one.Ingress.Lower!.Value.KilogramsPerHour)
            .FirstOrDefault();

        WaterBalanceNow Since(double beforePpm, double hours)
        {
            var grams = planned.OilKilograms / 1000;
            var (taken, error) = Taken(saturationPpm, planned, conditions);
            var free = Math.Max(0, beforePpm * (1 + TitrationError) - saturationPpm) * grams;
            var least = taken * (1 - error) - free / hours;
            return new WaterBalanceNow(
                new CleanupFigure<MassFlow>(
                    CleanupFigureOutcome.NoUpperEnd,
                    CleanupFigureMethod.Delta,
                    null,
                    Flow(least),
                    null,
                    confidence,
                    coverageInDoubt: false,
                    isExtrapolated: false
                ),
                null,
                saturationPpm,
                taken,
                -Math.Max(0, beforePpm - saturationPpm) / hours
            )
            {
                Evidence =
                [
                    EvidenceItem.Number("content-before", beforePpm, "mg/kg"),
                    EvidenceItem.Number("warm-since-then-for", hours, "h"),
                ],
            };
        }
    }

    /// <summary>A rate of water that comes in, with its ends.</summary>
    public static IEnumerable<EvidenceItem> EvidenceOf(CleanupFigure<MassFlow> ingress)
    {
        if (ingress.Estimate is { } estimate)
        {
            yield return EvidenceItem.Number("water-that-comes-in", estimate.GramsPerHour, "g/h");
        }

        if (ingress.Lower is { } lower)
        {
            yield return EvidenceItem.Number("at-least", lower.GramsPerHour, "g/h");
        }

        if (ingress.Upper is { } upper)
        {
            yield return EvidenceItem.Number("at-most", upper.GramsPerHour, "g/h");
        }
    }

    private static (double GramsPerHour, double Error) Taken(
        double ppm,
        PlannedPerformance planned,
        RunConditions? conditions
    ) =>
        conditions is null ? (planned.RemovedPerHour(ppm) * planned.OilKilograms / 1000, RemovalError)
        : conditions.CondensateFlow is { } collected ? (collected.GramsPerHour, CondensateError)
        : conditions.Physics is { } physics
            ? (Math.Max(0, physics.RemovedPerHour(conditions.State, ppm)) * planned.OilKilograms / 1000, RemovalError)
        : (
            planned.RatePerHour * Math.Max(0, ppm - conditions.Floor.PartsPerMillion) * planned.OilKilograms / 1000,
            RemovalError
        );

    private static CleanupFigure<MassFlow> Figure(double estimate, double lower, double upper, double confidence) =>
        new(
            CleanupFigureOutcome.Bounded,
            CleanupFigureMethod.Delta,
            Flow(estimate),
            Flow(lower),
            Flow(upper),
            confidence,
            coverageInDoubt: false,
            isExtrapolated: false
        );

    private static MassFlow Flow(double gramsPerHour) => MassFlow.FromGramsPerHour(Math.Max(0, gramsPerHour));
}
