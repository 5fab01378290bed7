using OilCondition.Cleanliness;
using OilCondition.Statistics;
using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>Where a run stands at its latest reading.</summary>
/// <remarks>
/// The curve is fitted to the source, sensor or samples, that has more kept readings, to samples where both have as many: for water the two differ by the error
/// of the saturation curve and are not mixed. Where they differ by more than their uncertainty, <see cref="Contradiction"/> says so. A target is met only when
/// both sources, where both are read, stay at it or below for the holding time.
/// In the fit warm oil marks the beginning where the target counts while warm; a sensor at saturation and titrations above saturation mark free water.
/// <para>
/// The whole is completed with its latest part. The late end is that of the latest part; for the early end each part has its share of the uncertainty.
/// </para>
/// </remarks>
public sealed class CleanupStatus
{
    /// <summary>Titrations that are followed rather than a sensor at saturation (ours).</summary>
    private const int FewestSamples = 3;

    /// <summary>What a plan may be out by and still agree (ours, chosen on simulated runs): bottom water that comes up for hours makes a fall look slower by so much.</summary>
    private const double PlanTolerance = 0.25;

    private readonly IReadOnlyList<RunPart> runParts;
    private readonly RunPart? stalled;
    private readonly Lazy<Outlook> outlook;
    private readonly Lazy<ObservedAgainstPlanned?> besidePlan;

    internal CleanupStatus(CleanupMonitor monitor, double confidence)
    {
        Options = monitor.Options;
        Confidence = confidence;
        var trail = monitor.Trail;
        MonitorCell[] cells = [.. monitor.Cells];
        AsOf = trail.HasReadings ? trail.Latest : Options.StartedAt;
        IsWarm = trail.IsWarm(Options);
        Temperature = Celsius(trail.LatestCelsius);
        LowestTemperature = Celsius(trail.LowestCelsius);
        HighestTemperature = Celsius(trail.HighestCelsius);

        CleanupReading[] sensor = [.. cells.Select(cell => cell.Sensor).OfType<CleanupReading>()];
        CleanupReading[] samples = [.. cells.Select(cell => cell.Sample).OfType<CleanupReading>()];
        FollowsSensor = sensor.Length > samples.Length && !IsBlind(sensor, samples, Options);
        var (followed, others) = FollowsSensor ? (sensor, samples) : (samples, sensor);
        Reading[] contents = [.. followed.Select(one => TargetMarks.Content(one, Options)!.Value)];
        DateTimeOffset[] moments = [.. followed.Select(one => one.At)];
        var freeAbove =
            followed.Length > 0
            && !FollowsSensor
            && Options is { IsWater: true, SaturationCurve: { } saturation }
            && Temperature is { } oil
                ? saturation.SaturationAt(oil).Content.PartsPerMillion
                : (double?)null;
        Curve = CleanupCurve.Fit(
            moments,
            contents,
            [.. followed.Select(one => one.Temperature)],
            CurveOptions(contents, trail.WarmAt, freeAbove)
        );
        Latest = contents.Length > 0 ? contents[contents.Length - 1] : null;
        SensorAtSaturation = StandingAt(sensor, Options);
        Samples =
        [
            .. samples
                .Select(one => (one.At, Content: TargetMarks.Content(one, Options)!.Value))
                .Where(one => !one.Content.IsCensored)
                .Select(one => (one.At, one.Content.Value)),
        ];
        HasFreeWater =
            Options.IsWater
            && Latest is { } last
            && (last.Qualifier == Qualifier.GreaterThan || last.Value > freeAbove);
        Contradiction = SourceComparison.Of(Curve, others, Options, trail.LatestCelsius);

        CleanupReading[] counts = [.. cells.Select(cell => cell.Particles).OfType<CleanupReading>()];
        FirstParticles = counts.FirstOrDefault()?.Particles;
        LatestParticles = counts.LastOrDefault()?.Particles;
        ParticleCurve = OfCounts([.. counts.Select(one => one.At)], [.. counts.Select(one => one.Particles!)]);

        var figure = new HoldCourse(cells.Select(cell => cell.Figure), Options.HoldFor, Options.LongestGap);
        var code = new HoldCourse(cells.Select(cell => cell.Code), Options.HoldFor, Options.LongestGap);
        List<HoldCourse> asked = [];
        if (Options.Target.HasValue)
        {
            asked.Add(figure);
        }

        if (Options.Code is not null)
        {
            asked.Add(code);
        }

        IsHolding = asked.All(part => part.Since.HasValue || part.IsMet);
        HoldingSince = IsHolding ? asked.Max(part => part.Since ?? part.HeldFrom) : null;
        double?[] celsius = [.. followed.Select(one => one.Temperature?.DegreesCelsius)];
        runParts =
        [
            .. Options.Target is { } target
                ? [new RunPart(Options.Measurand, Curve, target, figure, moments, contents, celsius, this)]
                : Array.Empty<RunPart>(),
            .. CodeParts(counts, code),
        ];
        IsMet = asked.All(part => part.IsMet) && runParts.All(part => part.IsMet);
        MetAt = IsMet ? asked.Max(part => part.MetAt) : null;
        ReboundAt = runParts.Max(part => part.ReboundAt);
        stalled = runParts.FirstOrDefault(part => !part.Hold.IsMet && part.Hold.Since is null && part.IsStalled);
        Phase = PhaseOf();
        outlook = new Lazy<Outlook>(() => Outlook.Of(this, runParts));
        besidePlan = new Lazy<ObservedAgainstPlanned?>(() =>
            Options.Planned is { } planned && Curve.HasCurve
                ? ObservedAgainstPlanned.Of(Curve, planned, Confidence, Ratio.FromDecimalFractions(PlanTolerance))
                : null
        );
    }

