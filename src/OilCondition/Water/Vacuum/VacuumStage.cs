using MathNet.Numerics.RootFinding;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>How dry an oil can get at a temperature under an absolute pressure, with or without sweep air.</summary>
/// <remarks>
/// C = S(T) min(1, y p / p_sat(T)).   y: mole fraction of water in the gas over the oil, 1 without air; p: absolute pressure.
/// y = (w/18.015) / (w/18.015 + a/28.965) for mass flows w of water vapour and a of dry air.
/// Equilibrium, isothermal, ideal gas: a real stage falls short of it by its efficiency. With y p at or above p_sat the oil stays
/// saturated; heating at fixed y and p lowers the level, because p_sat rises faster than S. The floor is never zero: sweep and leak air
/// bring moisture with them.
/// Caution: hot oil and vacuum. Temperature and vacuum limits of the oil (light ends, additives, flash point) and of the vessel are
/// the maker's; local codes and licensed practice come before any figure here.
/// </remarks>
/// <example>
/// <code>
/// var stage = new VacuumStage(curve, Temperature.FromDegreesCelsius(65), vacuum.AbsolutePressure);
/// var withoutSweep = stage.Floor(Ratio.FromDecimalFractions(1)).Dissolved;
/// var outlet = stage.Outlet(MassFlow.FromKilogramsPerHour(1000), MassFraction.FromPartsPerMillion(200),
///     SweepAir.Dry(MassFlow.FromKilogramsPerHour(2)));
/// </code>
/// </example>
public sealed class VacuumStage
{
    private const double WaterGramPerMole = 18.015;
    private const double AirGramPerMole = 28.965;

    private readonly double _pascal;
    private readonly double _saturationPascal;

    /// <summary>Describes a stage.</summary>
    /// <param name="curve">Saturation curve of the oil.</param>
    /// <param name="oilTemperature">Oil temperature in the stage, 0 to 150 °C.</param>
    /// <param name="absolutePressure">Absolute pressure in the stage, 1 Pa to 110 kPa.</param>
    /// <exception cref="ArgumentNullException">The curve is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public VacuumStage(SaturationCurve curve, Temperature oilTemperature, Pressure absolutePressure)
        : this(Guard.NotNull(curve).SaturationAt(InStageRange(oilTemperature)), absolutePressure) { }

    /// <summary>Describes a stage by the saturation of the oil at its temperature, for example one end of a band.</summary>
    /// <param name="saturation">Saturation of the oil, 0 to 150 °C.</param>
    /// <param name="absolutePressure">Absolute pressure in the stage, 1 Pa to 110 kPa.</param>
    /// <exception cref="ArgumentNullException">The saturation is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public VacuumStage(SaturationPoint saturation, Pressure absolutePressure)
    {
        Saturation = Guard.NotNull(saturation);
        InStageRange(saturation.Temperature);
        AbsolutePressure = absolutePressure;
        _pascal = Guard.InRange(absolutePressure.Pascals, 1, 110_000, "Pa", nameof(absolutePressure));
        _saturationPascal = WaterVapour.SaturationPressure(saturation.Temperature).Pascals;
    }

    /// <summary>What the oil can hold dissolved at the temperature of the stage.</summary>
    public SaturationPoint Saturation { get; }

    /// <summary>Absolute pressure in the stage.</summary>
    public Pressure AbsolutePressure { get; }

    /// <summary>Whether free water boils in the stage without any sweep air.</summary>
    public bool WaterBoils => _pascal < _saturationPascal;

    /// <summary>Mole fraction of water in a mixture of vapour and dry air.</summary>
    /// <param name="waterFlow">Mass flow of water vapour, 0 or more.</param>
    /// <param name="dryAir">Mass flow of dry air, 0 or more; not both 0.</param>
    /// <returns>y, 0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A flow is negative or not finite, or both are 0.</exception>
    public static Ratio MoleFraction(MassFlow waterFlow, MassFlow dryAir)
    {
        var w = Guard.InRange(waterFlow.KilogramsPerSecond, 0, 1e6, "kg/s", nameof(waterFlow));
        var a = Guard.InRange(dryAir.KilogramsPerSecond, 0, 1e6, "kg/s", nameof(dryAir));
        if (a == 0)
        {
            Guard.Positive(w, "kg/s", nameof(waterFlow));
        }

        return Ratio.FromDecimalFractions(MoleFraction(w, a));
    }

    /// <summary>Lowest dissolved water for a given gas composition, reached after any number of passes.</summary>
    /// <param name="waterMoleFraction">Mole fraction of water in the gas, y; 0 to 1. It is 1 without sweep or leak air.</param>
    /// <returns>The water in equilibrium.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The fraction lies outside 0 to 1.</exception>
    public WaterState Floor(Ratio waterMoleFraction)
    {
        var y = Guard.InRange(waterMoleFraction.DecimalFractions, 0, 1, "(ratio)", nameof(waterMoleFraction));
        return Saturation.EquilibriumWith(Pressure.FromPascals(y * _pascal));
    }

