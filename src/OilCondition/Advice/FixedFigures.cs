using OilCondition.Limits;

namespace OilCondition;

/// <summary>The figures of one measurand that are, for one oil, fixed figures of its readings, from all of its limits.</summary>
internal sealed class FixedFigures
{
    private readonly Measurand measurand;
    private readonly List<Limit> figures = [];

    public FixedFigures(Oil oil, Measurand measurand, IEnumerable<Limit> limits)
    {
        this.measurand = measurand;
        foreach (var limit in limits)
        {
            if (limit.Measurand.Equals(measurand) && limit.TryResolve(oil, out var absolute))
            {
                figures.Add(absolute);
            }
        }
    }

    public static IReadOnlyList<LimitSide> Sides { get; } = [LimitSide.Upper, LimitSide.Lower];

    /// <summary>What a life runs to: the alarm figure that is reached first, or the alert figure where there is no alarm; null for none.</summary>
    public double? Last(LimitSide side) =>
        Strictest(side, band => band.Alarm, _ => null) ?? Strictest(side, band => band.Alert, _ => null);

    /// <summary>What is passed first of all, alert or alarm; null for none.</summary>
    public double? First(LimitSide side) => Strictest(side, band => band.Alert, band => band.Alarm);

    private double? Strictest(LimitSide side, Func<LimitBand, double?> one, Func<LimitBand, double?> other)
    {
        double? strictest = null;
        foreach (var limit in figures)
        {
            if ((side == LimitSide.Upper ? limit.Upper : limit.Lower) is { } band)
            {
                strictest = Stricter(side, Stricter(side, strictest, one(band)), other(band));
            }
        }

        return strictest;
    }

    /// <summary>A figure of 0 on a logarithmic measurand is never reached and has no logarithm.</summary>
    private double? Stricter(LimitSide side, double? known, double? figure) =>
        figure is not { } reached || !(reached > 0 || measurand.Scale == NaturalScale.Linear) ? known
        : known is not { } before ? reached
        : side == LimitSide.Upper ? Math.Min(before, reached)
        : Math.Max(before, reached);
}
