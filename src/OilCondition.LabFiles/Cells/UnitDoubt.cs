namespace OilCondition.LabFiles;

/// <summary>Whether the values of a column can be in the unit that they are taken to be in.</summary>
/// <remarks>
/// The figures below are common practice, no source: coulometric titration does not tell less than about 1 mg/kg of water, no oil in a
/// running machine stands below one per cent of saturation all the time, spectrometers do not resolve hundredths of 1 mg/kg of an additive nor
/// thousandths of a metal, and a count of 4 or 6 µm(c) that is always a whole number up to 28 is a scale number.
/// </remarks>
internal static class UnitDoubt
{
    private static readonly string[] Units =
    [
        "mg/kg",
        "%",
        "aw",
        "°C",
        "K",
        "°F",
        "mm²/s",
        "SUS",
        "per mL",
        "per 100 mL",
        "kg/m³",
        "g/mL",
    ];

    /// <summary>Whether a measurand's numbers are reported in more than one unit, so that an assumed one is to be told.</summary>
    public static bool HasOtherUnits(Measurand measurand) =>
        Array.IndexOf(Units, measurand.Unit) >= 0
        && (measurand.Unit != "%" || measurand.Equals(Measurands.RelativeSaturation));

    /// <summary>The unit that the values fit better; null where the one they are in is as good.</summary>
    /// <param name="measurand">What they measure.</param>
    /// <param name="unit">The unit that they are taken to be in.</param>
    /// <param name="values">The numbers as they stand in the file, without blanks; bounds included.</param>
    public static string? Better(Measurand measurand, string unit, IReadOnlyList<double> values)
    {
        var told = values.Where(value => value != 0).ToList();
        if (told.Count == 0)
        {
            return null;
        }

        var isOwn = measurand.TryConvert(40, unit, out var same) && same == 40;
        return (isOwn ? BySize(measurand, told) : null) ?? ByPlausibility(measurand, unit, told);
    }

    /// <summary>More than half are impossible in this unit and possible in another one.</summary>
    private static string? ByPlausibility(Measurand measurand, string unit, List<double> values)
    {
        var impossible = values.Where(value => !IsPossible(measurand, unit, value)).ToList();
        return 2 * impossible.Count > values.Count
            ? Units.FirstOrDefault(other =>
                other != unit
                && !CellReader.IsScale(unit)
                && impossible.TrueForAll(value => IsPossible(measurand, other, value))
            )
            : null;
    }

    private static bool IsPossible(Measurand measurand, string unit, double value) =>
        measurand.TryConvert(value, unit, out var converted) && measurand.IsPlausible(converted);

    private static string? BySize(Measurand measurand, List<double> values)
    {
        var highest = values.Max();
        var hasFractions = values.Exists(value => value != Math.Floor(value));
        double Share(Func<double, bool> holds) => (double)values.Count(holds) / values.Count;
        if (measurand.Equals(Measurands.WaterContent))
        {
            var fractions = Share(value => value != Math.Floor(value));
            return hasFractions && ((highest < 2 && fractions > 0.5) || Share(value => value < 1) > 0.5) ? "%" : null;
        }

        if (measurand.Equals(Measurands.RelativeSaturation))
        {
            return hasFractions && highest <= 1 ? "aw" : null;
        }

        if (measurand.Equals(Measurands.Particles4) || measurand.Equals(Measurands.Particles6))
        {
            return !hasFractions && highest <= 28 ? "ISO 4406" : null;
        }

        if (measurand.Equals(Measurands.OilTemperature) || measurand.Equals(Measurands.FlashPoint))
        {
            var (from, to) = measurand.Equals(Measurands.FlashPoint) ? (330, 600) : (120, 250);
            return Share(value => value > from && value <= to) > 0.5 ? "°F" : null;
        }

        if (measurand.Equals(Measurands.Sulfur))
        {
            return hasFractions && highest < 5 ? "%" : null;
        }

        return measurand.Unit != "mg/kg" ? null
            : measurand.TellsOilIdentity
                ? highest < 1 && Share(value => HasMoreDecimals(value, 1)) > 0.5 ? "%"
                    : null
            : highest < 0.1 && Share(value => HasMoreDecimals(value, 2)) > 0.5 ? "%"
            : null;
    }

    private static bool HasMoreDecimals(double value, int decimals) =>
        Math.Abs(value - Math.Round(value, decimals)) > 1e-9;
}
