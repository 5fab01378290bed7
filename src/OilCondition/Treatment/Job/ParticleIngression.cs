using OilCondition.Text;

namespace OilCondition.Treatment;

/// <summary>Particles that come into a reservoir, at and above three sizes.</summary>
/// <remarks>From a loop that has settled: <see cref="Cleanliness.KidneyLoop.IngressionPerMinuteFrom"/>.</remarks>
public sealed record ParticleIngression
{
    /// <summary>States the ingression.</summary>
    /// <param name="at4PerMinute">Particles of at least 4 µm(c) per minute, 0 to 10¹⁵.</param>
    /// <param name="at6PerMinute">Of at least 6 µm(c): no more than at 4.</param>
    /// <param name="at14PerMinute">Of at least 14 µm(c): no more than at 6.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public ParticleIngression(double at4PerMinute, double at6PerMinute, double at14PerMinute)
    {
        At4PerMinute = Guard.InRange(at4PerMinute, 0, 1e15, "per min");
        At6PerMinute = Guard.InRange(at6PerMinute, 0, at4PerMinute, "per min");
        At14PerMinute = Guard.InRange(at14PerMinute, 0, at6PerMinute, "per min");
    }

    /// <summary>No particles come in.</summary>
    public static ParticleIngression None { get; } = new(0, 0, 0);

    /// <summary>At and above 4 µm(c), per minute.</summary>
    public double At4PerMinute { get; }

    /// <summary>At and above 6 µm(c), per minute.</summary>
    public double At6PerMinute { get; }

    /// <summary>At and above 14 µm(c), per minute.</summary>
    public double At14PerMinute { get; }

    /// <summary>The three rates.</summary>
    /// <returns>For example <c>2000000/800000/40000 particles/min at 4/6/14 µm(c)</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(At4PerMinute)}/{PlainText.Number(At6PerMinute)}/{PlainText.Number(At14PerMinute)} particles/min at 4/6/14 µm(c)";
}
