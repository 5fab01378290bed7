using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>A part of the target with its readings, its curve and its hold.</summary>
internal sealed class RunPart
{
    /// <summary>Readings without which nothing is said about a run without a fall (ours).</summary>
    public const int FewestReadings = 6;

    private const double FallOver = 0.1;
    private const double NoFallBelow = 0.5;

    /// <summary>Part of the waiting time after which warm oil is mixed, and titrations above saturation may show that nothing falls (ours).</summary>
    private const double EarlyShare = 0.25;

    /// <summary>A rise under this part of the content is a drift (ours).</summary>
    private const double RiseShare = 0.05;

    /// <summary>Readings that are withheld for a look before the last: one of so many, and no fewer (ours).</summary>
    private const int WithheldPart = 6;

    private const int FewestWithheld = 2;

    /// <summary>Samples of mixed oil that are set against the first one (ours).</summary>
    private const int FewestMixed = 3;

    /// <summary>Oil that was colder by more than this was still warming (ours).</summary>
    private const double WarmingKelvins = 5;

    /// <summary>What a reading is good to where no curve tells its scatter: between laboratories (common practice, no source).</summary>
    private const double UnknownScatter = 0.1;

    /// <summary>Coverage factor with it, about 95 %.</summary>
    private const double UnknownCoverage = 2;

    private readonly IReadOnlyList<DateTimeOffset> moments;
    private readonly IReadOnlyList<double> values;
    private readonly Reading[] used;
    private (IReadOnlyList<DateTimeOffset> At, IReadOnlyList<double> Values) plain;
    private readonly bool isCensored;
    private readonly bool isLogarithmic;
    private readonly CleanupStatus status;

    /// <param name="measurand">What is followed.</param>
    /// <param name="curve">Its curve.</param>
    /// <param name="target">What is to be reached, in the unit of the curve.</param>
    /// <param name="hold">Whether it holds.</param>
    /// <param name="moments">When the readings were taken that were given to the curve.</param>
    /// <param name="readings">These readings.</param>
    /// <param name="celsius">Oil temperature of each of them, where it was read.</param>
    /// <param name="status">The run.</param>
    public RunPart(
        Measurand measurand,
        CleanupCurve curve,
        double target,
        HoldCourse hold,
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<Reading> readings,
        IReadOnlyList<double?> celsius,
        CleanupStatus status
    )
    {
        Measurand = measurand;
        Curve = curve;
        Target = target;
        Hold = hold;
        this.status = status;
        this.moments = [.. curve.UsedReadings.Select(i => moments[i])];
        used = [.. curve.UsedReadings.Select(i => readings[i])];
        values = [.. used.Select(one => one.Value)];
        isCensored = used.Any(one => one.IsCensored);
        isLogarithmic = curve.Options.Noise is DecayNoise.Logarithmic or DecayNoise.Proportional;
        Sign = SignOf(moments, readings, celsius, out var evidence);
        StallEvidence = evidence;
        IsMet = hold.IsMet && IsShown(hold.HeldFrom, status.AsOf, isNow: true);
        ReboundAt =
            hold.ReboundAt is { } lost && hold.LostFrom is { } from && IsShown(from, lost, isNow: false) ? lost : null;
    }

    public Measurand Measurand { get; }

    public CleanupCurve Curve { get; }

    public double Target { get; }

    public HoldCourse Hold { get; }

    /// <summary>Whether it has held for long enough, and the readings show that it is there: a lucky run of readings does not.</summary>
    public bool IsMet { get; }

    /// <summary>When it was lost after it had been met; null where it was not.</summary>
    public DateTimeOffset? ReboundAt { get; }

    /// <summary>Since when the oil has been as warm as it is.</summary>
    public DateTimeOffset WarmFrom { get; private set; }

    /// <summary>Whether it has been so for long enough that water of the bottom is stirred up.</summary>
    public bool IsMixed { get; private set; }

    /// <summary>The stretch that shows no fall, or a rise; null where the sign is another.</summary>
    public RunStretch? Stretch { get; private set; }

    /// <summary>Median time between the readings of the curve, in hours; 0 with fewer than two.</summary>
    public double UsualGapHours
    {
        get
        {
            double[] gaps =
            [
                .. moments
                    .Skip(1)
                    .Select((at, i) => (at - moments[i]).TotalHours)
                    .Where(gap => gap > 0)
                    .OrderBy(gap => gap),
            ];
            return gaps.Length == 0 ? 0 : gaps[gaps.Length / 2];
        }
    }

    /// <summary>Standard deviation of a reading where the curve stands at a value.</summary>
    public double ScatterAt(double value) => Curve.ScatterAt(value);

