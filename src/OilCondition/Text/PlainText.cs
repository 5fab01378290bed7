using System.Globalization;

namespace OilCondition.Text;

/// <summary>Numbers, moments and names as people and files read them, in the invariant culture.</summary>
internal static class PlainText
{
    /// <summary>Three significant figures below a thousand, whole above.</summary>
    public static string Number(double value) =>
        Math.Abs(value) >= 1000
            ? Math.Round(value).ToString("0", CultureInfo.InvariantCulture)
            : value.ToString("G3", CultureInfo.InvariantCulture);

    public static string Tenths(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    public static string Date(DateTimeOffset at) => at.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Time(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>Name of an enumeration member as it stands in keys and JSON: <c>floor-above-target</c>.</summary>
    public static string Kebab(Enum value) => Lower(value, "-");

    /// <summary>Name of an enumeration member as people read it: <c>floor above target</c>.</summary>
    public static string Spaced(Enum value) => Lower(value, " ");

    private static string Lower(Enum value, string between) =>
        string.Concat(
            value
                .ToString()
                .Select((letter, i) => (i > 0 && char.IsUpper(letter) ? between : "") + char.ToLowerInvariant(letter))
        );
}
