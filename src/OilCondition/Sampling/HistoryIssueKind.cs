namespace OilCondition.Sampling;

/// <summary>What can be wrong with the records of a machine.</summary>
public enum HistoryIssueKind
{
    /// <summary>The same sample is there twice, word for word; one is kept.</summary>
    RepeatedSample,

    /// <summary>Two samples have one number and different content; the first is kept, the other set aside.</summary>
    ConflictingSample,

    /// <summary>A reading no working method can give; it is set aside.</summary>
    ImplausibleReading,

    /// <summary>
    /// Measurands that tell the oil's identity jump together and come back: the sample belongs to another oil. It is kept,
    /// and left out of every trend.
    /// </summary>
    SuspectSample,
}
