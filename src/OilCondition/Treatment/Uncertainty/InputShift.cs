using MathNet.Numerics.Distributions;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>One set of figures that may be the true ones: each factor lognormal about 1.</summary>
/// <remarks>
/// A fixed design of 31 sets, a lattice of rank 1 in nine dimensions after Korobov, i (1, 12, 12², …) mod 31: each input takes each of 31 equally likely
/// values once, the figures as stated are among the sets, and each set has its mirror image. No run draws at random.
/// </remarks>
internal sealed class InputShift
{
    private const int Dimensions = 9;
    private const int Cases = 31;
    private const int Generator = 12;

    private static readonly double[][] Points = [.. Normals()];

    private readonly InputErrors errors;
    private readonly double[] z;

    private InputShift(InputErrors errors, double[] z)
    {
        this.errors = errors;
        this.z = z;
    }

    public double Flow => Factor(3, errors.Flow);

    public double DropletDiameter => Factor(7, errors.DropletDiameter);

    /// <summary>Factor of a share that is approached and not passed, such as that of a purge.</summary>
    public double Approach => Factor(2, errors.RemovalPerPass);

    public static IEnumerable<InputShift> All(InputErrors errors) => Points.Select(z => new InputShift(errors, z));

    /// <summary>The removal per pass with its transfer units shifted, so that it stays below 1.</summary>
    public Ratio Removal(Ratio removalPerPass) =>
        Ratio.FromDecimalFractions(
            Math.Max(1e-9, 1 - Math.Pow(1 - removalPerPass.DecimalFractions, Factor(2, errors.RemovalPerPass)))
        );

    public Pressure Pressure(Pressure absolutePressure)
    {
        var pascal = absolutePressure.Pascals;
        var error = errors.ChamberPressure?.Pascals ?? Math.Min(1300, 0.2 * pascal);
        return UnitsNet.Pressure.FromPascals(Math.Min(110_000, Math.Max(10, pascal * Math.Exp(z[4] * error / pascal))));
    }

    public TreatmentJob Job(TreatmentJob job)
    {
        var factor = Math.Min(10, Math.Max(0.1, Factor(1, errors.Saturation)));
        var curve = job.Oil.SaturationCurve;
        var water = Math.Min(
            0.999 * Text.PhysicalRange.HighestWaterMgPerKg,
            job.Contamination.Water.PartsPerMillion * Factor(0, errors.Water)
        );
        return job.With(
            job.Oil.With(factor == 1 ? curve : curve.Aged(Ratio.FromDecimalFractions(factor), curve.Source)),
            job.Reservoir.With(
                waterIngress: job.Reservoir.WaterIngress * Factor(6, errors.WaterIngress),
                lossWattPerKelvin: job.Reservoir.LossWattPerKelvin * Factor(5, errors.HeatLoss)
            ),
            new Contamination(
                MassFraction.FromPartsPerMillion(water),
                job.Contamination.EmulsifiedShare,
                Counts(job.Contamination.Particles)
            )
        );
    }

    private ParticleLevels Counts(ParticleLevels levels)
    {
        var factor = Factor(8, errors.ParticleCounts);
        return factor == 1
            ? levels
            : ParticleLevels.Computed(
                levels.At4PerMillilitre * factor,
                levels.At6PerMillilitre * factor,
                levels.At14PerMillilitre * factor
            );
    }

    private double Factor(int index, Ratio error) => Math.Exp(z[index] * error.DecimalFractions);

    private static IEnumerable<double[]> Normals()
    {
        for (var n = 0; n < Cases; n++)
        {
            var point = new double[Dimensions];
            var step = n;
            for (var d = 0; d < Dimensions; d++)
            {
                var centred = step > Cases / 2 ? step - Cases : step;
                point[d] = Normal.InvCDF(0, 1, 0.5 + (double)centred / Cases);
                step = step * Generator % Cases;
            }

            yield return point;
        }
    }
}
