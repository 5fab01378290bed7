using System.Globalization;
using OilCondition.Text;

namespace OilCondition;

/// <summary>One figure or word on which a finding, a diagnosis or a recommendation rests.</summary>
public sealed record EvidenceItem
{
    private EvidenceItem(string name, double? value, string text, string unit)
    {
        Name = name;
        Value = value;
        Text = text;
        Unit = unit;
    }

    /// <summary>What it is, in the words of docs/vocabulary.md.</summary>
    public string Name { get; }

    /// <summary>The number; null when the evidence is a word or a date.</summary>
    public double? Value { get; }

    /// <summary>The number, word or date as text, invariant.</summary>
    public string Text { get; }

    /// <summary>Unit of the number; empty otherwise.</summary>
    public string Unit { get; }

    /// <summary>Name, text and unit.</summary>
    /// <returns>For example <c>limit 200 mg/kg</c>.</returns>
    public override string ToString() => Unit.Length == 0 ? $"{Name} {Text}" : $"{Name} {Text} {Unit}";

    /// <summary>A number with as many digits as its uncertainty bears: what is written is what the number holds.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="value">The number.</param>
    /// <param name="unit">Its unit; empty for a plain number.</param>
    /// <param name="uncertainty">How far the number may be out, in the same unit. Null where that is not known.</param>
    internal static EvidenceItem Number(string name, double value, string unit, double? uncertainty = null) =>
        Written(name, Guard.Finite(value, unit, name), PlainText.Number(value, uncertainty), unit);

    /// <summary>A figure as it was given, such as a limit.</summary>
    internal static EvidenceItem Figure(string name, double value, string unit) =>
        Written(name, Guard.Finite(value, unit, name), PlainText.Reported(value), unit);

    /// <summary>A reading; one that is only a bound is no number.</summary>
    internal static EvidenceItem Reading(string name, Reading reading, Measurand measurand)
    {
        var text = measurand.Text(reading);
        var number =
            measurand.Unit.Length == 0 ? text : text.Substring(0, text.Length - measurand.Unit.Length).TrimEnd();
        return reading.Qualifier == Qualifier.None
            ? Written(name, reading.Value, number, measurand.Unit)
            : Word(name, text);
    }

    internal static EvidenceItem Word(string name, string text) => new(name, null, text, "");

    internal static EvidenceItem Date(string name, DateTimeOffset at) => new(name, null, PlainText.Date(at), "");

    internal static EvidenceItem Moment(string name, DateTimeOffset at) => new(name, null, PlainText.Time(at), "");

    private static EvidenceItem Written(string name, double value, string text, string unit) =>
        new(
            name,
            double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var written)
            && Guard.IsFinite(written)
                ? written
                : value,
            text,
            unit
        );
}
