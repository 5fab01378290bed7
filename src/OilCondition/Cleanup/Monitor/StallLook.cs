using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>Whether a part of a run stalls: the sign of it that its readings show, if any.</summary>
internal sealed class StallLook
{
    /// <summary>Readings without which nothing is said about a run without a fall (ours).</summary>
    private const int FewestReadings = 6;

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

    private readonly Measurand measurand;
    private readonly CleanupCurve curve;
    private readonly double target;
    private readonly CleanupStatus status;
    private readonly DateTimeOffset[] moments;
    private readonly Reading[] used;
    private readonly bool isCensored;
    private readonly bool isLogarithmic;
    private (IReadOnlyList<DateTimeOffset> At, IReadOnlyList<double> Values) plain;

    /// <param name="measurand">What is followed.</param>
    /// <param name="curve">Its curve.</param>
    /// <param name="target">What is to be reached, in the unit of the curve.</param>
    /// <param name="moments">When the readings were taken that were given to the curve.</param>
    /// <param name="readings">These readings.</param>
    /// <param name="celsius">Oil temperature of each of them, where it was read.</param>
    /// <param name="status">The run.</param>
    public StallLook(
        Measurand measurand,
        CleanupCurve curve,
        double target,
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<Reading> readings,
        IReadOnlyList<double?> celsius,
        CleanupStatus status
    )
    {
        this.measurand = measurand;
        this.curve = curve;
        this.target = target;
        this.status = status;
        this.moments = [.. curve.UsedReadings.Select(i => moments[i])];
        used = [.. curve.UsedReadings.Select(i => readings[i])];
        isCensored = used.Any(one => one.IsCensored);
        isLogarithmic = curve.Options.Noise is DecayNoise.Logarithmic or DecayNoise.Proportional;
        Sign = SignOf(moments, readings, celsius, out var evidence);
        Evidence = evidence;
    }

    /// <summary>How it shows that it stalls.</summary>
    public StallSign Sign { get; }

    /// <summary>The figures that say so.</summary>
    public IReadOnlyList<EvidenceItem> Evidence { get; }

    /// <summary>The stretch that shows no fall, or a rise; null where the sign is another.</summary>
    public RunStretch? Stretch { get; private set; }

    /// <summary>Since when the oil has been as warm as it is.</summary>
    public DateTimeOffset WarmFrom { get; private set; }

    /// <summary>Whether it has been so for long enough that water of the bottom is stirred up.</summary>
    public bool IsMixed { get; private set; }

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
        var whole = Numbers(allMoments, readings, curve.Options.StartedAt ?? status.Options.StartedAt);
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

