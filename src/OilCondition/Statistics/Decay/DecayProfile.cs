using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The set of all curves whose residual sum of squares stays below a limit, and how far a quantity reaches in it.</summary>
/// <remarks>
/// Bates and Watts (1988): {RSS ≤ RSS_min + t² s²}. For each rate the rest is an ellipse, so that every reach is closed-form; the interval
/// is the envelope over the rates. They are taken at u = ln κ = middle − half cos θ with θ in equal steps: the ellipses shrink to points at
/// both ends like sin θ, which makes the envelope smooth in θ, and a quartic about its extreme then gives the rest of the digits. Beyond an end,
/// where sin θ changes its sign, least and largest change places.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly struct DecayProfile
{
    /// <summary>In rate times span, as good as no decay: a straight line, or a constant where the floor is bounded.</summary>
    private static readonly double LogOfNothing = -44 * Math.Log(2);

    /// <summary>A floor this many times the spread of the values away is no floor.</summary>
    private const double Beyond = 1e7;

    /// <summary>Of the sum of squares about the mean: readings whose scatter leaves less are exact.</summary>
    public const double Rounding = 1e-13;

    // Of four rates each, one a lane; the arrays may be longer.
    private readonly Lanes[] scaledRates;
    private readonly DecayEllipse[] ellipses;
    private readonly double? lowestFloor;
    private readonly double? highestFloor;
    private readonly DecayGrid grid;
    private readonly int count;
    private readonly int lanes;
    private readonly double lead;
    private readonly double centre;
    private readonly double unit;

    /// <summary>The set of curves.</summary>
    /// <param name="columns">Working values and weights.</param>
    /// <param name="shape">What is fixed.</param>
    /// <param name="found">What the fit of these columns found.</param>
    /// <param name="excess">How far the sum of squares may lie above its least, in the unit of the caller's values and weights.</param>
    /// <param name="rateIsKnown">Whether only that rate counts.</param>
    /// <param name="store">Memory to work in, whose last set is then gone.</param>
    public DecayProfile(
        in DecayColumns columns,
        in DecayShape shape,
        DecayFound found,
        double excess,
        bool rateIsKnown,
        DecayStore store
    )
    {
        lead = shape.Lead;
        centre = columns.Centre;
        unit = columns.Unit;
        var reach = new DecayReach(columns, shape, found, excess / (columns.Unit * columns.Unit * columns.WeightUnit));
        Lowest = Math.Log(found.ScaledRate);
        Highest = Lowest;
        if (!rateIsKnown)
        {
            reach.Find(LogOfNothing, out var lowest, out var hasLowest, out var highest, out var hasHighest);
            Lowest = lowest;
            Highest = highest;
            HasNoLowestRate = !hasLowest;
            HasNoHighestRate = !hasHighest;
        }

        grid = Highest > Lowest ? new DecayGrid(Lowest, Highest, HasNoLowestRate) : default;
        count = Math.Max(1, grid.Count);
        lanes = (count + LaneMath.Width - 1) / LaneMath.Width;
        scaledRates = store.Rates(lanes);
        ellipses = store.Ellipses(lanes);
        if (count == 1)
        {
            scaledRates[0] = LaneMath.Of(found.ScaledRate);
            columns.AtFourRates(scaledRates[0], out var d, out var dd, out var dy);

            // Exact readings leave one rate, whose curve is compatible but for rounding, whichever way its squares are summed.
            var squares = LaneMath.At(shape.Free(d, dd, dy, out _, out _), 0);
            var limit = rateIsKnown ? reach.Limit : Math.Max(reach.Limit, squares) + Rounding * shape.Total;
            ellipses[0] = new DecayEllipse(columns.Count, shape, d, dd, dy, limit);
        }
        else
        {
            Between(columns, shape, reach.Limit);
        }

        Floors(out lowestFloor, out highestFloor);
    }

    /// <summary>Up to where a sum of squares is compatible, RSS_min (1 + t²/ν).</summary>
    public static double Limit(double least, double quantile, int degreesOfFreedom) =>
        least * (1 + quantile * quantile / degreesOfFreedom);

    /// <summary>ln of the lowest compatible rate times span.</summary>
    public double Lowest { get; }

    /// <summary>ln of the highest compatible rate times span.</summary>
    public double Highest { get; }

    public bool HasNoLowestRate { get; }

    public bool HasNoHighestRate { get; }

    public double Scaled(double value) => (value - centre) / unit;

    public double Unscaled(double value) => centre + value * unit;

    /// <summary>Lowest and highest compatible rate per unit of time; an end that the readings do not give is null.</summary>
    /// <param name="span">From the start to the last reading.</param>
    public (double? Least, double? Largest) Rates(double span) =>
        (HasNoLowestRate ? null : Math.Exp(Lowest) / span, HasNoHighestRate ? null : Math.Exp(Highest) / span);

    /// <summary>The same as <see cref="Values"/>, in the unit of the values.</summary>
    public (double? Least, double? Largest) UnscaledValues(double scaledTime)
    {
        Values(scaledTime, out var least, out var largest);
        return (least.HasValue ? Unscaled(least.Value) : null, largest.HasValue ? Unscaled(largest.Value) : null);
    }

    /// <summary>How far the curve's value at a time reaches; a time beyond all is the floor.</summary>
    /// <remarks>Before the first reading nothing bounds a curve that may be a sudden drop, unless its start is known.</remarks>
    public void Values(double scaledTime, out double? least, out double? largest)
    {
        least = lowestFloor;
        largest = highestFloor;
        if (HasNoHighestRate && scaledTime < lead)
        {
            least = null;
            largest = null;
        }
        else if (!double.IsPositiveInfinity(scaledTime))
        {
            Ends(scaledTime, out least, out largest);
        }
    }

    [SkipLocalsInit]
    private void Floors(out double? least, out double? largest)
    {
        Span<double> from = stackalloc double[LaneMath.Width * lanes];
        Span<double> to = stackalloc double[LaneMath.Width * lanes];
        for (var i = 0; i < lanes; i++)
        {
            ellipses[i].Floors(out var low, out var high);
            LaneMath.Store(ellipses[i].WhereAny(low), from, LaneMath.Width * i);
            LaneMath.Store(ellipses[i].WhereAny(default(Lanes) - high), to, LaneMath.Width * i);
        }

        Ends(from, to, out least, out largest);
    }

    [SkipLocalsInit]
    private void Ends(double scaledTime, out double? least, out double? largest)
    {
        Span<double> from = stackalloc double[LaneMath.Width * lanes];
        Span<double> to = stackalloc double[LaneMath.Width * lanes];
        for (var i = 0; i < lanes; i++)
        {
            ellipses[i].Range(LaneMath.Drop(scaledRates[i] * LaneMath.Of(scaledTime)), out var low, out var high);
            LaneMath.Store(ellipses[i].WhereAny(low), from, LaneMath.Width * i);
            LaneMath.Store(ellipses[i].WhereAny(default(Lanes) - high), to, LaneMath.Width * i);
        }

        Ends(from, to, out least, out largest);
    }

    private void Ends(ReadOnlySpan<double> from, ReadOnlySpan<double> to, out double? least, out double? largest)
    {
        least = Least(from.Slice(0, count), to, inTime: false);
        largest = -Least(to.Slice(0, count), from, inTime: false);
        least = least < -Beyond ? null : least;
        largest = largest > Beyond ? null : largest;
    }

    /// <summary>The rates between the ends and their ellipses.</summary>
    /// <remarks>Most of the exponentials are spared: of a narrow interval by the sums at a few of the rates, of one without a lowest rate by moments.</remarks>
    [SkipLocalsInit]
    private void Between(in DecayColumns columns, in DecayShape shape, double limit)
    {
        var nodes = count == DecayNodes.Rates ? DecayNodes.Enough(grid.Half) : 0;
        Span<double> sums = stackalloc double[3 * nodes];
        var weights = DecayNodes.Weights(nodes);
        for (var i = 0; i < nodes; i += LaneMath.Width)
        {
            columns.AtFourRates(grid.Nodes(nodes, i), out var d, out var dd, out var dy);
            LaneMath.Store(d, sums, i);
            LaneMath.Store(dd, sums, nodes + i);
            LaneMath.Store(dy, sums, 2 * nodes + i);
        }

        var slow = HasNoLowestRate ? new DecaySlowSums(columns, stackalloc double[DecaySlowSums.Scratch]) : default;
        for (var i = 0; i < lanes; i++)
        {
            var rates = grid.Group(i);
            scaledRates[i] = rates;
            Lanes d = default;
            Lanes dd = default;
            Lanes dy = default;
            for (var node = 0; node < nodes; node++)
            {
                var weight = LaneMath.Load(weights, count * node + LaneMath.Width * i);
                d = LaneMath.MultiplyAdd(weight, LaneMath.Of(sums[node]), d);
                dd = LaneMath.MultiplyAdd(weight, LaneMath.Of(sums[nodes + node]), dd);
                dy = LaneMath.MultiplyAdd(weight, LaneMath.Of(sums[2 * nodes + node]), dy);
            }

            if (HasNoLowestRate && LaneMath.At(rates, LaneMath.Width - 1) <= DecaySlowSums.Fastest)
            {
                slow.AtFourRates(rates, out d, out dd, out dy);
            }
            else if (nodes == 0)
            {
                columns.AtFourRates(rates, out d, out dd, out dy);
            }

            ellipses[i] = new DecayEllipse(columns.Count, shape, d, dd, dy, limit);
        }
    }

    /// <summary>How far the slope where the curve passes an unscaled value, κ (floor − value), reaches, per span. An end that a sudden drop opens is null.</summary>
    [SkipLocalsInit]
    public void Slopes(double value, out double? least, out double? largest)
    {
        Span<double> from = stackalloc double[LaneMath.Width * lanes];
        Span<double> to = stackalloc double[LaneMath.Width * lanes];
        var at = LaneMath.Of(Scaled(value));
        for (var i = 0; i < lanes; i++)
        {
            ellipses[i].Floors(out var low, out var high);
            LaneMath.Store(ellipses[i].WhereAny(scaledRates[i] * (low - at)), from, LaneMath.Width * i);
            LaneMath.Store(ellipses[i].WhereAny(scaledRates[i] * (at - high)), to, LaneMath.Width * i);
        }

        least = Least(from.Slice(0, count), to, inTime: false) * unit;
        largest = -Least(to.Slice(0, count), from, inTime: false) * unit;
        least = HasNoHighestRate && least < 0 ? null : least;
        largest = HasNoHighestRate && largest > 0 ? null : largest;
    }

    /// <summary>When falling curves pass a target, in spans.</summary>
    [SkipLocalsInit]
    public void Crossings(double target, out double? first, out double? last, out bool never)
    {
        Span<double> from = stackalloc double[LaneMath.Width * lanes];
        Span<double> to = stackalloc double[LaneMath.Width * lanes];
        var none = LaneMath.Of(double.PositiveInfinity);
        for (var i = 0; i < lanes; i++)
        {
            ellipses[i].Cross(target, out var early, out var late);
            var earliest = LaneMath.WhereLess(early, LaneMath.Of(1), Exponent(early) / scaledRates[i], none);

            // The reciprocal, which stays smooth where the latest crossing runs away.
            var latest = LaneMath.WhereLess(default, late, scaledRates[i] / Exponent(late), none);
            LaneMath.Store(earliest, from, LaneMath.Width * i);
            LaneMath.Store(latest, to, LaneMath.Width * i);
        }

        first = Least(from.Slice(0, count), to, inTime: true);
        if (first.HasValue)
        {
            first = Math.Max(0, first.Value);
        }

        // A compatible curve that levels off at or above the target never gets below it.
        var reciprocal = Least(to.Slice(0, count), from, inTime: true);
        never = !highestFloor.HasValue || highestFloor >= target || reciprocal <= 0;
        last = never || !first.HasValue ? null : 1 / reciprocal ?? 0;
    }

    /// <summary>The x of a drop 1 − exp(−x), with all digits where it is small.</summary>
    private static Lanes Exponent(Lanes drop)
    {
        var one = LaneMath.Of(1);
        var series = drop * (one + drop * (LaneMath.Of(0.5) + drop * LaneMath.Of(1.0 / 3)));
        return LaneMath.WhereLess(drop, LaneMath.Of(1e-5), series, default(Lanes) - LaneMath.Log(one - drop));
    }

    /// <summary>The least of the values and of the curve through them; none if all are infinite.</summary>
    /// <param name="values">One a rate.</param>
    /// <param name="others">The values at the other side of each ellipse: with the other sign, or of times the reciprocal.</param>
    /// <param name="inTime">Whether these are times.</param>
    private double? Least(ReadOnlySpan<double> values, ReadOnlySpan<double> others, bool inTime)
    {
        var at = 0;
        var least = values[0];
        for (var i = 1; i < values.Length; i++)
        {
            if (values[i] < least)
            {
                least = values[i];
                at = i;
            }
        }

        if (double.IsInfinity(least))
        {
            return null;
        }

        if (values.Length == 1 || !grid.HasNeighbours(at))
        {
            return least;
        }

        Span<double> five = stackalloc double[5];
        for (var i = -2; i <= 2; i++)
        {
            // Beyond an end that is one of the search the values are even, as cos θ is; at any other the ellipse turns round.
            var index = Math.Abs(at + i);
            var turns = index != at + i && !HasNoLowestRate;
            if (index >= values.Length)
            {
                index = 2 * (values.Length - 1) - index;
                turns = !HasNoHighestRate;
            }

            var other = others[index];
            five[i + 2] =
                !turns ? values[index]
                : inTime ? 1 / other
                : -other;
            if (double.IsInfinity(five[i + 2]) || double.IsInfinity(other))
            {
                return least;
            }
        }

        return FivePoints.Least(five);
    }
}
