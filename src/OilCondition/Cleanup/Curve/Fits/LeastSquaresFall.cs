using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>A fall fitted by least squares, on a clock that runs with the rate where the temperature is known. Curves begin at hour 0.</summary>
internal sealed class LeastSquaresFall : FittedFall
{
    private readonly ExponentialDecayAnalysis analysis;

    public LeastSquaresFall(double[] hours, double[] values, ExponentialDecayOptions options) =>
        analysis = ExponentialDecay.Analyze(hours, values, options);

    /// <summary>On whichever of the clocks fits; all of them end at the plain one.</summary>
    public LeastSquaresFall(IReadOnlyList<DecayClock> clocks, double[] values, ExponentialDecayOptions options) =>
        analysis = new ExponentialDecayAnalysis(clocks, values, options);

    public override ExponentialDecayStatus Status => analysis.Fit.Status;
    public override int Count => analysis.Fit.Count;
    public override int AboveLimitCount => analysis.Fit.Count;
    public override double Start => analysis.Fit.Start;
    public override double Floor => analysis.Fit.Floor;
    public override double Rate => analysis.Fit.Rate;
    public override double Span => analysis.Fit.Span;
    public override double Scatter => analysis.Fit.ResidualStandardDeviation;
    public override DecayNoise SuggestedNoise => analysis.SuggestedNoise;
    public override double Autocorrelation => analysis.ResidualAutocorrelation;
    public override CourseCheck Course => analysis.Course;
    public override bool CoverageInDoubt => analysis.CoverageInDoubt;
    public override IReadOnlyList<int> FlaggedReadings => analysis.FlaggedReadings;

    public override bool MoreFlagsPossible => analysis.MoreFlagsPossible;
    public override int DegreesOfFreedom => analysis.Fit.DegreesOfFreedom;
    public override DecayCovariance Covariance => analysis.Fit.Covariance;

    public override double? Standardised(int index) => analysis.Residuals[index];

    public override double? PerKelvin => analysis.Clock?.PerKelvin;

    public override double FallStandardError(double from, double to)
    {
        var start = On(0);
        return base.FallStandardError(On(from) - start, On(to) - start);
    }

    public override double ValueAt(double hour) => analysis.Fit.ValueAt(On(hour));

    public override Interval RateInterval(double confidence, IntervalSide side) => analysis.Rate(confidence, side);

    public override Interval HalfLifeInterval(double confidence, IntervalSide side) =>
        analysis.HalfLife(confidence, side);

    public override Interval FloorInterval(double confidence, IntervalSide side) => analysis.Floor(confidence, side);

    public override Interval ValueInterval(double hour, double confidence, IntervalSide side) =>
        analysis.ValueAt(hour, confidence, side);

    public override Interval Band(double hour, BandKind of, double confidence, IntervalSide side)
    {
        var band = analysis.Fit.BandAt(On(hour), of, confidence, side);
        return CoverageInDoubt ? band.InDoubt() : band;
    }

    public override TimeToValueInterval TimeTo(double target, double confidence, IntervalSide side) =>
        analysis.Reach(target, confidence, side);

    public override double? LowestLevel(double confidence) => analysis.LowestLevel(confidence);

    public override double ScatterAt(double value) => analysis.Fit.ScatterAt(value);

    public override Interval SlopeInterval(
        double value,
        double confidence,
        IntervalSide side,
        out CleanupFigureMethod method
    )
    {
        method = CleanupFigureMethod.Profile;
        return analysis.Options is { Rate: { } rate, Floor: { } floor }
            ? Interval.Fixed(rate * (floor - value), confidence, side)
            : analysis.SlopeAt(value, confidence, side);
    }

    public override double Quantile(double confidence, IntervalSide side) =>
        IntervalLevel.StudentQuantile(confidence, side, DegreesOfFreedom);

    private double On(double hour) => analysis.Clock?.FromPlain(hour) ?? hour;
}
