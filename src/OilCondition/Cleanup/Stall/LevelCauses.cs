using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>Takes an observed level apart into what each cause adds to it.</summary>
internal static class LevelCauses
{
    public static IReadOnlyList<StallDiagnosis.Cause> Of(
        CleanupCurve curve,
        double level,
        PlannedPerformance planned,
        RunConditions conditions,
        double confidence,
        double leastShare
    )
    {
        var floor = Math.Min(level, conditions.Floor.PartsPerMillion);
        var warm = Math.Min(floor, conditions.FloorWhenWarm.PartsPerMillion);
        var above = level - floor;

        // A rate that the readings do not bound says nothing of how much comes in.
        var isRateKnown =
            curve.Fall.HasRate
            && curve.RateIntervalPerHour(confidence) is { Outcome: IntervalOutcome.Bounded or IntervalOutcome.Known };
        var byIngress = isRateKnown ? Math.Min(above, above * curve.RatePerHour / planned.RatePerHour) : above / 2;
        var gramsPerHour = isRateKnown ? curve.RatePerHour * above * planned.OilKilograms / 1000 : 0;
        var size = Math.Max(1e-9, level);

        var observed = EvidenceItem.Number("observed level", level, "mg/kg");
        List<EvidenceItem> rates = isRateKnown
            ?
            [
                EvidenceItem.Number("observed rate", curve.RatePerHour, "1/h"),
                EvidenceItem.Number("planned rate", planned.RatePerHour, "1/h"),
                EvidenceItem.Number("water that comes in", gramsPerHour, "g/h"),
                EvidenceItem.Number("planned water that comes in", planned.WaterIngress.GramsPerHour, "g/h"),
            ]
            : [];
        StallDiagnosis.Cause[] causes =
        [
            new(
                StallCauseKind.VacuumOrSweepAir,
                warm / size,
                [
                    observed,
                    EvidenceItem.Number(
                        "physical floor with warm oil",
                        conditions.FloorWhenWarm.PartsPerMillion,
                        "mg/kg"
                    ),
                ],
                [StallCheck.ChamberPressure, StallCheck.SweepAir]
            ),
            new(
                StallCauseKind.OilTooCold,
                (floor - warm) / size,
                [
                    EvidenceItem.Number("physical floor as it runs", conditions.Floor.PartsPerMillion, "mg/kg"),
                    EvidenceItem.Number(
                        "physical floor with warm oil",
                        conditions.FloorWhenWarm.PartsPerMillion,
                        "mg/kg"
                    ),
                    EvidenceItem.Number("process temperature", conditions.ProcessTemperature.DegreesCelsius, "°C"),
                    EvidenceItem.Number(
                        "planned process temperature",
                        conditions.WorkingTemperature.DegreesCelsius,
                        "°C"
                    ),
                ],
                [StallCheck.OilTemperature, StallCheck.Heater, StallCheck.OilFlow]
            ),
            new(
                StallCauseKind.WaterIngress,
                byIngress / size,
                [
                    observed,
                    EvidenceItem.Number("physical floor as it runs", conditions.Floor.PartsPerMillion, "mg/kg"),
                    .. rates,
                ],
                [StallCheck.WaterSources, StallCheck.StandingWater]
            ),
            new(
                StallCauseKind.BypassOrShortCircuit,
                (above - byIngress) / size,
                [observed, .. rates],
                [StallCheck.BypassValves, StallCheck.SuctionAndReturn, StallCheck.OilFlow]
            ),
        ];
        return [.. causes.Where(one => one.Share.DecimalFractions >= leastShare).OrderByDescending(one => one.Share)];
    }

    /// <summary>A fall that is only too slow.</summary>
    public static StallDiagnosis.Cause SlowRate(
        CleanupCurve curve,
        PlannedPerformance planned,
        RunConditions conditions
    ) =>
        new(
            StallCauseKind.BypassOrShortCircuit,
            1 - curve.RatePerHour / planned.RatePerHour,
            [
                EvidenceItem.Number("observed rate", curve.RatePerHour, "1/h"),
                EvidenceItem.Number("planned rate", planned.RatePerHour, "1/h"),
                EvidenceItem.Number("process temperature", conditions.ProcessTemperature.DegreesCelsius, "°C"),
                EvidenceItem.Number("planned process temperature", conditions.WorkingTemperature.DegreesCelsius, "°C"),
            ],
            [
                StallCheck.BypassValves,
                StallCheck.SuctionAndReturn,
                StallCheck.OilFlow,
                StallCheck.OilTemperature,
                StallCheck.Heater,
            ]
        );
}
