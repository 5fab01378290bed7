using MathNet.Numerics.RootFinding;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Finds where a plan levels off.</summary>
internal static class PlanEndFinder
{
    public static PurificationPlan.EndState Find(TreatmentJob job, PlanPhysics physics)
    {
        var dry = physics.Circuit.SteadyCelsius(0);
        var process = physics.Circuit.ProcessCelsius(dry);
        var flow = physics.Circuit.FlowAt(dry);
        var activity = physics.Stage.ActivityOver(0, process);
        var floor = physics.Stage.SaturationAt(process) * Math.Min(1, activity);
        var ingress = job.Reservoir.WaterIngress.KilogramsPerSecond;
        var level = floor;
        var hasLevel = ingress <= 0 || TryLevel(physics, ingress, out level);
        return new PurificationPlan.EndState(
            Temperature.FromDegreesCelsius(dry),
            Temperature.FromDegreesCelsius(process),
            VolumeFlow.FromCubicMetersPerSecond(flow),
            floor,
            activity < 1 && process > 0.01,
            hasLevel ? level : null,
            Particles(job, physics, physics.Circuit.TurnoverPerSecond(dry))
        );
    }

    private static bool TryLevel(PlanPhysics physics, double ingress, out double level)
    {
        const double AllWater = 1;
        var tank = physics.Circuit.SteadyCelsius(ingress);
        var flow = physics.Circuit.DensityAt(tank) * physics.Circuit.FlowAt(tank);
        var process = physics.Circuit.ProcessCelsius(tank);
        double Surplus(double content) =>
            physics.Pass(flow, content, process).EvaporatedKilogramPerSecond / ingress - 1;
        level = 0;
        if (Surplus(AllWater) < 0)
        {
            return false;
        }

        level = Surplus(0) >= 0 ? 0 : Brent.FindRoot(Surplus, 0, AllWater, 1e-13, 200);
        return true;
    }

    private static ParticleLevels? Particles(TreatmentJob job, PlanPhysics physics, double turnoverPerSecond)
    {
        var levels = new double[3];
        for (var size = 0; size < 3; size++)
        {
            var ingression = physics.IngressionPerSecond(size);
            var cleaned = turnoverPerSecond * job.Reservoir.OilVolume.CubicMeters * physics.FilterShare(size) * 1e6;
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
