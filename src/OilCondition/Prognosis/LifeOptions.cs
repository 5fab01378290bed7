using OilCondition.Text;

namespace OilCondition.Prognosis;

/// <summary>How remaining life is forecast.</summary>
public sealed class LifeOptions
{
    /// <summary>A choice of model and prior knowledge.</summary>
    /// <param name="model">How the measurand is taken to move.</param>
    /// <param name="makeUpPercentPerYear">Make-up of new oil in % of the oil fill per year, for <see cref="LifeModel.FirstOrderLoss"/>; 0 or more.</param>
    /// <param name="newOilValue">What the measurand reads in new oil, in its unit, for a make-up; 0 or more.</param>
    /// <param name="fleet">What other machines teach, for <see cref="LifeModel.Family"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public LifeOptions(
        LifeModel model = LifeModel.Family,
        double makeUpPercentPerYear = 0,
        double newOilValue = 0,
        FleetKnowledge? fleet = null
    )
    {
        Model = model;
        MakeUpPercentPerYear = Guard.NotNegative(makeUpPercentPerYear, "%/a");
        NewOilValue = Guard.NotNegative(newOilValue, "");
        Fleet = fleet;
    }

    /// <summary>The average over the family of movements, without prior knowledge.</summary>
    public static LifeOptions Default { get; } = new();

    /// <summary>How the measurand is taken to move.</summary>
    public LifeModel Model { get; }

    /// <summary>Make-up of new oil in % of the oil fill per year of 365.25 days.</summary>
    public double MakeUpPercentPerYear { get; }

    /// <summary>What the measurand reads in new oil, in its unit.</summary>
    public double NewOilValue { get; }

    /// <summary>What other machines teach.</summary>
    public FleetKnowledge? Fleet { get; }

    /// <summary>Readings that a forecast needs.</summary>
    internal int NeededReadings =>
        Model == LifeModel.Family && Fleet is { IsLearnt: true }
            ? LifeForecast.FewestReadingsWithFleet
            : LifeForecast.FewestReadings;
}