    /// <summary>How it shows that it stalls.</summary>
    public StallSign Sign { get; }

    public bool IsStalled => Sign != StallSign.None;

    /// <summary>The figures that say so.</summary>
    public IReadOnlyList<EvidenceItem> StallEvidence { get; }

    /// <summary>Whether the content is at the target or below for certain, however often the run is looked at.</summary>
    /// <remarks>
    /// The curve at the last reading, or the mean of the readings of a hold, lies below by <see cref="SequentialLevel"/> standard errors; without a curve by
    /// two, with a tenth of the target as the scatter of a reading.
    /// </remarks>
    private bool IsShown(DateTimeOffset from, DateTimeOffset until, bool isNow)
    {
        double Scaled(double value) => isLogarithmic ? Math.Log(Math.Max(1e-12, value)) : value;
        if (isNow && SequentialLevel.ShowsBelow(Curve, Target, status.Confidence))
        {
            return true;
        }

        double[] held =
        [
            .. Enumerable
                .Range(0, moments.Count)
                .Where(i => moments[i] >= from && (isNow || moments[i] < until))
                .Select(i => Scaled(values[i])),
        ];
        if (held.Length == 0)
        {
            // What holds is another source, or lies in an initial phase: its own readings are all that there is.
            return true;
        }

        var mean = held.Average();
        var scatter =
            Curve.HasCurve && isLogarithmic ? ScatterAt(Math.Max(1e-12, Target)) / Math.Max(1e-12, Target)
            : Curve.HasCurve ? ScatterAt(Target)
            : isLogarithmic ? UnknownScatter
            : UnknownScatter * Target;
        var cover = Curve.HasCurve ? SequentialLevel.Z(status.Confidence, Curve.Count) : UnknownCoverage;
        return mean + cover * scatter / Math.Sqrt(held.Length) <= Scaled(Target);
    }

    private StallSign SignOf(
        IReadOnlyList<DateTimeOffset> allMoments,
        IReadOnlyList<Reading> readings,
        IReadOnlyList<double?> celsius,
        out IReadOnlyList<EvidenceItem> evidence
    )
    {
        evidence = [];
        var stallAfter = status.Options.StallAfter.TotalHours;
        var settled = SettledFrom(allMoments, celsius);
        WarmFrom = settled;
        var whole = Numbers(allMoments, readings, Curve.Options.StartedAt ?? status.Options.StartedAt);
        plain = whole;
        var mixedFrom = settled.AddHours(EarlyShare * stallAfter);
        IsMixed = status.AsOf >= mixedFrom;
        var mixed = Numbers(allMoments, readings, mixedFrom);
        if (
            Rises(mixed.At, mixed.Values, out evidence)
            || (!status.FollowsSensor && HasRisen(whole, mixed, 2 * EarlyShare * stallAfter, out evidence))
        )
        {
            return StallSign.Rises;
        }

        if (Curve.HasCurve)
        {
            if (
                SequentialLevel.LowestFloor(Curve, status.Confidence) is { } floor
                && floor > Target
                && StoodBefore()
                && (Curve.Floor <= Curve.Start || (IsMixed && Curve.Status != ExponentialDecayStatus.StraightLine))
                && Curve.ValueAt(status.AsOf) - Curve.Floor <= FallOver * Math.Max(0, Curve.Start - Curve.Floor)
            )
            {
                evidence =
                [
                    EvidenceItem.Number("target", Target, Unit),
                    EvidenceItem.Number("observed-level", Curve.Floor, Unit),
                    EvidenceItem.Number("lower-end-of-the-level", floor, Unit),
                ];
                return StallSign.LevelsOff;
            }
        }

        if (!isCensored && ShowsNoFall(whole.At, whole.Values, stallAfter, FallOver, out evidence))
        {
            return StallSign.ShowsNoFall;
        }

        if (
            status is { HasFreeWater: true, FollowsSensor: false }
            && (
                ShowsNoFall(mixed.At, mixed.Values, EarlyShare * stallAfter, 0, out evidence, isMethodKnown: true)
                || ShowsNoFall(whole.At, whole.Values, 2 * EarlyShare * stallAfter, 0, out evidence)
            )
        )
        {
            return StallSign.ShowsNoFall;
        }

        return StandsAtSaturation(whole, settled, stallAfter, out evidence) ? StallSign.AtSaturation : StallSign.None;
    }

    /// <summary>Whether the level was above the target without the latest sixth of the readings as well: one look is none, where readings follow one another.</summary>
    private bool StoodBefore()
    {
        var kept = used.Length - Math.Max(FewestWithheld, used.Length / WithheldPart);
        var before = CleanupCurve.Fit([.. moments.Take(kept)], [.. used.Take(kept)], Curve.Options);
        return SequentialLevel.LowestFloor(before, status.Confidence) > Target;
    }

