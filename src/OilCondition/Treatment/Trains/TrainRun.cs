using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Runs the stages of a train, each on what the one before hands on.</summary>
internal static class TrainRun
{
    private const double LeastHours = 1.0 / 60;

    public static IReadOnlyList<TreatmentTrain.Step> Of(TreatmentTrain train, TreatmentJob job)
    {
        var steps = new List<TreatmentTrain.Step>();
        var (contamination, temperature) = (job.Contamination, job.Reservoir.Start);
        var left = job.Horizon;
        for (var number = 0; number < train.Stages.Count; number++)
        {
            var stage = train.Stages[number];
            var start = At(job, contamination, temperature, left, job.Target);
            var step =
                left.TotalHours < LeastHours ? new TreatmentTrain.Step(stage, start) { WhyNot = WhyNot.TakesTooLong }
                : stage.Heater is { } heater ? Heated(stage, start, heater)
                : Treated(stage, start, Asked(train, number, job));
            steps.Add(step);
            if (step.WhyNot is not null)
            {
                break;
            }

            (contamination, temperature) = (step.End, step.EndTemperature);
            left -= step.Time;
        }

        return steps;
    }

    /// <summary>What a stage without a time of its own runs to; null where nothing is left for it to reach.</summary>
    private static TreatmentTarget? Asked(TreatmentTrain train, int number, TreatmentJob job)
    {
        var stage = train.Stages[number];
        if (stage.Duration is not null || stage.Target is not null)
        {
            return stage.Target;
        }

        var later = train.Stages.Skip(number + 1).Where(next => next.Duration is null && next.Target is null).ToList();
        var water =
            TrainOutcome.ReachesWater(stage.Treatment) && !later.Any(next => TrainOutcome.ReachesWater(next.Treatment))
                ? job.Target.Water
                : null;
        var code =
            TrainOutcome.ReachesParticles(stage.Treatment)
            && !later.Any(next => TrainOutcome.ReachesParticles(next.Treatment))
                ? job.Target.Code
                : null;
        return water is null && code is null ? null : new TreatmentTarget(water, code);
    }

    private static TreatmentJob At(
        TreatmentJob job,
        Contamination contamination,
        Temperature temperature,
        TimeSpan horizon,
        TreatmentTarget target
    ) =>
        new(
            job.Oil,
            job.Reservoir.With(
                start: temperature,
                oilVolume: job.Oil.Properties.VolumeAt(job.Reservoir.OilVolume, job.Reservoir.Start, temperature)
            ),
            contamination,
            target,
            horizon.TotalHours < LeastHours ? Elapsed.FromHours(LeastHours) : horizon
        );

    private static TreatmentTrain.Step Heated(TrainStage stage, TreatmentJob start, TankHeater heater)
    {
        var temperature = stage.Temperature!.Value;
        var (arrival, heat) = heater.Warm(start, temperature);
        var time = arrival.TryEstimate(out var span) ? span : TimeSpan.Zero;
        WhyNot? whyNot =
            temperature > start.Oil.HighestTemperature || temperature > start.Reservoir.HighestTemperature
                ? WhyNot.TooHot
            : arrival is Arrival<TimeSpan>.Never ? WhyNot.HeaterTooWeak
            : time > start.Horizon ? WhyNot.TakesTooLong
            : null;
        var cautions = CautionsOf.Heating(WorkConditions.Of(start, temperature.DegreesCelsius, isHeated: true));
        return whyNot is not null
            ? new TreatmentTrain.Step(stage, start) { WhyNot = whyNot, Cautions = cautions }
            : new TreatmentTrain.Step(stage, start)
            {
                Time = time,
                End = new StageEnd(start, time).Untreated,
                EndTemperature = temperature > start.Reservoir.Start ? temperature : start.Reservoir.Start,
                Heat = heat,
                Cautions = cautions,
            };
    }

    private static TreatmentTrain.Step Treated(TrainStage stage, TreatmentJob start, TreatmentTarget? asked)
    {
        var treatment = stage.Treatment!;
        if (stage.Duration is null && asked is null)
        {
            return new TreatmentTrain.Step(stage, start);
        }

        var row = treatment.Assess(asked is null ? start : start.With(target: asked));
        WhyNot? whyNot =
            stage.Duration is not { } given ? row.WhyNot
            : given > start.Horizon ? WhyNot.TakesTooLong
            : row.WhyNot is WhyNot.PumpCannotStart or WhyNot.TooHot ? row.WhyNot
            : null;
        if (whyNot is not null)
        {
            return new TreatmentTrain.Step(stage, start)
            {
                WhyNot = whyNot,
                Floor = row.WaterFloor,
                Cautions = row.Cautions,
            };
        }

        var time = stage.Duration ?? row.RunTime ?? TimeSpan.Zero;
        return time <= TimeSpan.Zero
            ? new TreatmentTrain.Step(stage, start) { Floor = row.WaterFloor }
            : new StageEnd(start, time).After(stage, treatment, row);
    }
}
