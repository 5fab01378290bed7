using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>Causes with what is known of them together.</summary>
/// <param name="Causes">The causes, the likeliest first.</param>
/// <param name="IsTold">Whether the readings tell the cause.</param>
/// <param name="Alternatives">Causes that fit alike; none where it is told.</param>
/// <param name="Telling">What would tell them apart.</param>
/// <param name="WaterIngress">Water that comes in, if that is the cause.</param>
internal sealed record StallCauses(
    IReadOnlyList<StallDiagnosis.Cause> Causes,
    bool IsTold,
    IReadOnlyList<StallCauseKind> Alternatives,
    IReadOnlyList<StallCheck> Telling,
    CleanupFigure<MassFlow>? WaterIngress
)
{
    public static StallCauses None { get; } = new([], false, [], [], null);

    /// <summary>A fall that is only too slow.</summary>
    public static StallCauses SlowRate(CleanupCurve curve, PlannedPerformance planned, RunConditions conditions) =>
        new(
            [
                new StallDiagnosis.Cause(
                    StallCauseKind.BypassOrShortCircuit,
                    1 - curve.RatePerHour / planned.RatePerHour,
                    [
                        EvidenceItem.Number("observed-rate", curve.RatePerHour, "1/h"),
                        EvidenceItem.Number("planned-rate", planned.RatePerHour, "1/h"),
                        EvidenceItem.Number("process-temperature", conditions.ProcessTemperature.DegreesCelsius, "°C"),
                        EvidenceItem.Number(
                            "planned-process-temperature",
                            conditions.WorkingTemperature.DegreesCelsius,
                            "°C"
                        ),
                    ],
                    [
                        StallCheck.BypassValves,
                        StallCheck.SuctionAndReturn,
                        StallCheck.OilFlow,
                        StallCheck.OilTemperature,
                        StallCheck.Heater,
                    ]
                ),
            ],
            true,
            [],
            [],
            null
        );
}
