using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Cleanliness;

/// <summary>A kidney loop at all three sizes of a code after ISO 4406, each with its own filtration ratio and ingression.</summary>
/// <remarks>
/// <para>
/// One tank and one flow; each size follows its own balance, see <see cref="KidneyLoop"/>. The size that takes longest rules, or the one that never
/// comes there. Larger particles are held back no worse and come in no more often than smaller ones; so codes never rise with size.
/// </para>
/// <para>Source: derived, particle balance of a well-mixed tank.</para>
/// </remarks>
/// <example>
/// <code>
/// var oil = Volume.FromLiters(1000);
/// var flow = VolumeFlow.FromLitersPerMinute(20);
/// var loop = new KidneyLoopSizes(
///     new KidneyLoop(oil, flow, new FilterBeta(20), 2e7),
///     new KidneyLoop(oil, flow, new FilterBeta(100), 5e6),
///     new KidneyLoop(oil, flow, new FilterBeta(1000), 4e5));
/// var (time, rulingSize) = loop.TimeTo(CleanlinessCode.Parse("21/19/16"), CleanlinessCode.Parse("18/16/13"));
/// </code>
/// </example>
public sealed record KidneyLoopSizes
{
    private static readonly CodeSize[] AllSizes = [CodeSize.At4, CodeSize.At6, CodeSize.At14];

    /// <summary>A loop at three sizes.</summary>
    /// <param name="loopAt4">The loop at 4 µm(c).</param>
    /// <param name="loopAt6">The loop at 6 µm(c): same tank and flow, ratio no lower, ingression no higher.</param>
    /// <param name="loopAt14">The loop at 14 µm(c): likewise.</param>
    /// <exception cref="ArgumentNullException">A loop is missing.</exception>
    /// <exception cref="ArgumentException">Tank or flow differ, the ratio falls with size, or the ingression rises.</exception>
    public KidneyLoopSizes(KidneyLoop loopAt4, KidneyLoop loopAt6, KidneyLoop loopAt14)
    {
        At4 = Guard.NotNull(loopAt4);
        At6 = Fitting(At4, Guard.NotNull(loopAt6), nameof(loopAt6));
        At14 = Fitting(At6, Guard.NotNull(loopAt14), nameof(loopAt14));
    }

    /// <summary>At 4 µm(c).</summary>
    public KidneyLoop At4 { get; }

    /// <summary>At 6 µm(c).</summary>
    public KidneyLoop At6 { get; }

    /// <summary>At 14 µm(c).</summary>
    public KidneyLoop At14 { get; }

    /// <summary>The code in the tank that the loop tends to.</summary>
    public CleanlinessCode SteadyCode =>
        CleanlinessCode.FromCounts(At4.SteadyPerMillilitre, At6.SteadyPerMillilitre, At14.SteadyPerMillilitre);

    /// <summary>The code in the tank after a time, from counts.</summary>
    /// <param name="at4PerMillilitre">Count at 4 µm(c) at the start, 0 to 10⁹ per mL.</param>
    /// <param name="at6PerMillilitre">Count at 6 µm(c), not above that.</param>
    /// <param name="at14PerMillilitre">Count at 14 µm(c), not above that.</param>
    /// <param name="time">Time of running, 0 or more.</param>
    /// <returns>The code.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    /// <exception cref="ArgumentException">The counts rise with size.</exception>
    public CleanlinessCode CodeAfter(
        double at4PerMillilitre,
        double at6PerMillilitre,
        double at14PerMillilitre,
        TimeSpan time
    )
    {
        var start = Counts(at4PerMillilitre, at6PerMillilitre, at14PerMillilitre);
        double[] after = [.. AllSizes.Select((size, i) => At(size).CountAfter(start[i], time))];

        // The true curves never cross; where they meet, rounding may put the larger size a last digit above the smaller.
        after[1] = Math.Min(after[0], after[1]);
        after[2] = Math.Min(after[1], after[2]);
        return CleanlinessCode.FromCounts(after[0], after[1], after[2]);
    }

