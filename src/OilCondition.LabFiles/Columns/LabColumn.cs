using OilCondition.Text;

namespace OilCondition.LabFiles;

/// <summary>A column that a laboratory may send: the names it goes by, what it measures and in which unit.</summary>
public sealed class LabColumn
{
    /// <summary>A column.</summary>
    /// <param name="names">Names in the header, without regard to case and blanks.</param>
    /// <param name="measurand">What it measures.</param>
    /// <param name="unit">Unit where the header names none, as in <see cref="Measurand.TryConvert"/>; empty for the measurand's own.</param>
    /// <param name="detectionLimit">What 'ND' stands for, in that unit; null when the laboratory does not say.</param>
    /// <param name="method">Test method that this column's readings are made by; empty where it is not known.</param>
    /// <exception cref="ArgumentException">There is no name, or the unit does not fit the measurand.</exception>
    public LabColumn(
        IEnumerable<string> names,
        Measurand measurand,
        string unit = "",
        double? detectionLimit = null,
        string method = ""
    )
    {
        Method = Guard.NotNull(method);
        Names = [.. Guard.NotNull(names)];
        Measurand = Guard.NotNull(measurand);
        Unit = Guard.NotNull(unit);
        DetectionLimit = detectionLimit;
        if (Names.Count == 0)
        {
            throw new ArgumentException($"The column for {measurand.Id} has no name.", nameof(names));
        }

        // 40 lies in the domain of every unit that is understood, Saybolt seconds and scale numbers apart from their ends.
        if (!Takes(unit))
        {
            throw new ArgumentException(
                $"The unit '{unit}' cannot be converted to {measurand.Unit} ({measurand.Id}).",
                nameof(unit)
            );
        }
    }

    /// <summary>Names in the header.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>What it measures.</summary>
    public Measurand Measurand { get; }

    /// <summary>Unit where the header names none; empty for the measurand's own.</summary>
    public string Unit { get; }

    /// <summary>What 'ND' stands for, in that unit; null when the laboratory does not say.</summary>
    public double? DetectionLimit { get; }

    /// <summary>Test method of this column's readings; empty where it is not known.</summary>
    public string Method { get; }

    /// <summary>Whether its unit is only the usual one: nobody said so.</summary>
    internal bool IsDefault { get; init; }

    /// <summary>Whether it holds scale numbers after ISO 4406 in place of counts.</summary>
    internal bool IsScaleNumber => Unit.StartsWith("iso", StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether numbers in a unit can be converted to this column's measurand.</summary>
    internal bool Takes(string unit) => Measurand.TryConvert(UnitProbe(unit), unit, out _);

    /// <summary>Measurand and unit.</summary>
    /// <returns>For example <c>water content in ppm</c>.</returns>
    public override string ToString() => Unit.Length == 0 ? Measurand.Name : $"{Measurand.Name} in {Unit}";

    private static double UnitProbe(string unit) =>
        unit.StartsWith("iso", StringComparison.OrdinalIgnoreCase) ? 20 : 40;
}
