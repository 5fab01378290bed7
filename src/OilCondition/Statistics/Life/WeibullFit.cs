using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>A Weibull distribution of life with its uncertainty. Ages are in the caller's unit.</summary>
/// <remarks>
/// Errors come from the observed information in (ln η, ln β). All intervals are symmetric on the logarithmic scale, estimate · exp(± z · standard error of the logarithm), for the
/// shape, the scale and the age at a failed fraction; the plain symmetric form of many published tables differs a lot below about 20 failures.
/// </remarks>
public sealed class WeibullFit
{
    private readonly double logScaleVariance;
    private readonly double logShapeVariance;
    private readonly double covariance;

    internal WeibullFit(WeibullStatus status, int failures, int suspensions)
    {
        Status = status;
        Failures = failures;
        Suspensions = suspensions;
        Shape = 1;
        Scale = 1;
    }

    internal WeibullFit(int failures, int suspensions, double[] logAges, double shape)
    {
        Failures = failures;
        Suspensions = suspensions;
        Shape = shape;
        var greatest = logAges.Max();
        var logScale = greatest + Math.Log(logAges.Sum(log => Math.Exp(shape * (log - greatest))) / failures) / shape;
        Scale = Math.Exp(logScale);

        // Observed information in (ln η, ln β) at the maximum, where Σ e^z = r; z = β (ln t − ln η).
        double ze = 0;
        double zze = 0;
        double failed = 0;
        for (var i = 0; i < logAges.Length; i++)
        {
            var z = shape * (logAges[i] - logScale);
            ze += z * Math.Exp(z);
            zze += z * z * Math.Exp(z);
            failed += i < failures ? z + Math.Log(shape) - logAges[i] : 0;
        }

        LogLikelihood = failed - failures;
        var scaleScale = failures * shape * shape;
        var scaleShape = -shape * ze;
        var shapeShape = failures + zze;
        var determinant = scaleScale * shapeShape - scaleShape * scaleShape;
        logScaleVariance = shapeShape / determinant;
        logShapeVariance = scaleScale / determinant;
        covariance = -scaleShape / determinant;
    }

    /// <summary>Whether the distribution is determined: not by fewer than two failures, or by failures at one age that nothing outlived. The other members are meaningful only if it is.</summary>
    public bool IsDetermined => Status == WeibullStatus.Determined;

    /// <summary>Why it is not.</summary>
    internal WeibullStatus Status { get; }

    /// <summary>Number of failures, r.</summary>
    public int Failures { get; }

    /// <summary>Number of units that have not failed.</summary>
    public int Suspensions { get; }

    /// <summary>Shape, β: below 1 infant mortality, about 1 chance, above 1 wear-out.</summary>
    public double Shape { get; }

    /// <summary>Scale, η: the age by which 63.2 % have failed.</summary>
    public double Scale { get; }

    /// <summary>Logarithm of the likelihood at the maximum.</summary>
    public double LogLikelihood { get; }

    /// <summary>Standard error of the shape.</summary>
    public double ShapeStandardError => Shape * Math.Sqrt(logShapeVariance);

    /// <summary>Standard error of the scale.</summary>
    public double ScaleStandardError => Scale * Math.Sqrt(logScaleVariance);

    /// <summary>Mean life, η Γ(1 + 1/β).</summary>
    public double Mean => Scale * SpecialFunctions.Gamma(1 + 1 / Shape);

    /// <inheritdoc/>
    public override string ToString() =>
        IsDetermined
            ? $"shape {PlainText.Number(Shape, ShapeStandardError)}, scale {PlainText.Number(Scale, ScaleStandardError)}, {Failures} failures, {Suspensions} in service"
            : $"{PlainText.Spaced(Status)}: {Failures}";

    /// <summary>Interval of the shape.</summary>
    /// <param name="confidence">Two-sided confidence level.</param>
    /// <returns>The interval, symmetric on the logarithmic scale.</returns>
    /// <exception cref="InvalidOperationException">The distribution is not determined.</exception>
    public Interval ShapeInterval(double confidence) => Around(Shape, logShapeVariance, confidence);

    /// <summary>Interval of the scale.</summary>
    /// <param name="confidence">Two-sided confidence level.</param>
    /// <returns>The interval, symmetric on the logarithmic scale.</returns>
    /// <exception cref="InvalidOperationException">The distribution is not determined.</exception>
    public Interval ScaleInterval(double confidence) => Around(Scale, logScaleVariance, confidence);

