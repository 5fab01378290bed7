namespace OilCondition.Cleanup;

/// <summary>Causes of water that does not leave at all, by their shares of how far the content moves otherwise than planned.</summary>
/// <remarks>
/// Planned: dC/dt = g_plan/M − w_plan(C); observed: s. The gap is what gauges that read other than planned keep the unit from taking out, and the rest: water that comes in, or
/// a unit that takes out less than its gauges let expect. A rise that the unit could not make up even at rest, M s > g_plan at its lower end, is water that comes in for certain; so it is
/// where the condensate shows that the unit works.
/// </remarks>
internal static class BalanceCauses
{
    private const double LeastShare = 0.05;

    public static StallCauses Of(WaterBalanceNow balance, PlannedPerformance planned, RunConditions conditions)
    {
        var ppm = balance.ContentPpm;
        var perPpm = planned.OilKilograms / 1000;
        var content = EvidenceItem.Number("content", ppm, "mg/kg");
        List<(StallCauseKind Kind, double PerHour, IReadOnlyList<EvidenceItem> Evidence, StallCheck[] Checks)> parts =
        [];
        var last = planned.RatePerHour * Math.Max(0, ppm - planned.FloorWithoutIngress.PartsPerMillion);
        if (conditions.Physics is { } physics)
        {
            last = physics.RemovedPerHour(physics.Planned, ppm);
            var plannedTaken = last;
            void Step(StallCauseKind kind, UnitState state, IReadOnlyList<EvidenceItem> evidence, StallCheck[] checks)
            {
                var next = Math.Max(0, physics.RemovedPerHour(state, ppm));
                parts.Add(
                    (
                        kind,
                        last - next,
                        [
                            EvidenceItem.Number("taken-out-as-planned", plannedTaken * perPpm, "g/h"),
                            EvidenceItem.Number("taken-out-with-this", next * perPpm, "g/h"),
                            .. evidence,
                        ],
                        checks
                    )
                );
                last = next;
            }

            var (read, at) = (conditions.State, physics.Planned);
            at = at with { Pascal = read.Pascal };
            Step(
                StallCauseKind.PoorVacuum,
                at,
                [EvidenceItem.Number("chamber-pressure", read.Pascal / 100, "hPa")],
                [StallCheck.ChamberPressure]
            );
            at = at with { Celsius = read.Celsius };
            Step(
                StallCauseKind.OilTooCold,
                at,
                [EvidenceItem.Number("process-temperature", read.Celsius, "°C")],
                [StallCheck.Heater, StallCheck.OilTemperature, StallCheck.OilFlow]
            );
            Step(StallCauseKind.SweepAirMissing, at with { SweepShare = read.SweepShare }, [], [StallCheck.SweepAir]);
            Step(StallCauseKind.BypassOrShortCircuit, read, [], [StallCheck.BypassValves, StallCheck.OilFlow]);
        }

        StallCheck[] unit =
        [
            StallCheck.OilFlow,
            StallCheck.BypassValves,
            StallCheck.ChamberPressure,
            StallCheck.SweepAir,
        ];
        if (conditions.CondensateFlow is { } collected)
        {
            parts.Add(
                (
                    StallCauseKind.BypassOrShortCircuit,
                    last - collected.GramsPerHour / perPpm,
                    [
                        EvidenceItem.Number("taken-out-as-its-gauges-read", last * perPpm, "g/h"),
                        EvidenceItem.Number("condensate", collected.GramsPerHour, "g/h"),
                    ],
                    unit
                )
            );
        }

        var rest = balance.SlopePerHour + (balance.TakenGramsPerHour - planned.WaterIngress.GramsPerHour) / perPpm;
        var gap = Math.Max(1e-9, parts.Sum(one => Math.Max(0, one.PerHour)) + Math.Max(0, rest));
        List<StallDiagnosis.Cause> causes =
        [
            .. parts.Select(one => new StallDiagnosis.Cause(
                one.Kind,
                one.PerHour / gap,
                [content, .. one.Evidence],
                one.Checks
            )),
            new(
                StallCauseKind.WaterIngress,
                rest / gap,
                [
                    content,
                    .. WaterBalanceNow.EvidenceOf(balance.Ingress),
                    .. balance.LeastGramsPerHour is > 0
                        ?
                        [
                            EvidenceItem.Number(
                                "even-if-the-unit-takes-out-nothing",
                                balance.LeastGramsPerHour.Value,
                                "g/h"
                            ),
                        ]
                        : Array.Empty<EvidenceItem>(),
                    EvidenceItem.Number("planned-water-that-comes-in", planned.WaterIngress.GramsPerHour, "g/h"),
                ],
                [StallCheck.WaterSources, StallCheck.StandingWater]
            ),
        ];
        var isCertain =
            balance.LeastGramsPerHour > planned.WaterIngress.GramsPerHour || conditions.CondensateFlow is not null;
        var isIngress = rest / gap >= LeastShare;
        if (isIngress && !isCertain)
        {
            causes.Add(
                new StallDiagnosis.Cause(
                    StallCauseKind.BypassOrShortCircuit,
                    rest / gap,
                    [content, EvidenceItem.Number("taken-out-as-its-gauges-read", balance.TakenGramsPerHour, "g/h")],
                    unit
                )
            );
        }

        return new StallCauses(
            [.. causes.Where(one => one.Share.DecimalFractions >= LeastShare).OrderByDescending(one => one.Share)],
            isCertain || !isIngress,
            isCertain || !isIngress ? [] : [StallCauseKind.WaterIngress, StallCauseKind.BypassOrShortCircuit],
            isCertain || !isIngress ? [] : [StallCheck.Condensate, StallCheck.OilFlow, StallCheck.ChamberPressure],
            balance.Ingress
        );
    }
}
