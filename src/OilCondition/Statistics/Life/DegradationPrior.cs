namespace OilCondition.Statistics;

/// <summary>What is believed of a measurand's way before its own readings speak: how large its random-walk part is, and at which drift.</summary>
/// <remarks>
/// Ratio of random-walk part to reading scatter: variance that the state gains by a random walk over one mean interval between readings, over the
/// variance of one reading. 0 is a straight line with independent scatter, <see cref="PureRandomWalk"/> a random walk read without error.
/// The default leans to the random walk (0.60 on the pure one, 0.05 on the pure line): taking a random walk for a line gives
/// intervals that are much too short, taking a line for a random walk gives them too wide. It was chosen by simulation on one set of cases and
/// checked on another; docs/prognosis.md has both tables.
/// </remarks>
internal sealed class DegradationPrior
{
    /// <summary>Stands in <see cref="Ratios"/> for a random walk read without error.</summary>
    public const double PureRandomWalk = double.MaxValue;

    internal static readonly double[] Grid = [0, 0.3, 3, PureRandomWalk];

    private static readonly double[] Leaning = [0.05, 0.075, 0.275, 0.60];

    private readonly double[] weights;

    private DegradationPrior(double[] weights, bool knowsDrift, double drift, double driftStandardDeviation)
    {
        this.weights = weights;
        KnowsDrift = knowsDrift;
        Drift = drift;
        DriftStandardDeviation = driftStandardDeviation;
    }

    /// <summary>Nothing is known but that most things have a random-walk part; no drift is known.</summary>
    public static DegradationPrior Default { get; } = new(Leaning, knowsDrift: false, 0, 0);

    /// <summary>Only the random walk with drift, read without error.</summary>
    public static DegradationPrior RandomWalk { get; } = new([0, 0, 0, 1], knowsDrift: false, 0, 0);

    /// <summary>The ratios of random-walk part to reading scatter.</summary>
    public static IReadOnlyList<double> Ratios => Grid;

    /// <summary>The weight of each of <see cref="Ratios"/>; together 1.</summary>
    public IReadOnlyList<double> Weights => weights;

    /// <summary>Whether a drift is known beforehand.</summary>
    public bool KnowsDrift { get; }

    /// <summary>Mean drift of others of its kind, per time; 0 where unknown.</summary>
    public double Drift { get; }

    /// <summary>Standard deviation with which a further one's drift is foreseen; 0 where unknown.</summary>
    public double DriftStandardDeviation { get; }

    internal double WeightOf(int index) => weights[index];

    internal static DegradationPrior Learnt(double[] weights, double drift, double driftStandardDeviation) =>
        new(weights, knowsDrift: true, drift, driftStandardDeviation);
}