    /// <summary>The age by which a fraction has failed, η (−ln(1 − p))^(1/β): 0.1 for the B10 life, 0.5 for the median.</summary>
    /// <param name="failedFraction">p, above 0 and below 1.</param>
    /// <returns>The age.</returns>
    /// <exception cref="InvalidOperationException">The distribution is not determined.</exception>
    public double AgeAt(double failedFraction)
    {
        RequireDetermined();
        return Scale * Math.Exp(LogHazard(failedFraction) / Shape);
    }

    /// <summary>Interval of the age by which a fraction has failed, by the delta method on the logarithm of the age.</summary>
    /// <param name="failedFraction">p, above 0 and below 1.</param>
    /// <param name="confidence">Two-sided confidence level.</param>
    /// <returns>The interval.</returns>
    /// <exception cref="InvalidOperationException">The distribution is not determined.</exception>
    public Interval AgeInterval(double failedFraction, double confidence)
    {
        // ln t = ln η + w / β, so that its gradient in (ln η, ln β) is (1, −w / β).
        var slope = -LogHazard(failedFraction) / Shape;
        return Around(
            AgeAt(failedFraction),
            logScaleVariance + slope * (2 * covariance + slope * logShapeVariance),
            confidence
        );
    }

    /// <summary>Reliability, R(t): the fraction still in service at an age.</summary>
    /// <param name="age">t, 0 or more.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="InvalidOperationException">The distribution is not determined.</exception>
    public double Reliability(double age)
    {
        RequireDetermined();
        return Math.Exp(-Hazard(Guard.NotNegative(age, "")));
    }

    /// <summary>The chance that a unit of an age lasts a further time, R(t + d)/R(t).</summary>
    /// <param name="age">t, 0 or more.</param>
    /// <param name="further">d, 0 or more.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="InvalidOperationException">The distribution is not determined.</exception>
    public double ConditionalReliability(double age, double further)
    {
        RequireDetermined();
        Guard.NotNegative(age, "");
        return Math.Exp(Hazard(age) - Hazard(age + Guard.NotNegative(further, "")));
    }

    /// <summary>Mean residual life at an age, the integral of R from t on over R(t) = (η/β) exp(x) Γ(1/β, x) with x = (t/η)^β.</summary>
    /// <param name="age">t, 0 or more.</param>
    /// <returns>The mean time left.</returns>
    /// <exception cref="InvalidOperationException">The distribution is not determined.</exception>
    public double MeanResidualLife(double age)
    {
        RequireDetermined();
        var x = Hazard(Guard.NotNegative(age, ""));
        var a = 1 / Shape;
        if (x < 100)
        {
            return Scale * a * Math.Exp(x) * SpecialFunctions.GammaUpperIncomplete(a, x);
        }

        // Γ(a, x) ~ x^(a−1) exp(−x) (1 + (a−1)/x + (a−1)(a−2)/x² + ..): Abramowitz and Stegun 1964, 6.5.32.
        double sum = 1;
        double term = 1;
        for (var i = 1; i < 30 && Math.Abs(term) > 1e-15 && Math.Abs(a - i) < x; i++)
        {
            term *= (a - i) / x;
            sum += term;
        }

        return Scale * a * Math.Pow(x, a - 1) * sum;
    }

    private static double LogHazard(double failedFraction) =>
        Math.Log(-Math.Log(1 - Guard.OpenUnitInterval(failedFraction)));

    private static Interval Scaled(double estimate, double half, double confidence) =>
        Interval.Between(estimate * Math.Exp(-half), estimate * Math.Exp(half), confidence);

    private Interval Around(double estimate, double logVariance, double confidence)
    {
        RequireDetermined();
        Guard.OpenUnitInterval(confidence);
        return Scaled(estimate, Normal.InvCDF(0, 1, 0.5 + confidence / 2) * Math.Sqrt(logVariance), confidence);
    }

    private double Hazard(double age) => Math.Pow(age / Scale, Shape);

    private void RequireDetermined()
    {
        if (Status != WeibullStatus.Determined)
        {
            throw new InvalidOperationException($"The distribution is not determined: {Status}, {Failures} failures.");
        }
    }
}
