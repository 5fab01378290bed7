using OilCondition.Cleanliness;
using OilCondition.Text;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>What a run is followed with: what is to be reached, how long it must hold, and at which temperature it counts.</summary>
public sealed class CleanupMonitorOptions
{
    /// <summary>The most water that a reading or a target can have, in mg/kg.</summary>
    internal static readonly double MostWater = Measurands.WaterContent.HighestPlausible;

    private CleanupMonitorOptions(
        DateTimeOffset startedAt,
        Measurand measurand,
        double? target,
        CleanlinessCode? code,
        SaturationCurve? saturationCurve,
        TimeSpan holdFor,
        Temperature? warmFrom,
        Temperature? referredTo,
        TimeSpan? longestGap,
        TimeSpan? spacing,
        int mostCells,
        TimeSpan? stallAfter,
        PlannedPerformance? planned
    )
    {
        var gap = longestGap ?? holdFor;
        var stall = stallAfter ?? UsualStallAfter(planned);
        var cell = spacing ?? Elapsed.FromMinutes(1);
        Guard.InRange(holdFor.TotalHours, 1.0 / 60, 8760, "h", nameof(holdFor));
        Guard.InRange(gap.TotalHours, 1.0 / 60, 8760, "h", nameof(longestGap));
        Guard.InRange(cell.TotalHours, 1.0 / 3600, 24, "h", nameof(spacing));
        Guard.InRange(mostCells, 16, 100_000, "");
        Guard.InRange(stall.TotalHours, 1.0 / 60, 8760, "h", nameof(stallAfter));
        StartedAt = Guard.Moment(startedAt);
        StallAfter = stall;
        Measurand = measurand;
        Target = target;
        Code = code;
        SaturationCurve = saturationCurve;
        HoldFor = holdFor;
        IsReferred = referredTo.HasValue;
        ReferenceTemperature = (warmFrom ?? referredTo)!.Value;
        OilTemperature.Celsius(ReferenceTemperature, warmFrom is null ? nameof(referredTo) : nameof(warmFrom));
        LongestGap = gap;
        Spacing = cell;
        MostCells = mostCells;
        Planned = planned;
    }

    /// <summary>Start of the run.</summary>
    public DateTimeOffset StartedAt { get; }

    /// <summary>What is followed beside particle counts: water content unless a run states another.</summary>
    public Measurand Measurand { get; }

    /// <summary>What is to be reached, in the unit of <see cref="Measurand"/>; null where only a code is asked.</summary>
    public double? Target { get; }

    /// <summary>The cleanliness code that is to be reached; null where none is asked.</summary>
    public CleanlinessCode? Code { get; }

    /// <summary>Water saturation of this oil, which turns relative saturation into a content; null where it is not known: then only contents are followed.</summary>
    public SaturationCurve? SaturationCurve { get; }

    /// <summary>How long the target must hold.</summary>
    public TimeSpan HoldFor { get; }

    /// <summary>Whether readings count at every temperature and are referred to <see cref="ReferenceTemperature"/>; if not, the oil must be that warm.</summary>
    public bool IsReferred { get; }

    /// <summary>The temperature from which on readings count, or to which they are referred.</summary>
    public Temperature ReferenceTemperature { get; }

    /// <summary>Two readings further apart than this do not show that the target held between them.</summary>
    public TimeSpan LongestGap { get; }

    /// <summary>Without a fall for so long a run stalls.</summary>
    public TimeSpan StallAfter { get; }

    /// <summary>What was planned for the run: how soon its oil is mixed, and how fast its water leaves; null where that is not known.</summary>
    public PlannedPerformance? Planned { get; }

    /// <summary>Finest cell of time: of each cell one reading of a kind is kept for the curve.</summary>
    public TimeSpan Spacing { get; }

    /// <summary>Cells of time at most; when more are needed, all of them double in width.</summary>
    public int MostCells { get; }

