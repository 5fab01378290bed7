using OilCondition.Cleanup;
using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition;

/// <summary>What the plant's own finished runs tell of its vacuum dehydration units: the removal per pass that they really had.</summary>
/// <remarks>
/// A nameplate promises, a run tells. The machine's own latest run counts; without one, the latest on any other machine, at the viscosity at which it was found.
/// Flow and volume are those of the station file: a run at another flow makes the removal wrong by as much, and the hours of the next plan right again.
/// </remarks>
internal sealed class UnitExperience
{
    private readonly IReadOnlyList<Run> runs;

    private UnitExperience(IReadOnlyList<Run> runs) => this.runs = runs;

    public static UnitExperience Of(IReadOnlyList<ConditionAssessment> assessments, Station station) =>
        new([
            .. from assessment in assessments
            from run in assessment.History.Events.OfType<TreatmentRun>()
            where run.EndedAt is not null && run.Measurand.Equals(Measurands.WaterContent)
            let equipment = station.Equipment.FirstOrDefault(one => one.Id == run.Equipment)
            where equipment?.Treatment is VacuumDehydration
            let found = Of(assessment, run, station, ((VacuumDehydration)equipment.Treatment).Unit)
            where found is not null
            select new Run(
                equipment.Id,
                assessment.History.Machine.Id,
                run.EndedAt!.Value,
                found,
                ((VacuumDehydration)equipment.Treatment).Unit.RemovalPerPass
            ),
        ]);

    /// <summary>The latest run of a unit: on this machine if there is one, else on another; null where there is none.</summary>
    public Run? Latest(string equipment, string machine) =>
        Best(runs.Where(one => one.Equipment == equipment), machine);

    /// <summary>The latest run of any unit: on this machine if there is one, else on another.</summary>
    public Run? LatestOf(string machine) => Best(runs, machine);

    private static Run? Best(IEnumerable<Run> all, string machine) =>
        all.OrderByDescending(one => one.Machine == machine).ThenByDescending(one => one.At).FirstOrDefault();

    private static UnitCalibration? Of(
        ConditionAssessment assessment,
        TreatmentRun run,
        Station station,
        PurificationUnit unit
    )
    {
        var history = assessment.History;
        if (
            !station.TryMachine(history.Machine.Id, out var machine)
            || machine.TreatedOil is not { } oil
            || machine.Tank is not { } tank
            || Before(history, run) is not { } before
            || before.PartsPerMillion <= run.Target
        )
        {
            return null;
        }

        var status = CleanupMonitor.Of(history, run, run.EndedAt!.Value).Status(assessment.Options.Confidence);
        var plan = PurificationPlan.Create(
            new TreatmentJob(
                oil,
                tank,
                new Contamination(before, default, ParticleLevels.Computed(0, 0, 0)),
                new TreatmentTarget(MassFraction.FromPartsPerMillion(run.Target))
            ),
            unit
        );
        var record = CleanupRecord.Of(
            status,
            new CleanupRunFacts(
                history.Machine.Id,
                new CleanupLoop(history.Machine.ChargeVolume, unit.Pump.FullFlow),
                oil.Properties.At(tank.Start).Density,
                before
            )
        );
        return UnitCalibration.TryFrom(record, plan, out var found, out _) ? found : null;
    }

    /// <summary>The latest titration before the run, or the first of its own readings.</summary>
    private static MassFraction? Before(OilHistory history, TreatmentRun run)
    {
        var point =
            history.SampleSeries(Measurands.WaterContent, history.ChargeAt(run.At).Since, run.At).Points.LastOrDefault()
            ?? history.SampleSeries(Measurands.WaterContent, run.At, run.EndedAt!.Value).Points.FirstOrDefault();
        return point is null ? null : MassFraction.FromPartsPerMillion(point.Reading.Value);
    }

    /// <summary>What one finished run tells of the unit that did it.</summary>
    internal sealed record Run(
        string Equipment,
        string Machine,
        DateTimeOffset At,
        UnitCalibration Found,
        Ratio Nameplate
    )
    {
        /// <summary>A run is not repeated to the percent: weather, gauge and filter differ from one to the next (ours).</summary>
        private const double LeastError = 0.05;

        public InputErrors Errors(InputErrors errors)
        {
            var found = Found.Errors(errors);
            return found.RemovalPerPass.DecimalFractions >= LeastError
                ? found
                : found.WithRemovalPerPass(Ratio.FromDecimalFractions(LeastError));
        }
    }
}
