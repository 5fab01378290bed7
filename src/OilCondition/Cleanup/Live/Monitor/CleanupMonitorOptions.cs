using OilCondition.Text;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>What a monitor holds a run against: target, how long it must hold, and at which temperature it counts.</summary>
public sealed class CleanupMonitorOptions
{
    private CleanupMonitorOptions(
        DateTimeOffset startedAt,
        TreatmentTarget target,
        SaturationCurve saturationCurve,
        TimeSpan holdFor,
        Temperature? warmFrom,
        Temperature? referredTo,
        TimeSpan? longestGap,
        TimeSpan? spacing,
        int mostCells,
        TimeSpan? stallAfter
    )
    {
        var gap = longestGap ?? holdFor;
        var stall = stallAfter ?? Elapsed.FromHours(24);
        var cell = spacing ?? Elapsed.FromMinutes(1);
        Guard.InRange(holdFor.TotalHours, 1.0 / 60, 8760, "h", nameof(holdFor));
        Guard.InRange(gap.TotalHours, 1.0 / 60, 8760, "h", nameof(longestGap));
        Guard.InRange(cell.TotalHours, 1.0 / 3600, 24, "h", nameof(spacing));
        Guard.InRange(mostCells, 16, 100_000, "");
        Guard.InRange(stall.TotalHours, 1.0 / 60, 8760, "h", nameof(stallAfter));
        Guard.Moment(startedAt);
        StallAfter = stall;
        StartedAt = startedAt;
        Target = Guard.NotNull(target);
        SaturationCurve = Guard.NotNull(saturationCurve);
        HoldFor = holdFor;
        IsReferred = referredTo.HasValue;
        ReferenceTemperature = (warmFrom ?? referredTo)!.Value;
        OilTemperature.Celsius(ReferenceTemperature, warmFrom is null ? nameof(referredTo) : nameof(warmFrom));
        LongestGap = gap;
        Spacing = cell;
        MostCells = mostCells;
    }

    /// <summary>Start of the run.</summary>
    public DateTimeOffset StartedAt { get; }

    /// <summary>What is to be reached.</summary>
    public TreatmentTarget Target { get; }

    /// <summary>Water saturation of this oil, which turns a sensor's reading into a content.</summary>
    public SaturationCurve SaturationCurve { get; }

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
    /// <param name="stallAfter">Without a fall for so long a run stalls, 1 min to a year; null for 24 h (ours). Three planned time constants, 3 / k, are what <see cref="StallDiagnosis"/> waits for.</param>
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
        TimeSpan? stallAfter = null
    ) => new(startedAt, target, saturationCurve, holdFor, warmFrom, null, longestGap, spacing, mostCells, stallAfter);

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
    /// <param name="stallAfter">Without a fall for so long a run stalls, 1 min to a year; null for 24 h (ours). Three planned time constants, 3 / k, are what <see cref="StallDiagnosis"/> waits for.</param>
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
        TimeSpan? stallAfter = null
    ) => new(startedAt, target, saturationCurve, holdFor, null, referredTo, longestGap, spacing, mostCells, stallAfter);
}
