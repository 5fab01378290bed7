using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>What sets the time and the floor of a vacuum dehydration: each setting changed by itself, the one that is worth most on top.</summary>
/// <remarks>
/// Each row is a whole plan with one real step of one setting, which it states, so that a heater that no longer follows, a vacuum pump that is too small or a
/// temperature limit show. The steps are alike: a quarter of each figure, and 5 K, which raise the vapour pressure of water by a quarter. Sweep air is changed where
/// the unit has some: air that no one has connected is not a setting.
/// Caution: more heat and more vacuum take light ends and additives out of the oil, and bring hot film and vapour nearer to their limits: the makers of
/// oil, seals and unit decide how far a setting may be changed.
/// </remarks>
public sealed class PlanSensitivity
{
    private PlanSensitivity(PurificationPlan plan, IReadOnlyList<Effect> rows)
    {
        Plan = plan;
        Rows = rows;
    }

    /// <summary>The plan as it is.</summary>
    public PurificationPlan Plan { get; }

    /// <summary>The rows: what makes the target reachable first, then by time saved, then by the fall of the level.</summary>
    public IReadOnlyList<Effect> Rows { get; }

    /// <summary>Changes each setting.</summary>
    /// <param name="job">The task.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="change">Relative change of flow, heater power, pressure, sweep air and ingress, 0.01 to 0.9; null for 0.25.</param>
    /// <param name="warmer">Rise of the process temperature, 0.1 to 50 K; null for 5 K.</param>
    /// <returns>The table. A setting that cannot be changed, such as ingress or sweep air where none is, has no row.</returns>
    /// <exception cref="ArgumentNullException">Job or unit is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A change lies outside its range.</exception>
    public static PlanSensitivity Of(
        TreatmentJob job,
        PurificationUnit unit,
        Ratio? change = null,
        TemperatureDelta? warmer = null
    )
    {
        Guard.NotNull(job);
        Guard.NotNull(unit);
        var share = Guard.InRange(change?.DecimalFractions ?? 0.25, 0.01, 0.9, "(ratio)", nameof(change));
        var kelvins = Guard.InRange(warmer?.Kelvins ?? 5, 0.1, 50, "K", nameof(warmer));
        var plan = Planned(job, unit);
        PurificationUnit[] units =
        [
            unit.With(flow: unit.Pump.FullFlow * (1 + share)),
            unit.With(
                processTemperature: Temperature.FromDegreesCelsius(
                    Math.Min(150, unit.ProcessTemperature.DegreesCelsius + kelvins)
                ),
                // The film is that of the unit as it was found, whatever the thermostat is set to.
                removalViscosity: unit.RemovalViscosity
                    ?? job.Oil.ViscosityLine.ViscosityAt(plan.ProcessTemperature).Viscosity
            ),
            unit.With(
                chamber: unit.Chamber.At(
                    Pressure.FromPascals(Math.Max(10, unit.Chamber.AbsolutePressure.Pascals * (1 - share)))
                )
            ),
        ];
        List<Effect> rows =
        [
            Row(
                Setting.Flow,
                Step(unit.Pump.FullFlow.LitersPerMinute, units[0].Pump.FullFlow.LitersPerMinute, "L/min"),
                units[0]
            ),
            Row(
                Setting.ProcessTemperature,
                Step(unit.ProcessTemperature.DegreesCelsius, units[1].ProcessTemperature.DegreesCelsius, "°C"),
                units[1]
            ),
            Row(
                Setting.Vacuum,
                Step(unit.Chamber.AbsolutePressure.Hectopascals, units[2].Chamber.AbsolutePressure.Hectopascals, "hPa"),
                units[2]
            ),
        ];
        var air = unit.Chamber.Sweep.WithFlow(unit.Chamber.Sweep.DryAir * (1 + share));
        if (air.DryAir.KilogramsPerSecond > 0 && unit.Chamber.CanCarry(air))
        {
            rows.Add(
                Row(
                    Setting.SweepAir,
                    Step(unit.Chamber.Sweep.DryAir.KilogramsPerHour, air.DryAir.KilogramsPerHour, "kg/h"),
                    unit.With(chamber: unit.Chamber.With(air))
                )
            );
        }

        if (unit.HeaterPower.Watts > 0)
        {
            var more = Power.FromWatts((double)unit.HeaterPower.Watts * (1 + share));
            rows.Add(
                Row(
                    Setting.HeaterPower,
                    Step((double)unit.HeaterPower.Kilowatts, (double)more.Kilowatts, "kW"),
                    unit.With(heaterPower: more)
                )
            );
        }

        if (job.Reservoir.WaterIngress.KilogramsPerHour > 0)
        {
            var less = job.Reservoir.WaterIngress * (1 - share);
            rows.Add(
                new(
                    Setting.WaterIngress,
                    Step(job.Reservoir.WaterIngress.GramsPerHour, less.GramsPerHour, "g/h"),
                    plan,
                    Planned(job.With(reservoir: job.Reservoir.With(waterIngress: less)), unit)
                )
            );
        }

        Effect Row(Setting setting, string step, PurificationUnit changed) =>
            new(setting, step, plan, Planned(job, changed));

        static string Step(double from, double to, string of) =>
            $"{PlainText.Number(from)} to {PlainText.Number(to)} {of}";

        return new PlanSensitivity(
            plan,
            [
                .. rows.OrderByDescending(row => row.MakesReachable)
                    .ThenByDescending(row => row.TimeSaved ?? TimeSpan.Zero)
                    .ThenByDescending(row => row.LevelDrop?.PartsPerMillion ?? 0),
            ]
        );
    }

