using System.Runtime.InteropServices;
using MathNet.Numerics;

namespace OilCondition.Statistics;

/// <summary>The readings seen through one movement: how well it explains them, and where it leads.</summary>
/// <remarks>
/// x clock units after the last reading the state lies at Level + Drift x with variance s² (V0 + C1 x + C2 x² + C3 x³), s² estimated with n − 2
/// degrees of freedom. Likelihood with level and s² integrated out: |V|^(−1/2) (1′V⁻¹1)^(−1/2) S^(−(n−1)/2), S the weighted sum of squares that is left. A mean that
/// moves has a smaller S and pays (n + 1)^(−1/2) for it, whatever its course (Schwarz 1978).
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly struct DegradationMember
{
    /// <summary>ln |V| and all else that does not depend on the size of the scatter.</summary>
    private readonly double logDeterminant;
    private readonly double squares;
    private readonly int count;

    /// <summary>Part of s² that is a reading's.</summary>
    private readonly double readingShare;

    /// <summary>What is left of the readings, and where their state lies at the last of them.</summary>
    public DegradationMember(
        Course course,
        double logDeterminant,
        double squares,
        int count,
        double degreesOfFreedom,
        double level,
        double drift,
        (double V0, double C1, double C2, double C3) variance,
        double walking,
        double readingShare
    )
    {
        Walking = walking;
        this.readingShare = readingShare;
        Course = course;
        this.logDeterminant = logDeterminant;
        this.squares = squares;
        this.count = count;
        DegreesOfFreedom = degreesOfFreedom;
        Level = level;
        Drift = drift;
        Scale2 = squares / degreesOfFreedom;
        (V0, C1, C2, C3) = variance;
        FreeWalk = readingShare > 0 ? 0 : walking;
    }

    public Course Course { get; }

    public double LogLikelihood => -0.5 * (logDeterminant + (count - 1) * Math.Log(squares)) + Known;

    /// <summary>What is known beside the readings adds it to the logarithm of the likelihood.</summary>
    private double Known { get; init; }

    /// <summary>Degrees of freedom of <see cref="Scale2"/>.</summary>
    public double DegreesOfFreedom { get; private init; }

    /// <summary>State at the last reading.</summary>
    public double Level { get; private init; }

    /// <summary>Rise per unit of the course's clock.</summary>
    public double Drift { get; private init; }

    public double Scale2 { get; private init; }

    public double V0 { get; private init; }

    public double C1 { get; private init; }

    public double C2 { get; private init; }

    public double C3 { get; }

    /// <summary>Variance that a walk adds per clock unit.</summary>
    private double Walking { get; }

    /// <summary>Variance per clock unit, in units of s², of a walk whose state is known at the last reading; 0 for others.</summary>
    public double FreeWalk { get; }

    /// <summary>Reads the readings through a movement.</summary>
    public static DegradationMember Of(
        Movement movement,
        ReadOnlySpan<double> clock,
        ReadOnlySpan<double> values,
        double leastSquares
    )
    {
        if (movement.Kind == MovementKind.DriftWalks)
        {
            return new DriftDesign(movement.Course, clock, movement.Ratio).Read(values, leastSquares);
        }

        var clocks = new Lanes[clock.Length];
        for (var i = 0; i < clock.Length; i++)
        {
            clocks[i] = LaneMath.Of(clock[i]);
        }

        var rows = new Lanes[FourDesign.RowsOf([movement], clock.Length)];
        var four = FourDesign.Of([movement], clocks, rows);
        return four.Member(four.Read(rows, values), 0, movement.Course, leastSquares);
    }

    /// <summary>The same where scatter of this size has been seen elsewhere: sums of squares and degrees of freedom add.</summary>
    /// <remarks>
    /// Scaled inverse chi-square prior of s² with ν0 degrees of freedom: Box and Tiao 1973, section 2.3. Its Γ((n − 1 + ν0)/2)/Γ(ν0/2) counts, since
    /// movements may have learnt their scatter with different freedom.
    /// </remarks>
    public DegradationMember WithScatter(double scale2, double degreesOfFreedom)
    {
        var known = scale2 * degreesOfFreedom;
        var all = count - 1 + degreesOfFreedom;
        return this with
        {
            Known =
                SpecialFunctions.GammaLn(0.5 * all)
                - SpecialFunctions.GammaLn(0.5 * degreesOfFreedom)
                - 0.5
                    * (
                        all * Math.Log(squares + known)
                        - degreesOfFreedom * Math.Log(known)
                        - (count - 1) * Math.Log(squares)
                    ),
            Scale2 = (squares + known) / (DegreesOfFreedom + degreesOfFreedom),
            DegreesOfFreedom = DegreesOfFreedom + degreesOfFreedom,
        };
    }

    /// <summary>The same with a normal prior on the drift: precisions add, and the likelihood takes the chance of a drift so far from the prior.</summary>
    public DegradationMember WithDrift(double priorDrift, double priorStandardDeviation)
    {
        var prior = priorStandardDeviation * priorStandardDeviation / Scale2;
        var both = C2 + prior;
        var drift = (Drift * prior + priorDrift * C2) / both;
        var off = Drift - priorDrift;

        // How far the level at the last reading moves with the drift, and what is left of both variances.
        var reach = C2 > 0 ? (C1 - Walking) / (2 * C2) : 0;
        var variance = C2 * prior / both;
        return this with
        {
            // A drift that is known beforehand does not pay for being free.
            Known = Known + 0.5 * (Math.Log(count + 1) - Math.Log(both / C2) - off * off / (both * Scale2)),
            Level = Level + (drift - Drift) * reach,
            Drift = drift,
            V0 = V0 + reach * reach * (variance - C2),
            C1 = Walking + 2 * reach * variance,
            C2 = variance,
        };
    }

    /// <summary>
    /// The same with a scatter that is not below what a reading has by itself: an explanation that is closer to the readings than they are to the truth is no better for it.
    /// </summary>
    /// <param name="readingVariance">Variance of one reading by its method and its last digit, 0 where it is not known.</param>
    public DegradationMember AtLeast(double readingVariance)
    {
        if (!(readingShare > 0) || !(Scale2 * readingShare < readingVariance))
        {
            return this;
        }

        var least = readingVariance / readingShare;
        return this with { Known = Known - 0.5 * (count - 1) * Math.Log(least / Scale2), Scale2 = least };
    }
}
