using MathNet.Numerics.RootFinding;
using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>How large flow, heater, vacuum and sweep air must be for a target within a time: the plan, asked backwards.</summary>
/// <remarks>
/// <para>
/// Each row changes one thing and leaves the rest. The least help that does is bracketed on whole plans in steps of a factor of two, from 1/32 to 32
/// times what the unit has, and found there by Brent's method, to 0.1 %. More flow with a heater at its limit can be slower: the row is the first
/// size that does, and a larger one need not. A row that no size does says how near the best one comes, and why. The whole unit, flow, heater, vacuum
/// pump and sweep air alike, is a row too.
/// </para>
/// <para>Sweep air where there is none is air behind a dryer, dew point −40 °C. A deeper vacuum needs a pump that holds it: <see cref="VacuumPump"/>.</para>
/// <para>Caution: the temperature stays as the unit has it; makers' limits come before any size.</para>
/// </remarks>
/// <example>
/// <code>
/// var sizing = PlanSizing.Of(job, unit, within: TimeSpan.FromHours(48));
/// foreach (var row in sizing.Rows) { /* row.Setting, row.Outcome, row.Size and row.Unit, row.Time */ }
/// </code>
/// </example>
public sealed class PlanSizing
{
    private const int Doublings = 5;

    private PlanSizing(TreatmentJob job, PurificationUnit unit, TimeSpan within, IReadOnlyList<Row> rows)
    {
        Job = job;
        Unit = unit;
        Within = within;
        Rows = rows;
    }

    /// <summary>The task.</summary>
    public TreatmentJob Job { get; }

    /// <summary>The unit as it is.</summary>
    public PurificationUnit Unit { get; }

    /// <summary>The time in which the target is to be reached.</summary>
    public TimeSpan Within { get; }

    /// <summary>The rows: flow, heater, vacuum, sweep air, the whole unit. A unit without heater has no row for it.</summary>
    public IReadOnlyList<Row> Rows { get; }

    /// <summary>Sizes a unit for a task.</summary>
    /// <param name="job">The task; its own horizon is not used.</param>
    /// <param name="unit">The unit to begin with.</param>
    /// <param name="within">Time in which the target is to be reached, 1 min to 2 years.</param>
    /// <returns>The rows.</returns>
    /// <exception cref="ArgumentNullException">Task or unit is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The time lies outside its range.</exception>
    public static PlanSizing Of(TreatmentJob job, PurificationUnit unit, TimeSpan within)
    {
        Guard.NotNull(job);
        Guard.NotNull(unit);
        Guard.InRange(within.TotalHours, 1.0 / 60, 17_520, "h", nameof(within));
        var search = new Search(job, within);
        var flow = unit.Pump.FullFlow;
        var (air, dry) = (unit.Chamber.Sweep, Air(job, unit));
        List<Row> rows = [search.Least(Setting.Flow, flow.LitersPerMinute, "L/min", size => Flow(unit, size))];
        if (unit.HeaterPower.Watts > 0)
        {
            rows.Add(
                search.Least(
                    Setting.HeaterPower,
                    (double)unit.HeaterPower.Kilowatts,
                    "kW",
                    size => Heater(unit, size * (double)unit.HeaterPower.Kilowatts)
                )
            );
        }

        rows.Add(
            search.Least(
                Setting.ChamberPressure,
                unit.Chamber.AbsolutePressure.Hectopascals,
                "hPa",
                size => Vacuum(unit, size),
                isLessBetter: true
            )
        );
        rows.Add(
            search.Least(
                Setting.SweepAir,
                dry.DryAir.KilogramsPerHour,
                "kg/h",
                size => Swept(unit, dry, size),
                asItIs: air.DryAir.KilogramsPerHour > 0
            )
        );
        rows.Add(search.Least(Setting.WholeUnit, 1, "times", size => Whole(unit, size)));
        return new PlanSizing(job, unit, within, rows);
    }

    /// <summary>The rows in plain text.</summary>
    /// <returns>One line a row.</returns>
    public override string ToString() => string.Join("\n", Rows);