    /// <summary>What the run is followed with.</summary>
    public CleanupMonitorOptions Options { get; }

    /// <summary>Two-sided confidence level of all intervals.</summary>
    public double Confidence { get; }

    /// <summary>The latest reading; the start of the run where there is none.</summary>
    public DateTimeOffset AsOf { get; }

    /// <summary>Where the run stands.</summary>
    public CleanupPhase Phase { get; }

    /// <summary>Latest oil temperature; null where none was read.</summary>
    public Temperature? Temperature { get; }

    /// <summary>Lowest oil temperature; null where none was read.</summary>
    public Temperature? LowestTemperature { get; }

    /// <summary>Highest oil temperature; null where none was read.</summary>
    public Temperature? HighestTemperature { get; }

    /// <summary>Whether the oil is as warm as it must be for the target to count; true where readings are referred to a temperature.</summary>
    public bool IsWarm { get; }

    /// <summary>Whether the curve follows a sensor; otherwise it follows samples.</summary>
    public bool FollowsSensor { get; }

    /// <summary>
    /// Latest kept reading of the followed source, in the unit of the measurand followed: '&gt;' for a sensor at saturation, which is the least that it can
    /// be; null where there is none.
    /// </summary>
    public Reading? Latest { get; }

    /// <summary>
    /// Relative saturation of the latest water at the temperature to which readings are referred, or from which they count; capped at 1. Null where there
    /// is no water reading or no saturation curve.
    /// </summary>
    public Ratio? RelativeSaturationAtReference =>
        Options is { IsWater: true, SaturationCurve: { } curve } && Latest is { } latest
            ? curve
                .Split(MassFraction.FromPartsPerMillion(Math.Max(0, latest.Value)), Options.ReferenceTemperature)
                .RelativeSaturation
            : null;

    /// <summary>The fitted fall of what is followed, in the unit of its measurand; its status says what it is worth.</summary>
    public CleanupCurve Curve { get; }

    /// <summary>
    /// What the run does beside its plan: removal per pass, ingress and level, each with its interval. A plan may be out by a quarter and still agree. Null where there is no
    /// plan or no curve yet.
    /// </summary>
    public ObservedAgainstPlanned? BesidePlan => besidePlan.Value;

    /// <summary>
    /// When the curve reaches the target of what is followed; the holding time is not in it, see <see cref="Arrival"/>. Not determined where only a code is
    /// asked.
    /// </summary>
    public Arrival<DateTimeOffset> CurveArrival =>
        Options.Target is { } target ? ShownOrExpected(target) : new Arrival<DateTimeOffset>.NotDetermined(Confidence);