    /// <summary>The time to a target code, from counts.</summary>
    /// <param name="at4PerMillilitre">Count at 4 µm(c) at the start, 0 to 10⁹ per mL.</param>
    /// <param name="at6PerMillilitre">Count at 6 µm(c), not above that.</param>
    /// <param name="at14PerMillilitre">Count at 14 µm(c), not above that.</param>
    /// <param name="target">The target; <c>-</c> where it asks nothing. Each number is reached at its upper limit.</param>
    /// <returns>The time of the whole code, and the size that decides: the slowest, or the one that never comes there and is farthest from it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count lies outside its range.</exception>
    /// <exception cref="ArgumentException">The counts rise with size, or the target has a size without limit (<c>*</c> or <c>&gt;28</c>).</exception>
    public (Arrival<TimeSpan> Time, CodeSize RulingSize) TimeTo(
        double at4PerMillilitre,
        double at6PerMillilitre,
        double at14PerMillilitre,
        CleanlinessCode target
    )
    {
        var start = Counts(at4PerMillilitre, at6PerMillilitre, at14PerMillilitre);
        var sizes = Required(target)
            .Select(pair =>
                (
                    pair.Size,
                    Time: At(pair.Size).TimeTo(start[(int)pair.Size], pair.Limit),
                    Over: At(pair.Size).SteadyPerMillilitre / pair.Limit
                )
            );

        // Never ranks above any time; among sizes that never come there the one farthest from it rules. The smallest size wins a tie.
        var ruling = sizes
            .OrderByDescending(size => size.Time is Arrival<TimeSpan>.Never)
            .ThenByDescending(size => size.Time is Arrival<TimeSpan>.Never ? size.Over : 0)
            .ThenByDescending(size => size.Time.TryEstimate(out var time) ? time : TimeSpan.Zero)
            .First();
        return (ruling.Time, ruling.Size);
    }

    /// <summary>The time to a target code, from a code: each size starts at the upper limit of its number, the longest that the code allows.</summary>
    /// <param name="start">The code at the start, three numbers within the table.</param>
    /// <param name="target">The target; <c>-</c> where it asks nothing.</param>
    /// <returns>The time of the whole code, and the size that decides.</returns>
    /// <exception cref="ArgumentException">The start has a size without number or above the table, or the target one without limit.</exception>
    public (Arrival<TimeSpan> Time, CodeSize RulingSize) TimeTo(CleanlinessCode start, CleanlinessCode target)
    {
        Guard.NotNull(start);
        var counts = AllSizes.Select(size => Limit(start.At(size), size, start, nameof(start))).ToArray();
        return TimeTo(counts[0], counts[1], counts[2], target);
    }

    /// <summary>Whether the steady state keeps a target at every size. A tank that is already there may still rise above it where it does not.</summary>
    /// <param name="target">The target; <c>-</c> where it asks nothing.</param>
    /// <returns>True where no size settles above its limit.</returns>
    /// <exception cref="ArgumentException">The target has a size without limit (<c>*</c> or <c>&gt;28</c>).</exception>
    public bool Holds(CleanlinessCode target) =>
        Required(target).All(pair => At(pair.Size).SteadyPerMillilitre <= pair.Limit);

    /// <summary>The flow whose steady state is a target code, with the filters and the ingression of this loop.</summary>
    /// <param name="target">The target; <c>-</c> where it asks nothing.</param>
    /// <param name="flow">The largest of the flows that the sizes require; 0 where nothing comes in.</param>
    /// <returns>Whether there is such a flow.</returns>
    /// <exception cref="ArgumentException">The target has a size without limit (<c>*</c> or <c>&gt;28</c>).</exception>
    public bool TryFlowToHold(CleanlinessCode target, out VolumeFlow flow) =>
        TryLargest(
            Required(target)
                .Select(pair =>
                {
                    var loop = At(pair.Size);
                    var exists = KidneyLoop.TryFlowToHold(
                        pair.Limit,
                        loop.Filter,
                        loop.IngressionPerMinute,
                        out var needed
                    );
                    return (exists, needed);
                }),
            out flow
        );

