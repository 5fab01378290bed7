namespace OilCondition.LabFiles;

/// <summary>What the name in a header stands for: a column of the map, a code, or a viscosity at a temperature that may stand elsewhere.</summary>
internal sealed record NamedColumn(
    LabColumn? Column = null,
    bool Code = false,
    bool Viscosity = false,
    double? Celsius = null
);
