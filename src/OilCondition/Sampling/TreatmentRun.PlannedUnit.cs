using OilCondition.Text;
using UnitsNet;

namespace OilCondition;

/// <content>What was planned for it.</content>
public sealed partial class TreatmentRun
{
    /// <summary>What a unit was planned to do to the water of an oil: the figures of its plan or of its nameplate.</summary>
    public sealed record PlannedUnit
    {
        /// <summary>States what was planned.</summary>
        /// <param name="flow">Oil flow, 10⁻⁶ to 10⁹ L/h.</param>
        /// <param name="removalPerPass">Removal per pass on the excess over the floor, 10⁻⁹ to 1.</param>
        /// <param name="floorWithoutIngress">Content that the unit would reach without ingress, 0 to 500 000 mg/kg.</param>
        /// <param name="waterIngress">Water that comes in, 0 to 10⁶ kg/h.</param>
        /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
        public PlannedUnit(
            VolumeFlow flow,
            Ratio removalPerPass,
            MassFraction floorWithoutIngress,
            MassFlow waterIngress = default
        )
        {
            Guard.InRange(flow.LitersPerHour, 1e-6, 1e9, "L/h", nameof(flow));
            Guard.InRange(removalPerPass.DecimalFractions, 1e-9, 1, "", nameof(removalPerPass));
            PhysicalRange.Water(floorWithoutIngress);
            Guard.InRange(waterIngress.KilogramsPerHour, 0, 1e6, "kg/h", nameof(waterIngress));
            // In the units of the records, so that two that say the same are the same.
            Flow = VolumeFlow.FromLitersPerMinute(flow.LitersPerMinute);
            RemovalPerPass = Ratio.FromDecimalFractions(removalPerPass.DecimalFractions);
            FloorWithoutIngress = MassFraction.FromPartsPerMillion(floorWithoutIngress.PartsPerMillion);
            WaterIngress = MassFlow.FromGramsPerHour(waterIngress.GramsPerHour);
        }

        /// <summary>Oil flow.</summary>
        public VolumeFlow Flow { get; }

        /// <summary>Removal per pass on the excess over the floor.</summary>
        public Ratio RemovalPerPass { get; }

        /// <summary>Content that the unit would reach without ingress.</summary>
        public MassFraction FloorWithoutIngress { get; }

        /// <summary>Water that comes in.</summary>
        public MassFlow WaterIngress { get; }

        /// <summary>The figures of the plan.</summary>
        /// <returns>For example <c>1200 L/h, 50 % removed per pass, floor 18 mg/kg, 1 g/h coming in</c>.</returns>
        public override string ToString() =>
            $"{PlainText.Number(Flow.LitersPerHour)} L/h, {PlainText.Number(RemovalPerPass.Percent)} % removed per pass, "
            + $"floor {PlainText.Number(FloorWithoutIngress.PartsPerMillion)} mg/kg, {PlainText.Number(WaterIngress.GramsPerHour)} g/h coming in";
    }
}