    /// <summary>The flow that brings a tank to a target code in a time and holds it, with the filters and the ingression of this loop.</summary>
    /// <param name="at4PerMillilitre">Count at 4 µm(c) at the start, 0 to 10⁹ per mL.</param>
    /// <param name="at6PerMillilitre">Count at 6 µm(c), not above that.</param>
    /// <param name="at14PerMillilitre">Count at 14 µm(c), not above that.</param>
    /// <param name="target">The target; <c>-</c> where it asks nothing.</param>
    /// <param name="time">Time for it, above 0 to 10⁷ min.</param>
    /// <param name="flow">The largest of the flows that the sizes require.</param>
    /// <returns>Whether there is such a flow.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    /// <exception cref="ArgumentException">The counts rise with size, or the target has a size without limit (<c>*</c> or <c>&gt;28</c>).</exception>
    public bool TryFlowToReach(
        double at4PerMillilitre,
        double at6PerMillilitre,
        double at14PerMillilitre,
        CleanlinessCode target,
        TimeSpan time,
        out VolumeFlow flow
    )
    {
        var start = Counts(at4PerMillilitre, at6PerMillilitre, at14PerMillilitre);
        return TryLargest(
            Required(target)
                .Select(pair =>
                {
                    var loop = At(pair.Size);
                    var exists = KidneyLoop.TryFlowToReach(
                        start[(int)pair.Size],
                        pair.Limit,
                        time,
                        loop.OilVolume,
                        loop.Filter,
                        loop.IngressionPerMinute,
                        out var needed
                    );
                    return (exists, needed);
                }),
            out flow
        );
    }

    /// <summary>The loop by the code that it tends to.</summary>
    /// <returns>For example <c>1000 L, 20 L/min, steady at 17/15/12</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(At4.OilVolume.Liters)} L, {PlainText.Number(At4.Flow.LitersPerMinute)} L/min, steady at {SteadyCode}";

    private static bool TryLargest(IEnumerable<(bool Exists, VolumeFlow Flow)> flows, out VolumeFlow flow)
    {
        var all = flows.ToList();
        flow = all.Select(one => one.Flow).OrderByDescending(one => one.MillilitersPerMinute).First();
        return all.All(one => one.Exists);
    }

    private static KidneyLoop Fitting(KidneyLoop smaller, KidneyLoop larger, string name)
    {
        // A billionth is the rounding of one unit into another.
        if (
            !(Math.Abs((larger.OilVolume / smaller.OilVolume) - 1) <= 1e-9)
            || !(Math.Abs((larger.Flow / smaller.Flow) - 1) <= 1e-9)
        )
        {
            throw new ArgumentException(
                $"{name} has another oil volume or flow; allowed: the same at all sizes.",
                name
            );
        }

        return larger.Filter.Value >= smaller.Filter.Value && larger.IngressionPerMinute <= smaller.IngressionPerMinute
            ? larger
            : throw new ArgumentException(
                FormattableString.Invariant(
                    $"{name} has a filtration ratio of {larger.Filter.Value:G7} and {larger.IngressionPerMinute:G7} particles per min; allowed: a ratio of {smaller.Filter.Value:G7} or more and {smaller.IngressionPerMinute:G7} per min or fewer, as at the smaller size."
                ),
                name
            );
    }

    private static double[] Counts(double at4PerMillilitre, double at6PerMillilitre, double at14PerMillilitre)
    {
        Guard.InRange(at4PerMillilitre, 0, 1e9, "per mL");
        Guard.InRange(at6PerMillilitre, 0, at4PerMillilitre, "per mL");
        Guard.InRange(at14PerMillilitre, 0, at6PerMillilitre, "per mL");
        return [at4PerMillilitre, at6PerMillilitre, at14PerMillilitre];
    }

    private static IEnumerable<(CodeSize Size, double Limit)> Required(CleanlinessCode target)
    {
        Guard.NotNull(target);
        return
        [
            .. AllSizes
                .Where(size => target.At(size).Kind != ScaleNumberKind.NotCounted)
                .Select(size => (size, Limit(target.At(size), size, target, nameof(target)))),
        ];
    }

    private static double Limit(ScaleNumber number, CodeSize size, CleanlinessCode code, string name) =>
        number.HighestPerMillilitre is var limit && Guard.IsFinite(limit)
            ? limit
            : throw new ArgumentException($"{name} is {code}; '{number}' gives no limit {size}.", name);

    private KidneyLoop At(CodeSize size) =>
        size switch
        {
            CodeSize.At4 => At4,
            CodeSize.At6 => At6,
            _ => At14,
        };
}