    /// <summary>Sensor and samples that contradict each other; null where they agree, or where only one is read.</summary>
    public SourceContradiction? Contradiction { get; }

    /// <summary>First particle counts; null where there are none.</summary>
    public ParticleLevels? FirstParticles { get; }

    /// <summary>Latest kept particle counts; null where there are none.</summary>
    public ParticleLevels? LatestParticles { get; }

    /// <summary>The fitted fall of the particle counts.</summary>
    public CodeCurve ParticleCurve { get; }

    /// <summary>Whether all that is asked has held for long enough, and was not lost since.</summary>
    public bool IsMet { get; }

    /// <summary>When the holding time was over; null unless <see cref="IsMet"/>.</summary>
    public DateTimeOffset? MetAt { get; }

    /// <summary>Whether all that is asked is at the target or below.</summary>
    public bool IsHolding { get; }

    /// <summary>Since when it holds; null where it does not.</summary>
    public DateTimeOffset? HoldingSince { get; }

    /// <summary>When it will have held for long enough; null where it does not hold.</summary>
    public DateTimeOffset? HoldEndsAt => HoldingSince?.AddHours(Options.HoldFor.TotalHours);

    /// <summary>When it last was above the target after it had been met; null where it never was.</summary>
    public DateTimeOffset? ReboundAt { get; }

    /// <summary>Whether a part of what is asked stalls; <see cref="Phase"/> says so unless something else comes first.</summary>
    public bool IsStalled => stalled is not null;

    /// <summary>The part that stalls, water before the counts; null where none does.</summary>
    public Measurand? StalledPart => stalled?.Measurand;

    /// <summary>The figures that show that it stalls; none where it does not.</summary>
    public IReadOnlyList<EvidenceItem> StallEvidence => stalled?.Look.Evidence ?? [];

    /// <summary>When all that is asked has held for long enough. <see cref="Reason"/> says why there is no date.</summary>
    public Arrival<DateTimeOffset> Arrival => outlook.Value.Arrival;

    /// <summary>Why <see cref="Arrival"/> has no date.</summary>
    public CompletionReason Reason => outlook.Value.Reason;

    /// <summary>The part that rules <see cref="Arrival"/>: the one that keeps the answer from being better, else the one that is last.</summary>
    public Measurand RulingPart => outlook.Value.RulingPart;

    /// <summary>Each part of what is asked: the measurand followed, and the sizes of a code.</summary>
    public IReadOnlyList<CleanupPart> Parts => outlook.Value.Parts;

    /// <summary>How the stall shows.</summary>
    internal StallSign StallSign => stalled?.Look.Sign ?? StallSign.None;

    /// <summary>The stretch of water readings that shows no fall, or a rise; null where there is none.</summary>
    internal RunStretch? Stretch => stalled?.Look.Stretch;

    /// <summary>The titrations of warm oil after one planned turnover, by a straight line; null where they are too few, and without a plan.</summary>
    internal RunStretch? TurnedOver => Options.Target.HasValue ? runParts[0].Look.TurnedOver : null;

    /// <summary>Since when the oil has been as warm as it is, if that is long enough for it to be mixed; else null.</summary>
    internal DateTimeOffset? WarmAndMixedSince =>
        Options.Target.HasValue && runParts[0].Look.IsMixed ? runParts[0].Look.WarmFrom : null;

    /// <summary>The oil's latest temperature, and for how long it has been that warm; null where none was read.</summary>
    internal TankReading? Tank =>
        Temperature is { } oil && Options.Target.HasValue
            ? new TankReading(oil.DegreesCelsius, (AsOf - runParts[0].Look.WarmFrom).TotalHours)
            : null;

    /// <summary>Since when the sensor has stood at saturation without a break, the content there, and its readings; null where it does not.</summary>
    internal (DateTimeOffset Since, double Ppm, int Count)? SensorAtSaturation { get; }

