using System.Runtime.CompilerServices;

namespace OilCondition.Statistics;

/// <summary>Least squares over equal steps of ln κ, from the slowest rate of the search to one that is a step for these readings.</summary>
internal readonly ref struct DecayScan
{
    /// <summary>Below it, in rate times span, the curve is a straight line to within 0.02 % of its fall.</summary>
    public const double LowestScaledRate = 1.0 / 64;

    public const int MostOctaves = 56;

    /// <summary>Levels of a fine scan in an octave.</summary>
    public const int Parts = 4;

    /// <summary>e^−12 of the fall is left at the first reading after the origin: any faster curve is the same step.</summary>
    private const double TimeConstantsInFirstGap = 12;

    /// <summary>ln 2: one octave in ln κ.</summary>
    public const double Octave = 0.6931471805599453;

    private const double PerLn2 = 1.4426950408889634;

    private readonly ReadOnlySpan<double> squares;
    private readonly ReadOnlySpan<double> free;
    private readonly double total;
    private readonly int firstOctave;

    private DecayScan(
        ReadOnlySpan<double> squares,
        ReadOnlySpan<double> free,
        double total,
        int firstOctave,
        double step
    )
    {
        this.total = total;
        this.squares = squares;
        this.free = free;
        this.firstOctave = firstOctave;
        Step = step;
    }

    /// <summary>ln κ of the slowest rate.</summary>
    public static double LogLowest { get; } = Math.Log(LowestScaledRate);

    public int Levels => squares.Length;

    /// <summary>From one level to the next in ln κ.</summary>
    public double Step { get; }

    /// <summary>Where all curves are the same step, their squares differ by no more, and none of them is a minimum before the last.</summary>
    private double Rounding => 1e-14 * total;

    /// <summary>The number of octaves, the last of which is a step for these readings.</summary>
    /// <remarks>
    /// A free start that no reading shows ends the search sooner: what is left of the fall at the first reading then tells the curves apart, and
    /// later drops would have lost its digits.
    /// </remarks>
    /// <param name="columns">The series.</param>
    /// <param name="lead">How long before the first reading the curve begins at a start that nobody knows, in spans.</param>
    public static int Octaves(in DecayColumns columns, double lead)
    {
        var doublings = Math.Log(TimeConstantsInFirstGap / LowestScaledRate / columns.FirstGap) * PerLn2;
        return Math.Min(MostOctaves, lead > 0 ? 1 + (int)doublings : 2 + (int)Math.Ceiling(doublings));
    }

    /// <summary>Fills a scan of octaves.</summary>
    /// <param name="columns">The series.</param>
    /// <param name="shape">What is fixed.</param>
    /// <param name="octaves">Number of octaves.</param>
    /// <param name="squares">Residual sums of squares; at least <see cref="MostOctaves"/>.</param>
    /// <param name="free">The same without a lowest floor.</param>
    public static DecayScan OfOctaves(
        in DecayColumns columns,
        in DecayShape shape,
        int octaves,
        Span<double> squares,
        Span<double> free
    )
    {
        var whole = WholeLanes(octaves);
        columns.Octaves(LowestScaledRate, shape, squares.Slice(0, whole), free.Slice(0, whole));
        return new DecayScan(squares.Slice(0, octaves), free.Slice(0, octaves), shape.Total, 0, Octave);
    }

    /// <summary>The scan of octaves from one of them on, with three levels between any two.</summary>
    /// <param name="columns">The series.</param>
    /// <param name="shape">What is fixed.</param>
    /// <param name="from">The first octave.</param>
    /// <param name="fineSquares">Residual sums of squares; <see cref="Parts"/> times <see cref="MostOctaves"/>.</param>
    /// <param name="fineFree">The same without a lowest floor.</param>
    [SkipLocalsInit]
    public DecayScan Finer(
        in DecayColumns columns,
        in DecayShape shape,
        int from,
        Span<double> fineSquares,
        Span<double> fineFree
    )
    {
        Span<double> between = stackalloc double[MostOctaves];
        Span<double> betweenFree = stackalloc double[MostOctaves];
        var octaves = Levels - from;
        for (var part = 0; part < Parts; part++)
        {
            if (part > 0)
            {
                var rate = Math.Exp(LogLowest + (from + (double)part / Parts) * Octave);
                var whole = WholeLanes(octaves);
                columns.Octaves(rate, shape, between.Slice(0, whole), betweenFree.Slice(0, whole));
            }

            var these = part > 0 ? between : squares.Slice(from);
            var theseFree = part > 0 ? betweenFree : free.Slice(from);
            for (var i = 0; i < octaves; i++)
            {
                fineSquares[Parts * i + part] = these[i];
                fineFree[Parts * i + part] = theseFree[i];
            }
        }

        var levels = Parts * (octaves - 1) + 1;
        return new DecayScan(fineSquares.Slice(0, levels), fineFree.Slice(0, levels), total, from, Octave / Parts);
    }

    public double LogRate(int level) => LogLowest + firstOctave * Octave + level * Step;

    /// <summary>The octave of a rate.</summary>
    public static int OctaveOf(double scaledRate) => (int)((Math.Log(scaledRate) - LogLowest) * PerLn2);

    /// <summary>−1 for the slowest rate of the search, 1 for the fastest, else 0.</summary>
    public int End(int level) =>
        level == Levels - 1 ? 1
        : level == 0 && firstOctave == 0 ? -1
        : 0;

    /// <summary>Whether no neighbour lies lower. The first level of a scan that begins later is a neighbour only.</summary>
    public bool IsMinimum(int level) =>
        (level == 0 ? firstOctave == 0 : squares[level] <= squares[level - 1] + Rounding)
        && (level == Levels - 1 || squares[level] < squares[level + 1] - Rounding);

    /// <summary>Where the scan is lowest near a minimum, in levels from it, by a polynomial through it and its neighbours.</summary>
    /// <param name="level">The minimum; neither the first nor the last level.</param>
    /// <remarks>The reciprocal of what the curve explains is closer to a polynomial than the residual sum of squares: tried on random series.</remarks>
    [SkipLocalsInit]
    public double Lowest(int level)
    {
        // Where the floor's bound holds, the curve is smooth along it; else along the free floor.
        var heights = squares[level] > free[level] ? squares : free;
        Span<double> height = stackalloc double[5];
        var wide = level > 1 && level < Levels - 2;
        for (var i = wide ? 0 : 1; i < (wide ? 5 : 4); i++)
        {
            var explained = total - heights[level - 2 + i];
            if (!(explained > 0))
            {
                return 0;
            }

            height[i] = total / explained;
        }

        return Math.Max(-0.9, Math.Min(0.9, FivePoints.Lowest(height, wide)));
    }

    private static int WholeLanes(int levels) => (levels + LaneMath.Width - 1) / LaneMath.Width * LaneMath.Width;
}
