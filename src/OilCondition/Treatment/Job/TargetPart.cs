using OilCondition.Text;

namespace OilCondition.Treatment;

/// <summary>One part of a target, water or code: when it is reached, or why not. Neither is stated where the target does not ask for it.</summary>
internal sealed class TargetPart
{
    private TargetPart(Arrival<TimeSpan>? arrival = null, WhyNot? whyNot = null)
    {
        Arrival = arrival;
        WhyNot = whyNot;
    }

    public static TargetPart NotAsked { get; } = new();

    /// <summary>It is so from the start.</summary>
    public static TargetPart Already { get; } = new(new Arrival<TimeSpan>.Already(TimeSpan.Zero));

    public Arrival<TimeSpan>? Arrival { get; }

    public WhyNot? WhyNot { get; }

    /// <summary>Whether nothing is left to be done: reached, so from the start, or not asked.</summary>
    public bool IsMet => WhyNot is null;

    /// <summary>The time after which it is reached; null where it is not, or needs none.</summary>
    public TimeSpan? Time => (Arrival as Arrival<TimeSpan>.Expected)?.Estimate;

    public static TargetPart After(TimeSpan time) => new(new Arrival<TimeSpan>.Expected(time));

    /// <summary>Reached after a time, unless that is later than the task looks ahead.</summary>
    public static TargetPart Within(TreatmentJob job, double hours) =>
        hours <= job.Horizon.TotalHours ? After(Elapsed.FromHours(hours)) : TooLong(job.Horizon);

    public static TargetPart TooLong(TimeSpan notBefore) =>
        new(new Arrival<TimeSpan>.NotBefore(notBefore), Treatment.WhyNot.TakesTooLong);

    /// <summary>A part that is not reached, for a reason.</summary>
    public static TargetPart Not(WhyNot whyNot, TreatmentJob job) =>
        whyNot switch
        {
            Treatment.WhyNot.TakesTooLong => TooLong(job.Horizon),
            Treatment.WhyNot.DensityNotStated => new(new Arrival<TimeSpan>.NotDetermined(), whyNot),
            _ => new(new Arrival<TimeSpan>.Never(), whyNot),
        };

    /// <summary>The water part of a treatment that leaves water as it is.</summary>
    public static TargetPart UntouchedWater(TreatmentJob job) =>
        job.Target.Water is not { } target ? NotAsked
        : job.Contamination.Water <= target ? Already
        : Not(Treatment.WhyNot.NotTouched, job);

    /// <summary>The code of a treatment that leaves particles as they are.</summary>
    public static TargetPart UntouchedParticles(TreatmentJob job) =>
        job.Target.Code is not { } code ? NotAsked
        : new CodeLimits(code).Excess(job.Contamination.Particles) <= 0 ? Already
        : Not(Treatment.WhyNot.NotTouched, job);

    /// <summary>Both parts together: the water's reason where it is not met, else the code's, else the later of the two.</summary>
    public static TargetPart Both(TargetPart water, TargetPart particles) =>
        !water.IsMet ? water
        : !particles.IsMet ? particles
        : water.Arrival is null || (particles.Time ?? TimeSpan.Zero) > (water.Time ?? TimeSpan.Zero) ? particles
        : water;

    /// <summary>The time that a treatment runs for the parts that it reaches; null where it reaches none, or needs no time.</summary>
    public static TimeSpan? RunTime(TargetPart water, TargetPart particles) =>
        (particles.Time ?? TimeSpan.Zero) > (water.Time ?? TimeSpan.Zero) ? particles.Time : water.Time;

    /// <summary>The answer in a sentence: <c>water not reached (emulsion stays)</c>.</summary>
    public string Of(string what) => IsMet ? $"{what} {this}" : $"{what} not reached ({this})";

    /// <summary>The answer in a few words, as in a table: <c>in 12.3 h</c>.</summary>
    public override string ToString() =>
        WhyNot is { } reason ? PlainText.Spaced(reason)
        : Time is { } time ? $"in {PlainText.Number(time.TotalHours)} h"
        : Arrival is null ? "not asked"
        : "already there";
}
