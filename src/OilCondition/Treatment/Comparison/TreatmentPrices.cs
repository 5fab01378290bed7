using OilCondition.Text;

namespace OilCondition.Treatment;

/// <summary>The user's own prices, all in one currency. The library knows none.</summary>
public sealed record TreatmentPrices
{
    /// <summary>States the prices that are known.</summary>
    /// <param name="perHour">For an hour of hire and attendance, 0 or more; null where not known.</param>
    /// <param name="perKilowattHour">For a kilowatt hour.</param>
    /// <param name="perElement">For an element.</param>
    /// <param name="perLitreOfNewOil">For a litre of new oil.</param>
    /// <param name="perLitreOfWaste">For the disposal of a litre of used oil or water.</param>
    /// <exception cref="ArgumentOutOfRangeException">A price is negative or not finite.</exception>
    public TreatmentPrices(
        double? perHour = null,
        double? perKilowattHour = null,
        double? perElement = null,
        double? perLitreOfNewOil = null,
        double? perLitreOfWaste = null
    )
    {
        PerHour = Checked(perHour, nameof(perHour));
        PerKilowattHour = Checked(perKilowattHour, nameof(perKilowattHour));
        PerElement = Checked(perElement, nameof(perElement));
        PerLitreOfNewOil = Checked(perLitreOfNewOil, nameof(perLitreOfNewOil));
        PerLitreOfWaste = Checked(perLitreOfWaste, nameof(perLitreOfWaste));
    }

    /// <summary>For an hour of hire and attendance, or null.</summary>
    public double? PerHour { get; }

    /// <summary>For a kilowatt hour, or null.</summary>
    public double? PerKilowattHour { get; }

    /// <summary>For an element, or null.</summary>
    public double? PerElement { get; }

    /// <summary>For a litre of new oil, or null.</summary>
    public double? PerLitreOfNewOil { get; }

    /// <summary>For the disposal of a litre of used oil or water, or null.</summary>
    public double? PerLitreOfWaste { get; }

    private static double? Checked(double? price, string name) =>
        price is { } value ? Guard.InRange(value, 0, 1e12, "(currency)", name) : null;

    /// <summary>The prices that are known.</summary>
    /// <returns>For example <c>10 per h, 0.5 per kWh</c>, or <c>no prices</c>.</returns>
    public override string ToString()
    {
        string[] words =
        [
            .. Word(PerHour, "h"),
            .. Word(PerKilowattHour, "kWh"),
            .. Word(PerElement, "element"),
            .. Word(PerLitreOfNewOil, "L of new oil"),
            .. Word(PerLitreOfWaste, "L of waste"),
        ];
        return words.Length == 0 ? "no prices" : string.Join(", ", words);
    }

    private static string[] Word(double? price, string unit) =>
        price is { } value ? [$"{PlainText.Number(value)} per {unit}"] : [];
}
