using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Treatments one after another, such as drain, heat, dehydrate and filter: one row of a comparison with its own floor and time.</summary>
/// <remarks>
/// <para>
/// Each stage hands on its end: water, particles and temperature. It is asked for as a task of its own, so that a stage says why it does not get
/// there. A stage for a time ends at the lowest water that its treatment reaches within that time, found by bisection on the treatment itself. Of
/// particles it hands on the upper count of the lowest number that it reaches, less than one number too many. Treatments of your own take part.
/// </para>
/// <para>
/// What a stage does not reach goes on rising by what comes in, r t/M and R t/V. A target counts from the moment from which on it holds until the train
/// ends. The floor is the lowest of the floors of the stages, without ingress. A stage that does not get to its end stops the train. Oil cools
/// towards its surroundings while no heater holds it. Filling, draining and changing over between stages take time that is not counted.
/// </para>
/// </remarks>
/// <example>
/// <code>
/// var train = new TreatmentTrain("drain, heat, dry, filter",
///     TrainStage.For(new SettlingAndDraining(Length.FromMeters(1), Length.FromMicrometers(100)), TimeSpan.FromHours(12)),
///     TrainStage.Heating(heater, Temperature.FromDegreesCelsius(45)),
///     TrainStage.Until(new VacuumDehydration(unit)), TrainStage.Until(new FineFiltration(loop, filter, 1)));
/// var table = TreatmentComparison.Of(job, train, new VacuumDehydration(unit));
/// </code>
/// </example>
public sealed class TreatmentTrain : ITreatment, IShiftable
{
    private const int MostStages = 20;

    /// <summary>Puts stages in a row.</summary>
    /// <param name="name">What the train is called; a table shows 20 characters of it.</param>
    /// <param name="stages">1 to 20 stages in their order.</param>
    /// <exception cref="ArgumentException">The name is blank, or there is no stage.</exception>
    /// <exception cref="ArgumentNullException">The stages, or one of them, is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are more than 20 stages.</exception>
    public TreatmentTrain(string name, params TrainStage[] stages)
    {
        Name = Guard.NotBlank(name);
        Guard.InRange(Guard.NotNull(stages).Length, 1, MostStages, "stages", nameof(stages));
        Stages = [.. stages.Select(stage => Guard.NotNull(stage, nameof(stages)))];
    }

    /// <inheritdoc/>
    public string Name { get; }

    /// <summary>None: a train is made of treatments that have kinds.</summary>
    public TreatmentKind? Kind => null;

    /// <inheritdoc/>
    public ContaminationForms Reaches =>
        Stages.Aggregate(
            ContaminationForms.None,
            (all, stage) => all | (stage.Treatment?.Reaches ?? ContaminationForms.None)
        );

    /// <summary>The stages in their order.</summary>
    public IReadOnlyList<TrainStage> Stages { get; }

    /// <summary>Stage by stage: what goes in, what comes out, when.</summary>
    /// <param name="job">The task.</param>
    /// <returns>The steps, up to and with the one that does not get to its end.</returns>
    /// <exception cref="ArgumentNullException">The task is null.</exception>
    public IReadOnlyList<Step> Run(TreatmentJob job) => TrainRun.Of(this, Guard.NotNull(job));

    /// <inheritdoc/>
    public TreatmentAssessment Assess(TreatmentJob job)
    {
        var steps = Run(job);
        Energy Sum(Func<Step, Energy> of) => Energy.FromKilowattHours(steps.Sum(step => of(step).KilowattHours));
        var cautions = steps.SelectMany(step => step.Cautions).Distinct().OrderBy(caution => caution).ToList();
        return new TreatmentAssessment(
            this,
            TrainOutcome.Water(job, this, steps),
            TrainOutcome.Particles(job, this, steps),
            MassFraction.FromPartsPerMillion(
                steps.Min(step => Math.Min(step.Start.Contamination.Water.PartsPerMillion, step.Floor.PartsPerMillion))
            ),
            Sum(step => step.Heat),
            Sum(step => step.Electricity),
            Volume.FromLiters(steps.Sum(step => step.WaterRemoved.Liters)),
            (int)Math.Min(1e9, steps.Sum(step => (double)step.Elements)),
            Volume.FromLiters(steps.Sum(step => step.NewOil.Liters)),
            cautions,
            steps.Aggregate(TreatmentDoubts.None, (all, step) => all | step.Flags)
        );
    }

    ITreatment IShiftable.Shifted(InputShift shift) =>
        With(treatment => treatment is IShiftable one ? one.Shifted(shift) : treatment);

    /// <summary>The same train with its treatments exchanged, one for one.</summary>
    internal TreatmentTrain With(Func<ITreatment, ITreatment> exchanged) =>
        new(
            Name,
            [.. Stages.Select(stage => stage.Treatment is { } treatment ? stage.With(exchanged(treatment)) : stage)]
        );

    /// <summary>The train with its stages.</summary>
    /// <returns>For example <c>dry and filter: vacuum dehydration, then fine filtration</c>.</returns>
    public override string ToString() => $"{Name}: {string.Join(", then ", Stages)}";

    /// <summary>One stage as it ran.</summary>
    public sealed class Step
    {
        internal Step(TrainStage stage, TreatmentJob start)
        {
            Stage = stage;
            Start = start;
            End = start.Contamination;
            EndTemperature = start.Reservoir.Start;
            Floor = start.Contamination.Water;
        }

        /// <summary>The stage.</summary>
        public TrainStage Stage { get; }

        /// <summary>Its own task: what the stage before hands on, and the time that is left.</summary>
        public TreatmentJob Start { get; }

        /// <summary>How long it takes; until where it was given up when it does not get to its end.</summary>
        public TimeSpan Time { get; internal init; }

        /// <summary>What it hands on.</summary>
        public Contamination End { get; internal init; }

        /// <summary>Oil temperature that it hands on.</summary>
        public Temperature EndTemperature { get; internal init; }

        /// <summary>Why it does not get to its end; null where it does.</summary>
        public WhyNot? WhyNot { get; internal init; }

        /// <summary>Lowest water that it can reach, without ingress.</summary>
        public MassFraction Floor { get; internal init; }

        /// <summary>Heat to the oil.</summary>
        public Energy Heat { get; internal init; }

        /// <summary>Electricity for motors.</summary>
        public Energy Electricity { get; internal init; }

        /// <summary>Water taken out, at 20 °C.</summary>
        public Volume WaterRemoved { get; internal init; }

        /// <summary>Elements used up.</summary>
        public int Elements { get; internal init; }

        /// <summary>New oil.</summary>
        public Volume NewOil { get; internal init; }

        internal IReadOnlyList<Caution> Cautions { get; init; } = [];

        internal TreatmentDoubts Flags { get; init; }

        /// <summary>The step in one line.</summary>
        /// <returns>For example <c>settling and draining for 12 h: to 900 mg/kg, 20/18/15, 18 °C after 12 h</c>.</returns>
        public override string ToString() =>
            $"{Stage}: "
            + (
                WhyNot is { } reason
                    ? $"does not get there ({PlainText.Spaced(reason)})"
                    : $"to {PlainText.Number(End.Water.PartsPerMillion)} mg/kg, {End.Particles.Code}, "
                        + $"{PlainText.Number(EndTemperature.DegreesCelsius)} °C after {PlainText.Number(Time.TotalHours)} h"
            );
    }
}
