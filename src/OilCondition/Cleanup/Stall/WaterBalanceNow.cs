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
        double takenGramsPerHour
    )
    {
        Ingress = ingress;
        LeastGramsPerHour = leastGramsPerHour;
        ContentPpm = contentPpm;
        TakenGramsPerHour = takenGramsPerHour;
    }

    public CleanupFigure<MassFlow> Ingress { get; }

    /// <summary>What comes in even if the unit takes out nothing; null where that is not known.</summary>
    public double? LeastGramsPerHour { get; }

    /// <summary>The content of the balance, mg/kg.</summary>
    public double ContentPpm { get; }

    /// <summary>What the unit takes out at that content, by plan or by the condensate.</summary>
    public double TakenGramsPerHour { get; }

    /// <summary>By a straight line through titrations.</summary>
    public static WaterBalanceNow OfStretch(
        RunStretch stretch,
        PlannedPerformance planned,
        RunConditions conditions,
        double confidence
    )
    {
        var grams = planned.OilKilograms / 1000;
        var slope = stretch.Line.Slope;
        var half = stretch.Half(confidence, IntervalSide.Both);
        var (taken, error) = Taken(stretch.Line.MeanValue, planned, conditions);
        var estimate = slope * grams + taken;

        // Slope and removal are independent: their distances add as errors do.
        var apart = Math.Sqrt(Math.Pow(half * grams, 2) + Math.Pow(1.645 * error * taken, 2));
        return new WaterBalanceNow(
            Figure(estimate, estimate - apart, estimate + apart, confidence),
            (slope - half) * grams,
            stretch.Line.MeanValue,
            taken
        );
    }

    /// <summary>By a sensor that has stood at saturation for so long.</summary>
    public static WaterBalanceNow AtSaturation(
        double saturationPpm,
        double beforePpm,
        double hours,
        PlannedPerformance planned,
        RunConditions conditions,
        double confidence
    )
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
            taken
        );
    }

    private static (double GramsPerHour, double Error) Taken(
        double ppm,
        PlannedPerformance planned,
        RunConditions conditions
    ) =>
        conditions.CondensateFlow is { } collected ? (collected.GramsPerHour, CondensateError)
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
