using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>A fall of which some readings are only known to lie below a limit, fitted by likelihood with any scatter but that of the logarithm.</summary>
internal sealed class CensoredFall : FittedFall
{
    private readonly double[] hours;
    private readonly double[] values;
    private readonly bool[] belowLimit;
    private readonly CensoredDecayFit fit;

    public CensoredFall(double[] hours, double[] values, bool[] belowLimit, ExponentialDecayOptions options)
    {
        this.hours = hours;
        this.values = values;
        this.belowLimit = belowLimit;
        fit = CensoredDecay.Fit(hours, values, belowLimit, options);
    }

    public override ExponentialDecayStatus Status => fit.Status;
    public override int Count => fit.Count;
    public override int AboveLimitCount => fit.AboveLimitCount;
    public override double Start => fit.Start;
    public override double Floor => fit.Floor;
    public override double Rate => fit.Rate;
    public override double Span => fit.Span;
    public override double Scatter => fit.StandardDeviation;

    /// <summary>The one used: limits tell too little to compare.</summary>
    public override DecayNoise SuggestedNoise => fit.Options.Noise;
    public override double Autocorrelation => fit.ResidualAutocorrelation;
    public override CourseCheck Course => fit.Course;
    public override bool CoverageInDoubt => fit.CoverageInDoubt;
    public override IReadOnlyList<int> FlaggedReadings => [];
    public override bool MoreFlagsPossible => false;

    /// <summary>The most likely scatter is too small; by how much for fitted parts, as in least squares, with the readings that tell it.</summary>
    private double ScatterCorrection => Math.Sqrt((double)AboveLimitCount / DegreesOfFreedom);

    /// <summary>Only the readings above their limit tell the scatter.</summary>
    public override int DegreesOfFreedom => AboveLimitCount - fit.Options.FreeParts;

    /// <summary>With the correction for the fitted parts.</summary>
    public override DecayCovariance Covariance => fit.Covariance.Scaled(ScatterCorrection * ScatterCorrection, 1);

    public override double? Standardised(int index)
    {
        var fitted = ValueAt(hours[index]);
        var scatter = ScatterAt(fitted);
        return belowLimit[index] ? null
            : scatter > 0 ? (values[index] - fitted) / scatter
            : 0;
    }

    public override double ValueAt(double hour) => fit.ValueAt(hour);

    public override Interval RateInterval(double confidence, IntervalSide side) => fit.RateInterval(confidence, side);

    public override Interval HalfLifeInterval(double confidence, IntervalSide side)
    {
        var rate = RateInterval(confidence, Mirrored(side));
        return rate.Outcome switch
        {
            IntervalOutcome.TooFewReadings => Interval.Without(rate.Outcome, confidence, side),
            IntervalOutcome.Known => Interval.Fixed(Math.Log(2) / rate.Lower!.Value, confidence, side),
            _ => Interval.Between(
                Math.Log(2) / rate.Upper,
                Math.Log(2) / rate.Lower,
                confidence,
                side,
                rate.CoverageInDoubt
            ),
        };
    }

    public override Interval FloorInterval(double confidence, IntervalSide side) => fit.FloorInterval(confidence, side);

    public override Interval ValueInterval(double hour, double confidence, IntervalSide side) =>
        fit.ValueInterval(hour, confidence, side);

    /// <summary>Of the curve by profile. Of a new reading: from there on by the scatter, corrected for the fitted parts, as errors add.</summary>
    public override Interval Band(double hour, BandKind of, double confidence, IntervalSide side)
    {
        var mean = ValueInterval(hour, confidence, side);
        if (of == BandKind.Mean || !HasCurve)
        {
            return mean;
        }

        var value = ValueAt(hour);
        var scatter = Quantile(confidence, side) * ScatterAt(value);
        double Half(double end) => Math.Sqrt((end - value) * (end - value) + scatter * scatter);
        return Interval.Between(
            mean.Lower is { } lower ? value - Half(lower) : null,
            mean.Upper is { } upper ? value + Half(upper) : null,
            confidence,
            side,
            mean.CoverageInDoubt
        );
    }

    public override double? LowestLevel(double confidence) => fit.LowestLevel(confidence);

    /// <summary>With the correction for the fitted parts.</summary>
    public override double ScatterAt(double value) => ScatterCorrection * fit.ScatterAt(value);

    public override TimeToValueInterval TimeTo(double target, double confidence, IntervalSide side) =>
        fit.Reach(target, confidence, side);

    /// <summary>
    /// From the ends for rate and floor, each at half the uncertainty: wider than a profile would be, never too narrow. Where one of them is
    /// known the other has the whole uncertainty, and that is the profile.
    /// </summary>
    public override Interval SlopeInterval(
        double value,
        double confidence,
        IntervalSide side,
        out CleanupFigureMethod method
    )
    {
        if (fit.Options is { Rate: { } known, Floor: { } level })
        {
            method = CleanupFigureMethod.Profile;
            return Interval.Fixed(known * (level - value), confidence, side);
        }

        var oneKnown = fit.Options.Rate.HasValue || fit.Options.Floor.HasValue;
        method = oneKnown ? CleanupFigureMethod.Profile : CleanupFigureMethod.TwoIntervals;
        var half = 1 - (1 - confidence) / 2;
        var floor = FloorInterval(oneKnown ? confidence : half, side);
        var rate = RateInterval(
            !oneKnown ? half
                : side == IntervalSide.Both ? confidence
                : 2 * confidence - 1,
            IntervalSide.Both
        );
        if (rate.Outcome == IntervalOutcome.TooFewReadings)
        {
            return Interval.Without(rate.Outcome, confidence, side);
        }

        // The lower end of the slope has the lower rate where it is above zero, else the higher one.
        double? Product(double? excess, bool high) =>
            !excess.HasValue ? null
            : excess >= 0 == high ? (excess == 0 ? 0 : rate.Upper * excess)
            : (rate.Lower ?? 0) * excess;
        return Interval.Between(
            Product(floor.Lower - value, high: false),
            Product(floor.Upper - value, high: true),
            confidence,
            side,
            rate.CoverageInDoubt
        );
    }

    public override double Quantile(double confidence, IntervalSide side) =>
        IntervalLevel.StudentQuantile(confidence, side, DegreesOfFreedom);

    private static IntervalSide Mirrored(IntervalSide side) =>
        side switch
        {
            IntervalSide.Lower => IntervalSide.Upper,
            IntervalSide.Upper => IntervalSide.Lower,
            _ => side,
        };
}
