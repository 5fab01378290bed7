using OilCondition.Cleanup;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition;

/// <summary>Dissolved and free water at running and standstill temperature: exactly one of the nested cases.</summary>
public abstract class WaterInOil
{
    private WaterInOil() { }

    /// <summary>The water is known and split.</summary>
    public sealed class Split : WaterInOil
    {
        internal Split(
            SeriesPoint point,
            SaturationCurve curve,
            WaterState running,
            WaterState standstill,
            SeparationPoint separation,
            Volume? freeAtStandstill
        )
        {
            Point = point;
            Curve = curve;
            Running = running;
            Standstill = standstill;
            Separation = separation;
            FreeAtStandstill = freeAtStandstill;
        }

        /// <summary>
        /// The water content that was split: a titration, or a sensor below saturation, which then sees all the water.
        /// With a qualifier the split holds for the bound.
        /// </summary>
        public SeriesPoint Point { get; }

        /// <summary>The saturation curve used.</summary>
        public SaturationCurve Curve { get; }

        /// <summary>At running temperature.</summary>
        public WaterState Running { get; }

        /// <summary>After the machine has cooled down.</summary>
        public WaterState Standstill { get; }

        /// <summary>Where the water begins to separate on cooling.</summary>
        public SeparationPoint Separation { get; }

        /// <summary>Volume of free water in the whole charge at standstill; null when the oil's density is not known.</summary>
        public Volume? FreeAtStandstill { get; }
    }

    /// <summary>Nobody has measured this oil's saturation: two saturations at two temperatures are needed.</summary>
    public sealed class NoSaturationCurve : WaterInOil { }

    /// <summary>There is no water reading of this charge.</summary>
    public sealed class NoWaterReading : WaterInOil { }
}
