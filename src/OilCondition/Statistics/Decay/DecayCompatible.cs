namespace OilCondition.Statistics;

/// <summary>All curves that agree with the readings, whichever way of reading them they belong to, and how far a quantity reaches among them.</summary>
/// <remarks>
/// Where a reading may be an outlier and it is not known which, or the clock is not known, that is one more, discrete part: its profile is the union over the ways,
/// under one limit for the sum of squares.
/// </remarks>
internal sealed class DecayCompatible
{
    private readonly List<(DecayView View, DecayProfile Profile)> ways;

    public DecayCompatible(List<(DecayView View, DecayProfile Profile)> ways) => this.ways = ways;

    /// <summary>Ends of the rate; an end that the readings do not give is null.</summary>
    public void Rates(out double? least, out double? largest)
    {
        least = double.PositiveInfinity;
        largest = 0;
        foreach (var (view, profile) in ways)
        {
            var (low, high) = profile.Rates(view.Fit.Span);
            least = Lower(least, low);
            largest = Higher(largest, high);
        }
    }

    /// <summary>Ends of the curve at a time, of the start at minus and of the floor at plus infinity.</summary>
    public void Values(double time, out double? least, out double? largest)
    {
        least = double.PositiveInfinity;
        largest = double.NegativeInfinity;
        foreach (var (view, profile) in ways)
        {
            var scaled =
                double.IsInfinity(time) ? Math.Max(0, time)
                : view.Fit.Span > 0 ? Math.Max(0, (On(view, time) - view.Fit.StartTime) / view.Fit.Span)
                : 0;
            var (low, high) = profile.UnscaledValues(scaled);
            least = Lower(least, low);
            largest = Higher(largest, high);
        }
    }

    /// <summary>Ends of the slope where the curve passes a value.</summary>
    public void Slopes(double value, out double? least, out double? largest)
    {
        least = double.PositiveInfinity;
        largest = double.NegativeInfinity;
        foreach (var (view, profile) in ways)
        {
            profile.Slopes(value, out var low, out var high);
            least = Lower(least, low / view.Fit.Span);
            largest = Higher(largest, high / view.Fit.Span);
        }
    }

    /// <summary>When falling curves pass a target, on the plain clock.</summary>
    public void Crossings(double target, out double? first, out double? last, out bool never)
    {
        first = null;
        last = null;
        never = false;
        foreach (var (view, profile) in ways)
        {
            profile.Crossings(profile.Scaled(target), out var early, out var late, out var not);
            never |= not;
            if (early is { } from)
            {
                from = Plain(view, view.Fit.StartTime + from * view.Fit.Span);
                first = first < from ? first : from;
            }

            if (late is { } to)
            {
                to = Plain(view, view.Fit.StartTime + to * view.Fit.Span);
                last = last > to ? last : to;
            }
        }

        last = never ? null : last;
    }

    private static double On(DecayView view, double time) => view.Clock?.FromPlain(time) ?? time;

    private static double Plain(DecayView view, double time) => view.Clock?.ToPlain(time) ?? time;

    private static double? Lower(double? one, double? other) => one is { } a && other is { } b ? Math.Min(a, b) : null;

    private static double? Higher(double? one, double? other) => one is { } a && other is { } b ? Math.Max(a, b) : null;
}