    /// <summary>Lowest dissolved water with sweep air after any number of passes, when only the air's own moisture is left in the gas.</summary>
    /// <param name="sweep">The sweep air.</param>
    /// <returns>The water in equilibrium; with <see cref="SweepAir.None"/> that over pure vapour.</returns>
    /// <exception cref="ArgumentNullException">The sweep is null.</exception>
    public WaterState Floor(SweepAir sweep)
    {
        var air = Guard.NotNull(sweep).DryAir.KilogramsPerSecond;
        return Floor(Ratio.FromDecimalFractions(air > 0 ? MoleFraction(sweep.Moisture.KilogramsPerSecond, air) : 1));
    }

    /// <summary>Oil that passes once through the stage and leaves it in equilibrium with the gas that leaves.</summary>
    /// <remarks>
    /// Solves ṁ_oil (C_in − C_out) = w together with C_out = S min(1, y(w) p / p_sat). Where even y p = p_sat cannot carry the free
    /// water away, the oil leaves saturated with the rest of it.
    /// </remarks>
    /// <param name="oilFlow">Mass flow of oil, above 0.</param>
    /// <param name="inlet">All water in the oil that enters, 0 to 500 000 mg/kg.</param>
    /// <param name="sweep">Sweep and leak air; <see cref="SweepAir.None"/> for none.</param>
    /// <returns>Outlet content, vapour, gas volume and heat.</returns>
    /// <exception cref="ArgumentNullException">The sweep is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public StageOutlet Outlet(MassFlow oilFlow, MassFraction inlet, SweepAir sweep)
    {
        var oil = Guard.InRange(oilFlow.KilogramsPerSecond, 1e-12, 1e6, "kg/s", nameof(oilFlow));
        var contentIn = PhysicalRange.Water(inlet) * 1e-6;
        var air = Guard.NotNull(sweep).DryAir.KilogramsPerSecond;
        var evaporated =
            air > 0
                ? EvaporatedWithAir(oil, contentIn, air, sweep.Moisture.KilogramsPerSecond)
                : EvaporatedWithoutAir(oil, contentIn);
        var gasWater = Math.Max(0, sweep.Moisture.KilogramsPerSecond + evaporated);
        var contentOut = Math.Min(1, Math.Max(0, contentIn - evaporated / oil));
        var hasGas = gasWater + air > 0;
        var kelvins = Saturation.Temperature.Kelvins;
        var molesPerSecond = (gasWater / WaterGramPerMole + air / AirGramPerMole) * 1000;
        return new StageOutlet(
            Saturation.Split(MassFraction.FromPartsPerMillion(contentOut * 1e6)),
            MassFlow.FromKilogramsPerSecond(evaporated),
            hasGas ? MoleFraction(gasWater, air) : 1,
            VolumeFlow.FromCubicMetersPerSecond(
                molesPerSecond * If97Saturation.GasConstant * WaterGramPerMole * 1e-3 * kelvins / _pascal
            ),
            WaterVapour.HeatToEvaporate(
                MassFlow.FromKilogramsPerSecond(Math.Max(0, evaporated)),
                Saturation.Temperature
            )
        );
    }

    private double SaturationFraction => Saturation.Content.PartsPerMillion * 1e-6;

    /// <summary>Pure vapour: nothing leaves unless water boils, and then down to S p / p_sat.</summary>
    private double EvaporatedWithoutAir(double oil, double contentIn) =>
        WaterBoils ? oil * Math.Max(0, contentIn - SaturationFraction * _pascal / _saturationPascal) : 0;

    private double EvaporatedWithAir(double oil, double contentIn, double air, double moisture)
    {
        // Excess of the oil over equilibrium; it falls strictly with what evaporates.
        double Excess(double evaporated) =>
            contentIn
            - evaporated / oil
            - SaturationFraction
                * Math.Min(1, MoleFraction(Math.Max(0, moisture + evaporated), air) * _pascal / _saturationPascal);

        // All of the sweep's moisture goes into the oil, or all of the oil's water into the gas: the ends that nothing passes.
        var least = -moisture;
        var most = oil * contentIn;
        if (Excess(most) >= 0)
        {
            return most;
        }

        var carried = Excess(least) <= 0 ? least : Brent.FindRoot(Excess, least, most, 1e-15 * (most + moisture), 200);
        if (_pascal <= _saturationPascal)
        {
            return carried;
        }

        // Above the boiling pressure the gas saturates at y = p_sat / p; more than that it does not carry.
        var y = _saturationPascal / _pascal;
        var gasLimit = y / (1 - y) * air * WaterGramPerMole / AirGramPerMole - moisture;
        return Math.Min(carried, gasLimit);
    }

    private static double MoleFraction(double water, double air) =>
        water / WaterGramPerMole / (water / WaterGramPerMole + air / AirGramPerMole);

    private static Temperature InStageRange(Temperature oilTemperature)
    {
        Guard.InRange(oilTemperature.DegreesCelsius, 0, 150, "°C", nameof(oilTemperature));
        return oilTemperature;
    }

    /// <summary>The stage in one line.</summary>
    /// <returns>For example <c>65 °C at 6.51 kPa absolute</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Tenths(Saturation.Temperature.DegreesCelsius)} °C at {PlainText.Number(AbsolutePressure.Kilopascals)} kPa absolute";
}
