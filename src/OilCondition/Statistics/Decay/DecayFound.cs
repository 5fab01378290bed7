namespace OilCondition.Statistics;

/// <summary>What a fit found on its way that its intervals need again: the scan of octaves and the sums at its optimum.</summary>
/// <remarks>Of the last fit that it was handed to; intervals of another series, or of other weights, need another one.</remarks>
internal sealed class DecayFound
{
    private double[] scan = [];
    private int levels;

    /// <summary>The least residual sum of squares at each octave, scaled; none where no rate was searched.</summary>
    public ReadOnlySpan<double> Scan => scan.AsSpan(0, levels);

    /// <summary>The optimum in rate times span.</summary>
    public double ScaledRate { get; private set; }

    /// <summary>The sums there.</summary>
    public DecaySums Sums { get; private set; }

    public void KeepScan(ReadOnlySpan<double> squares)
    {
        scan = scan.Length < squares.Length ? new double[squares.Length] : scan;
        squares.CopyTo(scan);
        levels = squares.Length;
    }

    public void KeepOptimum(double scaledRate, in DecaySums sums)
    {
        ScaledRate = scaledRate;
        Sums = sums;
    }

    /// <summary>Forgets the scan of another fit.</summary>
    public void LoseScan() => levels = 0;
}
