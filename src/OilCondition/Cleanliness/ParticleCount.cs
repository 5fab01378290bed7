using System.Globalization;
using OilCondition.Statistics;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Cleanliness;

/// <summary>Particles at and above one size that a counter or a microscopist counted in a stated volume.</summary>
/// <remarks>
/// <para>n = m·d/V. n: particles per mL of oil; m: particles counted; d: dilution factor; V: volume analysed, mL.</para>
/// <para>
/// Only the counted number, not the concentration, tells how far a code may be trusted: with fewer than 20 counted ISO 4406
/// puts <c>≥</c> before the scale number.
/// </para>
/// <para>Source: ISO 4406:2021, rule on fewer than 20 particles (seen in secondary reproductions).</para>
/// </remarks>
/// <example><code>new ParticleCount(7, Volume.FromMilliliters(10)).ScaleNumber.ToString(); // ≥7</code></example>
public sealed record ParticleCount
{
    /// <summary>Fewest particles that give a scale number without the mark <c>≥</c>.</summary>
    public const int FewestWithoutMark = 20;

    /// <summary>A count.</summary>
    /// <param name="counted">Particles counted, 0 to 10⁹.</param>
    /// <param name="volume">Volume that was analysed, as diluted, above 0.</param>
    /// <param name="dilution">Volume after dilution over volume of oil in it; 1 for undiluted oil.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public ParticleCount(long counted, Volume volume, double dilution = 1)
    {
        Counted = (long)Guard.InRange(counted, 0, 1e9, "particles");
        Guard.InRange(volume.Milliliters, 1e-6, 1e6, "mL", nameof(volume));
        Volume = volume;
        Dilution = Guard.InRange(dilution, 1, 1e6, "(dilution factor)");
    }

    /// <summary>Particles counted.</summary>
    public long Counted { get; }

    /// <summary>Volume that was analysed, as diluted.</summary>
    public Volume Volume { get; }

    /// <summary>Volume after dilution over volume of oil in it.</summary>
    public double Dilution { get; }

    /// <summary>Particles per millilitre of undiluted oil.</summary>
    public double PerMillilitre => PerMillilitreOf(Counted);

    /// <summary>Particles per 100 mL of undiluted oil, the volume of NAS 1638 and AS4059.</summary>
    public double Per100Millilitres => Rounded(Counted * 100.0 * Dilution / Volume.Milliliters);

    /// <summary>The scale number after ISO 4406, with the mark <c>≥</c> for fewer than 20 counted. None counted gives <c>≥0</c>.</summary>
    public ScaleNumber ScaleNumber =>
        Counted < FewestWithoutMark
            ? ScaleNumber.OfFewCounted(Iso4406.ScaleNumber(PerMillilitre))
            : ScaleNumber.Of(Iso4406.ScaleNumber(PerMillilitre));

    /// <summary>Standard deviation of the count over the count, 1/√m: 22.4 % at 20 particles, 10 % at 100.</summary>
    /// <exception cref="InvalidOperationException">No particle was counted; use <see cref="Interval(double)"/>.</exception>
    public Ratio RelativeStandardDeviation =>
        Counted > 0
            ? Ratio.FromDecimalFractions(1 / Math.Sqrt(Counted))
            : throw new InvalidOperationException(
                "No particle was counted; a relative deviation is not defined. Use Interval."
            );

    /// <summary>The exact Poisson interval of the particles counted, by counting statistics alone.</summary>
    /// <remarks>
    /// Lower end: quantile α/2 of the gamma distribution of shape m (= χ²(α/2; 2m)/2), 0 for m = 0; upper end: quantile 1 − α/2 of
    /// shape m + 1; α = 1 − confidence. By the Wilson-Hilferty approximation above 10 000 particles.
    /// Sampling and calibration scatter come on top and are often larger.
    /// Source: Garwood, Biometrika 28 (1936) 437 (from memory).
    /// </remarks>
    /// <param name="confidence">Two-sided, for example 0.95; at most 0.999999.</param>
    /// <returns>The interval in particles of the volume analysed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside 0.000001 to 0.999999.</exception>
    public Statistics.Interval Interval(double confidence) => IntervalOf(confidence, particles => particles);

    /// <summary>The same interval in particles per millilitre of undiluted oil.</summary>
    /// <param name="confidence">Two-sided, for example 0.95; at most 0.999999.</param>
    /// <returns>The interval per mL.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside 0.000001 to 0.999999.</exception>
    public Statistics.Interval IntervalPerMillilitre(double confidence) => IntervalOf(confidence, PerMillilitreOf);

    /// <summary>The same interval in scale numbers after ISO 4406.</summary>
    /// <param name="confidence">Two-sided, for example 0.95; at most 0.999999.</param>
    /// <returns>The scale numbers of both ends.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside 0.000001 to 0.999999.</exception>
    public CodeRange<ScaleNumber> ScaleNumbers(double confidence)
    {
        var ends = IntervalPerMillilitre(confidence);
        return new CodeRange<ScaleNumber>(
            ScaleNumber.Of(Iso4406.ScaleNumber(ends.Lower!.Value)),
            ScaleNumber.Of(Iso4406.ScaleNumber(ends.Upper!.Value))
        );
    }

    /// <summary>Chance of a difference at least as unlikely as that between two counts if both oils are equally dirty, two-sided.</summary>
    /// <remarks>
    /// Given m₁ + m₂ = n particles in all, m₂ of equal oils is binomial with p = v₂/(v₁ + v₂), v = V/d the volume of oil analysed; twice the smaller tail.
    /// Exact up to 10 000 particles in all, by the normal law above. Sampling and calibration scatter are not in it: a small chance may still come of
    /// bottles or counters; a large one shows no difference.
    /// Source: conditional test of two Poisson means, Przyborowski and Wilenski, Biometrika 31 (1940) 313 (from memory).
    /// </remarks>
    /// <param name="other">Another count at the same size.</param>
    /// <returns>0 to 1; below 0.05 the counts differ at a confidence of 0.95.</returns>
    /// <exception cref="ArgumentNullException">There is no other count.</exception>
    public double ChanceOfEqualOil(ParticleCount other) => CountDifference.Between(this, Guard.NotNull(other)).Chance;

    /// <summary>The count with what it means.</summary>
    /// <returns>For example <c>7 in 10 mL: 0.7 per mL, ≥7</c>.</returns>
    public override string ToString() =>
        $"{Counted.ToString(CultureInfo.InvariantCulture)} in {PlainText.Number(Volume.Milliliters)} mL"
        + (Dilution > 1 ? $", diluted {PlainText.Number(Dilution)} times" : "")
        + $": {PlainText.Number(PerMillilitre)} per mL, {ScaleNumber}";

    private Statistics.Interval IntervalOf(double confidence, Func<double, double> inUnit)
    {
        var tail = (1 - Guard.InRange(confidence, 1e-6, 1 - 1e-6, "")) / 2;
        return Statistics.Interval.Between(
            inUnit(Counted == 0 ? 0 : CountingStatistics.GammaQuantile(Counted, tail)),
            inUnit(CountingStatistics.GammaQuantile(Counted + 1, 1 - tail)),
            confidence,
            IntervalSide.Both,
            coverageInDoubt: false
        );
    }

    private double PerMillilitreOf(double particles) => Rounded(particles * Dilution / Volume.Milliliters);

    /// <summary>
    /// To 12 figures, so that 13 particles in 0.01 L are 1.3 per mL and stay on the inclusive limit, whatever unit the volume came in.
    /// </summary>
    private static double Rounded(double figure) =>
        double.Parse(figure.ToString("G12", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
