using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The water that standing oil still holds, moment by moment.</summary>
/// <remarks>
/// What was free sinks as drops of one size, spread over the height: D (1 − s/h). What falls out of solution as the oil cools starts where it is, as fine drops:
/// each part (1 − (s_f(t) − s_f(τ))/h). What comes in dissolves where there is room, else enters at the top as drops and is gone when it has sunk through h.
/// What is emulsified, and what is dissolved at the temperature of the moment, stays.
/// </remarks>
internal sealed class SettlingWater
{
    public SettlingWater(TreatmentJob job, StandingOil standing, double heightMetres, double[] drops, double[] fines)
    {
        var split = job.WaterAt(standing.Start);
        var free = split.Free.DecimalFractions;
        var (all, dissolved) = (split.Total.DecimalFractions, split.Dissolved.DecimalFractions);
        Emulsion = free * job.Contamination.EmulsifiedShare.DecimalFractions;
        var perSecond = job.Reservoir.WaterIngress.KilogramsPerSecond / job.OilMass.Kilograms;
        var count = drops.Length;
        Content = new double[count];
        var entered = new double[count];
        var fallen = new double[count];
        var fallenDepth = new double[count];
        var (sunk, settled) = (0, 0);
        for (var i = 0; i < count; i++)
        {
            var saturation = job
                .Oil.SaturationCurve.SaturationAt(Temperature.FromDegreesCelsius(standing.CelsiusAt(i)))
                .Content.DecimalFractions;
            var comesIn = i == 0 ? 0 : perSecond * (standing.Seconds[i] - standing.Seconds[i - 1]);
            var taken = Math.Min(comesIn, Math.Max(0, saturation - dissolved));
            dissolved += taken;
            var separated = Math.Max(0, dissolved - saturation);
            dissolved -= separated;
            entered[i] = (i == 0 ? 0 : entered[i - 1]) + comesIn - taken;
            fallen[i] = (i == 0 ? 0 : fallen[i - 1]) + separated;
            fallenDepth[i] = (i == 0 ? 0 : fallenDepth[i - 1]) + separated * fines[i];
            while (drops[i] - drops[sunk] > heightMetres)
            {
                sunk++;
            }

            while (fines[i] - fines[settled] > heightMetres)
            {
                settled++;
            }

            var fineBefore = settled == 0 ? (0, 0) : (fallen[settled - 1], fallenDepth[settled - 1]);
            var fine =
                (fallen[i] - fineBefore.Item1) * (1 - fines[i] / heightMetres)
                + (fallenDepth[i] - fineBefore.Item2) / heightMetres;
            var coarse = (free - Emulsion) * Math.Max(0, 1 - drops[i] / heightMetres);
            var incoming = entered[i] - EnteredUntil(entered, drops, sunk, drops[i] - heightMetres);
            Content[i] = Math.Max(
                dissolved + Emulsion + coarse + Math.Max(0, fine) + incoming,
                Math.Min(all, saturation)
            );
        }
    }

    /// <summary>Share of water in the oil at the times of the grid, kg/kg.</summary>
    public double[] Content { get; }

    /// <summary>What is emulsified from the start, kg/kg.</summary>
    public double Emulsion { get; }

    /// <summary>What had come in when what is now at the bottom entered.</summary>
    private static double EnteredUntil(double[] entered, double[] depths, int index, double depth)
    {
        if (depth <= 0 || index == 0)
        {
            return 0;
        }

        var width = depths[index] - depths[index - 1];
        var share = width > 0 ? (depth - depths[index - 1]) / width : 1;
        return entered[index - 1] + share * (entered[index] - entered[index - 1]);
    }
}
