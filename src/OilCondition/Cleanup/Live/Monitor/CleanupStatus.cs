using OilCondition.Cleanliness;
using OilCondition.Statistics;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>Where a run stands at its latest reading.</summary>
/// <remarks>
/// The curve is fitted to the source of water that has more kept readings, to titrations where both have as many: the two differ by the error of the saturation
/// curve and are not mixed. A target is met only when both sources, where both are read, stay at it or below for the holding time.
/// In the fit warm oil marks the beginning where the target counts while warm; a sensor at saturation and titrations above saturation mark free water.
/// </remarks>
public sealed class CleanupStatus
{
    private readonly IReadOnlyList<RunPart> parts;
    private CleanupCompletion? completion;

    internal CleanupStatus(CleanupMonitor monitor, double confidence)
    {
        Options = monitor.Options;
        Confidence = confidence;
        var trail = monitor.Trail;
        MonitorCell[] cells = [.. monitor.Cells];
        AsOf = trail.HasReadings ? trail.Latest : Options.StartedAt;
        HasTemperature = trail.TemperatureAt.HasValue;
        IsWarm = trail.IsWarm(Options);
        Temperature = Celsius(trail.LatestCelsius);
        LowestTemperature = Celsius(trail.LowestCelsius);
        HighestTemperature = Celsius(trail.HighestCelsius);

        CleanupReading[] sensor = [.. cells.Select(cell => cell.Sensor).OfType<CleanupReading>()];
        CleanupReading[] titrations = [.. cells.Select(cell => cell.Titration).OfType<CleanupReading>()];
        var followed = sensor.Length > titrations.Length ? sensor : titrations;
        Reading[] contents = [.. followed.Select(one => TargetMarks.Content(one, Options))];
        DateTimeOffset[] moments = [.. followed.Select(one => one.At)];
        FollowedSource =
            followed.Length == 0 ? WaterSource.None
            : sensor.Length > titrations.Length ? WaterSource.Sensor
            : WaterSource.Titration;
        var freeAbove =
            FollowedSource == WaterSource.Titration && HasTemperature
                ? Options.SaturationCurve.SaturationAt(Temperature).Content.PartsPerMillion
                : (double?)null;
        Curve = CleanupCurve.Fit(
            moments,
            contents,
            new CleanupOptions(startedAt: trail.WarmAt, freeWaterAbove: freeAbove)
        );
        HasWater = contents.Length > 0;
        LatestWater = MassFraction.FromPartsPerMillion(HasWater ? Math.Max(0, contents[contents.Length - 1].Value) : 0);
        HasFreeWater =
            HasWater
            && (
                contents[contents.Length - 1].Qualifier == Qualifier.GreaterThan
                || contents[contents.Length - 1].Value > freeAbove
            );

        HasWaterTarget = Options.Target.Water is not null;
        WaterTargetMgPerKg = Options.Target.Water?.PartsPerMillion ?? 0;
        WaterTimeToTarget = Curve.TimeTo(WaterTargetMgPerKg, confidence);

        CleanupReading[] counts = [.. cells.Select(cell => cell.Particles).OfType<CleanupReading>()];
        HasParticles = counts.Length > 0;
        FirstParticles = HasParticles ? counts[0].Particles : new ParticleLevels(0, 0, 0);
        LatestParticles = HasParticles ? counts[counts.Length - 1].Particles : new ParticleLevels(0, 0, 0);
        HasCodeTarget = Options.Target.Code is not null;
        ParticleCurve = OfCounts(counts);

        var water = new HoldCourse(cells.Select(cell => cell.Water), Options.HoldFor, Options.LongestGap);
        var code = new HoldCourse(cells.Select(cell => cell.Code), Options.HoldFor, Options.LongestGap);
        HoldCourse[] asked =
        [
            .. HasWaterTarget ? [water] : Array.Empty<HoldCourse>(),
            .. HasCodeTarget ? [code] : Array.Empty<HoldCourse>(),
        ];
        IsMet = asked.All(part => part.IsMet);
        MetAt = IsMet ? asked.Max(part => part.MetAt) : AsOf;
        IsHolding = asked.All(part => part.Since.HasValue || part.IsMet);
        HoldingSince = IsHolding ? asked.Max(part => part.Since ?? part.HeldFrom) : AsOf;
        HoldEndsAt = HoldingSince.AddHours(IsHolding ? Options.HoldFor.TotalHours : 0);
        var lost = asked.Select(part => part.ReboundAt).Where(at => at.HasValue).ToList();
        HasRebounded = lost.Count > 0;
        ReboundAt = HasRebounded ? lost.Max()!.Value : AsOf;
        parts = [.. WaterPart(moments, contents, water), .. CodeParts(counts, code)];
        var stalled = parts.FirstOrDefault(part =>
            !part.Hold.IsMet && part.Hold.Since is null && part.Stall != CleanupStall.None
        );
        Stall = stalled?.Stall ?? CleanupStall.None;
        StalledPart = stalled?.Part ?? (HasWaterTarget ? CleanupPart.Water : parts[0].Part);
        StallEvidence = stalled?.StallEvidence ?? [];
        Phase = PhaseOf();
    }

