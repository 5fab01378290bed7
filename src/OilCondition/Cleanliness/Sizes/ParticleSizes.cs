using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>Particle sizes from one calibration of counters to another.</summary>
/// <remarks>
/// <para>
/// µm(c): calibration after ISO 11171, which ISO 4406 and AS4059 use. µm (ACFTD): the older calibration of ISO 4402:1991 with fine test dust.
/// µm(b): a unit that ISO 11171:2016 allowed beside µm(c) after a new calibration fluid; the 2020 edition has µm(c) alone.
/// </para>
/// <para>
/// ACFTD: straight lines between 16 pairs from 1 µm = 4.2 µm(c) to 100 µm = 70 µm(c); 5 µm = 6.4, 15 µm = 13.6 µm(c). A pair of calibrations, no
/// law of nature, so nothing outside the pairs is given. µm(b): d(c) = 0.898 d(b) (from memory).
/// </para>
/// <para>A size by microscope is the longest dimension and is none of these; ISO 4406 takes 5 and 15 µm there as the equivalents of 6 and 14 µm(c).</para>
/// <para>
/// Source: ISO 11171 annex or ISO/TR 16386, one secondary reproduction (its pair 2.7 to 5.1 left out, since 3.0 to 5.1 stands beside it); the factor
/// of µm(b) from memory.
/// </para>
/// </remarks>
/// <example><code>ParticleSizes.AcftdToMicrometresC(22); // 18.98</code></example>
public static class ParticleSizes
{
    private const double MicrometresCPerMicrometreB = 0.898;

    private static readonly double[] Acftd = [1, 2, 3, 4.3, 5, 7, 10, 12, 15, 15.5, 20, 25, 30, 40, 50, 100];

    private static readonly double[] C =
    [
        4.2,
        4.6,
        5.1,
        6,
        6.4,
        7.7,
        9.8,
        11.3,
        13.6,
        14,
        17.5,
        21.2,
        24.9,
        31.7,
        38.2,
        70,
    ];

    /// <summary>Where the pairs of ACFTD and µm(c) come from.</summary>
    public static Source AcftdSource { get; } =
        new(SourceKind.Standard, "ISO 11171 annex or ISO/TR 16386, one secondary reproduction", "size correspondence");

    /// <summary>Where the factor of µm(b) comes from.</summary>
    public static Source MicrometresBSource { get; } =
        new(SourceKind.FromMemory, "ISO 11171:2016, µm(c) = 0.898 µm(b)");

    /// <summary>A size in µm(c) from one of the ACFTD calibration.</summary>
    /// <param name="acftdMicrometres">1 to 100 µm.</param>
    /// <returns>4.2 to 70 µm(c).</returns>
    /// <exception cref="ArgumentOutOfRangeException">The size lies outside the pairs.</exception>
    public static double AcftdToMicrometresC(double acftdMicrometres) =>
        Between(Acftd, C, Guard.InRange(acftdMicrometres, Acftd[0], Acftd[Acftd.Length - 1], "µm (ACFTD)"));

    /// <summary>A size of the ACFTD calibration from one in µm(c).</summary>
    /// <param name="micrometresC">4.2 to 70 µm(c). 4 µm(c) has no counterpart.</param>
    /// <returns>1 to 100 µm.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The size lies outside the pairs.</exception>
    public static double MicrometresCToAcftd(double micrometresC) =>
        Between(C, Acftd, Guard.InRange(micrometresC, C[0], C[C.Length - 1], "µm(c)"));

    /// <summary>A size in µm(c) from one in µm(b).</summary>
    /// <param name="micrometresB">0.1 to 1000 µm(b).</param>
    /// <returns>µm(c).</returns>
    /// <exception cref="ArgumentOutOfRangeException">The size lies outside its range.</exception>
    public static double MicrometresBToMicrometresC(double micrometresB) =>
        MicrometresCPerMicrometreB * Guard.InRange(micrometresB, 0.1, 1000, "µm(b)");

    /// <summary>A size in µm(b) from one in µm(c).</summary>
    /// <param name="micrometresC">0.1 to 1000 µm(c).</param>
    /// <returns>µm(b).</returns>
    /// <exception cref="ArgumentOutOfRangeException">The size lies outside its range.</exception>
    public static double MicrometresCToMicrometresB(double micrometresC) =>
        Guard.InRange(micrometresC, 0.1, 1000, "µm(c)") / MicrometresCPerMicrometreB;

    private static double Between(double[] from, double[] to, double size)
    {
        var index = Array.BinarySearch(from, size);
        if (index >= 0)
        {
            return to[index];
        }

        var above = ~index;
        var share = (size - from[above - 1]) / (from[above] - from[above - 1]);
        return to[above - 1] + (share * (to[above] - to[above - 1]));
    }
}
