namespace OilCondition.Contracts;

/// <summary>How a laboratory's file is read, as <c>ColumnMap.Parse</c> reads it. What is left out is as in the map that comes with the library.</summary>
[Variant("timeZone", VariantAttribute.IsThere, "timeZone", "")]
[Variant("timeZone", VariantAttribute.IsLeftOut, "", "offsetFromUtc")]
public sealed class ColumnMapDocument : ContractDocument
{
    /// <summary>One of comma, semicolon, bar and tab; left out to be found.</summary>
    public string? Delimiter { get; set; }

    /// <summary>Point or comma; left out to be found.</summary>
    public string? DecimalSeparator { get; set; }

    /// <summary>Name of the encoding; left out to be found.</summary>
    public string? Encoding { get; set; }

    /// <summary>Forms of dates and times.</summary>
    public IReadOnlyList<string>? DateFormats { get; set; }

    /// <summary>Name of the time zone of times without an offset.</summary>
    public string? TimeZone { get; set; }

    /// <summary>Offset of such times, such as +01:00; not beside a time zone.</summary>
    public string? OffsetFromUtc { get; set; }

    /// <summary>What the whole file has in common.</summary>
    public ColumnConstantsData? Constants { get; set; }

    /// <summary>Texts that stand for no reading.</summary>
    public IReadOnlyList<string>? Blank { get; set; }

    /// <summary>Headers of the machine's id.</summary>
    public IReadOnlyList<string>? Machine { get; set; }

    /// <summary>Headers of the laboratory's number.</summary>
    public IReadOnlyList<string>? SampleNumber { get; set; }

    /// <summary>Headers of the date.</summary>
    public IReadOnlyList<string>? TakenAt { get; set; }

    /// <summary>Headers of a time that stands beside the date.</summary>
    public IReadOnlyList<string>? TimeOfDay { get; set; }

    /// <summary>Headers of the test temperature of a viscosity.</summary>
    public IReadOnlyList<string>? TestTemperature { get; set; }

    /// <summary>Headers of a viscosity whose test temperature stands beside it.</summary>
    public IReadOnlyList<string>? Viscosity { get; set; }

    /// <summary>Headers of an ISO 4406 code.</summary>
    public IReadOnlyList<string>? CleanlinessCode { get; set; }

    /// <summary>Columns of readings.</summary>
    public IReadOnlyList<ColumnData>? Columns { get; set; }

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }
}
