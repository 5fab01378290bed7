namespace OilCondition.Contracts;

/// <summary>Alert and alarm figure on one side.</summary>
[AnyOf("alert alarm")]
public sealed class BandData : ContractPart
{
    /// <summary>Where the alert zone begins.</summary>
    public double? Alert { get; set; }

    /// <summary>Where the alarm zone begins.</summary>
    public double? Alarm { get; set; }
}
