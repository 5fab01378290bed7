namespace OilCondition.Treatment;

/// <summary>What a treatment costs at the user's own prices.</summary>
public sealed class TreatmentCost
{
    internal TreatmentCost(TreatmentAssessment assessment, TreatmentPrices prices)
    {
        var energy = assessment.Heat + assessment.Electricity;
        CostItem[] all =
        [
            new(CostKind.Hours, assessment.RunTime.TotalHours, prices.PerHour),
            new(CostKind.KilowattHours, energy.KilowattHours, prices.PerKilowattHour),
            new(CostKind.Elements, assessment.Elements, prices.PerElement),
            new(CostKind.LitresOfNewOil, assessment.NewOil.Liters, prices.PerLitreOfNewOil),
            new(
                CostKind.LitresOfWaste,
                assessment.NewOil.Liters + assessment.WaterRemoved.Liters,
                prices.PerLitreOfWaste
            ),
        ];
        Items = [.. all.Where(item => item.Amount > 0)];
    }

    /// <summary>A row for each thing that is used.</summary>
    public IReadOnlyList<CostItem> Items { get; }

    /// <summary>Sum of the rows that have a price, in the user's currency.</summary>
    public double Total => Items.Sum(item => item.Cost);

    /// <summary>Whether every row has a price; if not, <see cref="Total"/> is too low.</summary>
    public bool IsComplete => Items.All(item => item.HasPrice);
}
