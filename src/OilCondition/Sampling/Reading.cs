using OilCondition.Text;

namespace OilCondition;

/// <summary>A reported number in the unit of its measurand, with its qualifier.</summary>
public readonly record struct Reading
{
    private readonly string? method;

    /// <summary>A reading.</summary>
    /// <param name="value">The number, in the unit of its measurand.</param>
    /// <param name="qualifier">How the number is to be read.</param>
    /// <param name="method">Test method or instrument, where it is known; empty otherwise. A series never mixes two methods.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite.</exception>
    public Reading(double value, Qualifier qualifier = Qualifier.None, string method = "")
    {
        // Empty is kept as null, so that a reading without a method equals the default of this struct.
        this.method = Guard.NotNull(method).Length == 0 ? null : method;
        Value = Guard.Finite(value, "");
        Qualifier = qualifier;
    }

    /// <summary>The number.</summary>
    public double Value { get; }

    /// <summary>How the number is to be read.</summary>
    public Qualifier Qualifier { get; }

    /// <summary>Test method or instrument; empty where it is not known.</summary>
    public string Method => method ?? "";

    /// <summary>Whether the true value is only bounded, from above or from below.</summary>
    public bool IsCensored => Qualifier is Qualifier.LessThan or Qualifier.GreaterThan;

    /// <summary>Whether the true value is known to lie beyond a figure; on the figure it does not, but one of 'more than the figure' does.</summary>
    internal bool IsBeyond(double figure, LimitSide side)
    {
        var (value, bound, inwards, outwards) =
            side == LimitSide.Upper
                ? (Value, figure, Qualifier.LessThan, Qualifier.GreaterThan)
                : (-Value, -figure, Qualifier.GreaterThan, Qualifier.LessThan);
        return Qualifier != inwards && (value > bound || (Qualifier == outwards && value >= bound));
    }

    /// <summary>Qualifier and number, invariant, up to four digits below a thousand.</summary>
    /// <returns>For example <c>&lt;10</c>.</returns>
    public override string ToString() => Mark + PlainText.Reported(Value);

    /// <summary>The sign of the qualifier; empty where there is none.</summary>
    internal string Mark =>
        Qualifier switch
        {
            Qualifier.LessThan => "<",
            Qualifier.GreaterThan => ">",
            Qualifier.Approximately => "≈",
            _ => "",
        };
}
