using System.Globalization;
using OilCondition.Guards;

namespace OilCondition.Cleanliness;

/// <summary>A cleanliness code after ISO 4406: three scale numbers for particles of at least 4, 6 and 14 µm(c).</summary>
public sealed record CleanlinessCode
{
    /// <summary>A code from its three scale numbers.</summary>
    /// <param name="at4">Scale number at 4 µm(c), 0 to 29; 29 stands for 'above the table' and prints as &gt;28.</param>
    /// <param name="at6">Scale number at 6 µm(c).</param>
    /// <param name="at14">Scale number at 14 µm(c).</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside 0 to 29.</exception>
    /// <exception cref="ArgumentException">The numbers rise with size, which cumulative counts cannot.</exception>
    public CleanlinessCode(int at4, int at6, int at14)
    {
        At4 = Number(at4, nameof(at4));
        At6 = Number(at6, nameof(at6));
        At14 = Number(at14, nameof(at14));
        if (at6 > at4 || at14 > at6)
        {
            throw new ArgumentException(
                $"Code {at4}/{at6}/{at14} rises with particle size; cumulative counts cannot.",
                at6 > at4 ? nameof(at6) : nameof(at14)
            );
        }
    }

    /// <summary>Scale number at 4 µm(c).</summary>
    public int At4 { get; }

    /// <summary>Scale number at 6 µm(c).</summary>
    public int At6 { get; }

    /// <summary>Scale number at 14 µm(c).</summary>
    public int At14 { get; }

    /// <summary>The code of three cumulative counts.</summary>
    /// <param name="at4PerMillilitre">Particles of at least 4 µm(c) per millilitre.</param>
    /// <param name="at6PerMillilitre">Particles of at least 6 µm(c) per millilitre.</param>
    /// <param name="at14PerMillilitre">Particles of at least 14 µm(c) per millilitre.</param>
    /// <returns>The code.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative or not finite.</exception>
    /// <exception cref="ArgumentException">The counts rise with size.</exception>
    public static CleanlinessCode FromCounts(
        double at4PerMillilitre,
        double at6PerMillilitre,
        double at14PerMillilitre
    ) =>
        new(
            Iso4406.ScaleNumber(at4PerMillilitre),
            Iso4406.ScaleNumber(at6PerMillilitre),
            Iso4406.ScaleNumber(at14PerMillilitre)
        );

    /// <summary>Reads a three-number code such as <c>18/16/13</c>.</summary>
    /// <param name="text">The code.</param>
    /// <param name="code">The code read, or null.</param>
    /// <returns>Whether the text is a three-number code.</returns>
    public static bool TryParse(string? text, out CleanlinessCode? code)
    {
        code = null;
        var parts = (text ?? "").Split('/');
        var numbers = new int[3];
        if (parts.Length != 3)
        {
            return false;
        }

        for (var i = 0; i < 3; i++)
        {
            if (
                !int.TryParse(parts[i].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out numbers[i])
                || numbers[i] > Iso4406.HighestScaleNumber
            )
            {
                return false;
            }
        }

        if (numbers[1] > numbers[0] || numbers[2] > numbers[1])
        {
            return false;
        }

        code = new CleanlinessCode(numbers[0], numbers[1], numbers[2]);
        return true;
    }

    /// <summary>How many scale numbers this code lies above a target at its worst size; 0 or less when the target is met.</summary>
    /// <param name="target">The target code.</param>
    /// <returns>The largest difference over the three sizes.</returns>
    public int WorstExcess(CleanlinessCode target)
    {
        Guard.NotNull(target, nameof(target));
        return Math.Max(At4 - target.At4, Math.Max(At6 - target.At6, At14 - target.At14));
    }

    /// <summary>The code as it is written.</summary>
    /// <returns>For example <c>18/16/13</c>.</returns>
    public override string ToString() => $"{Text(At4)}/{Text(At6)}/{Text(At14)}";

    private static string Text(int number) =>
        number > Iso4406.HighestScaleNumber ? ">28" : number.ToString(CultureInfo.InvariantCulture);

    private static int Number(int number, string name) =>
        (int)Guard.InRange(number, 0, Iso4406.HighestScaleNumber + 1, "(scale number)", name);
}
