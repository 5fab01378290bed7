using OilCondition.Limits;

namespace OilCondition;

/// <summary>The figures of one measurand that are, for one oil, fixed figures of its readings, from all of its limits.</summary>
internal sealed class FixedFigures
{
    private readonly Measurand measurand;
    private readonly List<Limit> figures;

    public FixedFigures(Oil oil, Measurand measurand, IEnumerable<Limit> limits)
    {
        this.measurand = measurand;
        figures =
        [
            .. limits
                .Where(limit => limit.Measurand.Equals(measurand))
                .Select(limit => limit.TryResolve(oil, out var absolute) ? absolute : null)
                .OfType<Limit>(),
        ];
    }

    public static IReadOnlyList<LimitSide> Sides { get; } = [LimitSide.Upper, LimitSide.Lower];

    /// <summary>What a life runs to: the alarm figure that is reached first, or the alert figure where there is no alarm; null for none.</summary>
    public double? Last(LimitSide side) =>
        Strictest(side, Bands(side).Select(band => band.Alarm))
        ?? Strictest(side, Bands(side).Select(band => band.Alert));

    /// <summary>What is passed first of all, alert or alarm; null for none.</summary>
    public double? First(LimitSide side) =>
        Strictest(side, Bands(side).SelectMany(band => new[] { band.Alert, band.Alarm }));

    /// <summary>Whether a reading is known to lie beyond a figure; on the figure it does not, but one of 'more than the figure' does.</summary>
    public static bool IsBeyond(Reading reading, double figure, LimitSide side)
    {
        var (value, bound, inwards, outwards) =
            side == LimitSide.Upper
                ? (reading.Value, figure, Qualifier.LessThan, Qualifier.GreaterThan)
                : (-reading.Value, -figure, Qualifier.GreaterThan, Qualifier.LessThan);
        return reading.Qualifier != inwards && (value > bound || (reading.Qualifier == outwards && value >= bound));
    }

    private IEnumerable<LimitBand> Bands(LimitSide side) =>
        figures.Select(limit => side == LimitSide.Upper ? limit.Upper : limit.Lower).OfType<LimitBand>();

    /// <summary>A figure of 0 on a logarithmic measurand is never reached and has no logarithm.</summary>
    private double? Strictest(LimitSide side, IEnumerable<double?> candidates)
    {
        var reachable = candidates
            .OfType<double>()
            .Where(figure => figure > 0 || measurand.Scale == NaturalScale.Linear)
            .ToList();
        return reachable.Count == 0 ? null
            : side == LimitSide.Upper ? reachable.Min()
            : reachable.Max();
    }
}