    /// <summary>The table in plain text.</summary>
    /// <returns>One line a setting.</returns>
    public override string ToString() => string.Join("\n", Rows);

    private static PurificationPlan Planned(TreatmentJob job, PurificationUnit unit)
    {
        var hours = Math.Min(720, Math.Max(1, job.Horizon.TotalHours / 50));
        return PurificationPlan.Create(job, unit, Elapsed.FromHours(hours));
    }

    /// <summary>What can be changed about a vacuum dehydration.</summary>
    public enum Setting
    {
        /// <summary>More oil flow.</summary>
        Flow,

        /// <summary>A higher process temperature, up to the lowest of the limits of oil, seals and unit.</summary>
        ProcessTemperature,

        /// <summary>More heater power.</summary>
        HeaterPower,

        /// <summary>A lower chamber pressure.</summary>
        Vacuum,

        /// <summary>More sweep air of the same kind, where there is some.</summary>
        SweepAir,

        /// <summary>Less water that comes in.</summary>
        WaterIngress,
    }

    /// <summary>What one change does to a plan.</summary>
    public sealed class Effect
    {
        internal Effect(Setting setting, string step, PurificationPlan before, PurificationPlan after)
        {
            Setting = setting;
            Step = step;
            Plan = after;
            IsHeldDown =
                setting == Setting.ProcessTemperature && after.HeldDownBy != PurificationPlan.TemperatureLimit.None;
            TimeSaved =
                before.MeetsTarget
                && after.MeetsTarget
                && before.Arrival.TryEstimate(out var slow)
                && after.Arrival.TryEstimate(out var fast)
                    ? slow - fast
                    : null;
            MakesReachable = !before.MeetsTarget && after.MeetsTarget;
            FloorDrop = before.End.WaterFloor - after.End.WaterFloor;
            LevelDrop = before.End.WaterLevel - after.End.WaterLevel;
        }

        /// <summary>What was changed.</summary>
        public Setting Setting { get; }

        /// <summary>From what to what, with its unit.</summary>
        public string Step { get; }

        /// <summary>The plan with the change.</summary>
        public PurificationPlan Plan { get; }

        /// <summary>Whether a limit of oil, seals or unit held the change down.</summary>
        public bool IsHeldDown { get; }

        /// <summary>Time saved, negative where the change costs time; null unless the target is met with and without the change.</summary>
        public TimeSpan? TimeSaved { get; }

        /// <summary>Whether the target is met only with the change.</summary>
        public bool MakesReachable { get; }

        /// <summary>By how much the floor falls; negative where it rises.</summary>
        public MassFraction FloorDrop { get; }

        /// <summary>By how much the level with ingress falls, negative where it rises; null where there is no level with or without the change.</summary>
        public MassFraction? LevelDrop { get; }

        /// <summary>The row in words.</summary>
        /// <returns>For example <c>vacuum 65.1 to 48.8 hPa: saves 1.2 h, floor 30.2 mg/kg lower</c>.</returns>
        public override string ToString() =>
            $"{PlainText.Spaced(Setting)} {Step}: "
            + (
                MakesReachable ? "makes the target reachable"
                : TimeSaved is { } saved
                    ? Math.Abs(saved.TotalHours) < 0.005 ? "saves no time"
                        : $"{(saved < TimeSpan.Zero ? "costs" : "saves")} {PlainText.Number(Math.Abs(saved.TotalHours))} h"
                : Plan.MeetsTarget ? "target met"
                : "target not met"
            )
            + Moved("floor", FloorDrop)
            + Moved("level", LevelDrop ?? MassFraction.Zero)
            + (IsHeldDown ? ", held down by a limit" : "");

        /// <summary>A move of less than a tenth of a milligram nobody reads.</summary>
        private static string Moved(string what, MassFraction drop) =>
            Math.Abs(drop.PartsPerMillion) < 0.1
                ? ""
                : $", {what} {PlainText.Number(Math.Abs(drop.PartsPerMillion))} mg/kg {(drop.PartsPerMillion < 0 ? "higher" : "lower")}";
    }
}
