namespace OilCondition.Statistics;

/// <summary>Whether a trend accelerates, levels off or turns: orthogonal polynomials on top of a line, degree by degree while each is clear.</summary>
internal sealed class Curvature
{
    /// <summary>A bend as clear as this is taken for one: seldom enough by chance not to hide a correlation.</summary>
    private const double Level = 0.01;
    private const int HighestDegree = 4;

    /// <summary>Degrees of freedom that must be left beside a further part.</summary>
    private const int LeastLeft = 4;

    private Curvature(double[] residuals) => Residuals = residuals;

    /// <summary>1 for a straight line.</summary>
    public int Degree { get; private set; } = 1;

    public bool IsBent => Degree > 1;

    /// <summary>What the clear parts leave of the values.</summary>
    public double[] Residuals { get; }

    /// <summary>How far a parabola, clear or not, lowers the residual sum of squares of the line.</summary>
    public double LoweringByParabola { get; private set; }

    public static Curvature Of(ReadOnlySpan<double> times, ReadOnlySpan<double> values, StraightLine line)
    {
        var residuals = new double[values.Length];
        line.Residuals(times, values, residuals);
        var curvature = new Curvature(residuals);

        // Times about their mean in units of their spread, so that powers stay of one size.
        var spread = Math.Sqrt(line.PositionSumOfSquares / times.Length);
        var parts = new List<double[]>
        {
            Power(times, line.MeanPosition, spread, 0),
            Power(times, line.MeanPosition, spread, 1),
        };
        while (curvature.Degree < HighestDegree && curvature.TryNext(times, line, spread, parts))
        {
            curvature.Degree++;
        }

        return curvature;
    }

    private bool TryNext(ReadOnlySpan<double> times, StraightLine line, double spread, List<double[]> parts)
    {
        var part = Power(times, line.MeanPosition, spread, Degree + 1);
        foreach (var other in parts)
        {
            Remove(part, other);
        }

        // Few different times carry no further degree.
        var squares = Dot(part, part);
        if (!(squares > 1e-9))
        {
            return false;
        }

        var size = Dot(part, Residuals) / squares;
        var lowering = size * size * squares;
        LoweringByParabola = Degree == 1 ? lowering : LoweringByParabola;
        if (!(Chance(line, lowering) < Level))
        {
            return false;
        }

        for (var i = 0; i < part.Length; i++)
        {
            Residuals[i] -= size * part[i];
        }

        parts.Add(part);
        return true;
    }

    /// <summary>Two-sided probability of so clear a part by chance, for independent scatter.</summary>
    private double Chance(StraightLine line, double lowering)
    {
        var left = Math.Max(0, Dot(Residuals, Residuals) - lowering);
        var degrees = Residuals.Length - Degree - 2;
        return degrees < LeastLeft || !(lowering > 1e-20 * line.ValueSumOfSquares) ? 1
            : !(left > 1e-24 * line.ValueSumOfSquares) ? 0
            : StudentDistribution.TwoSidedTail(Math.Sqrt(lowering / (left / degrees)), degrees);
    }

    private static double[] Power(ReadOnlySpan<double> times, double mean, double spread, int degree)
    {
        var power = new double[times.Length];
        for (var i = 0; i < power.Length; i++)
        {
            var x = (times[i] - mean) / spread;
            power[i] = 1;
            for (var d = 0; d < degree; d++)
            {
                power[i] *= x;
            }
        }

        return power;
    }

    private static void Remove(double[] part, double[] other)
    {
        var share = Dot(part, other) / Dot(other, other);
        for (var i = 0; i < part.Length; i++)
        {
            part[i] -= share * other[i];
        }
    }

    private static double Dot(double[] first, double[] second)
    {
        double sum = 0;
        for (var i = 0; i < first.Length; i++)
        {
            sum += first[i] * second[i];
        }

        return sum;
    }
}
