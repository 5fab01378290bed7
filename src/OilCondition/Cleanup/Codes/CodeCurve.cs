using System.Diagnostics.CodeAnalysis;
using OilCondition.Cleanliness;
using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Cleanup;

/// <summary>Counts of a run at the sizes of ISO 4406, each with its fitted fall, as codes over time.</summary>
/// <remarks>
/// Each size is fitted for itself, on the logarithm of the count by default (<see cref="CleanupOptions.ForCounts"/>), with scatter in
/// proportion to the count where one count is 0. A scale number is that of the fitted count (<see cref="Iso4406.ScaleNumber"/>); a target
/// number is reached at its upper limit, inclusive. Where curves that are fitted apart cross, the smaller size takes the count of the larger
/// one: cumulative counts cannot rise with size.
/// </remarks>
/// <example>
/// <code>
/// var codes = CodeCurve.Fit(moments, at4PerMl, at6PerMl, at14PerMl);
/// var ready = codes.TimeTo(CleanlinessCode.Parse("16/14/11"));       // one of the cases of Arrival
/// </code>
/// </example>
public sealed partial class CodeCurve
{
    private const int MostPoints = 100_000;

    private readonly IReadOnlyDictionary<CodeSize, CleanupCurve> curves;

    /// <summary>Curves of counts per mL that were fitted apart.</summary>
    /// <param name="at4">At 4 µm(c); null for a microscope count, which has no such size.</param>
    /// <param name="at6">At 6 µm(c), or 5 µm by microscope.</param>
    /// <param name="at14">At 14 µm(c), or 15 µm by microscope.</param>
    /// <exception cref="ArgumentNullException">A curve other than the first is missing.</exception>
    public CodeCurve(CleanupCurve? at4, CleanupCurve at6, CleanupCurve at14)
    {
        var found = new Dictionary<CodeSize, CleanupCurve>
        {
            [CodeSize.At6] = Guard.NotNull(at6),
            [CodeSize.At14] = Guard.NotNull(at14),
        };
        if (at4 is not null)
        {
            found[CodeSize.At4] = at4;
        }

        curves = found;
    }

    /// <summary>Whether every size has enough readings for a curve.</summary>
    public bool HasCurves => curves.Values.All(curve => curve.HasCurve);

    /// <summary>Fits the counts of an automatic counter.</summary>
    /// <param name="moments">When the samples were taken; n moments in any order.</param>
    /// <param name="at4PerMillilitre">Counts at 4 µm(c) and above, per mL, 0 or more; n values.</param>
    /// <param name="at6PerMillilitre">Counts at 6 µm(c) and above.</param>
    /// <param name="at14PerMillilitre">Counts at 14 µm(c) and above.</param>
    /// <param name="options">What is known beforehand, the same for all sizes; null for counts without a zero.</param>
    /// <returns>The curves.</returns>
    /// <exception cref="ArgumentException">The lists differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative, not finite or above 10¹².</exception>
    public static CodeCurve Fit(
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<double> at4PerMillilitre,
        IReadOnlyList<double> at6PerMillilitre,
        IReadOnlyList<double> at14PerMillilitre,
        CleanupOptions? options = null
    ) =>
        new(
            Curve(moments, at4PerMillilitre, options, nameof(at4PerMillilitre)),
            Curve(moments, at6PerMillilitre, options, nameof(at6PerMillilitre)),
            Curve(moments, at14PerMillilitre, options, nameof(at14PerMillilitre))
        );

    /// <summary>The fall at one size.</summary>
    /// <param name="size">The size.</param>
    /// <param name="curve">Its curve, in counts per mL, or null.</param>
    /// <returns>Whether that size was counted.</returns>
    public bool TryCurve(CodeSize size, [NotNullWhen(true)] out CleanupCurve? curve) =>
        curves.TryGetValue(size, out curve);

    /// <summary>The code at a moment.</summary>
    /// <param name="at">The moment, not before the origin of a curve.</param>
    /// <param name="confidence">Two-sided confidence level of each size, above 0 and below 1.</param>
    /// <param name="point">The code with its ends, or null.</param>
    /// <returns>False if a size has too few readings.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The moment lies before the origin of a curve, or the level outside its range.</exception>
    public bool TryCodeAt(DateTimeOffset at, double confidence, [NotNullWhen(true)] out CodeCurve.Point? point)
    {
        Guard.OpenUnitInterval(confidence);
        point = null;
        if (!HasCurves)
        {
            return false;
        }

        var bands = curves.ToDictionary(pair => pair.Key, pair => pair.Value.IntervalAt(at, confidence));
        point = new CodeCurve.Point(
            at,
            Code(size => curves[size].ValueAt(at)),
            Code(size => bands[size].Lower ?? 0),
            Code(size => bands[size].Upper ?? CleanupOptions.LargestContent),
            confidence,
            bands.Values.Any(band => band.CoverageInDoubt),
            curves.Values.Any(curve => at > curve.LastReadingAt)
        );
        return true;
    }

