using Microsoft.Data.Analysis;

namespace OilCondition.DataFrames;

/// <summary>A column that is computed with: what it holds, and in which range it is believed.</summary>
internal readonly record struct ColumnInput(
    DataFrameColumn Column,
    string Name,
    string Unit,
    double Lowest,
    double Highest
);
