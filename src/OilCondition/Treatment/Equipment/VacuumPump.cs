using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>A vacuum pump by its kind, with what water vapour does to it.</summary>
/// <remarks>
/// <para>
/// Liquid ring: its ring water boils at p_sat(t_ring), and the pump goes no lower. Its capacity falls on the way there, S(p) = S (p −
/// p_sat(t_ring))/(p − p_sat(15 °C)), with S stated for ring water of 15 °C (the usual reference, from memory). A published example, 0.76 at 100 hPa
/// and 30 °C, lies 8 % above it: vapour that condenses in the ring makes room. Practical pumps are held some 10 hPa above the limit, since they
/// cavitate there (common practice, no source).
/// </para>
/// <para>
/// Oil sealed: vapour above the water vapour tolerance p_W0 condenses in the oil of the pump (terms of ISO 21360; seen in public vacuum handbooks). It
/// bears q = p_W0 S M/(R T) of water at 20 °C, in handbook units 217 S p_W0/T g/h, with the gas ballast open; without gas ballast next to none.
/// </para>
/// <para>Dry: neither limit, down to its ultimate pressure. Vapour goes through and condenses behind it.</para>
/// </remarks>
/// <example>
/// <code>
/// var pump = VacuumPump.OilSealed(VolumeFlow.FromCubicMetersPerHour(40), Pressure.FromMillibars(30), hasGasBallast: true);
/// var load = pump.Carry(Pressure.FromMillibars(60), vapour: MassFlow.FromKilogramsPerHour(0.8), dryAir: MassFlow.FromKilogramsPerHour(0.5),
///     Temperature.FromDegreesCelsius(15));
/// </code>
/// </example>
public sealed class VacuumPump
{
    private const double ReferenceCelsius = 15;
    private const double StandardKelvins = 293.15;

    private VacuumPump(
        PumpKind kind,
        VolumeFlow capacity,
        Pressure lowestPressure,
        Temperature? ringWater = null,
        Pressure? waterVapourTolerance = null,
        bool hasGasBallast = false
    )
    {
        Guard.InRange(capacity.CubicMetersPerHour, 1e-6, 1e9, "m³/h", nameof(capacity));
        Kind = kind;
        Capacity = capacity;
        LowestPressure = lowestPressure;
        RingWater = ringWater;
        WaterVapourTolerance = waterVapourTolerance;
        HasGasBallast = hasGasBallast;
    }

    /// <summary>Its kind.</summary>
    public PumpKind Kind { get; }

    /// <summary>Gas that it swallows at its inlet; of a liquid ring with ring water of 15 °C.</summary>
    public VolumeFlow Capacity { get; }

    /// <summary>Lowest pressure that it can hold: vapour pressure of the ring water, or its ultimate pressure.</summary>
    public Pressure LowestPressure { get; }

    /// <summary>Temperature of the ring water; null for other kinds.</summary>
    public Temperature? RingWater { get; }

    /// <summary>Highest partial pressure of water vapour that it bears, p_W0; null where there is no such limit.</summary>
    public Pressure? WaterVapourTolerance { get; }

    /// <summary>Whether an oil-sealed pump runs with its gas ballast open.</summary>
    public bool HasGasBallast { get; }

    /// <summary>Water vapour that it bears for ever at 20 °C, q = p_W0 S M/(R T); null where there is no such limit.</summary>
    public MassFlow? WaterVapourCapacity =>
        WaterVapourTolerance is { } tolerance
            ? MassFlow.FromKilogramsPerSecond(
                (HasGasBallast ? tolerance.Pascals : 0)
                    * Capacity.CubicMetersPerSecond
                    * VacuumChamber.WaterKilogramPerMole
                    / (VacuumChamber.GasConstant * StandardKelvins)
            )
            : null;

    /// <summary>A liquid ring pump.</summary>
    /// <param name="capacity">Gas that it swallows with ring water of 15 °C, above 0.</param>
    /// <param name="ringWater">Temperature of the ring water as it leaves, 1 to 80 °C.</param>
    /// <returns>The pump.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static VacuumPump LiquidRing(VolumeFlow capacity, Temperature ringWater)
    {
        Guard.InRange(ringWater.DegreesCelsius, 1, 80, "°C", nameof(ringWater));
        return new(PumpKind.LiquidRing, capacity, WaterVapour.SaturationPressure(ringWater), ringWater);
    }

