using MathNet.Numerics.RootFinding;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>One pass through a vacuum chamber: vapour balance, solubility, heat and pump together.</summary>
/// <remarks>
/// w = η ṁ (C_in − S(T_out) a),   a = y p / p_sat(T_out),   y = n_v / (n_v + n_a),   T_out = T_in − w h_fg / (ṁ c),   p = max(p_set, n R T / Q_pump).
/// Where a would exceed 1 the gas is full: w is then the root of a(w) = 1, and free water stays in the oil that leaves.
/// h_fg is taken at T_in: water enters as liquid at T_in and leaves as vapour at T_out, h″(T_out) − h′(T_in), which differs from h_fg(T_in) by under
/// 2 kJ/kg a kelvin only.
/// </remarks>
internal sealed class DehydrationStage(SaturationCurve curve, VacuumChamber chamber)
{
    /// <summary>Below it water would freeze in the chamber.</summary>
    private const double ColdestCelsius = 0.01;

    private const double HighestCondensationKelvins = 30;

    private readonly double setPascal = chamber.AbsolutePressure.Pascals;
    private readonly double airMoles = chamber.Sweep.DryAir.KilogramsPerSecond / VacuumChamber.AirKilogramPerMole;
    private readonly double moisture = chamber.Sweep.Moisture.KilogramsPerSecond;
    private readonly double pumpCubicMetrePerSecond = chamber.PumpCapacity?.CubicMetersPerSecond ?? double.MaxValue;
    private readonly double condenserKelvins = chamber.Condenser?.Temperature.Kelvins ?? 0;
    private readonly bool relieved = chamber.Condenser?.IsBeforePump ?? false;

    private readonly double condenserPascal = chamber.Condenser is { } condenser
        ? SaturationPascal(condenser.Temperature.DegreesCelsius)
        : 0;

    public StagePass Pass(
        double oilKilogramPerSecond,
        double heatCapacity,
        double contentIn,
        double celsius,
        double efficiency
    )
    {
        if (oilKilogramPerSecond <= 0 || celsius <= ColdestCelsius)
        {
            return Passed(0, 0, 0, celsius, RemovalLimit.TooColdOrShallow);
        }

        var latent = WaterVapour.LatentHeat(Temperature.FromDegreesCelsius(celsius)).JoulesPerKilogram;
        var cooling = latent / (oilKilogramPerSecond * heatCapacity);
        var most = Math.Min(efficiency * oilKilogramPerSecond * contentIn, (celsius - ColdestCelsius) / cooling);
        var isOverAir = airMoles > 0;

        double Activity(double evaporated) => ActivityOver(evaporated, celsius - evaporated * cooling);
        double Excess(double evaporated) =>
            efficiency
                * oilKilogramPerSecond
                * (contentIn - SaturationAt(celsius - evaporated * cooling) * Activity(evaporated))
            - evaporated;
        StagePass At(double evaporated, RemovalLimit limit) => Passed(evaporated, latent, cooling, celsius, limit);

        // Without air there is nothing to carry vapour below the boiling point, and none to wet the oil.
        if (!isOverAir && Activity(0) >= 1)
        {
            return At(0, RemovalLimit.TooColdOrShallow);
        }

        if (!isOverAir && Excess(0) <= 0)
        {
            return At(0, RemovalLimit.SinglePass);
        }

        // Humid sweep air may wet the oil; the heat of that is bounded so that no temperature leaves the range.
        var least = -Math.Min(moisture, HighestCondensationKelvins / cooling);
        var root = Root(Excess, least, most);
        if (Activity(root) <= 1)
        {
            return At(root, root < most || Excess(most) <= 0 ? RemovalLimit.SinglePass : RemovalLimit.Heat);
        }

        var full = Root(evaporated => 1 - Activity(evaporated), least, root);
        return At(full, LimitOf(full, celsius, cooling));
    }

    /// <summary>Vapour that the condenser takes out of a pass, kg/s.</summary>
    public double CondensedIn(StagePass pass)
    {
        if (chamber.Condenser is not { } condenser)
        {
            return 0;
        }

        var pascal = relieved ? pass.Pascal : condenser.LocalAtmosphere.Pascals;
        if (pascal <= condenserPascal)
        {
            return 0;
        }

        var left = airMoles * condenserPascal / (pascal - condenserPascal) * VacuumChamber.WaterKilogramPerMole;
        return Math.Max(0, pass.VapourKilogramPerSecond - left);
    }

    /// <summary>Activity of the gas over oil at a temperature, with a flow of vapour from the oil.</summary>
    public double ActivityOver(double evaporated, double celsius)
    {
        var vapourMoles = Math.Max(0, moisture + evaporated) / VacuumChamber.WaterKilogramPerMole;
        var y = airMoles > 0 ? vapourMoles / (vapourMoles + airMoles) : 1;
        return y * PascalWith(vapourMoles, celsius) / SaturationPascal(celsius);
    }

    public double SaturationAt(double celsius) =>
        curve.SaturationAt(Temperature.FromDegreesCelsius(celsius)).Content.PartsPerMillion * 1e-6;

    private StagePass Passed(double evaporated, double latent, double cooling, double celsius, RemovalLimit limit)
    {
        var vapour = Math.Max(0, moisture + evaporated);
        var outlet = celsius - evaporated * cooling;
        var pascal = PascalWith(vapour / VacuumChamber.WaterKilogramPerMole, outlet);
        return new StagePass(evaporated, vapour, evaporated * latent, outlet, pascal, limit);
    }

    private RemovalLimit LimitOf(double evaporated, double celsius, double cooling)
    {
        var pascal = PascalWith(
            Math.Max(0, moisture + evaporated) / VacuumChamber.WaterKilogramPerMole,
            celsius - evaporated * cooling
        );
        return pascal > setPascal * (1 + 1e-9) ? RemovalLimit.VacuumPump
            : airMoles > 0 && setPascal >= SaturationPascal(celsius) ? RemovalLimit.SweepAir
            : RemovalLimit.Heat;
    }

    private double PascalWith(double vapourMoles, double celsius)
    {
        var kelvins = relieved ? condenserKelvins : celsius + 273.15;
        var perMole = VacuumChamber.GasConstant * kelvins / pumpCubicMetrePerSecond;
        var needed = (vapourMoles + airMoles) * perMole;

        // A condenser before the pump holds the vapour to p_sat, whatever the flow.
        return Math.Max(setPascal, relieved ? Math.Min(needed, condenserPascal + airMoles * perMole) : needed);
    }

    private static double SaturationPascal(double celsius) =>
        WaterVapour.SaturationPressure(Temperature.FromDegreesCelsius(celsius)).Pascals;

    /// <summary>Root of a function that falls from a value above 0; the upper end where it is still above 0 there.</summary>
    private static double Root(Func<double, double> falling, double least, double most) =>
        most <= least || falling(most) >= 0 ? Math.Max(least, most)
        : falling(least) <= 0 ? least
        : Brent.FindRoot(falling, least, most, 1e-13 * (most - least), 200);
}
