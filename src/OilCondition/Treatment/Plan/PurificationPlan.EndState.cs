using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

public sealed partial class PurificationPlan
{
    /// <summary>Where a treatment would level off if it ran for ever: the joint solution of heat balance, vapour balance and solubility.</summary>
    public sealed record EndState
    {
        internal EndState(
            Temperature tankTemperature,
            Temperature processTemperature,
            VolumeFlow flow,
            double floorFraction,
            bool isFloorBelowSaturation,
            double? levelFraction,
            ParticleLevels? particleLevels
        )
        {
            TankTemperature = tankTemperature;
            ProcessTemperature = processTemperature;
            Flow = flow;
            WaterFloor = MassFraction.FromPartsPerMillion(floorFraction * 1e6);
            Evaporates = isFloorBelowSaturation;
            WaterLevel = levelFraction is { } level ? MassFraction.FromPartsPerMillion(level * 1e6) : null;
            ParticleLevels = particleLevels;
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

        /// <summary>The level with the water that comes in; null where the unit does not keep up and the water rises without end.</summary>
        public MassFraction? WaterLevel { get; }

        /// <summary>Where the particles level off; null where they rise without end, because some come in and there is no filter.</summary>
        public ParticleLevels? ParticleLevels { get; }

        /// <summary>Where it levels off, in one line.</summary>
        /// <returns>For example <c>floor 78.7 mg/kg, level 219 mg/kg with ingress, oil at 61.2 °C</c>.</returns>
        public override string ToString() =>
            $"floor {PlainText.Number(WaterFloor.PartsPerMillion)} mg/kg, "
            + (
                WaterLevel is not { } level ? "no level: more water comes in than leaves, "
                : level.PartsPerMillion <= WaterFloor.PartsPerMillion ? ""
                : $"level {PlainText.Number(level.PartsPerMillion)} mg/kg with ingress, "
            )
            + $"oil at {PlainText.Number(TankTemperature.DegreesCelsius)} °C";
    }
}
