using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The rates of a profile, four a group: ln κ = middle − half cos θ with θ in equal steps.</summary>
/// <remarks>
/// Where no rate is too slow, most of the steps lie at rates whose curves are straight lines to within 1e-5 of their fall. All that a profile asks for, up
/// to a thousand spans ahead, is there linear in κ, so that none of it has an end between the slowest rate and those: they are left out.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly struct DecayGrid
{
    /// <summary>The most that ln κ may move from one rate to the next.</summary>
    private const double WidestStep = 0.35;

    /// <summary>ln of a rate times span at which a curve is a straight line within the readings and far beyond them.</summary>
    private const double LogOfStraight = -12;

    private readonly double[] rises;
    private readonly double lowest;

    /// <summary>Groups left out after the first.</summary>
    private readonly int leftOut;

    /// <summary>The rates between two ends, of which the upper one is higher.</summary>
    /// <param name="lowest">ln of the lowest rate times span.</param>
    /// <param name="highest">ln of the highest.</param>
    /// <param name="hasNoLowest">Whether the lowest is that of a straight line.</param>
    public DecayGrid(double lowest, double highest, bool hasNoLowest)
    {
        this.lowest = lowest;
        Half = (highest - lowest) / 2;
        var steps = Math.Max(
            DecayNodes.Rates,
            (int)Math.Ceiling(Math.PI * Half / WidestStep / LaneMath.Width) * LaneMath.Width
        );
        rises = DecayNodes.Rises(steps);
        var straight = 1 - (LogOfStraight - lowest) / Half;
        leftOut =
            hasNoLowest && straight > -1
                ? Math.Max(0, (int)(Math.Acos(straight) / Math.PI * (steps - 1)) / LaneMath.Width - 1)
                : 0;
        Count = steps - LaneMath.Width * leftOut;
    }

    /// <summary>Half the width in ln κ.</summary>
    public double Half { get; }

    /// <summary>Number of rates, a whole number of groups.</summary>
    public int Count { get; }

    /// <summary>Four of the rates.</summary>
    public Lanes Group(int index) => At(rises, LaneMath.Width * (index == 0 ? 0 : index + leftOut));

    /// <summary>Four of the points of an interpolation between the ends.</summary>
    public Lanes Nodes(int count, int first) => At(DecayNodes.Rises(count), first);

    /// <summary>Whether the two rates on both sides of one are its neighbours: between the first group and the next some may be left out.</summary>
    public bool HasNeighbours(int index) => leftOut == 0 || index < LaneMath.Width - 2 || index > LaneMath.Width + 1;

    private Lanes At(ReadOnlySpan<double> along, int first) =>
        LaneMath.Exp(LaneMath.MultiplyAdd(LaneMath.Of(Half), LaneMath.Load(along, first), LaneMath.Of(lowest)));
}
