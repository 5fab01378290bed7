using MathNet.Numerics.LinearAlgebra;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>
/// The second route for <see cref="DegradationMember"/>: the covariance of the readings written out as a matrix, generalised least squares, and the
/// prediction of the state from its covariance with the readings (universal kriging).
/// </summary>
/// <remarks>
/// Covariance of a Wiener process min(s, t), of its integral min²(3 max − min)/6 (Wecker and Ansley 1983). A constant that is added to every element, a
/// start that is not known, changes neither level nor |V| 1′V⁻¹1, and makes a walk read without error invertible.
/// </remarks>
internal sealed class DenseMember
{
    private const double Start = 1;

    private readonly double[] clock;
    private readonly Func<double, double, double> ofState;
    private readonly Matrix<double> inverse;
    private readonly Matrix<double> design;
    private readonly Vector<double> residual;

    public DenseMember(Movement movement, double[] clock, double[] values)
    {
        this.clock = clock;
        var n = clock.Length;
        var share = movement.Ratio == Movement.PureWalk ? 1 : movement.Ratio / (1 + movement.Ratio);
        var reading = movement.Kind == MovementKind.DriftWalks ? 1 : 1 - share;
        ofState =
            movement.Kind == MovementKind.DriftWalks
                ? (s, t) =>
                    Start + 3 * movement.Ratio * Math.Pow(Math.Min(s, t), 2) * (3 * Math.Max(s, t) - Math.Min(s, t)) / 6
                : (s, t) => Start + share * (n - 1) * Math.Min(s, t);
        var v = Matrix<double>.Build.Dense(n, n, (i, j) => ofState(clock[i], clock[j]) + (i == j ? reading : 0));
        inverse = v.Inverse();
        var ones = Vector<double>.Build.Dense(n, 1);
        var columns = movement.Kind == MovementKind.Still ? 1 : 2;
        design = Matrix<double>.Build.Dense(n, columns, (i, j) => j == 0 ? 1 : clock[i]);
        Information = design.TransposeThisAndMultiply(inverse * design);
        var y = Vector<double>.Build.DenseOfArray(values);
        Parts = Information.Solve(design.TransposeThisAndMultiply(inverse * y));
        residual = y - design * Parts;
        Squares = residual * (inverse * residual);
        DegreesOfFreedom = n - columns;
        Scale2 = Squares / DegreesOfFreedom;
        LogLikelihood =
            -0.5
            * (
                v.Cholesky().DeterminantLn
                + Math.Log(ones * (inverse * ones))
                + (n - 1) * Math.Log(Squares)
                + (columns == 2 ? Math.Log(n + 1) : 0)
            );
    }

    /// <summary>Level at the start and drift, as far as there is one.</summary>
    public Vector<double> Parts { get; }

    /// <summary>X′V⁻¹X.</summary>
    public Matrix<double> Information { get; }

    public double Squares { get; }

    public double DegreesOfFreedom { get; }

    public double Scale2 { get; }

    public double LogLikelihood { get; }

    /// <summary>Rise per clock unit from the last reading on; of a drift that walks the latest one.</summary>
    public double Drift => StateAfter(1).Mean - StateAfter(0).Mean;

    /// <summary>The state x clock units after the last reading, and its variance in units of s²; for other parts with other information where these are given.</summary>
    public (double Mean, double Variance) StateAfter(
        double x,
        Vector<double>? parts = null,
        Matrix<double>? information = null
    )
    {
        var at = clock[^1] + x;
        var with = Vector<double>.Build.Dense(clock.Length, i => ofState(clock[i], at));
        var own = Vector<double>.Build.Dense(design.ColumnCount, j => j == 0 ? 1 : at);
        var reach = own - design.TransposeThisAndMultiply(inverse * with);
        var one = parts ?? Parts;
        var left = residual + design * (Parts - one);
        return (
            own * one + with * (inverse * left),
            ofState(at, at) - with * (inverse * with) + reach * (information ?? Information).Solve(reach)
        );
    }
}
