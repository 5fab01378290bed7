using OilCondition.Statistics;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Prognosis;

/// <summary>Wear metal in a charge that loses oil and is topped up with clean oil: V dC/dt = w − q C.</summary>
/// <remarks>
/// Lost oil carries its metal away, so that with make-up a steady wear levels off at w/q with the time constant V/q: a flat trend is then no proof of
/// little wear. Oil that evaporates leaves its metal behind and needs no correction. Source: mass balance (derived; common practice).
/// </remarks>
internal sealed class WearBalance
{
    /// <summary>A balance.</summary>
    /// <param name="wear">Metal worn off per time, w; 0 or more.</param>
    /// <param name="loss">Oil lost and replaced per time, q; 0 or more.</param>
    /// <param name="charge">Volume of the charge, V; above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is outside its range.</exception>
    public WearBalance(MassFlow wear, VolumeFlow loss, Volume charge)
    {
        Guard.NotNegative(wear.MilligramsPerSecond, "mg/s", nameof(wear));
        Guard.NotNegative(loss.LitersPerHour, "L/h", nameof(loss));
        Guard.Positive(charge.Liters, "L", nameof(charge));
        Wear = wear;
        Loss = loss;
        Charge = charge;
    }

    /// <summary>Metal worn off per time.</summary>
    public MassFlow Wear { get; }

    /// <summary>Oil lost and replaced per time.</summary>
    public VolumeFlow Loss { get; }

    /// <summary>Volume of the charge.</summary>
    public Volume Charge { get; }

    /// <summary>Whether oil is lost, so that the concentration levels off.</summary>
    public bool LevelsOff => Loss.LitersPerHour > 0;

    /// <summary>Concentration at which the metal levels off, w/q.</summary>
    /// <returns>The concentration.</returns>
    /// <exception cref="InvalidOperationException">No oil is lost.</exception>
    public MassConcentration SteadyConcentration()
    {
        RequireLoss();
        return MassConcentration.FromMilligramsPerLiter(Wear.MilligramsPerSecond * 3600 / Loss.LitersPerHour);
    }

    /// <summary>Time constant with which it levels off, V/q.</summary>
    /// <returns>The time constant.</returns>
    /// <exception cref="InvalidOperationException">No oil is lost.</exception>
    public TimeSpan TimeConstant()
    {
        RequireLoss();
        return Elapsed.FromHours(Charge.Liters / Loss.LitersPerHour);
    }

    /// <summary>Concentration a time after a clean start.</summary>
    /// <param name="time">The time, 0 or more.</param>
    /// <returns>The concentration.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is below 0.</exception>
    public MassConcentration ConcentrationAfter(TimeSpan time)
    {
        var without = ConcentrationWithoutLossAfter(time);
        return LevelsOff
            ? MassConcentration.FromMilligramsPerLiter(
                new FirstOrderCourse(
                    0,
                    SteadyConcentration().MilligramsPerLiter,
                    1 / TimeConstant().TotalHours
                ).ValueAt(time.TotalHours)
            )
            : without;
    }

    /// <summary>Concentration that the same wear would give if no oil were lost, w t / V.</summary>
    /// <param name="time">The time, 0 or more.</param>
    /// <returns>The concentration.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is below 0.</exception>
    public MassConcentration ConcentrationWithoutLossAfter(TimeSpan time) =>
        MassConcentration.FromMilligramsPerLiter(
            Wear.MilligramsPerSecond * 3600 * Guard.NotNegative(time.TotalHours, "h", nameof(time)) / Charge.Liters
        );

    private void RequireLoss()
    {
        if (!LevelsOff)
        {
            throw new InvalidOperationException("No oil is lost: the concentration does not level off.");
        }
    }
}
