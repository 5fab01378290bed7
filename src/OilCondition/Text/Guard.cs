using System.Globalization;
using System.Runtime.CompilerServices;

namespace OilCondition.Text;

/// <summary>
/// The one place where arguments are checked. Every message names the field, the value with its unit and the
/// allowed range; every comparison is written so that NaN fails it.
/// </summary>
internal static class Guard
{
    /// <summary>Years of which there can be a record; both ends included. The packages check moments by the same figures.</summary>
    public const int FirstYear = 1900;
    public const int LastYear = 2199;

    public static T NotNull<T>(T? value, [CallerArgumentExpression(nameof(value))] string name = "")
        where T : class => value ?? throw new ArgumentNullException(name);

    public static string NotBlank(string? value, [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (value is null)
        {
            throw new ArgumentNullException(name);
        }

        return string.IsNullOrWhiteSpace(value)
            ? throw new ArgumentException($"{name} is blank; a text is required.", name)
            : value;
    }

    public static double Finite(
        double value,
        string unit,
        [CallerArgumentExpression(nameof(value))] string name = ""
    ) => IsFinite(value) ? value : throw OutOfRange(value, unit, name, "any finite number");

    public static double Positive(
        double value,
        string unit,
        [CallerArgumentExpression(nameof(value))] string name = ""
    ) => value > 0 && IsFinite(value) ? value : throw OutOfRange(value, unit, name, "a finite number above 0");

    public static double NotNegative(
        double value,
        string unit,
        [CallerArgumentExpression(nameof(value))] string name = ""
    ) => value >= 0 && IsFinite(value) ? value : throw OutOfRange(value, unit, name, "a finite number of 0 or more");

    public static double InRange(
        double value,
        double lowest,
        double highest,
        string unit,
        [CallerArgumentExpression(nameof(value))] string name = ""
    ) =>
        value >= lowest && value <= highest
            ? value
            : throw OutOfRange(value, unit, name, $"{Text(lowest)} to {Text(highest)}{WithSpace(unit)}");

    /// <summary>A moment of which there can be a record: the default of the type and slips of a digit stop here, and sums of dates stay within the calendar.</summary>
    public static DateTimeOffset Moment(DateTimeOffset at, [CallerArgumentExpression(nameof(at))] string name = "") =>
        IsMoment(at.DateTime)
            ? at
            : throw new ArgumentOutOfRangeException(
                name,
                $"{name} is {at.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}; allowed: {FirstYear} to {LastYear}."
            );

    public static bool IsMoment(DateTime at) => at.Year is >= FirstYear and <= LastYear;

    /// <summary>A probability or confidence level that excludes both ends.</summary>
    public static double OpenUnitInterval(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value > 0 && value < 1 ? value : throw OutOfRange(value, "", name, "above 0 and below 1");

    public static void SameLength(int length, int expected, string name, string otherName)
    {
        if (length != expected)
        {
            throw new ArgumentException(
                $"{name} has {length} values, {otherName} has {expected}; both must have the same length.",
                name
            );
        }
    }

    public static bool IsFinite(double value) => !double.IsNaN(value) && !double.IsInfinity(value);

    private static ArgumentOutOfRangeException OutOfRange(double value, string unit, string name, string allowed) =>
        new(name, $"{name} is {Text(value)}{WithSpace(unit)}; allowed: {allowed}.");

    private static string WithSpace(string unit) => unit.Length == 0 ? "" : " " + unit;

    private static string Text(double value) => value.ToString("G7", CultureInfo.InvariantCulture);
}
