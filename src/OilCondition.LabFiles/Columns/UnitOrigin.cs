namespace OilCondition.LabFiles;

/// <summary>Who said in which unit a column is.</summary>
public enum UnitOrigin
{
    /// <summary>The column has no unit.</summary>
    None,

    /// <summary>The file, in the header or in a row of units below it.</summary>
    File,

    /// <summary>The user's column map.</summary>
    Map,

    /// <summary>Nobody: the usual unit was assumed.</summary>
    Assumed,
}