    /// <summary>All plain readings from so many hours after the oil was warm, or from when it is usually mixed; null with fewer than three.</summary>
    public RunStretch? WarmFor(double? hours)
    {
        var from = WarmFrom.AddHours(hours ?? EarlyShare * status.Options.StallAfter.TotalHours);
        int[] kept = [.. Enumerable.Range(0, plain.At.Count).Where(i => plain.At[i] >= from)];
        return RunStretch
            .Whole([.. kept.Select(i => plain.At[i])], [.. kept.Select(i => plain.Values[i])], status.Confidence)
            ?.ByMethod(Measurand);
    }

    /// <summary>When the oil had come to its present temperature: before that water dissolves, and warms out of corners.</summary>
    private DateTimeOffset SettledFrom(IReadOnlyList<DateTimeOffset> allMoments, IReadOnlyList<double?> celsius)
    {
        var from = Curve.Options.StartedAt ?? status.Options.StartedAt;
        if (status.Temperature?.DegreesCelsius is { } now)
        {
            for (var i = 0; i < allMoments.Count; i++)
            {
                from = celsius[i] < now - WarmingKelvins && allMoments[i] > from ? allMoments[i] : from;
            }
        }

        return from;
    }

    /// <summary>Plain readings from a moment on, in order of time and in the scale of the line: those of free water too, which titrations see whole.</summary>
    private (IReadOnlyList<DateTimeOffset> At, IReadOnlyList<double> Values) Numbers(
        IReadOnlyList<DateTimeOffset> allMoments,
        IReadOnlyList<Reading> readings,
        DateTimeOffset from
    )
    {
        int[] kept =
        [
            .. Enumerable
                .Range(0, allMoments.Count)
                .Where(i => allMoments[i] >= from && !readings[i].IsCensored)
                .Where(i => !isLogarithmic || readings[i].Value > 0)
                .OrderBy(i => allMoments[i]),
        ];
        return (
            [.. kept.Select(i => allMoments[i])],
            [.. kept.Select(i => isLogarithmic ? Math.Log(readings[i].Value) : readings[i].Value)]
        );
    }

    private bool Rises(
        IReadOnlyList<DateTimeOffset> at,
        IReadOnlyList<double> scaled,
        out IReadOnlyList<EvidenceItem> evidence
    )
    {
        evidence = [];
        var target = isLogarithmic ? Math.Log(Math.Max(1e-12, Target)) : Target;
        foreach (var one in RunStretch.EndingNow(at, scaled, FewestReadings, status.Confidence))
        {
            var least = RiseShare * (isLogarithmic ? 1 : Math.Abs(one.Line.MeanValue));
            if (one.LeastRise <= 0 || -one.Fall < least || one.ValueAtEnd <= target)
            {
                continue;
            }

            Stretch = one;
            evidence =
            [
                EvidenceItem.Number("target", Target, Unit),
                EvidenceItem.Number("readings-that-rise", one.Count, ""),
                EvidenceItem.Number("observed-for", one.Hours, "h"),
                EvidenceItem.Number("mean", isLogarithmic ? Math.Exp(one.Line.MeanValue) : one.Line.MeanValue, Unit),
                EvidenceItem.Number("rise-by-a-straight-line", Change(-one.Fall), ChangeUnit),
                EvidenceItem.Number("lower-end-of-the-rise", Change(one.LeastRise), ChangeUnit),
            ];
            return true;
        }

        return false;
    }

    /// <summary>
    /// Samples that stand above the first one by more than two samples can differ, long after the oil is mixed, and exclude a fall that matters: few are enough for that.
    /// </summary>
    private bool HasRisen(
        (IReadOnlyList<DateTimeOffset> At, IReadOnlyList<double> Values) whole,
        (IReadOnlyList<DateTimeOffset> At, IReadOnlyList<double> Values) mixed,
        double fewestHours,
        out IReadOnlyList<EvidenceItem> evidence
    )
    {
        evidence = [];
        var count = mixed.Values.Count;
        if (
            isLogarithmic
            || count < FewestMixed
            || count == whole.Values.Count
            || (mixed.At[count - 1] - whole.At[0]).TotalHours < fewestHours
        )
        {
            return false;
        }

        var (first, late) = (whole.Values[0], mixed.Values.Average());
        var apart = UnknownCoverage * UnknownScatter * Math.Sqrt(first * first + late * late / count);
        var line = RunStretch.Whole(mixed.At, mixed.Values, status.Confidence)?.ByMethod(Measurand);
        if (
            line is null
            || late - first <= apart
            || mixed.Values.Min() <= Target
            || line.UsualMostFall(status.Confidence) >= ShareOfMissing(line) * (late - Target)
        )
        {
            return false;
        }

        Stretch = line;
        evidence =
        [
            EvidenceItem.Number("target", Target, Unit),
            EvidenceItem.Number("first-reading", first, Unit),
            EvidenceItem.Number("mean", late, Unit),
            EvidenceItem.Number("readings-since-the-oil-was-mixed", count, ""),
            EvidenceItem.Number("observed-for", line.Hours, "h"),
            EvidenceItem.Number("rise-above-the-first-that-is-within-its-uncertainty", apart, Unit),
        ];
        return true;
    }

