using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>A plan held against the pumps that are to run it: whether the chamber floods, and whether the vacuum pump bears the vapour.</summary>
/// <remarks>
/// The discharge pump is asked at each state of the plan, at the temperature of the oil that leaves the chamber and its pressure. The vacuum pump
/// gets the vapour of the state, less what a condenser before it takes out, and the sweep air. Air dissolved in the oil is added where
/// <see cref="GasSolubility"/> covers the oil, as if it came in saturated at sea level all along. A plan does not know its pumps: where a check
/// fails, its hours are not to be had.
/// </remarks>
/// <example>
/// <code>
/// var check = EquipmentCheck.Of(plan, dischargePump, vacuumPump);
/// if (check.FloodsUntil is { } hours) { /* warm the oil first, or throttle the inflow */ }
/// </code>
/// </example>
public sealed class EquipmentCheck
{
    private EquipmentCheck(
        PurificationPlan plan,
        IReadOnlyList<DischargePump.Draw> draws,
        IReadOnlyList<VacuumPump.Load> loads,
        GasLoad? gas
    )
    {
        Plan = plan;
        Draws = draws;
        Loads = loads;
        Gas = gas;
        var flooded = Enumerable.Range(0, draws.Count).Where(i => draws[i].Floods(plan.States[i].Flow)).ToList();
        FloodsUntil = flooded.Count > 0 ? plan.States[flooded[flooded.Count - 1]].Time : null;
        var failed = Enumerable
            .Range(0, loads.Count)
            .Where(i => loads[i].Outcome != VacuumPump.LoadOutcome.Carried)
            .ToList();
        Overload = failed.Count > 0 ? loads[failed[0]] : null;
        OverloadedFrom = failed.Count > 0 ? plan.States[failed[0]].Time : null;
    }

    /// <summary>The plan.</summary>
    public PurificationPlan Plan { get; }

    /// <summary>What the discharge pump draws at each state of the plan; empty where no pump was stated.</summary>
    public IReadOnlyList<DischargePump.Draw> Draws { get; }

    /// <summary>The load on the vacuum pump at each state; empty where no pump was stated.</summary>
    public IReadOnlyList<VacuumPump.Load> Loads { get; }

    /// <summary>Air that comes out of the oil at its first pass; null where the oil lies outside the method.</summary>
    public GasLoad? Gas { get; }

    /// <summary>The last state at which more oil comes into the chamber than is drawn out; null where there is none.</summary>
    public TimeSpan? FloodsUntil { get; }

    /// <summary>The first load that the vacuum pump does not carry; null where it carries all.</summary>
    public VacuumPump.Load? Overload { get; }

    /// <summary>When that is.</summary>
    public TimeSpan? OverloadedFrom { get; }

    /// <summary>Whether both pumps can run the plan, as far as they were stated.</summary>
    public bool Passes => FloodsUntil is null && Overload is null;

    /// <summary>Holds a plan against pumps.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="dischargePump">The pump that draws oil out of the chamber; null where it is not stated.</param>
    /// <param name="vacuumPump">The vacuum pump; null where it is not stated.</param>
    /// <returns>The check.</returns>
    /// <exception cref="ArgumentNullException">The plan is null.</exception>
    public static EquipmentCheck Of(
        PurificationPlan plan,
        DischargePump? dischargePump = null,
        VacuumPump? vacuumPump = null
    )
    {
        var states = Guard.NotNull(plan).States;
        var (oil, chamber) = (plan.Job.Oil, plan.Unit.Chamber);
        var air = GasSolubility.Covers(oil.Properties, plan.ProcessTemperature);
        var gas = states.Select(state => air ? GasOf(plan, state) : null).ToList();
        return new EquipmentCheck(
            plan,
            dischargePump is { } pump
                ? [.. states.Select(state => pump.At(oil, state.ReturnTemperature, state.ChamberPressure))]
                : [],
            vacuumPump is { } vacuum ? [.. states.Select((state, i) => LoadOf(vacuum, chamber, state, gas[i]))] : [],
            gas[0]
        );
    }

    /// <summary>The check in a few lines.</summary>
    /// <returns>For example <c>discharge: the chamber floods until 3 h; vacuum pump: carries all</c>.</returns>
    public override string ToString() =>
        string.Join(
            "; ",
            new[]
            {
                Draws.Count == 0 ? ""
                : FloodsUntil is { } until
                    ? $"discharge: the chamber floods until {PlainText.Number(until.TotalHours)} h, {Draws[0]} at the start"
                : "discharge: draws all that comes",
                Loads.Count == 0 ? ""
                : Overload is { } load
                    ? $"vacuum pump, from {PlainText.Number(OverloadedFrom!.Value.TotalHours)} h on: {load}"
                : "vacuum pump: carries all",
                Gas is null ? "gas of the oil not known" : $"oil: {Gas}",
            }.Where(part => part.Length > 0)
        );

    private static GasLoad? GasOf(PurificationPlan plan, PurificationPlan.State state)
    {
        var pressure =
            state.ChamberPressure < StandardAtmosphere.SeaLevel ? state.ChamberPressure : StandardAtmosphere.SeaLevel;
        return GasSolubility.Covers(plan.Job.Oil.Properties, state.ProcessTemperature)
            ? GasLoad.Of(
                plan.Job.Oil.Properties,
                state.Flow,
                state.ProcessTemperature,
                StandardAtmosphere.SeaLevel,
                pressure,
                plan.Unit.RemovalPerPass
            )
            : null;
    }

    private static VacuumPump.Load LoadOf(
        VacuumPump pump,
        VacuumChamber chamber,
        PurificationPlan.State state,
        GasLoad? gas
    )
    {
        var air = chamber.Sweep.DryAir + (gas?.Released ?? MassFlow.Zero);
        var (vapour, temperature) = (state.VapourFlow, state.ReturnTemperature);
        if (chamber.Condenser is { IsBeforePump: true } condenser)
        {
            var cold = WaterVapour.SaturationPressure(condenser.Temperature).Pascals;
            var rest = state.ChamberPressure.Pascals - cold;
            var left =
                rest > 0
                    ? air.KilogramsPerSecond
                        / VacuumChamber.AirKilogramPerMole
                        * cold
                        / rest
                        * VacuumChamber.WaterKilogramPerMole
                    : vapour.KilogramsPerSecond;
            vapour = MassFlow.FromKilogramsPerSecond(Math.Min(vapour.KilogramsPerSecond, left));
            temperature = condenser.Temperature;
        }

        var celsius = Math.Min(150, Math.Max(0, temperature.DegreesCelsius));
        return pump.Carry(
            state.ChamberPressure,
            vapour.KilogramsPerSecond > 0 ? vapour : MassFlow.Zero,
            air,
            Temperature.FromDegreesCelsius(celsius)
        );
    }
}
