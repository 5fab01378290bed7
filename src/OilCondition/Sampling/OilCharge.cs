using System.Globalization;

namespace OilCondition;

/// <summary>One filling of a machine, from one oil change to the next.</summary>
public sealed record OilCharge
{
    internal OilCharge(int number, DateTimeOffset since)
    {
        Number = number;
        Since = since;
    }

    /// <summary>1 for the charge at the start of the records, one more with every oil change.</summary>
    public int Number { get; }

    /// <summary>When it went in, or the first record where that is not known.</summary>
    public DateTimeOffset Since { get; }

    /// <summary>The word used in alert keys.</summary>
    /// <returns>For example <c>charge-2</c>.</returns>
    public override string ToString() => "charge-" + Number.ToString(CultureInfo.InvariantCulture);
}
