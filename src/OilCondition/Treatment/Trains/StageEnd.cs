using OilCondition.Cleanliness;
using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>What a stage that has run for a time hands on.</summary>
internal sealed class StageEnd(TreatmentJob start, TimeSpan time)
{
    private const int Halvings = 60;

    /// <summary>The oil as it was, with what came in meanwhile.</summary>
    public Contamination Untreated { get; } = WithIngress(start, time);

    /// <summary>The step of a treatment.</summary>
    public TreatmentTrain.Step After(TrainStage stage, ITreatment treatment, TreatmentAssessment row) =>
        treatment is VacuumDehydration dehydration ? Planned(stage, dehydration, row) : Inverted(stage, treatment, row);

    /// <summary>A dehydration is integrated: its state at the end is known.</summary>
    private TreatmentTrain.Step Planned(TrainStage stage, VacuumDehydration dehydration, TreatmentAssessment row)
    {
        // A target that nothing reaches makes the plan run for all of the time, in one interval.
        var toTheEnd = new TreatmentJob(
            start.Oil,
            start.Reservoir,
            start.Contamination,
            new TreatmentTarget(MassFraction.Zero),
            AtLeastAMinute
        );
        var interval = Elapsed.FromHours(Math.Min(720, AtLeastAMinute.TotalHours));
        var last = PurificationPlan.Create(toTheEnd, dehydration.Unit, interval).Last;
        return new TreatmentTrain.Step(stage, start)
        {
            Time = time,
            End = new Contamination(
                MassFraction.FromPartsPerMillion(
                    Math.Min(PhysicalRange.HighestWaterMgPerKg, last.Water.Total.PartsPerMillion)
                ),
                start.Contamination.EmulsifiedShare,
                last.Particles
            ),
            EndTemperature = last.TankTemperature,
            Floor = row.WaterFloor,
            Heat = last.HeaterEnergy,
            Electricity = dehydration.Unit.MotorPower * time,
            WaterRemoved = Removed(last.Water.Total),
            Elements = row.Elements,
            Cautions = row.Cautions,
            Flags = row.Flags,
        };
    }

    /// <summary>Of any other treatment only the time to a target is known: the end is the lowest that it reaches in time.</summary>
    private TreatmentTrain.Step Inverted(TrainStage stage, ITreatment treatment, TreatmentAssessment row)
    {
        var water = TrainOutcome.ReachesWater(treatment) ? Water(treatment) : Untreated.Water;
        var particles = TrainOutcome.ReachesParticles(treatment) ? Particles(treatment) : Untreated.Particles;
        var end = new Contamination(water, start.Contamination.EmulsifiedShare, particles);
        var used = UsedFor(treatment, end, row);

        // Motors run for as long as the stage does, whatever the target of the row was.
        var longer = used.RunTime is { Ticks: > 0 } run ? time.TotalHours / run.TotalHours : 1;
        return new TreatmentTrain.Step(stage, start)
        {
            Time = time,
            End = end,
            EndTemperature = EndTemperatureOf(treatment, used),
            Floor = row.WaterFloor,
            Heat = used.Heat * longer,
            Electricity = used.Electricity * longer,
            WaterRemoved = TrainOutcome.ReachesWater(treatment) ? Removed(water) : Volume.Zero,
            Elements = used.Elements,
            NewOil = used.NewOil,
            Cautions = row.Cautions,
            Flags = row.Flags,
        };
    }

    /// <summary>The row whose target is the end of the stage.</summary>
    private TreatmentAssessment UsedFor(ITreatment treatment, Contamination end, TreatmentAssessment row)
    {
        if (row.MeetsTarget && row.RunTime == time)
        {
            return row;
        }

        var water = end.Water < start.Contamination.Water ? end.Water : (MassFraction?)null;
        var code = end.Particles.At4PerMillilitre < start.Contamination.Particles.At4PerMillilitre;
        return water is null && !code
            ? row
            : treatment.Assess(start.With(target: new TreatmentTarget(water, code ? end.Particles.Code : null)));
    }

    private MassFraction Water(ITreatment treatment)
    {
        var (low, high) = (0.0, start.Contamination.Water.PartsPerMillion);
        bool Reached(double ppm) => InTime(treatment, new TreatmentTarget(MassFraction.FromPartsPerMillion(ppm)));
        if (!Reached(high * (1 - 1e-6)))
        {
            return Untreated.Water;
        }

        for (var i = 0; i < Halvings && high - low > 1e-9 * high; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Reached(middle) ? (low, middle) : (middle, high);
        }

        return MassFraction.FromPartsPerMillion(high);
    }

