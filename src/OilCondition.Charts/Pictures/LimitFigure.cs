using OilCondition.Charts.Drawing;
using OilCondition.Limits;

namespace OilCondition.Charts.Pictures;

/// <summary>A figure that a reading is compared with.</summary>
/// <param name="Value">The figure, in the measurand's unit.</param>
/// <param name="Side">On which side it lies.</param>
/// <param name="IsAlarm">Whether the alarm zone begins there; else the alert zone.</param>
/// <param name="IsStatistical">Whether it comes from the machine's own readings and so moves with them.</param>
internal readonly record struct LimitFigure(double Value, LimitSide Side, bool IsAlarm, bool IsStatistical)
{
    /// <summary>All figures of a state that are figures of the reading itself, each once.</summary>
    public static IReadOnlyList<LimitFigure> Of(MeasurandState state) =>
        [
            .. state
                .Limits.Where(one => one.Limit.Kind != LimitKind.RateOfChange)
                .SelectMany(one =>
                    Of(one.Upper, LimitSide.Upper, one.Limit.Kind == LimitKind.OwnHistory)
                        .Concat(Of(one.Lower, LimitSide.Lower, one.Limit.Kind == LimitKind.OwnHistory))
                )
                .Distinct()
                .OrderBy(one => one.IsStatistical),
        ];

    public LevelMark Level(ChartTexts texts, Shown shown)
    {
        var (above, below) = IsAlarm
            ? ("limit.alarm-above", "limit.alarm-below")
            : ("limit.alert-above", "limit.alert-below");
        var words = texts.Say(Side == LimitSide.Upper ? above : below, ("limit", shown.Text(Value)));
        return new LevelMark(
            shown.From(Value),
            IsStatistical ? texts.Say("limit.own-history", ("limit", words)) : words,
            IsAlarm ? Ink.Vermilion : Ink.Orange,
            IsStatistical ? Dash.Dots
                : IsAlarm ? Dash.Solid
                : Dash.Long
        );
    }

    private static IEnumerable<LimitFigure> Of(LimitBand? band, LimitSide side, bool isStatistical)
    {
        if (band?.Alert is { } alert)
        {
            yield return new LimitFigure(alert, side, false, isStatistical);
        }

        if (band?.Alarm is { } alarm)
        {
            yield return new LimitFigure(alarm, side, true, isStatistical);
        }
    }
}
