using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>An interlock of a purifier, and how it is proved before a start.</summary>
/// <remarks>
/// The list follows from what the unit has: no heater, no high limit. It is common practice, no source, and no safety case: the makers' instructions,
/// the plant's own study and local codes come first. Prove means to make it trip, not to read its setting.
/// </remarks>
/// <example>
/// <code>
/// foreach (var interlock in Interlock.Of(job, unit, vacuumPump, dischargePump)) { Console.WriteLine(interlock); }
/// </code>
/// </example>
public sealed record Interlock
{
    private Interlock(Trip kind, string stops, string proof, Temperature? highest = null)
    {
        Kind = kind;
        Stops = stops;
        Proof = proof;
        Highest = highest;
    }

    /// <summary>What trips it.</summary>
    public Trip Kind { get; }

    /// <summary>What it stops.</summary>
    public string Stops { get; }

    /// <summary>How it is proved before a start.</summary>
    public string Proof { get; }

    /// <summary>Temperature that it must not be set above; null where it has none.</summary>
    public Temperature? Highest { get; }

    /// <summary>The interlocks of a unit on a task, in the order in which they are proved: cold before hot, oil before vacuum.</summary>
    /// <param name="job">The task: what oil and seals bear.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="vacuumPump">Its vacuum pump; null where its kind is not stated.</param>
    /// <param name="dischargePump">Its discharge pump; null where it is not stated.</param>
    /// <param name="tankHeater">A heater in the tank; null for none.</param>
    /// <returns>The list.</returns>
    /// <exception cref="ArgumentNullException">Task or unit is null.</exception>
    public static IReadOnlyList<Interlock> Of(
        TreatmentJob job,
        PurificationUnit unit,
        VacuumPump? vacuumPump = null,
        DischargePump? dischargePump = null,
        TankHeater? tankHeater = null
    )
    {
        var highest = Temperature.FromDegreesCelsius(
            Math.Min(
                Guard.NotNull(unit).HighestTemperature.DegreesCelsius,
                Math.Min(
                    Guard.NotNull(job).Oil.HighestTemperature.DegreesCelsius,
                    job.Reservoir.HighestTemperature.DegreesCelsius
                )
            )
        );
        List<Interlock> list =
        [
            new(
                Trip.EmergencyStop,
                "pumps, heater and vacuum pump",
                "press it with the oil pump running and the heater off; nothing restarts when it is released"
            ),
            new(
                Trip.HighChamberLevel,
                "the inflow of oil",
                "lift the float, or raise the level with the vacuum pump off, until the inlet shuts"
            ),
            new(
                Trip.LowChamberLevel,
                dischargePump is null
                    ? "the discharge pump"
                    : $"the discharge pump of {PlainText.Number(dischargePump.FullFlow.LitersPerMinute)} L/min, before it runs dry",
                "drop the float, or shut the inlet, until the pump stops"
            ),
            new(
                Trip.Foam,
                "the inflow, and breaks the vacuum",
                "cover the sensor or lift its float; the breaker valve must open"
            ),
        ];
        if (unit.HeaterPower.Watts > 0)
        {
            list.Add(
                new(
                    Trip.LowFlow,
                    "the in-line heater",
                    "throttle the flow with the heater at its lowest setting; it must drop out before the flow stops"
                )
            );
            list.Add(
                new(
                    Trip.ProcessTemperature,
                    "the heater at its setting",
                    "set it below the oil's temperature; the heater must switch off",
                    unit.ProcessTemperature < highest ? unit.ProcessTemperature : highest
                )
            );
            list.Add(
                new(
                    Trip.HighLimitTemperature,
                    "the heater, until it is reset by hand",
                    "turn its setting down to the oil's temperature; it must trip by itself and stay so",
                    highest
                )
            );
        }

        if (tankHeater is not null)
        {
            list.Add(
                new(
                    Trip.LowTankLevel,
                    "the heater in the tank, before its sheath is bare",
                    "drop the float, or pull its plug, until the heater switches off"
                )
            );
            list.Add(
                new(
                    Trip.SheathTemperature,
                    "the heater in the tank, until it is reset by hand",
                    "turn its setting down to the oil's temperature; it must trip",
                    highest
                )
            );
        }

        list.Add(
            new(
                Trip.CondensateLevel,
                "the vacuum pump, before it draws water",
                "lift the float in the condensate tank until the pump stops"
            )
        );
        list.AddRange(OfVacuumPump(vacuumPump));
        if (unit.Filter is not null)
        {
            list.Add(
                new(
                    Trip.FilterDifferentialPressure,
                    "the oil pump, or it warns",
                    "press the test button of the indicator, or open its bleed"
                )
            );
        }

        return list;
    }

    /// <summary>The interlock in one line.</summary>
    /// <returns>For example <c>high limit temperature, at most 80 °C, stops the heater, until it is reset by hand; prove: turn …</c>.</returns>
    public override string ToString() =>
        PlainText.Spaced(Kind)
        + (Highest is { } temperature ? $", at most {PlainText.Number(temperature.DegreesCelsius)} °C" : "")
        + $", stops {Stops}; prove: {Proof}";

    private static IEnumerable<Interlock> OfVacuumPump(VacuumPump? pump) =>
        pump?.Kind switch
        {
            VacuumPump.PumpKind.LiquidRing =>
            [
                new(
                    Trip.RingWater,
                    "the vacuum pump",
                    "shut the supply of ring water; the pump must stop before it runs dry"
                ),
            ],
            VacuumPump.PumpKind.OilSealed =>
            [
                new(
                    Trip.VacuumPumpOil,
                    "the vacuum pump",
                    "look for water in its sight glass, and see that the gas ballast is open and warm"
                ),
            ],
            _ => [],
        };

    /// <summary>What trips an interlock.</summary>
    public enum Trip
    {
        /// <summary>Somebody presses the stop.</summary>
        EmergencyStop,

        /// <summary>Oil high in the chamber: it would flood.</summary>
        HighChamberLevel,

        /// <summary>Oil low in the chamber.</summary>
        LowChamberLevel,

        /// <summary>Foam in the chamber.</summary>
        Foam,

        /// <summary>Too little flow through the heater.</summary>
        LowFlow,

        /// <summary>The process temperature is reached: the thermostat.</summary>
        ProcessTemperature,

        /// <summary>The high limit, apart from the thermostat.</summary>
        HighLimitTemperature,

        /// <summary>Oil low in the tank.</summary>
        LowTankLevel,

        /// <summary>A hot sheath of the heater in the tank.</summary>
        SheathTemperature,

        /// <summary>Condensate high in its tank.</summary>
        CondensateLevel,

        /// <summary>No ring water.</summary>
        RingWater,

        /// <summary>Water in the oil of the vacuum pump.</summary>
        VacuumPumpOil,

        /// <summary>A filter that is full.</summary>
        FilterDifferentialPressure,
    }
}
