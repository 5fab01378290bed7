namespace OilCondition;

/// <summary>Why a reading is kept out of a series.</summary>
public enum LeftOutReason
{
    /// <summary>Its sample seems to belong to another oil.</summary>
    SuspectSample,

    /// <summary>It was measured by another method than the latest reading.</summary>
    OtherMethod,

    /// <summary>The series runs over oil hours, and the sample has none.</summary>
    NoOilHours,

    /// <summary>It stands wildly apart from the trend of its neighbours.</summary>
    Wild,

    /// <summary>It lies before a sudden change of level, after which the trend starts anew.</summary>
    BeforeChange,

    /// <summary>No working method gives such a value.</summary>
    Implausible,
}
