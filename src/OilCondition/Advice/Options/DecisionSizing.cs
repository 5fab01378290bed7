using OilCondition.Cleanliness;
using OilCondition.Text;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition;

/// <summary>What a task needs where nothing at hand does it: figures to hire or buy by, not a guess at a product.</summary>
/// <remarks>
/// Water: the plan asked backwards (<see cref="PlanSizing"/>) from a unit of common figures: one turnover in two hours, 60 °C or what the oil bears, 50 mbar,
/// half of the excess removed a pass, heater for 11 K. Dirt: the flow of a loop with β 200 at each size. Ageing: one oil fill.
/// </remarks>
internal static class DecisionSizing
{
    private const double ShortestHours = 1;
    private const double LongestHours = 8760;
    private const double HoursPerTurnover = 2;
    private const double ProcessCelsius = 60;
    private const double ChamberMillibar = 50;
    private const double Removal = 0.5;
    private const double PumpCentistokes = 300;
    private const double RiseKelvins = 11;
    private const double Beta = 200;

    public static IReadOnlyList<Words> Of(TreatmentJob job, IReadOnlyCollection<ProblemTopic> topics, TimeSpan within)
    {
        // Nobody sizes a unit for minutes, or for years; a slow rise may leave years.
        var hours = Math.Min(LongestHours, Math.Max(ShortestHours, within.TotalHours));
        var time = Elapsed.FromHours(hours);
        List<Words> needs = [Item("within", time.TotalHours, "h")];
        if (topics.Contains(ProblemTopic.Water) && job.Target.Water is { } target)
        {
            needs.AddRange(Water(job, target, time));
        }

        if (topics.Contains(ProblemTopic.Dirt) && job.Target.Code is { } code)
        {
            needs.AddRange(Dirt(job, code, time));
        }

        if (topics.Contains(ProblemTopic.OilAgeing))
        {
            needs.Add(Item("new-oil", job.Reservoir.OilVolume.Liters, "L"));
        }

        return needs;
    }

    private static IEnumerable<Words> Water(TreatmentJob job, MassFraction target, TimeSpan within)
    {
        var removed = (job.Contamination.Water - target).DecimalFractions * job.OilMass.Kilograms;
        yield return Item("water", Math.Max(0, removed), "kg");
        var wet = job.With(target: new TreatmentTarget(target));
        if (wet.Contamination.Water <= target)
        {
            yield break;
        }

        var unit = Usual(job);
        yield return say => say.UsualUnit(unit);
        foreach (var row in PlanSizing.Of(wet, unit, within).Rows)
        {
            yield return say => say.Of(row);
        }
    }

    private static PurificationUnit Usual(TreatmentJob job)
    {
        var flow = VolumeFlow.FromLitersPerHour(job.Reservoir.OilVolume.Liters / HoursPerTurnover);
        var celsius = Math.Min(
            ProcessCelsius,
            Math.Min(job.Oil.HighestTemperature.DegreesCelsius, job.Reservoir.HighestTemperature.DegreesCelsius)
        );
        var warm = job.Oil.Properties.At(Temperature.FromDegreesCelsius(celsius));
        return new PurificationUnit(
            new PumpViscosityLimit(flow, KinematicViscosity.FromCentistokes(PumpCentistokes)),
            Power.FromWatts(
                flow.CubicMetersPerSecond
                    * warm.Density.KilogramsPerCubicMeter
                    * warm.HeatCapacity.JoulesPerKilogramKelvin
                    * RiseKelvins
            ),
            Temperature.FromDegreesCelsius(celsius),
            new VacuumChamber(Pressure.FromMillibars(ChamberMillibar), SweepAir.Dry(MassFlow.Zero)),
            Ratio.FromDecimalFractions(Removal)
        );
    }

    private static IEnumerable<Words> Dirt(TreatmentJob job, CleanlinessCode code, TimeSpan within)
    {
        var (levels, ingression) = (job.Contamination.Particles, job.Reservoir.Ingression);
        (ScaleNumber Target, double Start, double In)[] sizes =
        [
            (code.At4, levels.At4PerMillilitre, ingression.At4PerMinute),
            (code.At6, levels.At6PerMillilitre, ingression.At6PerMinute),
            (code.At14, levels.At14PerMillilitre, ingression.At14PerMinute),
        ];
        var most = VolumeFlow.Zero;
        foreach (var (target, start, comesIn) in sizes)
        {
            if (
                target != ScaleNumber.NotCounted
                && KidneyLoop.TryFlowToReach(
                    start,
                    target.HighestPerMillilitre,
                    within,
                    job.Reservoir.OilVolume,
                    new FilterBeta(Beta),
                    comesIn,
                    out var flow
                )
                && flow > most
            )
            {
                most = flow;
            }
        }

        yield return Item("loop", most.LitersPerMinute, "L/min");
    }

    private static Words Item(string need, double value, string unit) => say => say.Need(need, value, unit);
}
