using OilCondition.Text;
using OilCondition.Thermal;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>What was planned for a run, in the terms in which a fitted curve speaks: removal per pass, floor, ingress, level.</summary>
/// <remarks>
/// k = η Q / V and level = p + g / (k V ρ). η: removal per pass on the excess over the floor, Q: flow, V: charge, p: floor without ingress,
/// g: water that comes in, ρ: density of the oil. Derived from the balance of a well-mixed tank (<see cref="CleanupLoop"/>).
/// </remarks>
/// <example>
/// <code>
/// var planned = PlannedPerformance.Of(plan);
/// var beside = ObservedAgainstPlanned.Of(curve, planned);
/// </code>
/// </example>
public sealed class PlannedPerformance
{
    /// <summary>States a plan by its figures, for example from a nameplate.</summary>
    /// <param name="loop">Charge and flow.</param>
    /// <param name="oilDensity">Density of the oil, 500 to 1500 kg/m³.</param>
    /// <param name="removalPerPass">Removal per pass on the excess over the floor, η, 10⁻⁹ to 1.</param>
    /// <param name="floorWithoutIngress">Content that the purifier would reach without ingress, p, 0 to 500 000 mg/kg.</param>
    /// <param name="waterIngress">Water that comes in, 0 to 10⁶ kg/h.</param>
    /// <exception cref="ArgumentNullException">There is no loop.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public PlannedPerformance(
        CleanupLoop loop,
        Density oilDensity,
        Ratio removalPerPass,
        MassFraction floorWithoutIngress,
        MassFlow waterIngress = default
    )
    {
        Loop = Guard.NotNull(loop);
        PhysicalRange.OilDensity(oilDensity);
        PhysicalRange.Water(floorWithoutIngress);
        Guard.InRange(waterIngress.KilogramsPerHour, 0, 1e6, "kg/h", nameof(waterIngress));
        RatePerHour = loop.RatePerHour(removalPerPass);
        OilDensity = oilDensity;
        RemovalPerPass = removalPerPass;
        FloorWithoutIngress = floorWithoutIngress;
        WaterIngress = waterIngress;
        Level = MassFraction.FromPartsPerMillion(LevelWith(waterIngress));
    }

    /// <summary>Charge and flow.</summary>
    public CleanupLoop Loop { get; }

    /// <summary>Density of the oil.</summary>
    public Density OilDensity { get; }

    /// <summary>Removal per pass on the excess over the floor, η.</summary>
    public Ratio RemovalPerPass { get; }

    /// <summary>Content that the purifier would reach without ingress, p.</summary>
    public MassFraction FloorWithoutIngress { get; }

    /// <summary>Water that comes in, g.</summary>
    public MassFlow WaterIngress { get; }

    /// <summary>Rate of the fall, k.</summary>
    public double RatePerHour { get; }

    /// <summary>Where the content levels off with the ingress.</summary>
    public MassFraction Level { get; }

    /// <summary>What the plan's physics says of any state; null where only figures were stated.</summary>
    internal RunPhysics? Physics { get; private init; }

    /// <summary>Mass of the charge in kg.</summary>
    internal double OilKilograms => Loop.Charge.CubicMeters * OilDensity.KilogramsPerCubicMeter;

    /// <summary>The figures of a planned vacuum dehydration, warm and at full flow.</summary>
    /// <remarks>
    /// With sweep air the vapour that is taken out raises the equilibrium in the chamber, so that the fall of a plan is slower than the unit's η alone says.
    /// Removal per pass is therefore that of the plan's own course, w / (ρ Q (C − p)), at the last state of which the excess over the floor is still
    /// a tenth of the floor or more and the exchange sets the rate; the unit's η where there is no such state.
    /// </remarks>
    /// <param name="plan">The plan.</param>
    /// <returns>Its figures.</returns>
    /// <exception cref="ArgumentNullException">There is no plan.</exception>
    public static PlannedPerformance Of(PurificationPlan plan)
    {
        Guard.NotNull(plan);
        var job = plan.Job;
        var density = job.Oil.Properties.At(job.Reservoir.Start).Density;
        var floor = plan.End.WaterFloor;
        var removal = plan.Unit.RemovalPerPass.DecimalFractions;
        for (var i = plan.States.Count - 1; i >= 0; i--)
        {
            var state = plan.States[i];
            var excess = state.Water.Total.DecimalFractions - floor.DecimalFractions;
            if (state.Limit != RemovalLimit.SinglePass || excess <= Math.Max(1e-7, 0.1 * floor.DecimalFractions))
            {
                continue;
            }

            var passing = state.Flow.CubicMetersPerSecond * density.KilogramsPerCubicMeter;
            var found = state.Evaporation.KilogramsPerSecond / (passing * excess);
            removal = found > 1e-9 ? Math.Min(1, found) : removal;
            break;
        }

        return new PlannedPerformance(
            new CleanupLoop(job.Reservoir.OilVolume, plan.End.Flow),
            density,
            Ratio.FromDecimalFractions(removal),
            floor,
            job.Reservoir.WaterIngress
        )
        {
            Physics = new RunPhysics(plan),
        };
    }

    /// <summary>What the records of a machine say was planned for a run; null where they do not.</summary>
    /// <remarks>The density is that of the new oil at running temperature; 870 kg/m³ at 15 °C where it was not read (common practice, no source).</remarks>
    internal static PlannedPerformance? Of(TreatmentRun run, Machine machine) =>
        run.Planned is { } planned
            ? new PlannedPerformance(
                new CleanupLoop(machine.ChargeVolume, planned.Flow),
                OilProperties
                    .FromDensityAt15(
                        Density.FromKilogramsPerCubicMeter(
                            machine.Oil.NewReadings.TryGetValue(Measurands.Density15, out var read)
                                ? read.Value
                                : OilProperties.UsualDensityAt15
                        )
                    )
                    .At(machine.RunningTemperature)
                    .Density,
                planned.RemovalPerPass,
                planned.FloorWithoutIngress,
                planned.WaterIngress
            )
            : null;

    /// <summary>The figures of the plan.</summary>
    /// <returns>For example <c>50 % removed per pass, floor 18 mg/kg, 1 g/h coming in, level 20 mg/kg</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(RemovalPerPass.Percent)} % removed per pass, floor {PlainText.Number(FloorWithoutIngress.PartsPerMillion)} mg/kg, "
        + $"{PlainText.Number(WaterIngress.GramsPerHour)} g/h coming in, level {PlainText.Number(Level.PartsPerMillion)} mg/kg";

    /// <summary>Where the content levels off with water that comes in, mg/kg.</summary>
    internal double LevelWith(MassFlow ingress) =>
        FloorWithoutIngress.PartsPerMillion + RisePerHour(ingress) / RatePerHour;

    /// <summary>What the unit is to take out at a content, mg/kg an hour.</summary>
    internal double RemovedPerHour(double ppm) =>
        Physics is { } physics ? Math.Max(0, physics.RemovedPerHour(physics.Planned, ppm)) : ByRatePerHour(ppm);

    /// <summary>
    /// What the content is to fall by at a content, mg/kg an hour. With free water the physics may take out more than the rate of the dissolved water: the slower of the two is
    /// the plan's promise.
    /// </summary>
    internal double FallPerHour(double ppm) =>
        Math.Min(ByRatePerHour(ppm), RemovedPerHour(ppm)) - RisePerHour(WaterIngress);

    private double ByRatePerHour(double ppm) => RatePerHour * Math.Max(0, ppm - FloorWithoutIngress.PartsPerMillion);

    /// <summary>Rise of the content by water that comes in, in mg/kg per hour.</summary>
    internal double RisePerHour(MassFlow ingress) => 1e6 * ingress.KilogramsPerHour / OilKilograms;
}
