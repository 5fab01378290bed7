namespace OilCondition;

/// <summary>What stands behind a figure, from the strongest evidence to the weakest.</summary>
public enum SourceKind
{
    /// <summary>A published standard, named with its edition where it is known.</summary>
    Standard,

    /// <summary>A paper or report with named authors.</summary>
    Paper,

    /// <summary>A handbook, a public table or a public agency's manual.</summary>
    Handbook,

    /// <summary>The user's own measurement or decision.</summary>
    UserData,

    /// <summary>Follows from a definition or a balance; no document is claimed.</summary>
    Derived,

    /// <summary>A fact of the trade without a single source.</summary>
    CommonPractice,

    /// <summary>Written down from memory and not checked against the document it is attributed to.</summary>
    FromMemory,
}
