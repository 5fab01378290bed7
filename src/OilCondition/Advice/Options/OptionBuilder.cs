using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition;

/// <summary>From a way to treat an oil to an option: physics first, then whether it can be had, connected and done in time.</summary>
internal sealed class OptionBuilder(
    StationMachine machine,
    StationPrices? prices,
    DecisionOptions options,
    ConditionAssessment assessment,
    TargetProposal target,
    RiskDate risk,
    IReadOnlyList<MeasurandState> aged,
    Rebound rebound,
    UnitExperience experience,
    EquipmentInUse inUse
)
{
    private DateTimeOffset AsOf => assessment.Options.AsOf;

    public TreatmentOption Of(Candidate candidate, TreatmentJob job, InputErrors errors)
    {
        if (!candidate.Connects)
        {
            return Option(candidate, OptionVerdict.CannotBeConnected, say => say.NotConnected(machine.Machine));
        }

        if (machine.Site.Power is { } power && candidate.PowerNeed > power)
        {
            if (candidate.LeastPower > power)
            {
                var needed = candidate.LeastPower;
                return Option(candidate, OptionVerdict.NotEnoughPower, say => say.NotEnoughPower(needed, power));
            }

            candidate = candidate.Within(power);
        }

        (candidate, errors) = AsItWas(candidate, errors);
        if (TreatmentFor(candidate, out var why) is not { } treatment)
        {
            return Option(candidate, OptionVerdict.DoesNotReach, why!);
        }

        // A machine that must stand for it has cooled down by then.
        var start = candidate.Terms.NeedsStandstill
            ? job.With(reservoir: job.Reservoir.With(start: machine.Machine.StandstillTemperature))
            : job;
        if (candidate.FillsNewOil)
        {
            start = start.With(target: target.Whole);
        }

        var row = treatment.Assess(start).WithBand(start, errors, treatment);
        return Judge(candidate, treatment, row);
    }

    /// <summary>The way with what its unit removed on the plant's own runs. Another machine's run leaves the usual error of a unit.</summary>
    private (Candidate, InputErrors) AsItWas(Candidate candidate, InputErrors errors)
    {
        var unit = candidate.Treatment is TreatmentTrain train
            ? train.Stages.Select(stage => stage.Treatment).OfType<VacuumDehydration>().FirstOrDefault()
            : candidate.Treatment as VacuumDehydration;
        if (unit is null || !target.IsWaterToBeReached)
        {
            return (candidate, errors);
        }

        foreach (var id in candidate.Equipment)
        {
            if (experience.Latest(id, machine.Machine.Id) is { } run)
            {
                return (
                    candidate.With(unit, unit.With(run.Found.For(unit.Unit))) with
                    {
                        Experience = say => say.AsItWas(run.Machine, run.At, run.Found),
                    },
                    run.Machine == machine.Machine.Id ? run.Errors(errors) : errors
                );
            }
        }

        return experience.LatestOf(machine.Machine.Id) is { } other
            ? (
                candidate with
                {
                    Experience = say =>
                        say.AnotherUnit(other.Equipment, other.Machine, other.Found.RemovalPerPass, other.Nameplate),
                },
                errors
            )
            : (candidate, errors);
    }

    public static TreatmentOption Wait(WaitingOutlook waiting) =>
        new("wait", say => say.NothingUntil(outage: waiting.HasOutages), [], OptionVerdict.Waits)
        {
            RuledOutWords = say => say.Of(waiting.Steps[0]),
        };

    /// <summary>What acts on the oil; for ageing only an oil change does.</summary>
    private ITreatment? TreatmentFor(Candidate candidate, out Words? why)
    {
        why = null;
        if (aged.Count == 0)
        {
            return candidate.Treatment;
        }

        if (candidate.Treatment is not DrainAndRefill change)
        {
            why = say => say.OnlyCleans();
            return null;
        }

        var renewal = Renewal.Of(change, assessment, aged, options.Margin.DecimalFractions);
        why = say => say.RenewsTooLittle();
        return renewal;
    }

    private TreatmentOption Judge(Candidate candidate, ITreatment treatment, TreatmentAssessment row)
    {
        var band = row.Band!;
        if (band.Reached.DecimalFractions <= 0)
        {
            var reason = row.WhyNot ?? band.Cases.Select(one => one.WhyNot).First(one => one is not null);
            return Option(candidate, OptionVerdict.DoesNotReach, say => say.Of(reason!.Value), row, reason);
        }

        if (Short(candidate, band) is { } missing)
        {
            return Option(candidate, OptionVerdict.NotEnoughInStock, missing, row);
        }

        var sure = band.Time(options.Confidence.DecimalFractions) ?? band.Time(band.Reached.DecimalFractions / 2);
        if (!TryBegin(candidate, sure ?? TimeSpan.Zero, out var begins, out var outage, out var shortBy))
        {
            return Option(candidate, OptionVerdict.OutageTooShort, shortBy!, row);
        }

        DateTimeOffset? Done(TimeSpan? time) =>
            time is { } span ? begins + candidate.Terms.ConnectTime + Elapsed(candidate, span) : null;
        TimeSpan Bound(TimeSpan time) =>
            TimeSpan.FromTicks(2 * candidate.Terms.ConnectTime.Ticks) + Elapsed(candidate, time);
        var inTime =
            band.Cases.Count(one => one.MeetsTarget && Done(one.RunTime) <= risk.At) / (double)band.Cases.Count;
        var confidence = options.Confidence.DecimalFractions;
        return new TreatmentOption(
            candidate.Id,
            candidate.Name,
            candidate.Equipment,
            band.Reached.DecimalFractions < confidence ? OptionVerdict.NotSure
                : inTime < confidence ? OptionVerdict.MeetsLate
                : OptionVerdict.Meets
        )
        {
            Assessment = row,
            Floor = FloorOf(row),
            Terms = candidate.Terms,
            Probability = band.Reached,
            ProbabilityInTime = Ratio.FromDecimalFractions(inTime),
            Begins = begins,
            Outage = outage,
            DoneP10 = Done(band.TimeP10),
            DoneP50 = Done(band.TimeP50),
            DoneP90 = Done(band.TimeP90),
            Bound = band.TimeP50 is { } middle ? Bound(middle) : null,
            ExperienceWords = candidate.Experience,
            Cost = prices is null ? null : OptionCost.Of(band, prices, candidate.Terms, Bound),
            Rebound = Done(band.TimeP50 ?? band.TimeP10) is { } done ? rebound.After(done, treatment, row) : null,
        };
    }

    /// <summary>Attended work goes on in the reachable hours only.</summary>
    private TimeSpan Elapsed(Candidate candidate, TimeSpan work) =>
        candidate.Terms.IsAttended
            ? Text.Elapsed.FromHours(work.TotalHours * 24 / machine.Site.ReachablePerDay.TotalHours)
            : work;

    /// <summary>What the store holds too little of, by the middle of the cases.</summary>
    private static Words? Short(Candidate candidate, TreatmentBand band)
    {
        var met = band.Cases.Where(one => one.MeetsTarget).ToList();
        var oil = met.Select(one => one.NewOil.Liters).OrderBy(one => one).ElementAt(met.Count / 2);
        var elements = met.Select(one => one.Elements).OrderBy(one => one).ElementAt(met.Count / 2);
        return candidate.Terms.OilInStock is { } stock && oil > stock.Liters * (1 + 1e-9)
                ? say => say.NotEnoughOil(oil, stock)
            : candidate.Terms.ElementsInStock is { } store && elements > store
                ? say => say.NotEnoughElements(elements, store)
            : null;
    }

    /// <summary>As soon as it is there and free; where the machine must stand, in the first outage that is long enough to connect, work and take off.</summary>
    private bool TryBegin(
        Candidate candidate,
        TimeSpan work,
        out DateTimeOffset begins,
        out Outage? outage,
        out Words? shortBy
    )
    {
        var ready = AsOf + candidate.Terms.LeadTime;
        if (inUse.FreeAt(candidate.Equipment) is { } free && free > ready)
        {
            ready = free;
        }

        (begins, outage, shortBy) = (ready, null, null);
        if (!candidate.Terms.NeedsStandstill || machine.Site.Outages.Count == 0)
        {
            return true;
        }

        var needed = TimeSpan.FromTicks(2 * candidate.Terms.ConnectTime.Ticks) + Elapsed(candidate, work);
        var longest = TimeSpan.Zero;
        foreach (var one in machine.Site.Outages.Where(one => one.To > ready))
        {
            var from = one.From > ready ? one.From : ready;
            if (one.To - from >= needed)
            {
                (begins, outage) = (from, one);
                return true;
            }

            longest = one.To - from > longest ? one.To - from : longest;
        }

        shortBy = longest == TimeSpan.Zero ? say => say.NoOutage() : say => say.OutageTooShort(needed, longest);
        return false;
    }

    private MassFraction? FloorOf(TreatmentAssessment? row) =>
        target.IsWaterToBeReached && row?.Band is { } band ? band.FloorP50 : null;

    private TreatmentOption Option(
        Candidate candidate,
        OptionVerdict verdict,
        Words ruledOut,
        TreatmentAssessment? row = null,
        WhyNot? whyNot = null
    ) =>
        new(candidate.Id, candidate.Name, candidate.Equipment, verdict)
        {
            Terms = candidate.Terms,
            RuledOutWords = ruledOut,
            Assessment = row,
            Floor = FloorOf(row),
            WhyNot = whyNot,
            Probability = row?.Band?.Reached ?? default,
        };
}
