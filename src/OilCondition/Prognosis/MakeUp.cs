using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Prognosis;

/// <summary>New oil that regularly replaces what a machine loses.</summary>
public sealed class MakeUp
{
    /// <summary>A make-up.</summary>
    /// <param name="flow">New oil per time, 0 or more.</param>
    /// <param name="charge">Volume of the charge, above 0.</param>
    /// <param name="newOilValue">What the measurand reads in new oil, in its unit.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public MakeUp(VolumeFlow flow, Volume charge, double newOilValue)
    {
        Flow = flow;
        Charge = charge;
        NewOilValue = Guard.NotNegative(newOilValue, "");
        FractionPerDay =
            Guard.NotNegative(flow.LitersPerDay, "L/d", nameof(flow))
            / Guard.Positive(charge.Liters, "L", nameof(charge));
    }

    /// <summary>New oil per time.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>Volume of the charge.</summary>
    public Volume Charge { get; }

    /// <summary>What the measurand reads in new oil, in its unit.</summary>
    public double NewOilValue { get; }

    /// <summary>Fraction of the charge that is renewed per day, m.</summary>
    public double FractionPerDay { get; }
}