    /// <summary>An oil-sealed pump.</summary>
    /// <param name="capacity">Gas that it swallows, above 0.</param>
    /// <param name="waterVapourTolerance">Water vapour tolerance with the gas ballast open, 0 to 200 hPa, from its maker.</param>
    /// <param name="hasGasBallast">Whether it runs with its gas ballast open.</param>
    /// <param name="ultimatePressure">Lowest pressure that it holds with the ballast as it is, 0.01 Pa to 10 kPa; null for 200 Pa.</param>
    /// <returns>The pump.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static VacuumPump OilSealed(
        VolumeFlow capacity,
        Pressure waterVapourTolerance,
        bool hasGasBallast,
        Pressure? ultimatePressure = null
    )
    {
        Guard.InRange(waterVapourTolerance.Hectopascals, 0, 200, "hPa", nameof(waterVapourTolerance));
        return new(PumpKind.OilSealed, capacity, Ultimate(ultimatePressure), null, waterVapourTolerance, hasGasBallast);
    }

    /// <summary>A dry pump.</summary>
    /// <param name="capacity">Gas that it swallows, above 0.</param>
    /// <param name="ultimatePressure">Lowest pressure that it holds, 0.01 Pa to 10 kPa; null for 200 Pa.</param>
    /// <returns>The pump.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static VacuumPump Dry(VolumeFlow capacity, Pressure? ultimatePressure = null) =>
        new(PumpKind.Dry, capacity, Ultimate(ultimatePressure));

    /// <summary>Gas that it swallows at an inlet pressure.</summary>
    /// <param name="intakePressure">Absolute pressure at its inlet, 1 Pa to 110 kPa.</param>
    /// <returns>The capacity; zero at and below the lowest pressure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pressure lies outside its range.</exception>
    public VolumeFlow CapacityAt(Pressure intakePressure)
    {
        var pascal = Guard.InRange(intakePressure.Pascals, 1, 110_000, "Pa", nameof(intakePressure));
        if (pascal <= LowestPressure.Pascals)
        {
            return VolumeFlow.Zero;
        }

        if (RingWater is null)
        {
            return Capacity;
        }

        // Ring water colder than the reference lets the pump swallow more, but not without end.
        const double Most = 1.5;
        var reference = WaterVapour.SaturationPressure(Temperature.FromDegreesCelsius(ReferenceCelsius)).Pascals;
        var share =
            pascal > reference ? Math.Min(Most, (pascal - LowestPressure.Pascals) / (pascal - reference)) : Most;
        return Capacity * share;
    }

    /// <summary>A chamber on this pump: the pressure asked for, or the lowest that the pump can hold, with the capacity that it has there.</summary>
    /// <remarks>At the lowest pressure itself nothing is pumped; the chamber is then set a tenth above it.</remarks>
    /// <param name="absolutePressure">Absolute pressure that is asked for, 10 Pa to 110 kPa.</param>
    /// <param name="sweep">Sweep and leak air; null for none.</param>
    /// <returns>The chamber.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range, or the pump cannot even carry the sweep air.</exception>
    public VacuumChamber ChamberAt(Pressure absolutePressure, SweepAir? sweep = null)
    {
        const double Above = 1.1;
        Guard.InRange(absolutePressure.Pascals, 10, 110_000, "Pa", nameof(absolutePressure));
        var pressure = Pressure.FromPascals(Math.Max(absolutePressure.Pascals, Above * LowestPressure.Pascals));
        return new VacuumChamber(pressure, sweep, CapacityAt(pressure));
    }

    /// <summary>Whether it carries a load of vapour and air at a pressure.</summary>
    /// <param name="intakePressure">Absolute pressure at its inlet, 1 Pa to 110 kPa.</param>
    /// <param name="vapour">Water vapour that reaches it, 0 to 10⁶ kg/h.</param>
    /// <param name="dryAir">Sweep air, leaks and gas from the oil, 0 to 10⁶ kg/h.</param>
    /// <param name="gasTemperature">Temperature of the gas at its inlet, 0 to 150 °C.</param>
    /// <returns>The load, with its outcome.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public Load Carry(Pressure intakePressure, MassFlow vapour, MassFlow dryAir, Temperature gasTemperature)
    {
        var capacity = CapacityAt(intakePressure).CubicMetersPerSecond;
        Guard.InRange(vapour.KilogramsPerHour, 0, 1e6, "kg/h", nameof(vapour));
        Guard.InRange(dryAir.KilogramsPerHour, 0, 1e6, "kg/h", nameof(dryAir));
        Guard.InRange(gasTemperature.DegreesCelsius, 0, 150, "°C", nameof(gasTemperature));
        var vapourMoles = vapour.KilogramsPerSecond / VacuumChamber.WaterKilogramPerMole;
        var moles = vapourMoles + dryAir.KilogramsPerSecond / VacuumChamber.AirKilogramPerMole;
        var needed = moles * VacuumChamber.GasConstant * gasTemperature.Kelvins / intakePressure.Pascals;
        var partial = moles > 0 ? vapourMoles / moles * intakePressure.Pascals : 0;
        var outcome =
            intakePressure <= LowestPressure
                ? Kind == PumpKind.LiquidRing
                    ? LoadOutcome.RingWaterBoils
                    : LoadOutcome.BelowUltimatePressure
                : WaterVapourTolerance is not null && vapourMoles > 0 && !HasGasBallast
                    ? LoadOutcome.NeedsGasBallast
                    : partial > WaterVapourTolerance?.Pascals
                        ? LoadOutcome.VapourCondenses
                        : needed > capacity * (1 + 1e-9)
                            ? LoadOutcome.TooMuchGas
                            : LoadOutcome.Carried;
        return new Load(outcome, intakePressure, needed, capacity, partial);
    }

    /// <summary>The pump in a few words.</summary>
    /// <returns>For example <c>liquid ring 40 m³/h, ring water at 20 °C, not below 23.4 hPa</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Spaced(Kind)} {PlainText.Number(Capacity.CubicMetersPerHour)} m³/h"
        + (RingWater is { } ring ? $", ring water at {PlainText.Number(ring.DegreesCelsius)} °C" : "")
        + (
            WaterVapourTolerance is { } tolerance
                ? $", bears {PlainText.Number(tolerance.Hectopascals)} hPa of vapour, gas ballast {(HasGasBallast ? "open" : "shut")}"
                : ""
        )
        + $", not below {PlainText.Number(LowestPressure.Hectopascals)} hPa";

    private static Pressure Ultimate(Pressure? ultimatePressure)
    {
        var pascal = ultimatePressure?.Pascals ?? 200;
        return Pressure.FromPascals(Guard.InRange(pascal, 0.01, 10_000, "Pa", nameof(ultimatePressure)));
    }

    /// <summary>How a vacuum pump seals.</summary>
    public enum PumpKind
    {
        /// <summary>By a ring of water.</summary>
        LiquidRing,

        /// <summary>By oil.</summary>
        OilSealed,

        /// <summary>By narrow gaps, without a liquid.</summary>
        Dry,
    }

    /// <summary>What becomes of a load on a vacuum pump.</summary>
    public enum LoadOutcome
    {
        /// <summary>The pump carries it.</summary>
        Carried,

        /// <summary>More gas comes than the pump swallows: the pressure rises.</summary>
        TooMuchGas,

        /// <summary>The ring water boils: a liquid ring goes no lower.</summary>
        RingWaterBoils,

        /// <summary>The pump does not go so low.</summary>
        BelowUltimatePressure,

        /// <summary>Vapour above the water vapour tolerance condenses in the oil of the pump.</summary>
        VapourCondenses,

        /// <summary>An oil-sealed pump draws vapour without gas ballast: it condenses in its oil.</summary>
        NeedsGasBallast,
    }

    /// <summary>A load on a vacuum pump.</summary>
    public sealed record Load
    {
        internal Load(
            LoadOutcome outcome,
            Pressure intake,
            double neededPerSecond,
            double perSecond,
            double partialPascal
        )
        {
            Outcome = outcome;
            IntakePressure = intake;
            Needed = VolumeFlow.FromCubicMetersPerSecond(neededPerSecond);
            Capacity = VolumeFlow.FromCubicMetersPerSecond(perSecond);
            VapourPressure = Pressure.FromPascals(partialPascal);
        }

        /// <summary>What becomes of it.</summary>
        public LoadOutcome Outcome { get; }

        /// <summary>Absolute pressure at the inlet.</summary>
        public Pressure IntakePressure { get; }

        /// <summary>Volume flow of vapour and air at the inlet.</summary>
        public VolumeFlow Needed { get; }

        /// <summary>What the pump swallows there.</summary>
        public VolumeFlow Capacity { get; }

        /// <summary>Partial pressure of the water vapour at the inlet.</summary>
        public Pressure VapourPressure { get; }

        /// <summary>The load in one line.</summary>
        /// <returns>For example <c>needs 31.2 of 40 m³/h at 60 hPa, 41 hPa of it vapour: vapour condenses</c>.</returns>
        public override string ToString() =>
            $"needs {PlainText.Number(Needed.CubicMetersPerHour)} of {PlainText.Number(Capacity.CubicMetersPerHour)} m³/h at "
            + $"{PlainText.Number(IntakePressure.Hectopascals)} hPa, {PlainText.Number(VapourPressure.Hectopascals)} hPa of it vapour: "
            + PlainText.Spaced(Outcome);
    }
}
