namespace OilCondition.DataFrames;

/// <summary>Names of the columns that several frames share, so that frames join by them.</summary>
internal static class FrameNames
{
    public const string Machine = "machine";
    public const string Charge = "charge";
    public const string Origin = "origin";
    public const string Sheet = "sheet";
    public const string Line = "line";
    public const string SampleNumber = "sampleNumber";
    public const string AtUtc = "atUtc";
    public const string OffsetMinutes = "offsetMinutes";
    public const string AsOfUtc = "asOfUtc";
    public const string Measurand = "measurand";
    public const string Value = "value";
    public const string Unit = "unit";
    public const string Qualifier = "qualifier";
    public const string Method = "method";
    public const string Header = "header";
    public const string Text = "text";
    public const string Reason = "reason";
    public const string Subject = "subject";
    public const string Severity = "severity";
    public const string Name = "name";

    /// <summary>The keys of a row of records, in their order.</summary>
    public static readonly IReadOnlyList<string> Keys =
    [
        Machine,
        Charge,
        Origin,
        SampleNumber,
        AtUtc,
        OffsetMinutes,
        Sheet,
        Line,
    ];

    /// <summary>
    /// Values of a measurand where a row has several: <c>water-content [mg/kg]</c>, as files may head them too. One without a unit has its id alone,
    /// unless that is the name of a key: a measurand <c>line</c> is <c>line []</c>.
    /// </summary>
    public static string ValueOf(Measurand measurand) =>
        measurand.Unit.Length == 0 && !Keys.Contains(measurand.Id)
            ? measurand.Id
            : $"{measurand.Id} [{measurand.Unit}]";

    public static string QualifierOf(Measurand measurand) => $"{measurand.Id} {Qualifier}";

    public static string MethodOf(Measurand measurand) => $"{measurand.Id} {Method}";

    /// <summary>What stands before the header of a text that came with samples.</summary>
    public const string TextPrefix = "text: ";
}
