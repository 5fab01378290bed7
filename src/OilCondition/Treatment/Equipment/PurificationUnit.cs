using OilCondition.Text;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>A vacuum dehydration unit on a side loop: oil pump, in-line heater, vacuum chamber, filter.</summary>
/// <remarks>
/// Removal per pass is defined on the excess over equilibrium, η = (C_in − C_out) / (C_in − C_eq), and is not the fall of the whole content. A decade of the
/// excess takes ln 10/η turnovers. Film and viscosity decide: η = 1 − exp(−N), N in proportion to v^(−1/2) (penetration of a film with a diffusion in inverse
/// proportion to viscosity, Higbie and Stokes-Einstein, from memory). Take it from a run of the same unit where there is one.
/// </remarks>
/// <example>
/// <code>
/// var unit = new PurificationUnit(
///     new PumpViscosityLimit(VolumeFlow.FromLitersPerMinute(40), KinematicViscosity.FromCentistokes(700)),
///     Power.FromKilowatts(24), Temperature.FromDegreesCelsius(65),
///     new VacuumChamber(vacuum.AbsolutePressure, SweepAir.Dry(MassFlow.FromKilogramsPerHour(1))),
///     Ratio.FromPercent(70));
/// </code>
/// </example>
public sealed class PurificationUnit
{
    private const int MostPasses = 1000;

