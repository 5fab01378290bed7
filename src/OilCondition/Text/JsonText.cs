using System.Globalization;
using System.Text.Json;

namespace OilCondition.Text;

/// <summary>How figures, moments and words stand in JSON: the same bytes for the same facts on every framework.</summary>
internal static class JsonText
{
    /// <summary>ISO 8601 to the second, with its offset.</summary>
    public static void WriteMoment(this Utf8JsonWriter json, string name, DateTimeOffset at) =>
        json.WriteString(name, at.AddTicks(-(at.Ticks % TimeSpan.TicksPerSecond)));

    /// <summary>Seven significant figures: more than any reading carries, and the same digits on every framework.</summary>
    public static void WriteFigure(this Utf8JsonWriter json, string name, double value)
    {
        if (value is > 0 and < 1e7 && value == (int)value)
        {
            // As most limits are: its digits need no search.
            json.WriteNumber(name, (int)value);
            return;
        }

        json.WritePropertyName(name);
#if NET
        Span<byte> digits = stackalloc byte[32];
        value.TryFormat(digits, out var count, "G7", CultureInfo.InvariantCulture);
        json.WriteRawValue(digits[..count], skipInputValidation: true);
#else
        json.WriteRawValue(value.ToString("G7", CultureInfo.InvariantCulture), skipInputValidation: true);
#endif
    }

    /// <summary>A figure to its last digit, so that it is read back as it was; the same digits on every framework.</summary>
    public static void WriteExact(this Utf8JsonWriter json, string name, double value)
    {
        json.WritePropertyName(name);
#if NET
        json.WriteRawValue(value.ToString("R", CultureInfo.InvariantCulture), skipInputValidation: true);
#else
        // There "R" does not always give the shortest digits that read back, and at times not even such as do.
        var text = value.ToString("G15", CultureInfo.InvariantCulture);
        foreach (var form in new[] { "G16", "G17" })
        {
            if (!double.Parse(text, CultureInfo.InvariantCulture).Equals(value))
            {
                text = value.ToString(form, CultureInfo.InvariantCulture);
            }
        }

        json.WriteRawValue(text, skipInputValidation: true);
#endif
    }

    /// <summary>An exact figure; none where there is none.</summary>
    public static void WriteExact(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } figure)
        {
            json.WriteExact(name, figure);
        }
    }

    /// <summary>A moment to its last tick, so that it is read back as it was.</summary>
    public static void WriteExact(this Utf8JsonWriter json, string name, DateTimeOffset at) =>
        json.WriteString(name, at);

    /// <summary>A text; none where it is empty.</summary>
    public static void WriteText(this Utf8JsonWriter json, string name, string? text)
    {
        if (!string.IsNullOrEmpty(text))
        {
            json.WriteString(name, text);
        }
    }

    /// <summary>A figure; none where there is none.</summary>
    public static void WriteFigure(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } figure)
        {
            json.WriteFigure(name, figure);
        }
    }

    /// <summary>A moment; none where there is none.</summary>
    public static void WriteMoment(this Utf8JsonWriter json, string name, DateTimeOffset? at)
    {
        if (at is { } moment)
        {
            json.WriteMoment(name, moment);
        }
    }

    /// <summary>A word: the name of an enumeration member in lower case with hyphens.</summary>
    public static void WriteWord<T>(this Utf8JsonWriter json, string name, T value)
        where T : struct, Enum => json.WriteString(name, PlainText.Kebab(value));

    /// <summary>A list of words.</summary>
    public static void WriteWords<T>(this Utf8JsonWriter json, string name, IEnumerable<T> values)
        where T : struct, Enum
    {
        json.WriteStartArray(name);
        foreach (var value in values)
        {
            json.WriteStringValue(PlainText.Kebab(value));
        }

        json.WriteEndArray();
    }

    /// <summary>An object as a member.</summary>
    public static void WriteObject(this Utf8JsonWriter json, string name, Action members)
    {
        json.WriteStartObject(name);
        members();
        json.WriteEndObject();
    }

    /// <summary>A list of objects.</summary>
    public static void WriteList<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> members)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            members(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