    /// <summary>The target counts while the oil is warm.</summary>
    /// <param name="startedAt">Start of the run, years 1900 to 2199; earlier readings are left out.</param>
    /// <param name="target">What is to be reached.</param>
    /// <param name="saturationCurve">Water saturation of this oil.</param>
    /// <param name="holdFor">How long the target must hold, 1 min to a year.</param>
    /// <param name="warmFrom">Oil temperature from which on a reading counts, −60 to 200 °C.</param>
    /// <param name="longestGap">Longest time between readings while it holds, 1 min to a year; null for as long as it must hold.</param>
    /// <param name="spacing">Finest cell of time, 1 s to 24 h; null for 1 min.</param>
    /// <param name="mostCells">Cells of time that are kept at most, 16 to 100 000.</param>
    /// <param name="stallAfter">Without a fall for so long a run stalls, 1 min to a year; null for 24 h, or for three planned time constants, 3 / k, where these are longer (ours).</param>
    /// <param name="planned">What was planned for the run; null where that is not known. With it a run whose water does not leave is called hours sooner.</param>
    /// <returns>The options.</returns>
    /// <exception cref="ArgumentNullException">Target or curve is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static CleanupMonitorOptions WhileWarm(
        DateTimeOffset startedAt,
        TreatmentTarget target,
        SaturationCurve saturationCurve,
        TimeSpan holdFor,
        Temperature warmFrom,
        TimeSpan? longestGap = null,
        TimeSpan? spacing = null,
        int mostCells = 1024,
        TimeSpan? stallAfter = null,
        PlannedPerformance? planned = null
    ) =>
        ForWater(
            startedAt,
            target,
            saturationCurve,
            holdFor,
            warmFrom,
            null,
            longestGap,
            spacing,
            mostCells,
            stallAfter,
            planned
        );

    /// <summary>The target counts at every temperature: contents are the same warm and cold, and relative saturation is referred to one temperature.</summary>
    /// <remarks>In cold oil water separates and lies where no sensor sees it: circulate before a reading is believed.</remarks>
    /// <param name="startedAt">Start of the run, years 1900 to 2199; earlier readings are left out.</param>
    /// <param name="target">What is to be reached.</param>
    /// <param name="saturationCurve">Water saturation of this oil.</param>
    /// <param name="holdFor">How long the target must hold, 1 min to a year.</param>
    /// <param name="referredTo">The temperature to which relative saturation is referred, −60 to 200 °C.</param>
    /// <param name="longestGap">Longest time between readings while it holds, 1 min to a year; null for as long as it must hold.</param>
    /// <param name="spacing">Finest cell of time, 1 s to 24 h; null for 1 min.</param>
    /// <param name="mostCells">Cells of time that are kept at most, 16 to 100 000.</param>
    /// <param name="stallAfter">Without a fall for so long a run stalls, 1 min to a year; null for 24 h, or for three planned time constants, 3 / k, where these are longer (ours).</param>
    /// <param name="planned">What was planned for the run; null where that is not known. With it a run whose water does not leave is called hours sooner.</param>
    /// <returns>The options.</returns>
    /// <exception cref="ArgumentNullException">Target or curve is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static CleanupMonitorOptions ReferredTo(
        DateTimeOffset startedAt,
        TreatmentTarget target,
        SaturationCurve saturationCurve,
        TimeSpan holdFor,
        Temperature referredTo,
        TimeSpan? longestGap = null,
        TimeSpan? spacing = null,
        int mostCells = 1024,
        TimeSpan? stallAfter = null,
        PlannedPerformance? planned = null
    ) =>
        ForWater(
            startedAt,
            target,
            saturationCurve,
            holdFor,
            null,
            referredTo,
            longestGap,
            spacing,
            mostCells,
            stallAfter,
            planned
        );

    /// <summary>For a run as a machine's records state it: its measurand, target and plan, the machine's oil and its running temperature.</summary>
    /// <remarks>
    /// Readings count at every temperature. A run whose oil has no saturation curve, or that brings down another measurand than water, is
    /// followed by the readings of that measurand alone.
    /// </remarks>
    /// <param name="run">The run.</param>
    /// <param name="machine">The machine.</param>
    /// <param name="holdFor">How long the target must hold, 1 min to a year; null for 4 h (ours).</param>
    /// <param name="longestGap">Longest time between readings while it holds, 1 min to a year; null for 7 days, since samples come seldom (ours).</param>
    /// <param name="stallAfter">Without a fall for so long a run stalls, 1 min to a year; null for 24 h, or for three planned time constants, 3 / k, where these are longer (ours).</param>
    /// <returns>The options.</returns>
    /// <exception cref="ArgumentNullException">Run or machine is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static CleanupMonitorOptions Of(
        TreatmentRun run,
        Machine machine,
        TimeSpan? holdFor = null,
        TimeSpan? longestGap = null,
        TimeSpan? stallAfter = null
    )
    {
        Guard.NotNull(run);
        Guard.NotNull(machine);
        return new(
            run.At,
            run.Measurand,
            run.Target,
            null,
            machine.Oil.SaturationCurve,
            holdFor ?? TimeSpan.FromHours(4),
            null,
            machine.RunningTemperature,
            longestGap ?? TimeSpan.FromDays(7),
            null,
            1024,
            stallAfter,
            PlannedPerformance.Of(run, machine)
        );
    }

    /// <summary>Whether water content is followed.</summary>
    internal bool IsWater => Measurand.Equals(Measurands.WaterContent);

    /// <summary>What a reading says of what is followed: water of a moisture sensor by the saturation curve, at saturation as a bound.</summary>
    /// <param name="reading">The reading.</param>
    /// <returns>The figure in the unit of <see cref="Measurand"/>; null where the reading does not tell it.</returns>
    public Reading? ContentOf(CleanupReading reading) => TargetMarks.Content(Guard.NotNull(reading), this);

    /// <summary>Target, holding time and temperature.</summary>
    /// <returns>For example <c>water content 60 mg/kg for 6 h, from 45 °C on</c>.</returns>
    public override string ToString()
    {
        List<string> asked = [];
        if (Target is { } target)
        {
            asked.Add($"{Measurand.Name} {PlainText.Number(target)} {Measurand.Unit}".TrimEnd());
        }

        if (Code is { } code)
        {
            asked.Add($"code {code}");
        }

        var celsius = PlainText.Number(ReferenceTemperature.DegreesCelsius);
        return $"{string.Join(" and ", asked)} for {PlainText.Number(HoldFor.TotalHours)} h, "
            + (IsReferred ? $"at every temperature, referred to {celsius} °C" : $"from {celsius} °C on");
    }

    /// <summary>24 h, and no less than three planned time constants, within a year.</summary>
    private static TimeSpan UsualStallAfter(PlannedPerformance? planned) =>
        Elapsed.FromHours(planned is null ? 24 : Math.Min(8760, Math.Max(24, 3 / planned.RatePerHour)));

    private static CleanupMonitorOptions ForWater(
        DateTimeOffset startedAt,
        TreatmentTarget target,
        SaturationCurve saturationCurve,
        TimeSpan holdFor,
        Temperature? warmFrom,
        Temperature? referredTo,
        TimeSpan? longestGap,
        TimeSpan? spacing,
        int mostCells,
        TimeSpan? stallAfter,
        PlannedPerformance? planned
    ) =>
        new(
            startedAt,
            Measurands.WaterContent,
            Guard.NotNull(target).Water?.PartsPerMillion,
            target.Code,
            Guard.NotNull(saturationCurve),
            holdFor,
            warmFrom,
            referredTo,
            longestGap,
            spacing,
            mostCells,
            stallAfter,
            planned
        );
}
