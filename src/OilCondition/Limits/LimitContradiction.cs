using System.Globalization;
using OilCondition.Text;

namespace OilCondition.Limits;

/// <summary>What one limit, or two of one measurand and kind, say against themselves: nobody could keep them.</summary>
internal static class LimitContradiction
{
    /// <summary>What a limit says against itself; null where it says nothing.</summary>
    public static string? Within(Limit limit) =>
        BetweenSides(Innermost(limit.Upper), Innermost(limit.Lower), limit.Measurand.Id, limit.FigureUnit)
        ?? OfDeadBand(limit);

    /// <summary>What a limit says against an earlier one of the same measurand and kind; null where it says nothing.</summary>
    /// <param name="limit">The limit.</param>
    /// <param name="other">The earlier one, where alert and alarm come from different sources.</param>
    public static string? Between(Limit limit, Limit other)
    {
        if (
            !limit.Measurand.Equals(other.Measurand)
            || limit.FigureUnit != other.FigureUnit
            || limit.Kind != other.Kind
        )
        {
            return null;
        }

        var (id, unit) = (limit.Measurand.Id, limit.FigureUnit);
        return Beyond("upper", limit.Upper?.Alert, other.Upper?.Alarm, 1, id, unit)
            ?? Beyond("upper", other.Upper?.Alert, limit.Upper?.Alarm, 1, id, unit)
            ?? Beyond("lower", limit.Lower?.Alert, other.Lower?.Alarm, -1, id, unit)
            ?? Beyond("lower", other.Lower?.Alert, limit.Lower?.Alarm, -1, id, unit)
            ?? BetweenSides(Innermost(limit.Upper), Innermost(other.Lower), id, unit)
            ?? BetweenSides(Innermost(other.Upper), Innermost(limit.Lower), id, unit);
    }

    private static double? Innermost(LimitBand? band) => band?.Alert ?? band?.Alarm;

    private static string? Beyond(string side, double? alert, double? alarm, int sign, string id, string unit) =>
        sign * alarm < sign * alert
            ? $"The {side} limit of {id} has its alarm ({Figure(alarm!.Value, unit)}) {(sign > 0 ? "below" : "above")} its alert ({Figure(alert!.Value, unit)})."
            : null;

    private static string? BetweenSides(double? upper, double? lower, string id, string unit) =>
        lower >= upper
            ? $"The lower limit of {id} ({Figure(lower!.Value, unit)}) does not lie below its upper one ({Figure(upper!.Value, unit)}): no reading would be normal."
            : null;

    /// <summary>
    /// A reading comes back when it lies inside the figure by the dead band. It cannot where that is below what can be measured, or where the other side
    /// begins before; and a change or a rate must not have to turn round.
    /// </summary>
    private static string? OfDeadBand(Limit limit)
    {
        var (upper, lower) = (Innermost(limit.Upper), Innermost(limit.Lower));
        var measurand = limit.Measurand;
        var room = limit.Kind switch
        {
            _ when limit.DeadBand == 0 => null,
            LimitKind.Absolute => Smaller(
                upper - lower,
                Smaller(upper - measurand.LowestPlausible, measurand.HighestPlausible - lower)
            ),
            LimitKind.ChangeFromNew or LimitKind.RateOfChange => Smaller(Size(upper), Size(lower)),
            _ => null,
        };
        return limit.DeadBand > room
            ? $"The dead band of {measurand.Id} is {Figure(limit.DeadBand, limit.FigureUnit)}, wider than the {Figure(room!.Value, limit.FigureUnit)} in which a reading could come back."
            : null;
    }

    private static double? Size(double? figure) => figure is { } one ? Math.Abs(one) : null;

    private static double? Smaller(double? one, double? other) => other is null || one < other ? one : other;

    private static string Figure(double value, string unit) =>
        (value.ToString("G7", CultureInfo.InvariantCulture) + " " + unit).TrimEnd();
}