        if (curve.HasCurve)
        {
            if (
                SequentialLevel.LowestFloor(curve, status.Confidence) is { } floor
                && floor > target
                && StoodBefore()
                && (curve.Floor <= curve.Start || (IsMixed && curve.Status != ExponentialDecayStatus.StraightLine))
                && curve.ValueAt(status.AsOf) - curve.Floor <= FallOver * Math.Max(0, curve.Start - curve.Floor)
            )
            {
                evidence =
                [
                    EvidenceItem.Number("target", target, measurand.Unit),
                    EvidenceItem.Number("observed-level", curve.Floor, measurand.Unit),
                    EvidenceItem.Number("lower-end-of-the-level", floor, measurand.Unit),
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
        var before = CleanupCurve.Fit([.. moments.Take(kept)], [.. used.Take(kept)], curve.Options);
        return SequentialLevel.LowestFloor(before, status.Confidence) > target;
    }

    /// <summary>All plain readings from so many hours after the oil was warm, or from when it is usually mixed; null with fewer than three.</summary>
    public RunStretch? WarmFor(double? hours)
    {
        var from = WarmFrom.AddHours(hours ?? EarlyShare * status.Options.StallAfter.TotalHours);
        int[] kept = [.. Enumerable.Range(0, plain.At.Count).Where(i => plain.At[i] >= from)];
        return RunStretch
            .Whole([.. kept.Select(i => plain.At[i])], [.. kept.Select(i => plain.Values[i])], status.Confidence)
            ?.ByMethod(measurand);
    }

    /// <summary>When the oil had come to its present temperature: before that water dissolves, and warms out of corners.</summary>
    private DateTimeOffset SettledFrom(IReadOnlyList<DateTimeOffset> allMoments, IReadOnlyList<double?> celsius)
    {
        var from = curve.Options.StartedAt ?? status.Options.StartedAt;
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
        var goal = isLogarithmic ? Math.Log(Math.Max(1e-12, target)) : target;
        foreach (var one in RunStretch.EndingNow(at, scaled, FewestReadings, status.Confidence))
        {
            var least = RiseShare * (isLogarithmic ? 1 : Math.Abs(one.Line.MeanValue));
            if (one.LeastRise <= 0 || -one.Fall < least || one.ValueAtEnd <= goal)
            {
                continue;
            }

            Stretch = one;
            evidence =
            [
                EvidenceItem.Number("target", target, measurand.Unit),
                EvidenceItem.Number("readings-that-rise", one.Count, ""),
                EvidenceItem.Number("observed-for", one.Hours, "h"),
                EvidenceItem.Number(
                    "mean",
                    isLogarithmic ? Math.Exp(one.Line.MeanValue) : one.Line.MeanValue,
                    measurand.Unit
                ),
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
        var apart = RunPart.UnknownCoverage * RunPart.UnknownScatter * Math.Sqrt(first * first + late * late / count);
        var line = RunStretch.Whole(mixed.At, mixed.Values, status.Confidence)?.ByMethod(measurand);
        if (
            line is null
            || late - first <= apart
            || mixed.Values.Min() <= target
            || line.UsualMostFall(status.Confidence) >= ShareOfMissing(line) * (late - target)
        )
        {
            return false;
        }

        Stretch = line;
        evidence =
        [
            EvidenceItem.Number("target", target, measurand.Unit),
            EvidenceItem.Number("first-reading", first, measurand.Unit),
            EvidenceItem.Number("mean", late, measurand.Unit),
            EvidenceItem.Number("readings-since-the-oil-was-mixed", count, ""),
            EvidenceItem.Number("observed-for", line.Hours, "h"),
            EvidenceItem.Number("rise-above-the-first-that-is-within-its-uncertainty", apart, measurand.Unit),
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
        if (isLogarithmic && target <= 0)
        {
            return false;
        }

        var goal = isLogarithmic ? Math.Log(target) : target;
        foreach (var stretch in RunStretch.EndingNow(at, scaled, FewestReadings, status.Confidence))
        {
            var one = isMethodKnown ? stretch.ByMethod(measurand) : stretch;
            var missing = one.ValueAtStart - goal;
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
                EvidenceItem.Number("target", target, measurand.Unit),
                EvidenceItem.Number("readings-without-a-fall", one.Count, ""),
                EvidenceItem.Number("observed-for", one.Hours, "h"),
                EvidenceItem.Number(
                    "mean",
                    isLogarithmic ? Math.Exp(one.Line.MeanValue) : one.Line.MeanValue,
                    measurand.Unit
                ),
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
            !measurand.Equals(status.Options.Measurand)
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
            EvidenceItem.Number("target", target, measurand.Unit),
            EvidenceItem.Number("readings-at-saturation", sensor.Count, ""),
            EvidenceItem.Number("observed-for", hours, "h"),
            EvidenceItem.Number("saturation-at-least", sensor.Ppm, measurand.Unit),
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
        return first - last > RunPart.UnknownCoverage * RunPart.UnknownScatter * Math.Sqrt(first * first + last * last);
    }

    private double Change(double scaled) => isLogarithmic ? 100 * (Math.Exp(scaled) - 1) : scaled;

    private double Fallen(double scaled) => isLogarithmic ? 100 * (1 - Math.Exp(-scaled)) : scaled;

    private string ChangeUnit => isLogarithmic ? "%" : measurand.Unit;
}
