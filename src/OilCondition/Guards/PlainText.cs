using System.Globalization;

namespace OilCondition.Advice;

/// <summary>Numbers as people read them: three significant figures below a thousand, whole above.</summary>
internal static class Numbers
{
    public static string Text(double value) =>
        Math.Abs(value) >= 1000
            ? Math.Round(value).ToString("0", CultureInfo.InvariantCulture)
            : value.ToString("G3", CultureInfo.InvariantCulture);

    public static string Tenths(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    public static string Date(DateTimeOffset at) => at.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Time(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
