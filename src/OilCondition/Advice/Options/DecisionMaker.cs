using MathNet.Numerics.Distributions;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition;

/// <summary>Makes the decisions of one machine: task, options, rank, value of one more sample.</summary>
internal sealed class DecisionMaker
{
    private static readonly double[] SecondReadings = [0.1, 0.3, 0.5, 0.7, 0.9];

    private readonly ConditionAssessment assessment;
    private readonly StationMachine machine;
    private readonly Station station;
    private readonly DecisionOptions options;
    private readonly UnitExperience experience;
    private readonly EquipmentInUse inUse;
    private readonly IReadOnlyList<ProblemTopic> topics;
    private readonly IReadOnlyList<Problem> problems;
    private readonly IReadOnlyList<Finding> findings;

    private DecisionMaker(
        ConditionAssessment assessment,
        StationMachine machine,
        Station station,
        DecisionOptions options,
        UnitExperience experience,
        EquipmentInUse inUse,
        IReadOnlyList<Problem> problems
    )
    {
        this.inUse = inUse;
        this.experience = experience;
        this.assessment = assessment;
        this.machine = machine;
        this.station = station;
        this.options = options;
        this.problems = problems;
        findings = [.. problems.SelectMany(one => one.Findings).Where(AsksForTreatment)];
        topics = [.. problems.Select(one => one.Topic)];
    }

    public static IReadOnlyList<TreatmentDecision> Of(
        ConditionAssessment assessment,
        StationMachine machine,
        Station station,
        DecisionOptions options,
        UnitExperience experience,
        EquipmentInUse inUse
    )
    {
        TreatmentDecision? Decide(params ProblemTopic[] topics)
        {
            var own = assessment
                .Problems.Where(one => topics.Contains(one.Topic) && one.Findings.Any(AsksForTreatment))
                .OrderBy(one => one.Topic)
                .ToList();
            return own.Count == 0
                ? null
                : new DecisionMaker(assessment, machine, station, options, experience, inUse, own).Decide();
        }

        return
        [
            .. new[]
            {
                Decide(ProblemTopic.Water, ProblemTopic.Dirt),
                Decide(ProblemTopic.OilAgeing),
            }.OfType<TreatmentDecision>(),
        ];
    }

    private static bool AsksForTreatment(Finding finding) => finding.Severity >= Severity.Alert;

    private TreatmentDecision Decide()
    {
        var target = TargetProposal.Of(assessment, topics, options.Margin);
        var risk = RiskDate.Of(assessment, findings, machine.Site, options);
        var waiting = WaitingOutlook.Of(assessment, topics, machine.Site);
        TreatmentDecision Without(Words? missing, CleanupProgress? underWay = null) =>
            new(assessment, problems, options, () => null, () => [])
            {
                Target = target,
                RiskDate = risk.At,
                RiskWords = risk.Why,
                Waiting = waiting,
                MissingWords = missing,
                UnderWay = underWay,
            };
        if (
            assessment.Cleanup is { } cleanup
            && topics.Contains(ProblemIdentity.Of(cleanup.Run.Measurand, LimitSide.Upper).Topic)
        )
        {
            return Without(null, cleanup);
        }

        var needsWater = topics.Contains(ProblemTopic.Water);
        if (MachineTask.Of(machine, assessment, target, needsWater, out var missing) is not { } task)
        {
            return Without(missing);
        }

        if (needsWater && target.Water is null)
        {
            return Without(say => say.NoWaterFigure());
        }

        var aged = topics.Contains(ProblemTopic.OilAgeing)
            ? assessment.States.Where(state => findings.Any(one => one.Measurand.Equals(state.Measurand))).ToList()
            : [];
        var builder = new OptionBuilder(
            machine,
            station.Prices,
            options,
            assessment,
            target,
            risk,
            aged,
            new Rebound(assessment, task, target, topics, risk.At),
            experience,
            inUse
        );
        var isMet = aged.Count == 0 && IsMet(task.Job);
        var candidates = Candidate.For(station, machine.Machine, needsBoth: AsksBoth(task.Job));
        var (ranked, byCost) = isMet ? ([], false) : Ranked(builder, candidates, task.Job, options.Errors, waiting);
        var isDone = ranked.Count > 0 && ranked[0].Verdict is OptionVerdict.Meets;
        return new TreatmentDecision(
            assessment,
            problems,
            options,
            () => isMet ? null : OneMore(builder, Contenders(candidates, ranked), task, waiting, ranked),
            () => isMet || isDone ? [] : DecisionSizing.Of(task.Job, topics, risk.At - assessment.Options.AsOf)
        )
        {
            Target = target,
            RiskDate = risk.At,
            RiskWords = risk.Why,
            Waiting = waiting,
            Options = ranked,
            ByCost = byCost,
            IsMetAlready = isMet,
            Job = task.Job,
            Figures = task.Figures,
        };
    }

