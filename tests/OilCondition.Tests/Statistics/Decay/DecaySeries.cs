using System.Globalization;
using OilCondition.Statistics;
using OilCondition.Tests.Reference;

namespace OilCondition.Tests.Statistics;

/// <summary>A series of the cleanup folder as a row of expected.csv wants it.</summary>
public sealed record DecaySeries(double[] Times, double[] Values, bool[] BelowLimit)
{
    /// <summary>Unbounded, as the reference fits are.</summary>
    public static ExponentialDecayOptions Unbounded { get; } = new(lowestFloor: null);

    public ExponentialDecay Fit => ExponentialDecay.Fit(Times, Values, Unbounded);

    public ExponentialDecayAnalysis Analysis => ExponentialDecay.Analyze(Times, Values, Unbounded);

    /// <summary>The same with time running backwards: exp(+k t) becomes exp(−k t), the wrong curvature the right one.</summary>
    public DecaySeries Mirrored => this with { Times = [.. Times.Select(t => -t)] };

    public static DecaySeries Of(ReferenceCase row)
    {
        var series = Read(row.Arguments["file"]);
        if (row.Inputs.Contains("replaced by LOD/2", StringComparison.Ordinal))
        {
            return series with
            {
                Values = [.. series.Values.Select((value, i) => series.BelowLimit[i] ? value / 2 : value)],
            };
        }

        if (row.Inputs.Contains("non-detects dropped", StringComparison.Ordinal))
        {
            return series.Where(i => !series.BelowLimit[i]);
        }

        const string Without = "without the point at t=";
        var at = row.Inputs.IndexOf(Without, StringComparison.Ordinal);
        if (at >= 0)
        {
            var left = Number(row.Inputs[(at + Without.Length)..]);
            return series.Where(i => series.Times[i] != left);
        }

        return series;
    }

    public static DecaySeries Read(string file)
    {
        var rows = ReferenceFolder.Rows($"cleanup/{file}");
        return new DecaySeries(
            [.. rows.Select(row => Number(row["t_h"]))],
            [.. rows.Select(row => Number(row["water_ppm"]))],
            [.. rows.Select(row => row["qualifier"] == "<")]
        );
    }

    /// <summary>The number at the head of a text such as '100 ppm'.</summary>
    public static double Number(string text) =>
        double.Parse(text.Trim().Split(' ', ';')[0], NumberStyles.Float, CultureInfo.InvariantCulture);

    private DecaySeries Where(Func<int, bool> keep)
    {
        var kept = Enumerable.Range(0, Times.Length).Where(keep).ToArray();
        return new DecaySeries(
            [.. kept.Select(i => Times[i])],
            [.. kept.Select(i => Values[i])],
            [.. kept.Select(i => BelowLimit[i])]
        );
    }
}
