using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>The tank of a machine.</summary>
public sealed class TankData : ContractPart
{
    /// <summary>Temperature around it.</summary>
    [JsonRequired]
    public double AmbientCelsius { get; set; }

    /// <summary>Heat that it loses.</summary>
    [JsonRequired]
    public double LossWattPerKelvin { get; set; }

    /// <summary>Water that comes in.</summary>
    public double? WaterIngressGramsPerHour { get; set; }

    /// <summary>Highest temperature that it stands.</summary>
    public double? HighestCelsius { get; set; }

    /// <summary>Heat capacity of its steel.</summary>
    public double? SteelKilojoulePerKelvin { get; set; }

    /// <summary>Heat that comes from the machine.</summary>
    public double? HeatInputKilowatts { get; set; }
}