    /// <summary>Describes a unit. Name the arguments that have a default.</summary>
    /// <param name="pump">Flow of the oil pump and the viscosity up to which it holds it.</param>
    /// <param name="heaterPower">Heat that the in-line heater gives to the oil at most, 0 to 100 MW.</param>
    /// <param name="processTemperature">Temperature behind the heater that its thermostat holds, 0 to 150 °C.</param>
    /// <param name="chamber">The vacuum side.</param>
    /// <param name="removalPerPass">Single-pass efficiency on the excess over equilibrium, η, above 0 up to 1.</param>
    /// <param name="filter">Filter in the loop; null for none.</param>
    /// <param name="motorPower">Electrical power of oil pump, vacuum pump and cooling, 0 to 100 MW. It is not counted as heat to the oil.</param>
    /// <param name="highestTemperature">Highest process temperature that the unit's maker allows, 0 to 150 °C; null for 150 °C.</param>
    /// <param name="startViscosity">
    /// Viscosity above which the oil pump must not be started; null for 5000 mm²/s, or the limit of its full flow where that is more (common practice, no source).
    /// </param>
    /// <param name="highestRise">Highest rise of the oil per pass, to which the heater turns down, 0.1 to 150 K; null for 11 K (common practice, no source).</param>
    /// <param name="removalViscosity">Viscosity of the oil at which the removal per pass was found, 0.21 to 2e7 mm²/s; null for that at the process temperature.</param>
    /// <exception cref="ArgumentNullException">Pump or chamber is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public PurificationUnit(
        PumpViscosityLimit pump,
        Power heaterPower,
        Temperature processTemperature,
        VacuumChamber chamber,
        Ratio removalPerPass,
        FilterRatings? filter = null,
        Power motorPower = default,
        Temperature? highestTemperature = null,
        KinematicViscosity? startViscosity = null,
        TemperatureDelta? highestRise = null,
        KinematicViscosity? removalViscosity = null
    )
    {
        Pump = Guard.NotNull(pump);
        Guard.InRange(pump.FullFlow.LitersPerMinute, 1e-6, 1e6, "L/min", nameof(pump));
        Guard.InRange((double)heaterPower.Watts, 0, 1e8, "W", nameof(heaterPower));
        Guard.InRange(processTemperature.DegreesCelsius, 0, 150, "°C", nameof(processTemperature));
        Guard.InRange(removalPerPass.DecimalFractions, 1e-9, 1, "(ratio)", nameof(removalPerPass));
        Guard.InRange((double)motorPower.Watts, 0, 1e8, "W", nameof(motorPower));
        var highest = highestTemperature ?? Temperature.FromDegreesCelsius(150);
        Guard.InRange(highest.DegreesCelsius, 0, 150, "°C", nameof(highestTemperature));
        HeaterPower = heaterPower;
        ProcessTemperature = processTemperature;
        Chamber = Guard.NotNull(chamber);
        RemovalPerPass = removalPerPass;
        Filter = filter;
        MotorPower = motorPower;
        HighestTemperature = highest;
        HighestRise = CircuitLimits.Rise(highestRise, nameof(highestRise));
        StartViscosity = CircuitLimits.Start(startViscosity, pump, nameof(startViscosity));
        if (removalViscosity is { } film)
        {
            PhysicalRange.Centistokes(film, nameof(removalViscosity));
        }

        RemovalViscosity = removalViscosity;
    }

    /// <summary>Flow of the oil pump and the viscosity up to which it holds it.</summary>
    public PumpViscosityLimit Pump { get; }

    /// <summary>Heat that the in-line heater gives to the oil at most.</summary>
    public Power HeaterPower { get; }

    /// <summary>Temperature behind the heater that its thermostat holds.</summary>
    public Temperature ProcessTemperature { get; }

    /// <summary>The vacuum side.</summary>
    public VacuumChamber Chamber { get; }

    /// <summary>Single-pass efficiency on the excess over equilibrium, η.</summary>
    public Ratio RemovalPerPass { get; }

    /// <summary>Filter in the loop, or null.</summary>
    public FilterRatings? Filter { get; }

    /// <summary>Electrical power of oil pump, vacuum pump and cooling.</summary>
    public Power MotorPower { get; }

    /// <summary>Highest process temperature that the unit's maker allows.</summary>
    public Temperature HighestTemperature { get; }

    /// <summary>Viscosity above which the oil pump must not be started.</summary>
    public KinematicViscosity StartViscosity { get; }

    /// <summary>Highest rise of the oil per pass; the heater turns down to keep it.</summary>
    public TemperatureDelta HighestRise { get; }

    /// <summary>Viscosity at which the removal per pass was found; null for that at the process temperature.</summary>
    public KinematicViscosity? RemovalViscosity { get; }

    /// <summary>Water after oil has been pumped through the unit from tank to tank a number of times, instead of round a loop.</summary>
    /// <remarks>
    /// C_n = floor + (1 − η)^n (C_0 − floor): all oil passes exactly n times (derived). In a loop of n turnovers part of it passes more often and part
    /// never, exp(−η n): at η = 0.8 three passes leave 0.8 % of the excess, three turnovers 9 %. It needs a second clean tank, and a machine out of service.
    /// </remarks>
    /// <param name="start">Water at the start, 0 to 10⁶ mg/kg.</param>
    /// <param name="floor">Floor of the unit, 0 to 10⁶ mg/kg.</param>
    /// <param name="passes">Number of passes, 0 to 1000.</param>
    /// <returns>The water that is left.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public MassFraction WaterAfterPasses(MassFraction start, MassFraction floor, int passes)
    {
        Guard.InRange(start.PartsPerMillion, 0, 1e6, "mg/kg", nameof(start));
        Guard.InRange(floor.PartsPerMillion, 0, 1e6, "mg/kg", nameof(floor));
        Guard.InRange(passes, 0, MostPasses, "passes");
        return MassFraction.FromPartsPerMillion(
            floor.PartsPerMillion
                + (start.PartsPerMillion - floor.PartsPerMillion)
                    * Math.Pow(1 - RemovalPerPass.DecimalFractions, passes)
        );
    }

    /// <summary>The passes from tank to tank that it takes to a target.</summary>
    /// <param name="start">Water at the start, 0 to 10⁶ mg/kg.</param>
    /// <param name="floor">Floor of the unit, 0 to 10⁶ mg/kg.</param>
    /// <param name="target">Water to reach, 0 to 10⁶ mg/kg.</param>
    /// <param name="passes">Fewest whole passes; 0 where it is so from the start.</param>
    /// <returns>False if the floor does not lie below the target, or 1000 passes do not suffice.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public bool TryPassesTo(MassFraction start, MassFraction floor, MassFraction target, out int passes)
    {
        Guard.InRange(target.PartsPerMillion, 0, 1e6, "mg/kg", nameof(target));
        for (passes = 0; passes <= MostPasses && (start <= target || floor < target); passes++)
        {
            if (WaterAfterPasses(start, floor, passes) <= target)
            {
                return true;
            }
        }

        passes = 0;
        return false;
    }

    /// <summary>The same unit with some of its figures exchanged.</summary>
    internal PurificationUnit With(
        VolumeFlow? flow = null,
        Power? heaterPower = null,
        Temperature? processTemperature = null,
        VacuumChamber? chamber = null,
        Ratio? removalPerPass = null,
        KinematicViscosity? removalViscosity = null
    ) =>
        new(
            new PumpViscosityLimit(flow ?? Pump.FullFlow, Pump.HighestViscosity),
            heaterPower ?? HeaterPower,
            processTemperature ?? ProcessTemperature,
            chamber ?? Chamber,
            removalPerPass ?? RemovalPerPass,
            Filter,
            MotorPower,
            HighestTemperature,
            StartViscosity,
            HighestRise,
            removalViscosity ?? RemovalViscosity
        );

    internal PurificationUnit Shifted(InputShift shift) =>
        With(
            flow: Pump.FullFlow * shift.Flow,
            chamber: Chamber.At(shift.Pressure(Chamber.AbsolutePressure)),
            removalPerPass: shift.Removal(RemovalPerPass)
        );

    /// <summary>The unit in a few words.</summary>
    /// <returns>For example <c>20 L/min at 65 °C, heater 18 kW, 65.1 hPa</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(Pump.FullFlow.LitersPerMinute)} L/min at {PlainText.Number(ProcessTemperature.DegreesCelsius)} °C, "
        + $"heater {PlainText.Number((double)HeaterPower.Kilowatts)} kW, {Chamber}"
        + (Filter is null ? "" : $", {Filter}");
}
