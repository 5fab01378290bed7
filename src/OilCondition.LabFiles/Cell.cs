using System.Globalization;

namespace OilCondition.LabFiles;

/// <summary>One cell with a reading, as a laboratory writes it.</summary>
internal static class Cell
{
    private static readonly string[] NotDetected = ["ND", "N.D.", "NOT DETECTED"];

    public static bool IsBlank(string text) => text.Length == 0 || text is "-" or "–" or "—";

    /// <summary>Reads a cell; the reason says what is wrong where it cannot be read.</summary>
    public static bool TryRead(
        string text,
        string unit,
        LabColumn column,
        char decimalSeparator,
        out Reading reading,
        out string reason
    )
    {
        reading = default;
        var measurand = column.Measurand;
        var qualifier = Qualifier.None;
        double value;
        if (NotDetected.Contains(text, StringComparer.OrdinalIgnoreCase))
        {
            if (column.DetectionLimit is not { } limit)
            {
                reason = "not detected, but the column map states no detection limit for this column";
                return false;
            }

            (qualifier, value) = (Qualifier.LessThan, limit);
        }
        else
        {
            (qualifier, var digits) = SplitQualifier(text);
            if (!TryNumber(digits, decimalSeparator, out value))
            {
                reason = $"not a number (the decimal separator is '{decimalSeparator}')";
                return false;
            }
        }

        if (!measurand.TryConvert(value, unit, out var converted))
        {
            reason = $"{value.ToString(CultureInfo.InvariantCulture)} '{unit}' cannot be converted to {measurand.Unit}";
            return false;
        }

        if (!measurand.IsPlausible(converted))
        {
            reason =
                $"{measurand.Name} is {converted.ToString("G6", CultureInfo.InvariantCulture)} {measurand.Unit}; allowed: {measurand.LowestPlausible} to {measurand.HighestPlausible} {measurand.Unit}";
            return false;
        }

        // A scale number stands for a range of counts.
        var isCode = qualifier == Qualifier.None && unit.StartsWith("iso", StringComparison.OrdinalIgnoreCase);
        reading = new Reading(converted, isCode ? Qualifier.Approximately : qualifier, column.Method);
        reason = "";
        return true;
    }

    private static (Qualifier Qualifier, string Digits) SplitQualifier(string text) =>
        text[0] switch
        {
            '<' or '≤' => (Qualifier.LessThan, text.Substring(1).TrimStart('=', ' ')),
            '>' or '≥' => (Qualifier.GreaterThan, text.Substring(1).TrimStart('=', ' ')),
            '~' or '≈' => (Qualifier.Approximately, text.Substring(1).TrimStart()),
            _ => (Qualifier.None, text),
        };

    private static bool TryNumber(string digits, char decimalSeparator, out double value)
    {
        value = 0;
        var other = decimalSeparator == ',' ? '.' : ',';
        return !digits.Contains(other)
            && double.TryParse(
                digits.Replace(decimalSeparator, '.'),
                NumberStyles.Float,
                CultureInfo.InvariantCulture,
                out value
            )
            && !double.IsNaN(value)
            && !double.IsInfinity(value);
    }
}