    private static PurificationUnit? Flow(PurificationUnit unit, double size) =>
        unit.Pump.FullFlow.LitersPerMinute * size is var litres and >= 1e-6 and <= 1e6
            ? unit.With(flow: VolumeFlow.FromLitersPerMinute(litres))
            : null;

    private static PurificationUnit? Heater(PurificationUnit unit, double kilowatts) =>
        kilowatts <= 1e5 ? unit.With(heaterPower: Power.FromKilowatts(kilowatts)) : null;

    private static PurificationUnit? Vacuum(PurificationUnit unit, double size) =>
        unit.Chamber.AbsolutePressure.Pascals / size is var pascal and >= 10 and <= 110_000
            ? unit.With(chamber: unit.Chamber.With(absolutePressure: Pressure.FromPascals(pascal)))
            : null;

    private static PurificationUnit? Swept(PurificationUnit unit, SweepAir air, double size) =>
        air.WithFlow(air.DryAir * size) is var more && unit.Chamber.CanCarry(more)
            ? unit.With(chamber: unit.Chamber.With(sweep: more))
            : null;

    private static PurificationUnit? Whole(PurificationUnit unit, double size)
    {
        var chamber = unit.Chamber;
        return Flow(unit, size)
            ?.With(
                heaterPower: Power.FromWatts((double)unit.HeaterPower.Watts * size),
                chamber: chamber.With(
                    sweep: chamber.Sweep.WithFlow(chamber.Sweep.DryAir * size),
                    pumpCapacity: chamber.PumpCapacity * size
                )
            );
    }

    /// <summary>The air that it has; air behind a dryer at 0.1 % of the oil's mass flow where it has none.</summary>
    private static SweepAir Air(TreatmentJob job, PurificationUnit unit)
    {
        const double OfOil = 1e-3;
        if (unit.Chamber.Sweep.DryAir.KilogramsPerSecond > 0)
        {
            return unit.Chamber.Sweep;
        }

        var density = job.Oil.Properties.At(unit.ProcessTemperature).Density.KilogramsPerCubicMeter;
        return SweepAir.FromAir(
            MassFlow.FromKilogramsPerSecond(OfOil * unit.Pump.FullFlow.CubicMetersPerSecond * density),
            HumidAir.FromDewPoint(Temperature.FromDegreesCelsius(20), Temperature.FromDegreesCelsius(-40)),
            StandardAtmosphere.SeaLevel
        );
    }

    /// <summary>What can be sized.</summary>
    public enum Setting
    {
        /// <summary>Oil flow.</summary>
        Flow,

        /// <summary>Power of the in-line heater.</summary>
        HeaterPower,

        /// <summary>Absolute pressure in the chamber: the size is the highest that does.</summary>
        ChamberPressure,

        /// <summary>Dry part of the sweep air.</summary>
        SweepAir,

        /// <summary>Flow, heater, vacuum pump and sweep air alike, as a multiple of what the unit has.</summary>
        WholeUnit,
    }

    /// <summary>What came of a search.</summary>
    public enum SizingOutcome
    {
        /// <summary>There is a least size that does.</summary>
        Sized,

        /// <summary>Even the smallest size that was looked at does: another thing sets the time.</summary>
        AnySizeDoes,

        /// <summary>No size from 1/32 to 32 times does.</summary>
        NoSizeDoes,
    }

    /// <summary>One thing, sized.</summary>
    public sealed class Row
    {
        internal Row(
            Setting setting,
            SizingOutcome outcome,
            double? size,
            double asItIs,
            string unit,
            TimeSpan? time,
            WhyNot? whyNot
        )
        {
            Setting = setting;
            Outcome = outcome;
            Size = size;
            AsItIs = asItIs;
            Unit = unit;
            Time = time;
            WhyNot = whyNot;
        }

        /// <summary>What is sized.</summary>
        public Setting Setting { get; }

        /// <summary>What came of the search.</summary>
        public SizingOutcome Outcome { get; }

        /// <summary>The size that does, in <see cref="Unit"/>; null where there is no one size.</summary>
        public double? Size { get; }

        /// <summary>What the unit has, in <see cref="Unit"/>; 0 for sweep air where it has none.</summary>
        public double AsItIs { get; }

