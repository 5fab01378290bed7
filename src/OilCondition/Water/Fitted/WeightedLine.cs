namespace OilCondition.Water;

/// <summary>Weighted least squares of y = ȳ + b (x − x̄), kept centred because x = 1/T hardly varies.</summary>
/// <remarks>The line of the Statistics room is on the same floor and has no weights; rooms of one floor do not use each other.</remarks>
internal sealed class WeightedLine
{
    private WeightedLine(double weight, double meanX, double meanY, double slope, double sxx, double s)
    {
        Weight = weight;
        MeanX = meanX;
        MeanY = meanY;
        Slope = slope;
        Sxx = sxx;
        ResidualStandardDeviation = s;
    }

    /// <summary>Sum of the weights, Σw.</summary>
    public double Weight { get; }

    public double MeanX { get; }

    public double MeanY { get; }

    public double Slope { get; }

    /// <summary>Σ w (x − x̄)².</summary>
    public double Sxx { get; }

    /// <summary>s² = Σ w r² / (n − 2), of a point of weight 1.</summary>
    public double ResidualStandardDeviation { get; }

    public double Intercept => MeanY - Slope * MeanX;

    public double At(double x) => MeanY + Slope * (x - MeanX);

    public double Leverage(double x, double weight) => weight * (1 / Weight + (x - MeanX) * (x - MeanX) / Sxx);

    public static WeightedLine Through(double[] x, double[] y, double[] weights)
    {
        var n = x.Length;
        var weight = weights.Sum();
        double meanX = 0;
        double meanY = 0;
        for (var i = 0; i < n; i++)
        {
            meanX += weights[i] * x[i] / weight;
            meanY += weights[i] * y[i] / weight;
        }

        double sxx = 0;
        double sxy = 0;
        for (var i = 0; i < n; i++)
        {
            sxx += weights[i] * (x[i] - meanX) * (x[i] - meanX);
            sxy += weights[i] * (x[i] - meanX) * (y[i] - meanY);
        }

        var slope = sxy / sxx;
        double residual = 0;
        for (var i = 0; i < n; i++)
        {
            var r = y[i] - meanY - slope * (x[i] - meanX);
            residual += weights[i] * r * r;
        }

        return new WeightedLine(weight, meanX, meanY, slope, sxx, Math.Sqrt(residual / (n - 2)));
    }
}
