namespace OilCondition.Cleanup;

/// <summary>Where a reading of what is followed comes from.</summary>
internal enum ReadingSource
{
    /// <summary>There is none.</summary>
    None,

    /// <summary>A sensor at the machine.</summary>
    Sensor,

    /// <summary>A sample: a titration, a count, a laboratory.</summary>
    Sample,
}