    /// <summary>
    /// A line through the readings, of the logarithm of counts. Not only 'no fall is shown', which few or poor readings always say, but also
    /// 'half of the way to the target is excluded'.
    /// </summary>
    private bool ShowsNoFall(
        IReadOnlyList<DateTimeOffset> at,
        IReadOnlyList<double> scaled,
        double fewestHours,
        double shownShare,
        out IReadOnlyList<EvidenceItem> evidence,
        bool isMethodKnown = false
    )
    {
        evidence = [];
        if (isLogarithmic && Target <= 0)
        {
            return false;
        }

        var target = isLogarithmic ? Math.Log(Target) : Target;
        foreach (var stretch in RunStretch.EndingNow(at, scaled, FewestReadings, status.Confidence))
        {
            var one = isMethodKnown ? stretch.ByMethod(Measurand) : stretch;
            var missing = one.ValueAtStart - target;
            if (
                one.Hours < fewestHours
                || missing <= 0
                || one.MostFall >= ShareOfMissing(one) * missing
                || one.LeastFall(status.Confidence) > shownShare * missing
            )
            {
                continue;
            }

            Stretch = one;
            evidence =
            [
                EvidenceItem.Number("target", Target, Unit),
                EvidenceItem.Number("readings-without-a-fall", one.Count, ""),
                EvidenceItem.Number("observed-for", one.Hours, "h"),
                EvidenceItem.Number("mean", isLogarithmic ? Math.Exp(one.Line.MeanValue) : one.Line.MeanValue, Unit),
                EvidenceItem.Number("fall-by-a-straight-line", Fallen(one.Fall), ChangeUnit),
                EvidenceItem.Number("upper-end-of-the-fall", Fallen(one.MostFall), ChangeUnit),
            ];
            return true;
        }

        return false;
    }

    /// <summary>Half of what is missing in the waiting time, and less in a part of it.</summary>
    private double ShareOfMissing(RunStretch stretch) =>
        NoFallBelow * Math.Min(1, stretch.Hours / status.Options.StallAfter.TotalHours);

    private bool StandsAtSaturation(
        (IReadOnlyList<DateTimeOffset> At, IReadOnlyList<double> Values) whole,
        DateTimeOffset settled,
        double stallAfter,
        out IReadOnlyList<EvidenceItem> evidence
    )
    {
        evidence = [];
        if (
            !Measurand.Equals(status.Options.Measurand)
            || status.SensorAtSaturation is not { } sensor
            || sensor.Count < FewestReadings
            || (!status.FollowsSensor && ShowFall(whole.Values))
        )
        {
            return false;
        }

        var hours = (status.AsOf - (sensor.Since > settled ? sensor.Since : settled)).TotalHours;
        if (hours < stallAfter)
        {
            return false;
        }

        evidence =
        [
            EvidenceItem.Number("target", Target, Unit),
            EvidenceItem.Number("readings-at-saturation", sensor.Count, ""),
            EvidenceItem.Number("observed-for", hours, "h"),
            EvidenceItem.Number("saturation-at-least", sensor.Ppm, Unit),
        ];
        return true;
    }

    /// <summary>Whether the last of some samples lies below the first by more than two samples can differ.</summary>
    private static bool ShowFall(IReadOnlyList<double> samples)
    {
        if (samples.Count < 2)
        {
            return true;
        }

        var (first, last) = (samples[0], samples[samples.Count - 1]);
        return first - last > UnknownCoverage * UnknownScatter * Math.Sqrt(first * first + last * last);
    }

    private double Change(double scaled) => isLogarithmic ? 100 * (Math.Exp(scaled) - 1) : scaled;

    private double Fallen(double scaled) => isLogarithmic ? 100 * (1 - Math.Exp(-scaled)) : scaled;

    private string ChangeUnit => isLogarithmic ? "%" : Unit;

    private string Unit => Measurand.Unit;
}
