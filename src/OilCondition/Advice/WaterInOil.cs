using OilCondition.Text;
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

        /// <summary>A tenth of the water moves the temperature of separation by some kelvins: whole degrees are printed.</summary>
        internal const double SeparationUncertainty = 1;

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

        /// <summary>Volume of free water in the whole oil fill at standstill; null when the oil's density is not known.</summary>
        public Volume? FreeAtStandstill { get; }

        /// <summary>How far a saturation curve of a plant may be out, relative; twice that where it is extrapolated (ours).</summary>
        private const double CurveUncertainty = 0.15;

        /// <summary>Volume of free water in the whole oil fill at running temperature; null when the oil's density is not known.</summary>
        public Volume? FreeAtRunning =>
            FreeAtStandstill is { } free && Standstill.Free.PartsPerMillion > 0
                ? free * (Running.Free.PartsPerMillion / Standstill.Free.PartsPerMillion)
                : null;

        /// <summary>What total and curve together leave open in the free water of a state, in mg/kg: their errors in quadrature.</summary>
        internal double UncertaintyOfFree(WaterState state)
        {
            var total = Measurands.WaterContent.UncertaintyOf(Point.Reading.Value);
            var curve =
                state.Saturation.Content.PartsPerMillion * CurveUncertainty * (state.Saturation.IsExtrapolated ? 2 : 1);
            return Math.Sqrt(total * total + curve * curve);
        }

        /// <summary>What total and curve leave open in the litres of free water.</summary>
        internal double? UncertaintyOfFreeLitres =>
            FreeAtStandstill is { } free && Standstill.Free.PartsPerMillion > 0
                ? free.Liters * UncertaintyOfFree(Standstill) / Standstill.Free.PartsPerMillion
                : null;

        /// <summary>Total, and what is free at running and at standstill temperature.</summary>
        /// <returns>For example <c>212 mg/kg of water; free 0 at 60 °C, 70 at 20 °C; separates below 41 °C</c>.</returns>
        public override string ToString() =>
            $"{Measurands.WaterContent.Text(Point.Reading)} of water; free {FreeAt(Running)}, {FreeAt(Standstill)}; separates below "
            + $"{PlainText.Number(Separation.Temperature.DegreesCelsius, SeparationUncertainty)} °C";

        private string FreeAt(WaterState state) =>
            $"{Measurands.WaterContent.Text(state.Free.PartsPerMillion, Point.Reading.Value)} at {PlainText.Number(state.Saturation.Temperature.DegreesCelsius)} °C";
    }

    /// <summary>Nobody has measured this oil's saturation: two saturations at two temperatures are needed.</summary>
    public sealed class NoSaturationCurve : WaterInOil
    {
        /// <summary>What is missing.</summary>
        /// <returns>One phrase.</returns>
        public override string ToString() =>
            "no saturation curve of this oil: two saturations at two temperatures would give it";
    }

    /// <summary>There is no water reading of this oil fill.</summary>
    public sealed class NoWaterReading : WaterInOil
    {
        /// <summary>What is missing.</summary>
        /// <returns>One phrase.</returns>
        public override string ToString() => "no water reading of this oil fill";
    }
}
