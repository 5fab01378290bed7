using System.Globalization;
using OilCondition.Guards;

namespace OilCondition.Sampling;

/// <summary>A reported number in the unit of its measurand, with its qualifier.</summary>
public readonly record struct Reading
{
    /// <summary>A reading.</summary>
    /// <param name="value">The number, in the unit of its measurand.</param>
    /// <param name="qualifier">How the number is to be read.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite.</exception>
    public Reading(double value, Qualifier qualifier = Qualifier.None)
    {
        Value = Guard.Finite(value, "", nameof(value));
        Qualifier = qualifier;
    }

    /// <summary>The number.</summary>
    public double Value { get; }

    /// <summary>How the number is to be read.</summary>
    public Qualifier Qualifier { get; }

    /// <summary>Whether the true value is only bounded, from above or from below.</summary>
    public bool IsCensored => Qualifier is Qualifier.LessThan or Qualifier.GreaterThan;

    /// <summary>Qualifier and number, invariant.</summary>
    /// <returns>For example <c>&lt;10</c>.</returns>
    public override string ToString() =>
        Qualifier switch
        {
            Qualifier.LessThan => "<",
            Qualifier.GreaterThan => ">",
            Qualifier.Approximately => "≈",
            _ => "",
        } + Value.ToString("G6", CultureInfo.InvariantCulture);
}
