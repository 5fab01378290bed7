using System.Globalization;

namespace OilCondition.Tests.Reference;

/// <summary>One row of a reference file: a value that somebody else stands for.</summary>
public sealed record ReferenceCase(
    string File,
    string Id,
    string Quantity,
    string Inputs,
    string Value,
    string Unit,
    string Tolerance,
    string SourceClass,
    string Source
)
{
    /// <summary>The inputs written as <c>name=value; name=value</c>.</summary>
    public IReadOnlyDictionary<string, string> Arguments { get; } =
        Inputs
            .Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(part => part.Split('=', 2, StringSplitOptions.TrimEntries))
            .Where(pair => pair.Length == 2)
            .GroupBy(pair => pair[0], StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.First()[1], StringComparer.Ordinal);

    /// <summary>The value as a number; false for rows whose value is a word, infinity included.</summary>
    public bool TryNumber(out double number) =>
        double.TryParse(Value, NumberStyles.Float, CultureInfo.InvariantCulture, out number) && double.IsFinite(number);

    public double Number(string argument) =>
        double.Parse(Arguments[argument], NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>Asserts that a result agrees with the row's value at the row's own tolerance.</summary>
    public void ShouldAgree(double actual)
    {
        TryNumber(out var expected).ShouldBeTrue($"{Id}: the value '{Value}' is not a number");
        var allowed = ReferenceTolerance.Parse(Tolerance).AllowedDifference(expected);
        Math.Abs(actual - expected)
            .ShouldBeLessThanOrEqualTo(
                allowed,
                $"{Id} {Quantity} ({Inputs}): {actual:R} against {expected:R}, tolerance {Tolerance}, source: {Source}"
            );
    }
}