    /// <summary>
    /// What another sample could make the choice: the best few ways, and those that do not reach the target as it reads now. What cannot be connected, run or
    /// filled is out whatever it reads.
    /// </summary>
    private static IReadOnlyList<Candidate> Contenders(
        IReadOnlyList<Candidate> candidates,
        IReadOnlyList<TreatmentOption> ranked
    )
    {
        const int Few = 4;
        var best = ranked
            .Where(option =>
                option.Verdict != OptionVerdict.Waits
                && (option.IsPossible || option.Verdict == OptionVerdict.DoesNotReach)
            )
            .Take(Few)
            .Select(option => option.Id)
            .ToList();
        return [.. candidates.Where(candidate => best.Contains(candidate.Id))];
    }

    private (IReadOnlyList<TreatmentOption> Ranked, bool ByCost) Ranked(
        OptionBuilder builder,
        IReadOnlyList<Candidate> candidates,
        TreatmentJob job,
        InputErrors errors,
        WaitingOutlook waiting
    )
    {
        var built = candidates.Select(one => builder.Of(one, job, errors)).ToList();
        var byCost = built.Where(one => one.IsPossible).All(one => one.Cost is { IsComplete: true });
        return (
            options.Rule.Rank([.. built.Select(one => one.WithEffort(byCost)), OptionBuilder.Wait(waiting)]),
            byCost && built.Exists(one => one.IsPossible)
        );
    }

    private static bool IsMet(TreatmentJob job) =>
        TargetPart.UntouchedWater(job).IsMet && TargetPart.UntouchedParticles(job).IsMet;

    private static bool AsksBoth(TreatmentJob job) =>
        !TargetPart.UntouchedWater(job).IsMet && !TargetPart.UntouchedParticles(job).IsMet;

    /// <summary>The decision after each of five second readings, of the water or else of the particles; ageing moves too slowly for one sample to tell.</summary>
    private TreatmentDecision.SampleValue? OneMore(
        OptionBuilder builder,
        IReadOnlyList<Candidate> candidates,
        MachineTask task,
        WaitingOutlook waiting,
        IReadOnlyList<TreatmentOption> ranked
    )
    {
        if (topics.Contains(ProblemTopic.OilAgeing))
        {
            return null;
        }

        var isWater = topics.Contains(ProblemTopic.Water);
        var error = (isWater ? options.Errors.Water : options.Errors.ParticleCounts).DecimalFractions;
        var errors = options.Errors.AfterOneMore(isWater);
        string After(double share)
        {
            // Level and second reading both err: the reading lies √2 errors about the first, the mean half of that.
            var factor = Math.Exp(Normal.InvCDF(0, 1, share) * error * Math.Sqrt(2) / 2);
            var job = task.Scaled(isWater ? factor : 1, isWater ? 1 : factor);
            if (!IsStillNeeded(job, isWater))
            {
                return TreatmentDecision.SampleValue.NoTreatment;
            }

            var (again, _) = Ranked(builder, candidates, job, errors, waiting);
            return Id(again);
        }

        return new TreatmentDecision.SampleValue(Id(ranked), [.. SecondReadings.Select(After)]);
    }

    private static string Id(IReadOnlyList<TreatmentOption> ranked) =>
        ranked.Count > 0 && ranked[0].IsPossible ? ranked[0].Id : TreatmentDecision.SampleValue.NoTreatment;

    /// <summary>Whether the level would still ask for a treatment: beyond its alert figure, or free at standstill; or because a forecast asks, whatever the level.</summary>
    private bool IsStillNeeded(TreatmentJob job, bool isWater)
    {
        if (IsMet(job))
        {
            return false;
        }

        if (findings.Any(one => one is RemainingLifeFinding or ReturnFinding))
        {
            return true;
        }

        var target = TargetProposal.Of(assessment, topics, Ratio.FromDecimalFractions(1));
        if (isWater)
        {
            return target.Water is not { } figure || job.Contamination.Water > figure;
        }

        var particles = job.Contamination.Particles;
        return assessment.States.Any(state =>
        {
            var figure = new FixedFigures(machine.Machine.Oil, state.Measurand, assessment.Limits.Limits).First(
                LimitSide.Upper
            );
            return state.Measurand.Equals(Measurands.Particles4) && particles.At4PerMillilitre > figure
                || state.Measurand.Equals(Measurands.Particles6) && particles.At6PerMillilitre > figure
                || state.Measurand.Equals(Measurands.Particles14) && particles.At14PerMillilitre > figure;
        });
    }
}