    /// <summary>What the run is held against.</summary>
    public CleanupMonitorOptions Options { get; }

    /// <summary>Confidence level of all intervals.</summary>
    public double Confidence { get; }

    /// <summary>The latest reading; the start of the run where there is none.</summary>
    public DateTimeOffset AsOf { get; }

    /// <summary>Where the run stands.</summary>
    public CleanupPhase Phase { get; }

    /// <summary>Whether a temperature was read.</summary>
    public bool HasTemperature { get; }

    /// <summary>Latest oil temperature; 0 °C where there is none.</summary>
    public Temperature Temperature { get; }

    /// <summary>Lowest oil temperature; 0 °C where there is none.</summary>
    public Temperature LowestTemperature { get; }

    /// <summary>Highest oil temperature; 0 °C where there is none.</summary>
    public Temperature HighestTemperature { get; }

    /// <summary>Whether the oil is as warm as it must be for the target to count; true where readings are referred to a temperature.</summary>
    public bool IsWarm { get; }

    /// <summary>Which water readings the curve follows.</summary>
    public WaterSource FollowedSource { get; }

    /// <summary>Whether there is a water reading.</summary>
    public bool HasWater { get; }

    /// <summary>Latest kept water reading of the followed source; at saturation the least that it can be.</summary>
    public MassFraction LatestWater { get; }

    /// <summary>Relative saturation of the latest water at the temperature to which readings are referred, or from which they count; capped at 1.</summary>
    public Ratio RelativeSaturationAtReference =>
        Options.SaturationCurve.Split(LatestWater, Options.ReferenceTemperature).RelativeSaturation;

    /// <summary>The fitted fall of water, in mg/kg; its status says what it is worth.</summary>
    public CleanupCurve Curve { get; }

    /// <summary>Whether a water content is asked.</summary>
    public bool HasWaterTarget { get; }

    /// <summary>The water content asked, in mg/kg; 0 where none is.</summary>
    public double WaterTargetMgPerKg { get; }

    /// <summary>When the curve reaches the water content asked, with both ends; holding time comes on top.</summary>
    public TimeToTarget WaterTimeToTarget { get; }

    /// <summary>Whether there are particle counts.</summary>
    public bool HasParticles { get; }

    /// <summary>First counts; zeros where there are none.</summary>
    public ParticleLevels FirstParticles { get; }

    /// <summary>Latest kept counts; zeros where there are none.</summary>
    public ParticleLevels LatestParticles { get; }

    /// <summary>Whether a code is asked.</summary>
    public bool HasCodeTarget { get; }

    /// <summary>The fitted fall of the counts.</summary>
    public CodeCurve ParticleCurve { get; }

    /// <summary>Whether all that is asked has held for long enough, and was not lost since.</summary>
    public bool IsMet { get; }

    /// <summary>When the holding time was over; <see cref="AsOf"/> unless <see cref="IsMet"/>.</summary>
    public DateTimeOffset MetAt { get; }

    /// <summary>Whether all that is asked is at the target or below.</summary>
    public bool IsHolding { get; }

    /// <summary>Since when it holds; <see cref="AsOf"/> where it does not.</summary>
    public DateTimeOffset HoldingSince { get; }

    /// <summary>When it will have held for long enough; <see cref="AsOf"/> where it does not hold.</summary>
    public DateTimeOffset HoldEndsAt { get; }

    /// <summary>Whether it was above the target after it had been met.</summary>
    public bool HasRebounded { get; }

