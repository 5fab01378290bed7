using MathNet.Numerics.LinearAlgebra;

namespace OilCondition.Statistics;

/// <summary>The observed information: minus the second derivatives of ln likelihood.</summary>
internal static class CensoredInformation
{
    /// <summary>Covariance of floor, start, ln k and ln σ, scaled; null where the information is not positive definite.</summary>
    public static Matrix<double>? Covariance(CensoredSeries series, in CensoredPoint point, double u, bool atBound)
    {
        var rate = Math.Exp(u);
        var amplitude = point.Amplitude / point.InverseScatter;
        var information = Matrix<double>.Build.Dense(4, 4);
        for (var i = 0; i < series.Count; i++)
        {
            var x = rate * series.Times[i];
            var e = 1 - LaneMath.Drop(x);
            var r = series.Residual(i, e, point);
            var perSigma = series.PerSize[i] * point.InverseScatter;
            double byMean;
            double byMeanTwice;
            double byMeanAndScatter;
            double byScatterTwice;
            if (series.BelowLimit[i])
            {
                NormalTail.LogProbability(r, out var ratio);
                var change = -ratio * (r + ratio);
                byMean = -ratio * perSigma;
                byMeanTwice = change * perSigma * perSigma;
                byMeanAndScatter = (change * r + ratio) * perSigma;
                byScatterTwice = change * r * r + ratio * r;
            }
            else
            {
                byMean = r * perSigma;
                byMeanTwice = -perSigma * perSigma;
                byMeanAndScatter = -2 * r * perSigma;
                byScatterTwice = -2 * r * r;
            }

            // Parts: floor, start, ln k. The curve is floor (1 − e) + start e.
            var bend = -amplitude * x * e;
            ReadOnlySpan<double> gradient = [1 - e, e, bend];
            for (var a = 0; a < 3; a++)
            {
                for (var b = 0; b < 3; b++)
                {
                    information[a, b] -= byMeanTwice * gradient[a] * gradient[b];
                }

                information[a, 3] -= byMeanAndScatter * gradient[a];
                information[3, a] -= byMeanAndScatter * gradient[a];
            }

            information[0, 2] -= byMean * x * e;
            information[2, 0] -= byMean * x * e;
            information[1, 2] += byMean * x * e;
            information[2, 1] += byMean * x * e;
            information[2, 2] -= byMean * bend * (1 - x);
            information[3, 3] -= byScatterTwice;
        }

        // A floor at its bound and known parts do not move.
        ReadOnlySpan<bool> stays = [atBound || series.Known.HasFloor, series.Known.HasStart, series.Known.HasRate];
        for (var part = 0; part < 3; part++)
        {
            for (var a = 0; stays[part] && a < 4; a++)
            {
                information[part, a] = 0;
                information[a, part] = 0;
            }

            information[part, part] = stays[part] ? 1e30 : information[part, part];
        }

        var scale = information.Diagonal().PointwiseAbs().PointwiseSqrt();
        if (scale.Minimum() <= 0)
        {
            return null;
        }

        var unit = information.MapIndexed((a, b, value) => value / (scale[a] * scale[b]));
        return unit.Determinant() > 1e-14
            ? unit.Inverse().MapIndexed((a, b, value) => value / (scale[a] * scale[b]))
            : null;
    }
}