        /// <summary>Unit of the sizes: L/min, kW, hPa, kg/h or times.</summary>
        public string Unit { get; }

        /// <summary>Time to the target at this size; at the best one where none does; null where none ever gets there in four times the time.</summary>
        public TimeSpan? Time { get; }

        /// <summary>Why the largest size does not; null where a size does.</summary>
        public WhyNot? WhyNot { get; }

        /// <summary>The row in one line.</summary>
        /// <returns>For example <c>heater power: 21.4 kW, has 12 kW; target in 48 h</c>.</returns>
        public override string ToString() =>
            $"{PlainText.Spaced(Setting)}: "
            + (
                Outcome == SizingOutcome.AnySizeDoes ? "any size does"
                : Size is { } size
                    ? $"{PlainText.Number(size)} {Unit}, has {PlainText.Number(AsItIs)}"
                        + (Time is { } time ? $"; target in {PlainText.Number(time.TotalHours)} h" : "")
                : "no size does"
                    + (Time is { } best ? $", the best takes {PlainText.Number(best.TotalHours)} h" : "")
                    + (WhyNot is { } reason ? $" ({PlainText.Spaced(reason)})" : "")
            );
    }

    /// <summary>Searches on whole plans that look four times as far ahead as is asked.</summary>
    private sealed class Search(TreatmentJob job, TimeSpan within)
    {
        private const double LooksAhead = 4;

        private readonly TreatmentJob far = new(
            job.Oil,
            job.Reservoir,
            job.Contamination,
            job.Target,
            Elapsed.FromHours(LooksAhead * within.TotalHours)
        );

        public Row Least(
            Setting setting,
            double has,
            string name,
            Func<double, PurificationUnit?> sized,
            bool isLessBetter = false,
            bool asItIs = true
        )
        {
            Row Found(SizingOutcome outcome, double? size, PurificationPlan? plan) =>
                new(
                    setting,
                    outcome,
                    size is { } times
                        ? isLessBetter
                            ? has / times
                            : has * times
                        : null,
                    asItIs ? has : 0,
                    name,
                    plan is { MeetsTarget: true } && plan.Arrival.TryEstimate(out var time) ? time : null,
                    outcome == SizingOutcome.NoSizeDoes ? plan?.WhyNot ?? Treatment.WhyNot.TakesTooLong : null
                );

            PurificationPlan? best = null;
            double? before = null;
            for (var doubling = -Doublings; doubling <= Doublings; doubling++)
            {
                if (sized(Math.Pow(2, doubling)) is not { } unit)
                {
                    continue;
                }

                var plan = Planned(unit);
                if (Excess(plan) <= 0)
                {
                    return before is not { } low ? Found(SizingOutcome.AnySizeDoes, null, plan) : AtRoot(low, doubling);
                }

                best = best is null || Excess(plan) <= Excess(best) ? plan : best;
                before = doubling;
            }

            return Found(SizingOutcome.NoSizeDoes, null, best);

            Row AtRoot(double low, double high)
            {
                var size = Math.Pow(
                    2,
                    Brent.FindRoot(doubling => Excess(Planned(sized(Math.Pow(2, doubling))!)), low, high, 1e-4, 60)
                );
                var plan = Planned(sized(size)!);

                // Brent ends on either side of the root; the size told is one that does.
                for (var step = 1e-3; Excess(plan) > 0 && step < 1; step *= 2)
                {
                    size = Math.Min(Math.Pow(2, high), size * (1 + step));
                    plan = Planned(sized(size)!);
                }

                return Found(SizingOutcome.Sized, size, plan);
            }
        }

        private PurificationPlan Planned(PurificationUnit unit) =>
            PurificationPlan.Create(
                far,
                unit,
                Elapsed.FromHours(Math.Min(720, Math.Max(1.0 / 60, far.Horizon.TotalHours / 40)))
            );

        /// <summary>How far beyond the time asked for, as a share of it; the horizon where the target is not met at all.</summary>
        private double Excess(PurificationPlan plan) =>
            (plan.MeetsTarget && plan.Arrival.TryEstimate(out var time) ? time.TotalHours : far.Horizon.TotalHours)
                / within.TotalHours
            - 1;
    }
}
