using System.Runtime.InteropServices;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>What a Mann-Kendall test found.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly partial record struct MannKendall
{
    internal MannKendall(
        KendallSums sums,
        double variance,
        MannKendallMethod method,
        double risingPValue,
        double fallingPValue
    )
    {
        Count = sums.Count;
        Score = sums.Score;
        Variance = variance;
        Method = method;
        RisingPValue = risingPValue;
        FallingPValue = fallingPValue;
        var pairs = sums.Count * (sums.Count - 1.0) / 2;
        TauA = pairs > 0 ? sums.Score / pairs : 0;
        var comparable = Math.Sqrt(sums.TimePairs * sums.ValuePairs);
        TauB = comparable > 0 ? sums.Score / comparable : 0;
    }

    /// <summary>Number of readings, n.</summary>
    public int Count { get; }

    /// <summary>Rising pairs less falling pairs, S.</summary>
    public int Score { get; }

    /// <summary>Variance of S under 'no trend', with ties and the correlation allowed for; 0 where nothing varies.</summary>
    public double Variance { get; }

    /// <summary>Where the probabilities come from.</summary>
    internal MannKendallMethod Method { get; }

    /// <summary>Normal score with correction for continuity, (S − sign S)/sqrt(Var S); 0 where S or the variance is 0.</summary>
    public double NormalScore => Variance > 0 ? (Score - Math.Sign(Score)) / Math.Sqrt(Variance) : 0;

    /// <summary>Two-sided probability of a score as far from 0 by chance alone, at most 1.</summary>
    public double PValue => Math.Min(1, 2 * Math.Min(RisingPValue, FallingPValue));

    /// <summary>One-sided probability of a score as high by chance alone: small where values rise.</summary>
    public double RisingPValue { get; }

    /// <summary>One-sided probability of a score as low by chance alone: small where values fall.</summary>
    public double FallingPValue { get; }

    /// <summary>Kendall's tau-a: S over all pairs, −1 to 1.</summary>
    public double TauA { get; }

    /// <summary>Kendall's tau-b: S over the geometric mean of the pairs that differ in time and those that differ in value, −1 to 1; 0 where none does.</summary>
    public double TauB { get; }

    /// <inheritdoc/>
    public override string ToString() =>
        $"S = {Score}, tau = {PlainText.Number(TauB)}, p = {PlainText.Number(PValue)}, {Count} readings";
}
