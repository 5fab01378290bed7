using System.Globalization;

namespace OilCondition.LabFiles;

/// <summary>Reads cells with readings, as laboratories write them.</summary>
internal sealed class CellReader(NumberText numbers, IEnumerable<string> blank)
{
    private static readonly string[] NotDetected =
    [
        "ND",
        "N.D.",
        "NOT DETECTED",
        "BDL",
        "<LOD",
        "<DL",
        "<LOQ",
        "BELOW DETECTION LIMIT",
    ];

    private readonly string[] blank = [.. blank];

    public NumberText Numbers => numbers;

    /// <summary>Whether a cell says that there is no reading.</summary>
    public bool IsBlank(ReadOnlySpan<char> text)
    {
        if (text.Length == 0)
        {
            return true;
        }

        if (text.Length > 20 || text[0] is >= '0' and <= '9')
        {
            return false;
        }

        foreach (var word in blank)
        {
            if (text.Equals(word.AsSpan(), StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Reads a cell of one column; the reason says what is wrong where it cannot be read.</summary>
    public bool TryRead(
        ReadOnlySpan<char> text,
        double? held,
        LabColumn known,
        Column column,
        out Reading reading,
        out string reason
    )
    {
        reading = default;
        var qualifier = Qualifier.None;
        double value;
        if (held is { } number)
        {
            value = number;
        }
        else if (!numbers.TryRead(text, out value))
        {
            if (IsNotDetected(text))
            {
                if (known.DetectionLimit is not { } limit)
                {
                    reason = "not detected, but the column map states no detection limit for this column";
                    return false;
                }

                (qualifier, value) = (Qualifier.LessThan, limit);
            }
            else if (!numbers.TryRead(Unqualified(text, out qualifier), out value))
            {
                reason = NoNumber(text);
                return false;
            }
        }

        return TryMake(value, qualifier, known.Measurand, column, out reading, out reason);
    }

    private static bool TryMake(
        double value,
        Qualifier qualifier,
        Measurand measurand,
        Column column,
        out Reading reading,
        out string reason
    )
    {
        reading = default;
        var converted = value;
        if (!column.IsOwnUnit && !measurand.TryConvert(value, column.Unit, out converted))
        {
            reason = NotInUnit(value, measurand, column.Unit);
            return false;
        }

        if (!measurand.IsPlausible(converted))
        {
            reason =
                $"{measurand.Name} is {converted.ToString("G6", CultureInfo.InvariantCulture)} {measurand.Unit}; allowed: {measurand.LowestPlausible} to {measurand.HighestPlausible} {measurand.Unit}";
            return false;
        }

        // A scale number stands for a range of counts.
        var isCode = qualifier == Qualifier.None && column.IsScale;
        reading = new Reading(converted, isCode ? Qualifier.Approximately : qualifier, column.Method);
        reason = "";
        return true;
    }

    /// <summary>Whether a unit is that of scale numbers after ISO 4406.</summary>
    public static bool IsScale(string unit) => unit.StartsWith("iso", StringComparison.OrdinalIgnoreCase);

    private static string NotInUnit(double value, Measurand measurand, string unit)
    {
        var written = value.ToString(CultureInfo.InvariantCulture);
        return IsScale(unit) && measurand.TryConvert(16, unit, out _)
            ? $"{written} is no scale number after ISO 4406; allowed: whole numbers from 0 to 28"
            : $"{written} '{unit}' cannot be converted to {measurand.Unit}";
    }

    private string NoNumber(ReadOnlySpan<char> text)
    {
        if (text.IndexOfAny('\0', '\uFFFD') >= 0)
        {
            return "it has characters that are no text in the file's encoding; state the encoding in the column map";
        }

        var separator = numbers.DecimalSeparator == ',' ? ',' : '.';
        return numbers.NeedsOther(text)
                ? $"not a number (the decimal separator is '{separator}'; state the other one in the column map if that is meant)"
            : text.IndexOfAny(',', '.') >= 0 && text.IndexOfAny("0123456789".AsSpan()) >= 0
                ? $"not a number, or not clearly one (the decimal separator is '{separator}'; state decimalSeparator in the column map)"
            : $"not a number (the decimal separator is '{separator}')";
    }

    private static bool IsNotDetected(ReadOnlySpan<char> text)
    {
        foreach (var word in NotDetected)
        {
            if (text.Equals(word.AsSpan(), StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }

    private static ReadOnlySpan<char> Unqualified(ReadOnlySpan<char> text, out Qualifier qualifier)
    {
        qualifier = text[0] switch
        {
            '<' or '≤' => Qualifier.LessThan,
            '>' or '≥' => Qualifier.GreaterThan,
            '~' or '≈' => Qualifier.Approximately,
            _ => Qualifier.None,
        };
        return qualifier == Qualifier.None ? text : text.Slice(1).TrimStart(" =".AsSpan());
    }
}
