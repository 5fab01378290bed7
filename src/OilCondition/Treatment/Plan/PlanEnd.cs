using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Where a treatment would level off if it ran for ever: the joint solution of heat balance, vapour balance and solubility.</summary>
public sealed record PlanEnd
{
    internal PlanEnd(
        Temperature tankTemperature,
        Temperature processTemperature,
        VolumeFlow flow,
        double floorFraction,
        bool isFloorBelowSaturation,
        bool hasWaterLevel,
        double levelFraction,
        ParticleLevels? particleLevels
    )
    {
        TankTemperature = tankTemperature;
        ProcessTemperature = processTemperature;
        Flow = flow;
        WaterFloor = MassFraction.FromPartsPerMillion(floorFraction * 1e6);
        Evaporates = isFloorBelowSaturation;
        HasWaterLevel = hasWaterLevel;
        WaterLevel = MassFraction.FromPartsPerMillion((hasWaterLevel ? levelFraction : floorFraction) * 1e6);
        HasParticleLevels = particleLevels is not null;
        ParticleLevels = particleLevels ?? new ParticleLevels(0, 0, 0);
    }

    /// <summary>Tank temperature at which losses and evaporation balance the heater.</summary>
    public Temperature TankTemperature { get; }

    /// <summary>Process temperature then; below the setting where the heater is too small.</summary>
    public Temperature ProcessTemperature { get; }

    /// <summary>Oil flow then.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>The physical floor: the level that the unit tends to when no water comes in. It is never 0 with real air.</summary>
    public MassFraction WaterFloor { get; }

    /// <summary>Whether anything evaporates; if not, <see cref="WaterFloor"/> is saturation, and free water stays too.</summary>
    public bool Evaporates { get; }

    /// <summary>Whether the unit keeps up with the water that comes in.</summary>
    public bool HasWaterLevel { get; }

    /// <summary>The level with the water that comes in; the floor where the unit does not keep up and the water rises without end.</summary>
    public MassFraction WaterLevel { get; }

    /// <summary>Whether particles level off: there is a filter, or none come in.</summary>
    public bool HasParticleLevels { get; }

    /// <summary>Where the particles level off; 0 where <see cref="HasParticleLevels"/> is false.</summary>
    public ParticleLevels ParticleLevels { get; }
}
