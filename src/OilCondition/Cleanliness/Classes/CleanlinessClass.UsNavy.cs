namespace OilCondition.Cleanliness;

/// <content>Particulate classes of hydraulic fluid after the US Navy.</content>
public readonly partial record struct CleanlinessClass
{
    /// <summary>Where the table of the US Navy comes from.</summary>
    public static Source UsNavySource { get; } =
        new(SourceKind.Handbook, "US Navy aviation training manuals, particle contamination level", "Table 8-1");

    /// <summary>The class after the US Navy of differential counts: the worst of its five ranges.</summary>
    /// <remarks>
    /// Ranges 5-10, 10-25, 25-50, 50-100, above 100 µm; classes 0 to 6, limits included; a count that passes the limit in any one range puts the
    /// sample into the next class. Above class 6 the result is <c>&gt;6</c>. The ranges are not those of NAS 1638, nor are the classes. The manuals hold
    /// class 5 for the worst acceptable in aircraft systems and class 3 for fluid that support equipment delivers.
    /// Source: two US Navy aviation training manuals with the same table (seen; public domain).
    /// </remarks>
    /// <param name="from5To10Per100Millilitres">Particles of 5 to 10 µm per 100 mL.</param>
    /// <param name="from10To25Per100Millilitres">Particles of 10 to 25 µm per 100 mL.</param>
    /// <param name="from25To50Per100Millilitres">Particles of 25 to 50 µm per 100 mL.</param>
    /// <param name="from50To100Per100Millilitres">Particles of 50 to 100 µm per 100 mL.</param>
    /// <param name="above100Per100Millilitres">Particles above 100 µm per 100 mL.</param>
    /// <returns>0 to 6, or above the table.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A count is negative or not finite.</exception>
    public static CleanlinessClass OfUsNavy(
        double from5To10Per100Millilitres,
        double from10To25Per100Millilitres,
        double from25To50Per100Millilitres,
        double from50To100Per100Millilitres,
        double above100Per100Millilitres
    )
    {
        double[] counts =
        [
            ClassLimits.Count(from5To10Per100Millilitres, nameof(from5To10Per100Millilitres)),
            ClassLimits.Count(from10To25Per100Millilitres, nameof(from10To25Per100Millilitres)),
            ClassLimits.Count(from25To50Per100Millilitres, nameof(from25To50Per100Millilitres)),
            ClassLimits.Count(from50To100Per100Millilitres, nameof(from50To100Per100Millilitres)),
            ClassLimits.Count(above100Per100Millilitres, nameof(above100Per100Millilitres)),
        ];
        return counts
            .Select((count, range) => ClassTables.Navy.ClassOf(range, count))
            .Aggregate((a, b) => a.Rank >= b.Rank ? a : b);
    }
}
