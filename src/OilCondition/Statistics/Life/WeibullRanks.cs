using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Weibull line through median ranks, as drawn on probability paper: for comparison with plots made by hand.</summary>
/// <remarks>
/// Johnson's adjusted ranks, i(j) = i(j−1) + (n + 1 − i(j−1))/(1 + units left), a suspension at the age of a failure coming after it; Benard's median rank F = (i − 0.3)/(n + 0.4);
/// least squares of ln t on ln(−ln(1 − F)) (X on Y). Source: Abernethy, The New Weibull Handbook, chapter 2 (method recalled, figure 2-5 recomputed).
/// Suspensions count little here; <see cref="WeibullLife"/> is the estimate to plan with.
/// </remarks>
public sealed class WeibullRanks
{
    private WeibullRanks(double[] adjustedRanks, double shape, double scale)
    {
        AdjustedRanks = adjustedRanks;
        Shape = shape;
        Scale = scale;
    }

    /// <summary>Adjusted rank of each failure, in order of age.</summary>
    public IReadOnlyList<double> AdjustedRanks { get; }

    /// <summary>Whether a line is determined: at least two failures at different ages.</summary>
    public bool IsDetermined => Shape > 0;

    /// <summary>Shape, β; 0 where no line is determined.</summary>
    public double Shape { get; }

    /// <summary>Scale, η; 0 where no line is determined.</summary>
    public double Scale { get; }

    /// <summary>Ranks the failures and draws the line.</summary>
    /// <param name="failures">Ages at failure, above 0.</param>
    /// <param name="suspensions">Ages of units that have not failed; above 0.</param>
    /// <returns>Ranks and line.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An age is not a finite number above 0.</exception>
    public static WeibullRanks Of(ReadOnlySpan<double> failures, ReadOnlySpan<double> suspensions)
    {
        var units = new List<(double Age, bool Suspended)>();
        foreach (var age in failures)
        {
            units.Add((Guard.Positive(age, "", nameof(failures)), false));
        }

        foreach (var age in suspensions)
        {
            units.Add((Guard.Positive(age, "", nameof(suspensions)), true));
        }

        units.Sort();
        var ranks = new List<double>();
        var logs = new List<double>();
        double rank = 0;
        for (var i = 0; i < units.Count; i++)
        {
            if (!units[i].Suspended)
            {
                rank += (units.Count + 1 - rank) / (1 + units.Count - i);
                ranks.Add(rank);
                logs.Add(Math.Log(units[i].Age));
            }
        }

        double[] hazards = [.. ranks.Select(one => Math.Log(-Math.Log(1 - (one - 0.3) / (units.Count + 0.4))))];
        if (ranks.Count < 2 || !(logs[logs.Count - 1] > logs[0]))
        {
            return new WeibullRanks([.. ranks], 0, 0);
        }

        var meanHazard = hazards.Average();
        var meanLog = logs.Average();
        var slope =
            hazards.Zip(logs, (hazard, log) => (hazard - meanHazard) * (log - meanLog)).Sum()
            / hazards.Sum(hazard => (hazard - meanHazard) * (hazard - meanHazard));
        return new WeibullRanks([.. ranks], 1 / slope, Math.Exp(meanLog - slope * meanHazard));
    }
}
