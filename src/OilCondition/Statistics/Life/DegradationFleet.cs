namespace OilCondition.Statistics;

/// <summary>What the series of several machines teach about one more of their kind: empirical Bayes.</summary>
/// <remarks>
/// Weights of the ratios: expectation-maximisation over the fleet, the default prior counting as four further machines, so that a few
/// series move it little. Drift: mean of the machines' drifts; its spread is the plain standard deviation of those estimates, errors of
/// estimation included, times sqrt((1 + 1/M)(M − 1)/(M − 3)), the standard deviation of Student's prediction of one more from M. That errs to the wide side.
/// Scatter: under each movement the mean s² of the machines, with the degrees of freedom by which it varies among them beyond its own error, 2/(cv² − 2/ν),
/// between 2 and 30, so that three readings of a new machine have a scatter to be judged by. Robbins 1956 for the idea; the pseudo-machines and the plain spread are ours.
/// </remarks>
internal static class DegradationFleet
{
    /// <summary>Fewest machines whose drifts foretell another's.</summary>
    public const int FewestMachines = 4;

    private const double DefaultCounts = 4;
    private const int Rounds = 25;
    private const double LeastFreedom = 2;
    private const double MostFreedom = 30;

    /// <summary>The prior for one more machine.</summary>
    /// <param name="fits">Fits of the other machines' series on one scale and time unit, each made with <see cref="DegradationPrior.Default"/>.</param>
    /// <returns>The prior; <see cref="DegradationPrior.Default"/> with fewer than <see cref="FewestMachines"/> determined fits, or with drifts that are all alike to the last digit.</returns>
    public static DegradationPrior Learn(IReadOnlyList<DegradationFit> fits)
    {
        var usable = Text.Guard.NotNull(fits).Where(fit => fit.IsDetermined).ToList();
        if (usable.Count < FewestMachines)
        {
            return DegradationPrior.Default;
        }

        var mean = usable.Average(fit => fit.Drift);
        double count = usable.Count;
        var variance = usable.Sum(fit => (fit.Drift - mean) * (fit.Drift - mean)) / (count - 1);
        var spread = Math.Sqrt(variance * (1 + 1 / count) * (count - 1) / (count - 3));
        return spread > 1e-12 * Math.Abs(mean)
            ? DegradationPrior.Learnt(Weights(usable), new FleetLesson(mean, spread, Scatter(usable)))
            : DegradationPrior.Default;
    }

    private static List<(double Scale2, double DegreesOfFreedom)> Scatter(List<DegradationFit> fits)
    {
        var scatter = new List<(double Scale2, double DegreesOfFreedom)>(DegradationPrior.Family.Length);
        for (var m = 0; m < DegradationPrior.Family.Length; m++)
        {
            var members = fits.ConvertAll(fit => fit.Member(m));
            var mean = members.Average(one => one.Scale2);
            var spread = members.Sum(one => (one.Scale2 - mean) * (one.Scale2 - mean)) / (members.Count - 1);
            var beyond = spread / (mean * mean) - 2 * members.Average(one => 1 / one.DegreesOfFreedom);
            scatter.Add((mean, beyond > 0 ? Math.Max(LeastFreedom, Math.Min(MostFreedom, 2 / beyond)) : MostFreedom));
        }

        return scatter;
    }

    private static double[] Weights(List<DegradationFit> fits)
    {
        var start = DegradationPrior.Default;
        var size = DegradationPrior.Family.Length;
        double[] weights = [.. start.Weights];
        var given = fits.ConvertAll(fit => fit.Weights);
        for (var round = 0; round < Rounds; round++)
        {
            var counts = new double[size];
            foreach (var one in given)
            {
                // Weights after the readings over weights before are likelihoods, up to a constant of the series.
                double[] posterior = [.. Enumerable.Range(0, size).Select(i => one[i] / start.Weights[i] * weights[i])];
                var sum = posterior.Sum();
                for (var i = 0; i < size; i++)
                {
                    counts[i] += posterior[i] / sum;
                }
            }

            for (var i = 0; i < size; i++)
            {
                weights[i] = (DefaultCounts * start.Weights[i] + counts[i]) / (DefaultCounts + fits.Count);
            }
        }

        return weights;
    }
}
