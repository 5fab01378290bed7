namespace OilCondition.LabFiles;

/// <summary>What a column of a file is read as.</summary>
public enum ColumnUse
{
    /// <summary>The machine's id.</summary>
    Machine,

    /// <summary>The sample number.</summary>
    SampleNumber,

    /// <summary>Date, or date and time, of sampling or of a sensor's reading.</summary>
    TakenAt,

    /// <summary>Time of day, beside a column with the date.</summary>
    TimeOfDay,

    /// <summary>Temperature at which a viscosity was measured.</summary>
    TestTemperature,

    /// <summary>Readings.</summary>
    Reading,

    /// <summary>Codes after ISO 4406: readings of three particle sizes in one cell.</summary>
    CleanlinessCode,

    /// <summary>Anything else: kept with the sample as text.</summary>
    Text,
}