    private ParticleLevels Particles(ITreatment treatment)
    {
        var none = ScaleNumber.NotCounted;
        var (before, risen) = (start.Contamination.Particles, Untreated.Particles);
        return ParticleLevels.Computed(
            Size(before.At4PerMillilitre, risen.At4PerMillilitre, number => new(number, none, none)),
            Size(before.At6PerMillilitre, risen.At6PerMillilitre, number => new(none, number, none)),
            Size(before.At14PerMillilitre, risen.At14PerMillilitre, number => new(none, none, number))
        );

        double Size(double count, double untreated, Func<ScaleNumber, CleanlinessCode> code)
        {
            const int Highest = 28;
            var (low, high) = (-1, Highest + 1);
            while (high - low > 1)
            {
                var middle = (low + high) / 2;
                var isLower = ScaleNumber.Of(middle).HighestPerMillilitre < count;
                var reached = !isLower || InTime(treatment, new TreatmentTarget(code: code(ScaleNumber.Of(middle))));
                (low, high) = reached ? (low, middle) : (middle, high);
            }

            var limit = high > Highest ? count : ScaleNumber.Of(high).HighestPerMillilitre;
            return limit < count ? limit : untreated;
        }
    }

    private bool InTime(ITreatment treatment, TreatmentTarget target)
    {
        var row = treatment.Assess(start.With(target: target));
        return row.MeetsTarget && (row.RunTime ?? TimeSpan.Zero) <= time;
    }

    /// <summary>A loop warms or cools as its circuit does, all else as oil that stands; new oil is as warm as the surroundings.</summary>
    private Temperature EndTemperatureOf(ITreatment treatment, TreatmentAssessment used)
    {
        var (from, ambient) = (start.Reservoir.Start, start.Reservoir.Ambient);
        if (used.NewOil.Liters > 0)
        {
            var kept = Math.Max(0, 1 - used.NewOil.Liters / start.Reservoir.OilVolume.Liters);
            return Temperature.FromDegreesCelsius(
                ambient.DegreesCelsius + kept * (from.DegreesCelsius - ambient.DegreesCelsius)
            );
        }

        var loop = treatment switch
        {
            Centrifuge it => it.Loop,
            Coalescer it => it.Loop,
            WaterAbsorbingElements it => it.Loop,
            FineFiltration it => it.Loop,
            _ => null,
        };
        return loop is null
            ? StandingOil.TankOf(start, from).TemperatureAfter(from, start.Reservoir.HeatInput, ambient, time)
            : Temperature.FromDegreesCelsius(
                new OilCircuit(
                    start,
                    loop.Pump,
                    loop.HeaterPower,
                    (loop.WorkingTemperature ?? from).DegreesCelsius,
                    loop.HighestRise
                ).CelsiusAfter(time.TotalSeconds)
            );
    }

    private Volume Removed(MassFraction water)
    {
        var kilograms =
            (start.Contamination.Water - water).DecimalFractions * start.OilMass.Kilograms
            + start.Reservoir.WaterIngress.KilogramsPerHour * time.TotalHours;
        return Volume.FromLiters(Math.Max(0, kilograms) * 1000 / WaterContent.WaterDensity.KilogramsPerCubicMeter);
    }

    private TimeSpan AtLeastAMinute => time.TotalMinutes < 1 ? TimeSpan.FromMinutes(1) : time;

    private static Contamination WithIngress(TreatmentJob job, TimeSpan time)
    {
        var water =
            job.Contamination.Water.PartsPerMillion
            + 1e6 * job.Reservoir.WaterIngress.KilogramsPerHour * time.TotalHours / job.OilMass.Kilograms;
        var (particles, ingression) = (job.Contamination.Particles, job.Reservoir.Ingression);
        var perRate = time.TotalMinutes / job.Reservoir.OilVolume.Milliliters;
        return new Contamination(
            MassFraction.FromPartsPerMillion(Math.Min(PhysicalRange.HighestWaterMgPerKg, water)),
            job.Contamination.EmulsifiedShare,
            ParticleLevels.Computed(
                particles.At4PerMillilitre + ingression.At4PerMinute * perRate,
                particles.At6PerMillilitre + ingression.At6PerMinute * perRate,
                particles.At14PerMillilitre + ingression.At14PerMinute * perRate
            )
        );
    }
}
