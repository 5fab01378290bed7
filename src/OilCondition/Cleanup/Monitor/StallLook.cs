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

    /// <summary>A fall by less than this part of the content is none (ours).</summary>
    private const double SmallFall = 0.05;

    /// <summary>Readings that exclude this part of the planned fall show a run that stands (ours).</summary>
    private const double PlannedShare = 0.25;

    /// <summary>Planned time constants that a look takes at least (ours).</summary>
    private const double LeastConstants = 0.5;

    /// <summary>Planned time constants in which a run that falls shows it (ours).</summary>
    private const double FlatConstants = 3;

    /// <summary>A turnover that takes longer than a year is none that a run waits for.</summary>
    private const double LongestHours = 8760;

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
    private readonly PlannedPerformance? planned;
    private readonly DateTimeOffset[] moments;
    private readonly Reading[] used;
    private readonly bool isCensored;
    private readonly bool isLogarithmic;

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
        planned = measurand.Equals(status.Options.Measurand) ? status.Options.Planned : null;
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

    /// <summary>The titrations of warm oil after one planned turnover, by a straight line; null without a plan, and where they are too few.</summary>
    public RunStretch? TurnedOver { get; private set; }

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
        var early = EarlyShare * stallAfter;
        var turnover = planned is null ? 0 : Math.Min(LongestHours, 1 / planned.Loop.TurnoversPerHour);
        var mixedFrom = settled.AddHours(Math.Max(early, turnover));
        IsMixed = status.AsOf >= mixedFrom;
        var whole = Numbers(allMoments, readings, curve.Options.StartedAt ?? status.Options.StartedAt);
        var mixed = Numbers(allMoments, readings, mixedFrom);
        if (
            planned is not null
            && !status.FollowsSensor
            && AfterOneTurnover(planned, whole, settled.AddHours(turnover), mixedFrom) is { } titrations
            && IsBehind(planned, titrations, out evidence)
        )
        {
            Stretch = TurnedOver;
            return StallSign.BehindThePlan;
        }

        if (
            Rises(mixed.At, mixed.Values, out evidence)
            || (planned is null && !status.FollowsSensor && HasRisen(whole, mixed, 2 * early, out evidence))
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

        if (planned is not null && curve.HasCurve && IsFlat(curve, target, planned, status.Confidence))
        {
            evidence =
            [
                EvidenceItem.Number("target", target, measurand.Unit),
                EvidenceItem.Number("observed-level", curve.ValueAt(curve.LastReadingAt), measurand.Unit),
                EvidenceItem.Number("planned-time-constants-passed", PlannedConstants(curve, planned), ""),
            ];
            return StallSign.BehindThePlan;
        }

        if (!isCensored && ShowsNoFall(whole.At, whole.Values, stallAfter, FallOver, out evidence))
        {
            return StallSign.ShowsNoFall;
        }

        if (
            planned is null
            && status is { HasFreeWater: true, FollowsSensor: false }
            && (
                ShowsNoFall(mixed.At, mixed.Values, early, 0, out evidence, isMethodKnown: true)
                || ShowsNoFall(whole.At, whole.Values, 2 * early, 0, out evidence)
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

    /// <summary>
    /// The titrations of warm oil after one planned turnover, which tell whether they fall; null where they are too few. Two are enough where a planned time constant lies
    /// between them, with the sample before them as the third: water of the bottom could only have raised these two.
    /// </summary>
    private RunStretch? AfterOneTurnover(
        PlannedPerformance plan,
        (IReadOnlyList<DateTimeOffset> At, IReadOnlyList<double> Values) whole,
        DateTimeOffset turnedOver,
        DateTimeOffset mixedFrom
    )
    {
        // Without a temperature nobody knows since when it has been warm.
        var from = status.Temperature.HasValue ? turnedOver : mixedFrom;
        var count = whole.At.Count;
        var first = whole.At.Count(at => at < from);
        RunStretch? Since(int start) =>
            RunStretch
                .Whole([.. whole.At.Skip(start)], [.. whole.Values.Skip(start)], status.Confidence)
                ?.ByMethod(measurand);
        if (
            first == 0
            || first != count - 2
            || (whole.At[first + 1] - whole.At[first]).TotalHours < 1 / plan.RatePerHour
        )
        {
            return TurnedOver = Since(first);
        }

        // What comes in is told by these two; that they do not fall, by the three.
        TurnedOver = RunStretch.Between(
            (whole.At[first], whole.Values[first]),
            (whole.At[first + 1], whole.Values[first + 1]),
            status.Confidence,
            measurand
        );
        return Since(first - 1);
    }

    /// <summary>Planned time constants that the readings of a curve span.</summary>
    public static double PlannedConstants(CleanupCurve curve, PlannedPerformance planned) =>
        planned.RatePerHour * (curve.LastReadingAt - curve.FirstReadingAt).TotalHours;

    /// <summary>Less than one time constant's fall in three planned ones, above the target, and no fall that is shown: a run that falls slowly is slow.</summary>
    public static bool IsFlat(CleanupCurve curve, double ppm, PlannedPerformance planned, double confidence)
    {
        var level = planned.Level.PartsPerMillion;
        var (first, last) = (curve.ValueAt(curve.FirstReadingAt), curve.ValueAt(curve.LastReadingAt));
        var expected = level + Math.Exp(-1) * Math.Max(0, first - level);

        // A flat run has no rate, and then the profile of its curve is open; it must stand above by more than a single reading scatters.
        var scatter = curve.Fall.Quantile(0.5 + confidence / 2, IntervalSide.Lower) * curve.ScatterAt(last);

        // By a line through n readings at equal times the whole change is known to s √(12/n).
        var leastFall = first - last - scatter * Math.Sqrt(12.0 / curve.Count);
        return PlannedConstants(curve, planned) >= FlatConstants
            && last - scatter > Math.Max(ppm, expected)
            && leastFall < SmallFall * first;
    }

    /// <summary>Over half of a planned time constant or a part of the waiting time: no fall is shown, and that of the plan is excluded, as is the target in time.</summary>
    private bool IsBehind(PlannedPerformance plan, RunStretch titrations, out IReadOnlyList<EvidenceItem> evidence)
    {
        var mean = titrations.MeanValue;
        var plannedPerHour = plan.FallPerHour(mean);
        evidence = [];
        if (
            titrations.Hours
                < Math.Min(EarlyShare * status.Options.StallAfter.TotalHours, LeastConstants / plan.RatePerHour)
            || titrations.LeastFall(status.Confidence) >= SmallFall * mean
            || titrations.MostFall >= PlannedShare * plannedPerHour * titrations.Hours
            || titrations.MostFall * FlatConstants / (plan.RatePerHour * titrations.Hours)
                >= titrations.ValueAtEnd - target
        )
        {
            return false;
        }

        evidence =
        [
            EvidenceItem.Number("target", target, measurand.Unit),
            EvidenceItem.Number("readings-since-the-oil-was-mixed", titrations.Count, ""),
            EvidenceItem.Number("observed-for", titrations.Hours, "h"),
            EvidenceItem.Number("mean", mean, measurand.Unit),
            EvidenceItem.Number("fall-by-a-straight-line", titrations.Fall, measurand.Unit),
            EvidenceItem.Number("upper-end-of-the-fall", titrations.MostFall, measurand.Unit),
            EvidenceItem.Number("planned-fall-per-hour", plannedPerHour, measurand.Unit),
            .. WaterThatComesIn(TurnedOver ?? titrations),
        ];
        return true;
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
            var least = RiseShare * (isLogarithmic ? 1 : Math.Abs(one.MeanValue));
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
                EvidenceItem.Number("mean", isLogarithmic ? Math.Exp(one.MeanValue) : one.MeanValue, measurand.Unit),
                EvidenceItem.Number("rise-by-a-straight-line", Change(-one.Fall), ChangeUnit),
                EvidenceItem.Number("lower-end-of-the-rise", Change(one.LeastRise), ChangeUnit),
                .. WaterThatComesIn(one),
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
        var apart = RunPart.ApartFor(first, late, count);
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
                EvidenceItem.Number("mean", isLogarithmic ? Math.Exp(one.MeanValue) : one.MeanValue, measurand.Unit),
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
            || (
                !status.FollowsSensor
                && (whole.Values.Count < 2 || ShowFall(whole.Values[0], whole.Values[whole.Values.Count - 1]))
            )
        )
        {
            return false;
        }

        var hours = (status.AsOf - (sensor.Since > settled ? sensor.Since : settled)).TotalHours;
        var bound =
            planned is not null && IsMixed
                ? WaterBalanceNow.AtSaturation(status, settled, planned, null, status.Confidence)
                : null;
        if (bound is { } balance ? !(balance.Ingress.Lower > planned!.WaterIngress) : hours < stallAfter)
        {
            return false;
        }

        evidence =
        [
            EvidenceItem.Number("target", target, measurand.Unit),
            EvidenceItem.Number("readings-at-saturation", sensor.Count, ""),
            EvidenceItem.Number("observed-for", hours, "h"),
            EvidenceItem.Number("saturation-at-least", sensor.Ppm, measurand.Unit),
            .. bound?.Evidence ?? [],
            .. bound is null ? [] : WaterBalanceNow.EvidenceOf(bound.Ingress),
        ];
        return true;
    }

    /// <summary>What comes in if the unit takes out what was planned; nothing where that is not known.</summary>
    private IEnumerable<EvidenceItem> WaterThatComesIn(RunStretch stretch) =>
        planned is null
            ? []
            : WaterBalanceNow.EvidenceOf(WaterBalanceNow.OfStretch(stretch, planned, null, status.Confidence).Ingress);

    /// <summary>Whether a sample lies below an earlier one by more than two samples can differ.</summary>
    private static bool ShowFall(double earlier, double later) => earlier - later > RunPart.ApartFor(earlier, later);

    private double Change(double scaled) => isLogarithmic ? 100 * (Math.Exp(scaled) - 1) : scaled;

    private double Fallen(double scaled) => isLogarithmic ? 100 * (1 - Math.Exp(-scaled)) : scaled;

    private string ChangeUnit => isLogarithmic ? "%" : measurand.Unit;
}
