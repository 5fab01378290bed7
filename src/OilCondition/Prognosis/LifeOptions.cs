namespace OilCondition.Prognosis;

/// <summary>How remaining life is forecast.</summary>
public sealed class LifeOptions
{
    /// <summary>A choice of model and prior knowledge.</summary>
    /// <param name="model">How the measurand is taken to move.</param>
    /// <param name="makeUp">Make-up of new oil, for <see cref="LifeModel.FirstOrderLoss"/>; none where it is left out.</param>
    /// <param name="fleet">What other machines teach, for <see cref="LifeModel.LineToRandomWalk"/>.</param>
    public LifeOptions(
        LifeModel model = LifeModel.LineToRandomWalk,
        MakeUp? makeUp = null,
        FleetKnowledge? fleet = null
    )
    {
        Model = model;
        MakeUp = makeUp;
        Fleet = fleet;
    }

    /// <summary>The average over the family from line to random walk, without prior knowledge.</summary>
    public static LifeOptions Default { get; } = new();

    /// <summary>How the measurand is taken to move.</summary>
    public LifeModel Model { get; }

    /// <summary>Make-up of new oil.</summary>
    public MakeUp? MakeUp { get; }

    /// <summary>What other machines teach.</summary>
    public FleetKnowledge? Fleet { get; }
}
