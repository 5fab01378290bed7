namespace OilCondition.Limits;

/// <summary>Why a state is what it is.</summary>
public enum LimitReason
{
    /// <summary>The reading was compared with the limit.</summary>
    Compared,

    /// <summary>There is no reading.</summary>
    NoReading,

    /// <summary>The limit is a change from new oil, and no new-oil value is known.</summary>
    NewOilValueMissing,

    /// <summary>The reading is only bounded (&lt; or &gt;), and the bound does not decide.</summary>
    BoundDoesNotDecide,
}
