using OilCondition.Statistics;

namespace OilCondition.Purification;

/// <summary>A fall of which some readings are only known to lie below a limit, fitted by likelihood with constant scatter.</summary>
internal sealed class CensoredFall : FittedFall
{
    private const int FittedParts = 3;

    private readonly CensoredDecayFit fit;
    private readonly double[] residuals;

    public CensoredFall(double[] hours, double[] values, bool[] belowLimit)
    {
        fit = CensoredDecay.Fit(hours, values, belowLimit);
        residuals = HasCurve
            ?
            [
                .. Enumerable
                    .Range(0, hours.Length)
                    .Where(i => !belowLimit[i])
                    .Select(i => values[i] - ValueAt(hours[i])),
            ]
            : [];
    }

    public override ExponentialDecayStatus Status => fit.Status;
    public override int Count => fit.Count;
    public override int AboveLimitCount => fit.AboveLimitCount;
    public override double Start => fit.Start;
    public override double Floor => fit.Floor;
    public override double Rate => fit.Rate;
    public override double Span => fit.Span;
    public override double Scatter => fit.StandardDeviation;
    public override DecayNoise SuggestedNoise => DecayNoise.Constant;

    /// <summary>Of the readings above their limit.</summary>
    public override double Autocorrelation
    {
        get
        {
            var squares = residuals.Sum(one => one * one);
            return squares > 0 ? residuals.Zip(residuals.Skip(1), (one, next) => one * next).Sum() / squares : 0;
        }
    }

    public override bool IsAutocorrelated =>
        residuals.Length > 0 && Autocorrelation > 1.6448536269514722 / Math.Sqrt(residuals.Length);

    public override IReadOnlyList<int> FlaggedReadings => [];

    /// <summary>The most likely scatter is too small; by how much for fitted parts, as in least squares, with the readings that tell it.</summary>
    private double ScatterCorrection => Math.Sqrt((double)AboveLimitCount / (AboveLimitCount - FittedParts));

    public override double ValueAt(double hour) => fit.ValueAt(hour);

    public override ProfileInterval RateInterval(double confidence, IntervalSide side) =>
        Warned(fit.RateInterval(confidence, side));

    public override ProfileInterval HalfLifeInterval(double confidence, IntervalSide side)
    {
        var rate = RateInterval(confidence, Mirrored(side));
        return rate.Outcome == IntervalOutcome.TooFewReadings
            ? ProfileInterval.Without(rate.Outcome, confidence, side)
            : ProfileInterval.Between(
                rate.HasUpper ? Math.Log(2) / rate.Upper : null,
                rate.HasLower ? Math.Log(2) / rate.Lower : null,
                confidence,
                side,
                rate.CoverageInDoubt
            );
    }

    public override ProfileInterval FloorInterval(double confidence, IntervalSide side) =>
        Warned(fit.FloorInterval(confidence, side));

    public override ProfileInterval ValueInterval(double hour, double confidence, IntervalSide side) =>
        Warned(fit.ValueInterval(hour, confidence, side));

    /// <summary>Of the curve by profile. Of a new reading: from there on by the scatter, corrected for the fitted parts, as errors add.</summary>
    public override ProfileInterval Band(double hour, CrossingOf of, double confidence, IntervalSide side)
    {
        var mean = ValueInterval(hour, confidence, side);
        if (of == CrossingOf.MeanLine || !HasCurve)
        {
            return mean;
        }

        var value = ValueAt(hour);
        var scatter = Quantile(confidence, side) * Scatter * ScatterCorrection;
        double Half(double end) => Math.Sqrt((end - value) * (end - value) + scatter * scatter);
        return ProfileInterval.Between(
            mean.HasLower ? value - Half(mean.Lower) : null,
            mean.HasUpper ? value + Half(mean.Upper) : null,
            confidence,
            side,
            mean.CoverageInDoubt
        );
    }

    public override TimeToValueInterval TimeTo(double target, double confidence, IntervalSide side) =>
        fit.TimeTo(target, confidence, side);

    /// <summary>From the ends for rate and floor, each at half the doubt: wider than a profile would be, never too narrow.</summary>
    public override ProfileInterval SlopeInterval(
        double value,
        double confidence,
        IntervalSide side,
        out CleanupFigureMethod method
    )
    {
        method = CleanupFigureMethod.TwoIntervals;
        var half = 1 - (1 - confidence) / 2;
        var rate = RateInterval(half, IntervalSide.Both);
        var floor = FloorInterval(half, side);
        if (rate.Outcome == IntervalOutcome.TooFewReadings)
        {
            return ProfileInterval.Without(rate.Outcome, confidence, side);
        }

        // The lower end of the slope has the lower rate where it is above zero, else the higher one.
        double? Product(bool has, double excess, bool high) =>
            !has ? null
            : excess >= 0 == high
                ? (
                    rate.HasUpper ? rate.Upper * excess
                    : excess == 0 ? 0
                    : null
                )
            : (rate.HasLower ? rate.Lower : 0) * excess;
        return ProfileInterval.Between(
            Product(floor.HasLower, floor.Lower - value, high: false),
            Product(floor.HasUpper, floor.Upper - value, high: true),
            confidence,
            side,
            rate.CoverageInDoubt
        );
    }

    /// <summary>Only the readings above their limit tell the scatter.</summary>
    public override double Quantile(double confidence, IntervalSide side) =>
        IntervalLevel.StudentQuantile(confidence, side, AboveLimitCount - FittedParts);

    protected override double StandardErrorOf(double byStart, double byFloor, double byLogRate) =>
        ScatterCorrection * fit.StandardErrorOf(byStart, byFloor, byLogRate);

    private static IntervalSide Mirrored(IntervalSide side) =>
        side switch
        {
            IntervalSide.Lower => IntervalSide.Upper,
            IntervalSide.Upper => IntervalSide.Lower,
            _ => side,
        };

    private ProfileInterval Warned(ProfileInterval interval) => IsAutocorrelated ? interval.InDoubt() : interval;
}
