using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Prognosis;

/// <summary>Takes make-up out of a series of wear-metal readings, so that the trend is that of the wear.</summary>
internal static class WearCorrection
{
    /// <summary>The readings as they would be if no oil had been lost: C*(i) = C(i) + Σ v(j) (C(j) + C(j − 1))/2 / V over the intervals up to i.</summary>
    /// <remarks>Discrete mass balance with the mean concentration of each interval (common practice, no source).</remarks>
    /// <param name="concentrations">Readings, in any one unit, in order of time.</param>
    /// <param name="lostLitres">Oil lost and replaced in the interval that ends at each reading; the first does not count. As many as readings.</param>
    /// <param name="charge">Volume of the charge, above 0.</param>
    /// <returns>The corrected readings, in the same unit. Its slope times the charge is the rate of wear.</returns>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static double[] WithoutLoss(
        ReadOnlySpan<double> concentrations,
        ReadOnlySpan<double> lostLitres,
        Volume charge
    )
    {
        Guard.SameLength(lostLitres.Length, concentrations.Length, nameof(lostLitres), nameof(concentrations));
        var litres = Guard.Positive(charge.Liters, "L", nameof(charge));
        var corrected = new double[concentrations.Length];
        double carried = 0;
        for (var i = 0; i < corrected.Length; i++)
        {
            Guard.NotNegative(concentrations[i], "", nameof(concentrations));
            if (i > 0)
            {
                carried +=
                    Guard.NotNegative(lostLitres[i], "L", nameof(lostLitres))
                    * (concentrations[i] + concentrations[i - 1])
                    / (2 * litres);
            }

            corrected[i] = concentrations[i] + carried;
        }

        return corrected;
    }
}
