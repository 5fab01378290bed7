using MathNet.Numerics.RootFinding;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Finds where a plan levels off.</summary>
internal static class PlanEndFinder
{
    public static PurificationPlan.EndState Find(TreatmentJob job, PlanPhysics physics)
    {
        var dry = SteadyCelsius(job, physics, 0);
        var process = ProcessCelsius(physics, dry);
        var activity = physics.Stage.ActivityOver(0, process);
        var floor = physics.Stage.SaturationAt(process) * Math.Min(1, activity);
        var ingress = job.Reservoir.WaterIngress.KilogramsPerSecond;
        var level = floor;
        var hasLevel = ingress <= 0 || TryLevel(job, physics, ingress, out level);
        return new PurificationPlan.EndState(
            Temperature.FromDegreesCelsius(dry),
            Temperature.FromDegreesCelsius(process),
            VolumeFlow.FromCubicMetersPerSecond(physics.FlowAt(dry)),
            floor,
            activity < 1 && process > 0.01,
            hasLevel ? level : null,
            Particles(job, physics, physics.FlowAt(dry))
        );
    }

    private static bool TryLevel(TreatmentJob job, PlanPhysics physics, double ingress, out double level)
    {
        const double AllWater = 1;
        var tank = SteadyCelsius(job, physics, ingress);
        var flow = physics.Density * physics.FlowAt(tank);
        var process = ProcessCelsius(physics, tank);
        double Surplus(double content) =>
            physics.Stage.Pass(flow, physics.HeatCapacity, content, process).EvaporatedKilogramPerSecond / ingress - 1;
        level = 0;
        if (Surplus(AllWater) < 0)
        {
            return false;
        }

        level = Surplus(0) >= 0 ? 0 : Brent.FindRoot(Surplus, 0, AllWater, 1e-13, 200);
        return true;
    }

    private static double ProcessCelsius(PlanPhysics physics, double celsius)
    {
        var flow = physics.FlowAt(celsius);
        return celsius + physics.HeaterWatts(flow, celsius) / (physics.Density * flow * physics.HeatCapacity);
    }

    /// <summary>
    /// The first temperature from the start on at which losses and evaporation balance the heater: thick oil can hold a tank at a cold balance though
    /// a warm one exists.
    /// </summary>
    private static double SteadyCelsius(TreatmentJob job, PlanPhysics physics, double evaporated)
    {
        const double Step = 0.25;
        double Gain(double celsius)
        {
            var latent =
                evaporated > 0
                    ? evaporated
                        * WaterVapour
                            .LatentHeat(Temperature.FromDegreesCelsius(Math.Max(0.01, celsius)))
                            .JoulesPerKilogram
                    : 0;
            return physics.HeaterWatts(physics.FlowAt(celsius), celsius) - physics.LossWatts(celsius) - latent;
        }

        var at = job.Reservoir.Start.DegreesCelsius;
        var direction = Math.Sign(Gain(at));
        var coldest = Math.Min(at, job.Reservoir.Ambient.DegreesCelsius) - 10;
        var hottest = Math.Max(at, Math.Max(physics.SetCelsius, job.Reservoir.Ambient.DegreesCelsius)) + Step;
        while (direction != 0 && at > coldest && at < hottest)
        {
            var next = at + direction * Step;
            if (Math.Sign(Gain(next)) != direction)
            {
                return Brent.FindRoot(Gain, Math.Min(at, next), Math.Max(at, next), 1e-10, 200);
            }

            at = next;
        }

        return at;
    }

    private static ParticleLevels? Particles(TreatmentJob job, PlanPhysics physics, double flow)
    {
        var levels = new double[3];
        for (var size = 0; size < 3; size++)
        {
            var ingression = physics.IngressionPerSecond(size);
            var cleaned = flow * physics.FilterShare(size) * 1e6;
            if (cleaned <= 0 && ingression > 0)
            {
                return null;
            }

            levels[size] =
                cleaned > 0 ? ingression / cleaned
                : size == 0 ? job.Contamination.Particles.At4PerMillilitre
                : size == 1 ? job.Contamination.Particles.At6PerMillilitre
                : job.Contamination.Particles.At14PerMillilitre;
        }

        return ParticleLevels.Computed(levels[0], levels[1], levels[2]);
    }
}