    /// <summary>The kept samples with a number, in the unit of the measurand followed.</summary>
    internal IReadOnlyList<(DateTimeOffset At, double Value)> Samples { get; }

    /// <summary>First and latest of the samples that are followed, where the latest stands above by more than two samples can differ; else null.</summary>
    internal (double First, double Latest)? RiseOfSamples =>
        !FollowsSensor
        && Samples.Count > 1
        && (First: Samples[0].Value, Latest: Samples[Samples.Count - 1].Value) is var ends
        && ends.Latest - ends.First > RunPart.ApartFor(ends.First, ends.Latest)
            ? ends
            : null;

    /// <summary>The most of its planned pace that a run which falls can have; null where that is not shown to be less than all of it.</summary>
    internal double? MostOfPlannedPace =>
        Phase == CleanupPhase.Falling
        && BesidePlan is { RemovalAgreement: PlanAgreement.Worse, RemovalPerPass.Upper: { } most } beside
            ? most.DecimalFractions / beside.Planned.RemovalPerPass.DecimalFractions
            : null;

    /// <summary>Whether the latest water reading of the followed source is above saturation, or at it.</summary>
    internal bool HasFreeWater { get; }

    /// <summary>Phase, latest reading and completion.</summary>
    /// <returns>For example <c>falling, 121 mg/kg: expected 2025-12-11 20:00 (2025-12-11 18:00 to 2025-12-11 23:00)</c>.</returns>
    public override string ToString()
    {
        var latest = Latest is { } reading ? $", {Figure(reading)}" : "";
        var last = Parts.Count > 1 && Arrival is Arrival<DateTimeOffset>.Expected ? $", {RulingPart.Name} is last" : "";
        var apart = Contradiction is { } found ? $"; {found}" : "";
        apart += MostOfPlannedPace is { } pace
            ? $"; it falls at {PlainText.Number(100 * pace)} % of the planned pace at most"
            : "";
        var blind = IsStalled ? null : PinnedFor;
        apart +=
            Reason == CompletionReason.FreeWater && RiseOfSamples is { } rise
                ? $"; risen from {PlainText.Number(rise.First)} to {PlainText.Number(rise.Latest)} {Options.Measurand.Unit}: water comes in, or the circulation stirs up what lay at the bottom"
                : "";
        apart += blind is { } hours
            ? $"; the sensor has stood at saturation for {PlainText.Number(hours)} h of warm oil and cannot see whether water leaves: titrate"
            : "";
        return $"{PlainText.Spaced(Phase)}{latest}: {Outlook.Words(Arrival, Reason, RulingPart)}{last}{apart}";
    }

    /// <summary>How long the sensor that is followed has stood at saturation in oil that is warm and mixed, in hours; null where it does not.</summary>
    private double? PinnedFor =>
        FollowsSensor && SensorAtSaturation is { } pinned && WarmAndMixedSince is { } warm
            ? (AsOf - (pinned.Since > warm ? pinned.Since : warm)).TotalHours
            : null;

    private string Figure(Reading reading)
    {
        var mark = reading.Qualifier switch
        {
            Qualifier.GreaterThan => "at least ",
            Qualifier.LessThan => "below ",
            _ => "",
        };
        return $"{mark}{PlainText.Number(reading.Value)} {Options.Measurand.Unit}".TrimEnd();
    }

    private CleanupOptions CurveOptions(IReadOnlyList<Reading> contents, DateTimeOffset? warmAt, double? freeAbove) =>
        Options.Measurand.Scale == NaturalScale.Linear
            ? new CleanupOptions(startedAt: warmAt, freeWaterAbove: freeAbove)
            : CleanupOptions.UsualFor(Options.Measurand.Scale, contents);

    private CleanupPhase PhaseOf()
    {
        var hasFigure = Options.Target.HasValue && Latest is not null;
        var isOpen = hasFigure || (Options.Code is not null && LatestParticles is not null);
        return IsMet ? CleanupPhase.AtTarget
            : IsHolding ? CleanupPhase.Holding
            : ReboundAt.HasValue ? CleanupPhase.Rebounded
            : Options.Target.HasValue && Temperature.HasValue && !IsWarm ? CleanupPhase.Warming
            : !isOpen ? CleanupPhase.NoReadings
            : IsStalled ? CleanupPhase.Stalled
            : Options.Target.HasValue && HasFreeWater ? CleanupPhase.FreeWater
            : CleanupPhase.Falling;
    }