    /// <summary>The codes over a span of time.</summary>
    /// <param name="from">First moment, not before the origin of a curve.</param>
    /// <param name="to">Last moment, included where the step meets it.</param>
    /// <param name="step">Time between the points, above 0; at most 100 000 points.</param>
    /// <param name="confidence">Two-sided confidence level of each size, above 0 and below 1.</param>
    /// <returns>The codes in order of time; none if a size has too few readings.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The span is negative, has too many points, or begins before the origin of a curve.</exception>
    public IReadOnlyList<CodeCurve.Point> CodesOver(
        DateTimeOffset from,
        DateTimeOffset to,
        TimeSpan step,
        double confidence = 0.9
    )
    {
        var span = Guard.NotNegative((to - from).TotalHours, "h after the first moment", nameof(to));
        Guard.InRange(step.TotalHours, Math.Max(1e-6, span / MostPoints), 1e6, "h", nameof(step));
        var points = new List<CodeCurve.Point>();
        var count = (int)Math.Floor(span / step.TotalHours + 1e-9);
        for (var i = 0; i <= count; i++)
        {
            if (!TryCodeAt(from.AddHours(i * step.TotalHours), confidence, out var point))
            {
                break;
            }

            points.Add(point);
        }

        return points;
    }

    /// <summary>When the counts reach a target code: when the last size gets there.</summary>
    /// <remarks>
    /// The late end is that of the latest size, which holds as often as stated; for the early end each size has its share of the uncertainty, so
    /// that it holds at least as often as stated. Never, or not determined, if that is so of a size; <see cref="RulingSize"/> names it.
    /// </remarks>
    /// <param name="target">The code; <c>-</c> where it asks nothing.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>One of the cases of <see cref="Arrival{T}"/>.</returns>
    /// <exception cref="ArgumentException">The target asks for a size without counts, or is too numerous to count.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level lies outside its range.</exception>
    public Arrival<DateTimeOffset> TimeTo(CleanlinessCode target, double confidence = 0.9) =>
        Search(target, confidence).Whole();

    /// <summary>The size that decides when a target code is reached: never there, without enough readings, not before a moment, or the last by the best curves.</summary>
    /// <param name="target">The code; <c>-</c> where it asks nothing.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>The size. Its own time is that of its curve (<see cref="TryCurve"/>) to the upper limit of its scale number.</returns>
    /// <exception cref="ArgumentException">The target asks for a size without counts, or is too numerous to count.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level lies outside its range.</exception>
    public CodeSize RulingSize(CleanlinessCode target, double confidence = 0.9) =>
        Search(target, confidence).RulingSize;

    /// <summary>The curves, size by size.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        string.Join("; ", curves.OrderBy(pair => pair.Key).Select(pair => $"{NameOf(pair.Key)}: {pair.Value}"));

    private static string NameOf(CodeSize size) =>
        size switch
        {
            CodeSize.At4 => "4 µm(c)",
            CodeSize.At6 => "6 µm(c)",
            _ => "14 µm(c)",
        };

    private CodeTimeSearch Search(CleanlinessCode target, double confidence)
    {
        Guard.NotNull(target);
        var limits = new Dictionary<CodeSize, double>();
        Ask(limits, CodeSize.At4, target.At4, target);
        Ask(limits, CodeSize.At6, target.At6, target);
        Ask(limits, CodeSize.At14, target.At14, target);
        return new CodeTimeSearch(limits, curves, confidence);
    }

    private static CleanupCurve Curve(
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<double> counts,
        CleanupOptions? options,
        string name
    )
    {
        Guard.NotNull(moments);
        Guard.SameLength(Guard.NotNull(counts, name).Count, moments.Count, name, nameof(moments));
        foreach (var count in counts)
        {
            Guard.InRange(count, 0, CleanupOptions.LargestContent, "per mL", name);
        }

        var usual = options ?? CleanupOptions.ForCounts;
        return CleanupCurve.Fit(
            moments,
            counts,
            usual.Noise == DecayNoise.Logarithmic && counts.Contains(0) ? usual.With(DecayNoise.Proportional) : usual
        );
    }

    private void Ask(Dictionary<CodeSize, double> limits, CodeSize size, ScaleNumber number, CleanlinessCode target)
    {
        if (number == ScaleNumber.NotCounted)
        {
            return;
        }

        var limit = number.HighestPerMillilitre;
        if (!Guard.IsFinite(limit) || !curves.ContainsKey(size))
        {
            throw new ArgumentException(
                $"Target {target} asks for a number at {size} that these counts cannot answer.",
                nameof(target)
            );
        }

        limits[size] = limit;
    }

    private CleanlinessCode Code(Func<CodeSize, double> countOf)
    {
        var at14 = Math.Max(0, countOf(CodeSize.At14));
        var at6 = Math.Max(at14, countOf(CodeSize.At6));
        return new CleanlinessCode(
            curves.ContainsKey(CodeSize.At4)
                ? ScaleNumber.Of(Iso4406.ScaleNumber(Math.Max(at6, countOf(CodeSize.At4))))
                : ScaleNumber.NotCounted,
            ScaleNumber.Of(Iso4406.ScaleNumber(at6)),
            ScaleNumber.Of(Iso4406.ScaleNumber(at14))
        );
    }
}
