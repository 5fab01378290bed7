using OilCondition.Thermal;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>A side loop on a task: warmed up, flowing, or stopped by an obstacle.</summary>
internal sealed class LoopAtWork
{
    private readonly double heatUpKilowattHours;
    private readonly double holdKilowatts;
    private readonly double motorKilowatts;

    public LoopAtWork(TreatmentJob job, SideLoop loop)
    {
        var start = job.Reservoir.Start;
        var working = loop.WorkingTemperature is { } asked && asked > start ? asked : start;
        var mean = Temperature.FromDegreesCelsius((start.DegreesCelsius + working.DegreesCelsius) / 2);
        var oil = job.Oil.Properties.At(mean);
        var tank = new HeatedTank(
            Entropy.FromJoulesPerKelvin(
                job.OilMassAt(mean).Kilograms * oil.HeatCapacity.JoulesPerKilogramKelvin
                    + job.Reservoir.Steel.JoulesPerKelvin
            ),
            job.Reservoir.LossWattPerKelvin
        );
        var heatUp = tank.TimeTo(working, start, loop.HeaterPower, job.Reservoir.Ambient);
        var flow = loop.Pump.FlowAt(job.Oil.ViscosityLine, working);
        Temperature = working;
        OilKilograms = job.OilMassAt(working).Kilograms;
        HeatUpHours = heatUp.TryEstimate(out var heatUpTime) ? heatUpTime.TotalHours : 0;
        FlowCubicMetrePerHour = flow.Flow.CubicMetersPerHour;
        TurnoversPerHour = FlowCubicMetrePerHour / job.Reservoir.OilVolume.CubicMeters;
        heatUpKilowattHours = HeatUpHours * (double)loop.HeaterPower.Kilowatts;
        var loss = job.Reservoir.LossWattPerKelvin * (working - job.Reservoir.Ambient).Kelvins / 1000;
        holdKilowatts = Math.Max(0, Math.Min(loss, (double)loop.HeaterPower.Kilowatts));
        motorKilowatts = (double)loop.MotorPower.Kilowatts;
        Obstacle =
            working > job.Oil.HighestTemperature || working > job.Reservoir.HighestTemperature ? WhyNot.TooHot
            : heatUp is Arrival<TimeSpan>.Never ? WhyNot.HeaterTooWeak
            : flow.Oil.IsThicker ? WhyNot.PumpCannotStart
            : null;
    }

    /// <summary>What keeps the loop from working at all, if anything.</summary>
    public WhyNot? Obstacle { get; }

    public Temperature Temperature { get; }

    public double OilKilograms { get; }

    public double HeatUpHours { get; }

    public double FlowCubicMetrePerHour { get; }

    public double TurnoversPerHour { get; }

    /// <summary>Heat for a run; none where there is none.</summary>
    public Energy HeatFor(TimeSpan? run) =>
        Energy.FromKilowattHours(
            run is { TotalHours: > 0 and var hours }
                ? heatUpKilowattHours + holdKilowatts * Math.Max(0, hours - HeatUpHours)
                : 0
        );

    public Energy ElectricityFor(TimeSpan? run) => Energy.FromKilowattHours(motorKilowatts * (run?.TotalHours ?? 0));
}
