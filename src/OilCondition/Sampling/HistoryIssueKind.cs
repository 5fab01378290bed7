namespace OilCondition;

/// <summary>What can be wrong with the records of a machine.</summary>
public enum HistoryIssueKind
{
    /// <summary>The same sample is there twice, and nothing in it contradicts; it is kept once, with all that was read.</summary>
    RepeatedSample,

    /// <summary>
    /// Two samples have one number and contradict each other. Taken at one moment they are one bottle: the readings in which they differ
    /// are set aside, all of them. Taken at moments less than half a year apart, or with the same readings, the first is kept and the other set aside.
    /// </summary>
    ConflictingSample,

    /// <summary>A reading no working method can give; it is set aside.</summary>
    ImplausibleReading,

    /// <summary>A sample or sensor reading is dated later than the moment of the assessment: it is not judged until its date is put right.</summary>
    DatedLater,

    /// <summary>
    /// Measurands that tell the oil's identity jump together and come back: the sample belongs to another oil. It is kept,
    /// and left out of every trend.
    /// </summary>
    SuspectSample,
}
