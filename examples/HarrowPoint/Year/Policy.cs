using OilCondition;

namespace HarrowPoint.Year;

/// <summary>When a machine's oil is dried, and how far: asked after each month's samples.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Ask">Machine, day and latest reading to a target in mg/kg and an urgency, lowest first; null for leave it.</param>
public sealed record Policy(string Name, Func<DrawnMachine, int, double, (double TargetPpm, double Urgency)?> Ask)
{
    /// <summary>What a plant writes on a work order where nobody asks what the oil holds when it is cold.</summary>
    private const double RoundTarget = 100;

    public static Policy AtTheAlarm { get; } =
        new("treat at the alarm", (machine, _, read) => read > Alarm(machine) ? (RoundTarget, 0) : null);

    public static Policy EveryQuarter { get; } =
        new("treat every quarter", (_, day, _) => day % 90 == 0 ? (RoundTarget, 0) : null);

    /// <summary>The same round, but to four fifths of what the oil holds at standstill by its curve: what the target alone is worth.</summary>
    public static Policy EveryQuarterDry { get; } =
        new(
            "each quarter, dry cold",
            (machine, day, _) =>
                day % 90 == 0
                    ? (
                        0.8
                            * machine
                                .Machine.Machine.Oil.SaturationCurve!.SaturationAt(
                                    machine.Machine.Machine.StandstillTemperature
                                )
                                .Content.PartsPerMillion,
                        0
                    )
                    : null
        );

    public static Policy Options(Station station) =>
        new(
            "follow the options",
            (machine, day, _) =>
            {
                var asOf = machine.Start.AddDays(day);
                var assessment = ConditionAssessor.Assess(
                    machine.History(),
                    machine.Machine.Limits!,
                    new AssessmentOptions(asOf)
                );
                var decision = TreatmentDecision
                    .Of(assessment, station)
                    .FirstOrDefault(one => one.Topics.Contains(ProblemTopic.Water));
                return decision is { Choice.Verdict: < OptionVerdict.Waits, Target.Water: { } target }
                    ? (target.PartsPerMillion, (decision.RiskDate - asOf).TotalDays)
                    : null;
            }
        );

    private static double Alarm(DrawnMachine machine) =>
        machine
            .Machine.Limits!.Limits.Where(limit => limit.Measurand.Equals(Measurands.WaterContent))
            .Select(limit => limit.Upper?.Alarm)
            .OfType<double>()
            .Min();
}
