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
        if (!measurand.TryConvert(UnitProbe(unit), unit, out _))
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

    private static double UnitProbe(string unit) =>
        unit.StartsWith("iso", StringComparison.OrdinalIgnoreCase) ? 20 : 40;
}