    /// <summary>When it last was lost after it had been met; <see cref="AsOf"/> where it never was.</summary>
    public DateTimeOffset ReboundAt { get; }

    /// <summary>Whether a part of what is asked stalls, and how that shows; <see cref="Phase"/> says so unless something else comes first.</summary>
    public CleanupStall Stall { get; }

    /// <summary>The part that stalls, water before the counts; the first part asked where none does.</summary>
    public CleanupPart StalledPart { get; }

    /// <summary>The figures that show that it stalls; none where it does not.</summary>
    public IReadOnlyList<StallEvidence> StallEvidence { get; }

    /// <summary>Whether the latest water reading of the followed source is above saturation, or at it.</summary>
    internal bool HasFreeWater { get; }

    /// <summary>When all that is asked has held for long enough, with both ends and the part that rules.</summary>
    public CleanupCompletion Completion => completion ??= CompletionSearch.Of(this, parts);

    /// <summary>When the counts reach the code asked, with both ends.</summary>
    /// <param name="timeToTarget">The answer, or null.</param>
    /// <returns>False where no code is asked or there are no counts.</returns>
    public bool TryCodeTimeToTarget(out CodeTimeToTarget? timeToTarget)
    {
        timeToTarget = HasParticles && Options.Target.Code is { } code ? ParticleCurve.TimeTo(code, Confidence) : null;
        return timeToTarget is not null;
    }

    private CleanupPhase PhaseOf()
    {
        var isOpen = (HasWaterTarget && HasWater) || (HasCodeTarget && HasParticles);
        return IsMet ? CleanupPhase.AtTarget
            : IsHolding ? CleanupPhase.Holding
            : HasRebounded ? CleanupPhase.Rebounded
            : HasWaterTarget && HasTemperature && !IsWarm ? CleanupPhase.Warming
            : !isOpen ? CleanupPhase.NoReadings
            : HasWaterTarget && HasFreeWater ? CleanupPhase.FreeWaterLeaving
            : Stall != CleanupStall.None ? CleanupPhase.Stalled
            : CleanupPhase.Falling;
    }

    private IEnumerable<RunPart> WaterPart(
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<Reading> contents,
        HoldCourse hold
    )
    {
        if (HasWaterTarget)
        {
            double[] values = [.. contents.Select(one => one.Value)];
            yield return new RunPart(CleanupPart.Water, Curve, WaterTargetMgPerKg, hold, moments, values, this);
        }
    }

    private IEnumerable<RunPart> CodeParts(IReadOnlyList<CleanupReading> counts, HoldCourse hold)
    {
        if (Options.Target.Code is not { } code)
        {
            yield break;
        }

        DateTimeOffset[] moments = [.. counts.Select(one => one.At)];
        (CleanupPart Part, CodeSize Size, ScaleNumber Number, Func<ParticleLevels, double> Count)[] sizes =
        [
            (CleanupPart.ParticlesAt4, CodeSize.At4, code.At4, levels => levels.At4PerMillilitre),
            (CleanupPart.ParticlesAt6, CodeSize.At6, code.At6, levels => levels.At6PerMillilitre),
            (CleanupPart.ParticlesAt14, CodeSize.At14, code.At14, levels => levels.At14PerMillilitre),
        ];
        foreach (var (part, size, number, count) in sizes)
        {
            var limit = CodeLimits.Of(number);
            if (limit < double.PositiveInfinity && ParticleCurve.TryCurve(size, out var curve))
            {
                double[] values = [.. counts.Select(one => count(one.Particles))];
                yield return new RunPart(part, curve!, limit, hold, moments, values, this);
            }
        }
    }

    private Temperature Celsius(double celsius) => Temperature.FromDegreesCelsius(HasTemperature ? celsius : 0);

    private static CodeCurve OfCounts(IReadOnlyList<CleanupReading> counts)
    {
        DateTimeOffset[] moments = [.. counts.Select(one => one.At)];
        double[] at4 = [.. counts.Select(one => one.Particles.At4PerMillilitre)];
        double[] at6 = [.. counts.Select(one => one.Particles.At6PerMillilitre)];
        double[] at14 = [.. counts.Select(one => one.Particles.At14PerMillilitre)];
        var options = at14.All(count => count > 0)
            ? CleanupOptions.ForCounts
            : new CleanupOptions(DecayNoise.Proportional);
        return CodeCurve.Fit(moments, at4, at6, at14, options);
    }
}
