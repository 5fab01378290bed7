using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The share of the proportional part in a scatter of two components: the mean over a grid of shares, each by its likelihood.</summary>
/// <remarks>
/// The likelihood of the readings is that of what the fit leaves over (restricted, Patterson and Thompson 1971, from memory):
/// ½ Σ ln w − ½ (n − p) ln RSS − ½ ln |J'WJ|. A mean is steadier than the best one: with ten readings several shares are about as likely. All of
/// them have the form a² + (b f)², and so has their mean.
/// </remarks>
internal sealed class DecayShares
{
    /// <summary>How often weights and curve are brought to agree for each share; the last one is iterated to the end.</summary>
    public const int Iterations = 3;

    private readonly List<Tried> tried = [];

    /// <summary>Never all of it: every instrument has a constant part, and a little of it costs little where there is none.</summary>
    public static IReadOnlyList<double> Grid { get; } = [0, 0.5, 0.8, 0.95, 0.99];

    /// <summary>The mean variance has this share in proportion.</summary>
    public double Mean
    {
        get
        {
            double variance = 0;
            double proportional = 0;
            var best = tried.Count == 0 ? 0 : tried.Max(one => one.LogLikelihood);
            foreach (var one in tried)
            {
                var part = one.Variance * Math.Exp(one.LogLikelihood - best) * Prior(one.Share);
                variance += part;
                proportional += part * one.Share;
            }

            return variance > 0 ? proportional / variance : 0;
        }
    }

    /// <summary>For the check of the course: the mean of its chances, each share by its likelihood beside the columns of the check.</summary>
    /// <remarks>Told beside a course that is contradicted, the scatter would take what contradicts it for scatter.</remarks>
    public CourseChances Course
    {
        get
        {
            double weights = 0;
            double faster = 0;
            double slower = 0;
            var best = tried.Count == 0 ? 0 : tried.Max(one => one.Widened);
            foreach (var one in tried)
            {
                var weight = Math.Exp(one.Widened - best) * Prior(one.Share);
                weights += weight;
                faster += weight * one.Chances.FasterAtFirst;
                slower += weight * one.Chances.SlowerAtFirst;
            }

            return weights > 0 ? new CourseChances(faster / weights, slower / weights) : CourseChances.Untested;
        }
    }

    /// <summary>Adds a share that was fitted.</summary>
    /// <param name="share">The share.</param>
    /// <param name="fit">The fit with it.</param>
    /// <param name="design">Its derivatives.</param>
    /// <param name="weights">Its weights.</param>
    /// <param name="withCourse">Whether the course will be asked for: its columns take longer than the rest.</param>
    public void Add(
        double share,
        in ExponentialDecay fit,
        in DecayDesign design,
        ReadOnlySpan<double> weights,
        bool withCourse
    )
    {
        if (!(fit.ResidualSumOfSquares > 0))
        {
            return;
        }

        var logWeights = 0.0;
        foreach (var weight in weights)
        {
            logWeights += weight > 0 ? Math.Log(weight) : 0;
        }

        var (squares, degrees, logSize) = withCourse ? design.Widened() : (1, 0, 0);
        tried.Add(
            new Tried(
                share,
                fit.ResidualSumOfSquares / fit.DegreesOfFreedom,
                0.5 * logWeights - 0.5 * fit.DegreesOfFreedom * Math.Log(fit.ResidualSumOfSquares) - design.LogSize,
                0.5 * logWeights - 0.5 * degrees * Math.Log(squares) - logSize,
                withCourse ? design.Course(fit.Status, fit.Start >= fit.Floor) : CourseChances.Untested
            )
        );
    }

    /// <summary>Constant scatter stands for one model of the grid, all others for the second; few readings cannot tell them apart.</summary>
    private static double Prior(double share) => share == 0 ? 2 : 1;

    public void Add(double share, double variance, double logLikelihood) =>
        tried.Add(new Tried(share, variance, logLikelihood, 0, CourseChances.Untested));

    /// <param name="Share">In proportion.</param>
    /// <param name="Variance">The mean one.</param>
    /// <param name="LogLikelihood">Of this share.</param>
    /// <param name="Widened">The same beside the columns of the check.</param>
    /// <param name="Chances">The check at this share.</param>
    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Tried(
        double Share,
        double Variance,
        double LogLikelihood,
        double Widened,
        CourseChances Chances
    );
}
