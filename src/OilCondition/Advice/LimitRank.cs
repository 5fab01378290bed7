using OilCondition.Limits;

namespace OilCondition;

/// <summary>Which of several limits of one measurand asks for most.</summary>
internal static class LimitRank
{
    public static FindingCode CodeOf(LimitKind kind) =>
        kind switch
        {
            LimitKind.RateOfChange => FindingCode.RateOfChange,
            LimitKind.OwnHistory => FindingCode.OutOfTheUsual,
            _ => FindingCode.LimitPassed,
        };

    /// <summary>Whether the figures of a limit are, for one oil, fixed figures of the reading.</summary>
    public static bool IsFixed(Limit limit) => CodeOf(limit.Kind) == FindingCode.LimitPassed;

    public static IReadOnlyList<LimitEvaluation> WorstOfEachCode(IReadOnlyList<LimitEvaluation> limits) =>
        limits.Count == 1
            ? limits
            :
            [
                .. limits
                    .GroupBy(one => CodeOf(one.Limit.Kind))
                    .OrderBy(group => group.Key)
                    .Select(group => group.OrderByDescending(Rank).ThenByDescending(Beyond).First()),
            ];

    public static LimitEvaluation Worst(IReadOnlyList<LimitEvaluation> ofEachCode) =>
        ofEachCode.Count == 1 ? ofEachCode[0] : ofEachCode.OrderByDescending(Rank).First();

    /// <summary>A bound that may lie beyond a figure comes before a reading that is known to lie inside another one.</summary>
    private static int Rank(LimitEvaluation one) =>
        one.State switch
        {
            LimitState.Alarm => 6,
            LimitState.Alert => 5,
            _ when one.Pending >= LimitState.Alert => one.Pending == LimitState.Alarm ? 4 : 3,
            LimitState.NotDetermined => one.Reason == LimitReason.BoundDoesNotDecide ? 2 : 0,
            _ => 1,
        };

    /// <summary>By how much the figure is passed: of two figures that are passed, the stricter one by more. Rates are compared per hour.</summary>
    private static double Beyond(LimitEvaluation one)
    {
        if (one.Figure is not { } figure)
        {
            return 0;
        }

        var value = one.Rate ?? one.Reading!.Value.Value;
        return (one.Side == LimitSide.Upper ? value - figure : figure - value) / (one.Limit.Per?.TotalHours ?? 1);
    }
}
