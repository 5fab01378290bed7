using OilCondition.Cleanliness;
using OilCondition.Text;

namespace OilCondition.Treatment;

/// <summary>Particles in an oil at and above the three sizes of ISO 4406.</summary>
public sealed record ParticleLevels
{
    /// <summary>States the counts.</summary>
    /// <param name="at4PerMillilitre">Particles of at least 4 µm(c) per mL, 0 to 10⁹.</param>
    /// <param name="at6PerMillilitre">Of at least 6 µm(c): no more than at 4.</param>
    /// <param name="at14PerMillilitre">Of at least 14 µm(c): no more than at 6.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count lies outside its range.</exception>
    public ParticleLevels(double at4PerMillilitre, double at6PerMillilitre, double at14PerMillilitre)
    {
        At4PerMillilitre = Guard.InRange(at4PerMillilitre, 0, 1e9, "per mL");
        At6PerMillilitre = Guard.InRange(at6PerMillilitre, 0, at4PerMillilitre, "per mL");
        At14PerMillilitre = Guard.InRange(at14PerMillilitre, 0, at6PerMillilitre, "per mL");
        Code = CleanlinessCode.FromCounts(at4PerMillilitre, at6PerMillilitre, at14PerMillilitre);
    }

    /// <summary>At and above 4 µm(c), per mL.</summary>
    public double At4PerMillilitre { get; }

    /// <summary>At and above 6 µm(c), per mL.</summary>
    public double At6PerMillilitre { get; }

    /// <summary>At and above 14 µm(c), per mL.</summary>
    public double At14PerMillilitre { get; }

    /// <summary>The code of these counts; without the particles counted no number carries the mark <c>≥</c>.</summary>
    public CleanlinessCode Code { get; }

    /// <summary>Counts that stand for a code: the upper limit of each number, the most that the code allows.</summary>
    /// <param name="code">A code with a number of 0 to 28 at all three sizes.</param>
    /// <returns>The counts.</returns>
    /// <exception cref="ArgumentNullException">The code is null.</exception>
    /// <exception cref="ArgumentException">A size has no number, or one above the table.</exception>
    public static ParticleLevels FromCode(CleanlinessCode code)
    {
        Guard.NotNull(code);
        return new ParticleLevels(Upper(code, code.At4), Upper(code, code.At6), Upper(code, code.At14));
    }

    /// <summary>Counts that were computed: rounding may let them rise with size, and without a filter they may leave the range.</summary>
    internal static ParticleLevels Computed(double at4, double at6, double at14)
    {
        const double Most = 1e9;
        var first = Math.Min(Most, Math.Max(0, at4));
        var second = Math.Min(first, Math.Max(0, at6));
        return new ParticleLevels(first, second, Math.Min(second, Math.Max(0, at14)));
    }

    private static double Upper(CleanlinessCode code, ScaleNumber size) =>
        size.HighestPerMillilitre is var limit && Guard.IsFinite(limit)
            ? limit
            : throw new ArgumentException($"Code {code} has no number of 0 to 28 at every size.", nameof(code));

    /// <summary>The code with its counts.</summary>
    /// <returns>For example <c>20/18/15 (10000/2500/320 per mL)</c>.</returns>
    public override string ToString() =>
        $"{Code} ({PlainText.Number(At4PerMillilitre)}/{PlainText.Number(At6PerMillilitre)}/{PlainText.Number(At14PerMillilitre)} per mL)";
}
