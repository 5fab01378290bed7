using OilCondition.Text;

namespace OilCondition.Treatment;

/// <summary>What a treatment costs at the user's own prices.</summary>
public sealed class TreatmentCost
{
    internal TreatmentCost(TreatmentAssessment assessment, TimeSpan runTime, TreatmentPrices prices)
    {
        var energy = assessment.Heat + assessment.Electricity;
        var waste = assessment.NewOil.Liters + assessment.WaterRemoved.Liters;
        Item[] all =
        [
            new("hire and attendance", runTime.TotalHours, "h", prices.PerHour),
            new("heat and electricity", energy.KilowattHours, "kWh", prices.PerKilowattHour),
            new("elements", assessment.Elements, "pcs", prices.PerElement),
            new("new oil", assessment.NewOil.Liters, "L", prices.PerLitreOfNewOil),
            new("waste", waste, "L", prices.PerLitreOfWaste),
        ];
        Items = [.. all.Where(item => item.Amount > 0)];
    }

    /// <summary>A row for each thing that is used.</summary>
    public IReadOnlyList<Item> Items { get; }

    /// <summary>Sum of the rows that have a price, in the user's currency.</summary>
    public double Total => Items.Sum(item => item.Cost ?? 0);

    /// <summary>Whether every row has a price; if not, <see cref="Total"/> is too low.</summary>
    public bool IsComplete => Items.All(item => item.Cost.HasValue);

    /// <summary>The cost in one line.</summary>
    /// <returns>For example <c>at least 252; no price for waste</c>.</returns>
    public override string ToString() =>
        IsComplete
            ? PlainText.Number(Total)
            : $"at least {PlainText.Number(Total)}; no price for "
                + string.Join(", ", Items.Where(item => item.Cost is null).Select(item => item.Name));

    /// <summary>One row of a cost: so much of something, at the user's price.</summary>
    public sealed class Item
    {
        internal Item(string name, double amount, string unit, double? price)
        {
            Name = name;
            Amount = amount;
            Unit = unit;
            Cost = amount * price;
        }

        /// <summary>What is used.</summary>
        public string Name { get; }

        /// <summary>How much, in its unit.</summary>
        public double Amount { get; }

        /// <summary>Unit of the amount: h, kWh, pcs or L.</summary>
        public string Unit { get; }

        /// <summary>Amount times price, in the user's currency; null where the user gave no price.</summary>
        public double? Cost { get; }

        /// <summary>The row in words.</summary>
        /// <returns>For example <c>new oil 1800 L: 5400</c>.</returns>
        public override string ToString() =>
            $"{Name} {PlainText.Number(Amount)} {Unit}: {(Cost is { } cost ? PlainText.Number(cost) : "no price")}";
    }
}
