using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>What a class of AS4059 or NAS 1638 may mean in scale numbers of ISO 4406, and back: always a range.</summary>
/// <remarks>
/// <para>
/// There is no exact conversion. A cumulative class is an interval of counts, (limit of the class below, own limit], that does not match the
/// intervals of ISO 4406: class 6B is more than 97.31 to 194.62 per mL and touches 14 (80 to 160) and 15 (160 to 320). The ranges here are all
/// scale numbers that the interval touches, and all classes that the scale number's interval touches (derived from the two tables).
/// </para>
/// <para>
/// A differential class is the worst of five ranges; it holds the cumulative counts below the sum of its limits and says little of how clean the other
/// sizes are. Its range is therefore wide downwards.
/// </para>
/// <para>
/// Two correspondences are in print and differ by one class (<see cref="Printed"/>); neither is more right than the other. Where counts are known,
/// class and code come from the counts.
/// </para>
/// </remarks>
/// <example><code>ClassCorrespondence.ScaleNumbers(As4059Size.B, CleanlinessClass.Of(6), As4059.Exact); // 14-15</code></example>
public static class ClassCorrespondence
{
    private static readonly Source Trade = Source.CommonPractice("class table of the trade, seen in one public sheet");

    private static readonly Source Annex = new(
        SourceKind.Standard,
        "informative annex of a Russian national standard on hydraulic fluid cleanliness (unverified: its number was not seen)"
    );

    /// <summary>The scale numbers that the counts of a cumulative class touch.</summary>
    /// <param name="size">A, B or C: 4, 6 or 14 µm(c).</param>
    /// <param name="cleanlinessClass">000 to 12, or above class 12.</param>
    /// <param name="table">The printing of the table.</param>
    /// <returns>The range.</returns>
    /// <exception cref="ArgumentOutOfRangeException">ISO 4406 has no such size, or the class is not in the table.</exception>
    public static CodeRange<ScaleNumber> ScaleNumbers(As4059Size size, CleanlinessClass cleanlinessClass, As4059 table)
    {
        var column = SharedColumn(size, As4059Size.A);
        var limits = Guard.NotNull(table).Limits;
        var lower = limits.LowerLimit(column, cleanlinessClass, nameof(cleanlinessClass));
        return new CodeRange<ScaleNumber>(
            ScaleNumber.Of(lower is { } above ? FirstAbove(above / 100.0) : 0),
            ScaleNumber.Of(
                cleanlinessClass.IsAboveTable
                    ? Iso4406.HighestScaleNumber + 1
                    : Iso4406.ScaleNumber(limits.UpperLimit(column, cleanlinessClass, nameof(cleanlinessClass)) / 100.0)
            )
        );
    }

    /// <summary>The scale numbers that counts of a differential class, NAS 1638 or AS4059 table 1, may have.</summary>
    /// <remarks>
    /// Upper end: the sum of the class's limits from the size on. Lower end: at size B one range at least holds more than the limit of the class
    /// below, so the count is above the smallest of these limits; at size C that range may be the finest, so nothing is known.
    /// </remarks>
    /// <param name="size">B or C: 6 or 14 µm(c), 5 or 15 µm by microscope.</param>
    /// <param name="cleanlinessClass">00 to 12, the worst of the ranges; or above class 12.</param>
    /// <returns>The range.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The size is neither B nor C, or the class is not in the table.</exception>
    public static CodeRange<ScaleNumber> ScaleNumbersOfDifferential(As4059Size size, CleanlinessClass cleanlinessClass)
    {
        var first = SharedColumn(size, As4059Size.B) - 1;
        const string Name = nameof(cleanlinessClass);
        var lowest = LowestOf(cleanlinessClass);
        var upper = cleanlinessClass.IsAboveTable
            ? Iso4406.HighestScaleNumber + 1
            : Iso4406.ScaleNumber(
                Enumerable
                    .Range(first, 5 - first)
                    .Sum(range => ClassTables.Differential.UpperLimit(range, cleanlinessClass, Name)) / 100.0
            );
        return new CodeRange<ScaleNumber>(
            ScaleNumber.Of(size == As4059Size.B && lowest is { } above ? FirstAbove(above / 100.0) : 0),
            ScaleNumber.Of(upper)
        );
    }

    /// <summary>The cumulative classes that the counts of a scale number touch.</summary>
    /// <param name="size">A, B or C: 4, 6 or 14 µm(c).</param>
    /// <param name="scaleNumber">0 to 28.</param>
    /// <param name="table">The printing of the table.</param>
    /// <returns>The range.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is not one of the allowed.</exception>
    public static CodeRange<CleanlinessClass> Classes(As4059Size size, int scaleNumber, As4059 table)
    {
        var column = SharedColumn(size, As4059Size.A);
        var limits = Guard.NotNull(table).Limits;
        // Limits of ISO 4406 are whole numbers per 100 mL; rounding takes away what the multiplication adds.
        var upper = Math.Round(Iso4406.UpperLimitPerMillilitre(scaleNumber) * 100);
        var lower = Math.Round(Iso4406.LowerLimitPerMillilitre(scaleNumber) * 100);
        return new CodeRange<CleanlinessClass>(
            // Scale number 0 holds a count of 0 as well; any other begins just above its lower limit, and class limits are whole numbers.
            limits.ClassOf(column, scaleNumber == 0 ? 0 : lower + 0.5),
            limits.ClassOf(column, upper)
        );
    }

    /// <summary>Codes at 4, 6 and 14 µm(c) that documents print beside a class.</summary>
    /// <param name="cleanlinessClass">Any class.</param>
    /// <returns>
    /// None for classes 000 to 1 (of class 1 the one printing seen is an evident slip) and above the table; one for 2 and 3, two that differ by one for 4
    /// to 12.
    /// </returns>
    public static IReadOnlyList<(CleanlinessCode Code, Source PrintedBy)> Printed(CleanlinessClass cleanlinessClass)
    {
        var rank = cleanlinessClass.Rank;
        List<(CleanlinessCode, Source)> printed = [];
        if (rank is >= 2 and <= CleanlinessClass.HighestRank && !cleanlinessClass.IsAboveTable)
        {
            // Both tables step by one scale number a class: class 6 is 17/15/12 in the trade's and 16/14/11 in the annex.
            printed.Add((new CleanlinessCode(rank + 11, rank + 9, rank + 6), Trade));
            if (rank >= 4)
            {
                printed.Add((new CleanlinessCode(rank + 10, rank + 8, rank + 5), Annex));
            }
        }

        return printed;
    }

    private static int? LowestOf(CleanlinessClass cleanlinessClass) =>
        Enumerable
            .Range(0, 5)
            .Min(range => ClassTables.Differential.LowerLimit(range, cleanlinessClass, nameof(cleanlinessClass)));

    /// <summary>The scale number of the counts just above a limit.</summary>
    private static int FirstAbove(double perMillilitre)
    {
        var number = Iso4406.ScaleNumber(perMillilitre);
        return number <= Iso4406.HighestScaleNumber && Iso4406.UpperLimitPerMillilitre(number) <= perMillilitre
            ? number + 1
            : number;
    }

    private static int SharedColumn(As4059Size size, As4059Size first) =>
        size >= first && size <= As4059Size.C
            ? (int)size
            : throw new ArgumentOutOfRangeException(
                nameof(size),
                $"size is {size}; allowed: {first} to C, the sizes that ISO 4406 shares."
            );
}