    private IEnumerable<RunPart> CodeParts(CleanupReading[] counts, HoldCourse hold)
    {
        if (Options.Code is not { } code)
        {
            yield break;
        }

        DateTimeOffset[] moments = [.. counts.Select(one => one.At)];
        (Measurand Part, CodeSize Size, ScaleNumber Number, Func<ParticleLevels, double> Count)[] sizes =
        [
            (Measurands.Particles4, CodeSize.At4, code.At4, levels => levels.At4PerMillilitre),
            (Measurands.Particles6, CodeSize.At6, code.At6, levels => levels.At6PerMillilitre),
            (Measurands.Particles14, CodeSize.At14, code.At14, levels => levels.At14PerMillilitre),
        ];
        foreach (var (part, size, number, count) in sizes)
        {
            var limit = CodeLimits.Of(number);
            if (limit < double.PositiveInfinity && ParticleCurve.TryCurve(size, out var curve))
            {
                Reading[] values = [.. counts.Select(one => new Reading(count(one.Particles!)))];
                yield return new RunPart(part, curve, limit, hold, moments, values, new double?[counts.Length], this);
            }
        }
    }

    private static (DateTimeOffset Since, double Ppm, int Count)? StandingAt(
        CleanupReading[] sensor,
        CleanupMonitorOptions options
    )
    {
        var first = sensor.Length;
        double ppm = 0;
        while (
            first > 0 && TargetMarks.Content(sensor[first - 1], options) is { Qualifier: Qualifier.GreaterThan } content
        )
        {
            first--;
            ppm = first == sensor.Length - 1 ? content.Value : ppm;
        }

        return first < sensor.Length ? (sensor[first].At, ppm, sensor.Length - first) : null;
    }

    /// <summary>A sensor at saturation sees no fall; where there are some titrations beside it, they are what is followed.</summary>
    private static bool IsBlind(CleanupReading[] sensor, CleanupReading[] samples, CleanupMonitorOptions options) =>
        samples.Length >= FewestSamples
        && TargetMarks.Content(sensor[sensor.Length - 1], options)?.Qualifier == Qualifier.GreaterThan;

    /// <summary>A curve that is only best where it crosses has not been shown to have crossed: between two ends, the estimate in the past.</summary>
    private Arrival<DateTimeOffset> ShownOrExpected(double target)
    {
        var arrival = Curve.TimeTo(target, Confidence);
        if (
            arrival is not Arrival<DateTimeOffset>.Already already
            || SequentialLevel.ShowsBelow(Curve, target, Confidence)
        )
        {
            return arrival;
        }

        return Curve.Latest(target, Confidence) is { } latest && Curve.Earliest(target, Confidence) is { } earliest
            ? new Arrival<DateTimeOffset>.Expected(
                earliest < already.At ? earliest : already.At,
                already.At,
                latest > already.At ? latest : already.At,
                Confidence,
                Curve.CoverageInDoubt
            )
            : new Arrival<DateTimeOffset>.NotBefore(AsOf, Confidence, Curve.CoverageInDoubt);
    }

    private static Temperature? Celsius(double? celsius) =>
        celsius is { } oil ? UnitsNet.Temperature.FromDegreesCelsius(oil) : null;

    private static CodeCurve OfCounts(IReadOnlyList<DateTimeOffset> moments, IReadOnlyList<ParticleLevels> counts)
    {
        double[] at4 = [.. counts.Select(one => one.At4PerMillilitre)];
        double[] at6 = [.. counts.Select(one => one.At6PerMillilitre)];
        double[] at14 = [.. counts.Select(one => one.At14PerMillilitre)];
        var options = at14.All(count => count > 0)
            ? CleanupOptions.ForCounts
            : new CleanupOptions(DecayNoise.Proportional);
        return CodeCurve.Fit(moments, at4, at6, at14, options);
    }
}
