using System.Globalization;
using OilCondition.Text;

namespace OilCondition;

/// <summary>One figure or word on which a finding, a diagnosis or a recommendation rests.</summary>
public sealed record EvidenceItem
{
    private EvidenceItem(string id, double? value, string text, string unit)
    {
        Id = id;
        Value = value;
        Text = text;
        Unit = unit;
    }

    /// <summary>What it is, by a word that stays the same in every version, such as <c>read-at</c>; docs/contract.md lists them.</summary>
    public string Id { get; }

    /// <summary>What it is, in the words of docs/vocabulary.md.</summary>
    public string Name => OwnName ?? EvidenceNames.Of(Id);

    /// <summary>The number; null when the evidence is a word or a date.</summary>
    public double? Value { get; }

    /// <summary>The number, word or date as text, invariant.</summary>
    public string Text { get; }

    /// <summary>Unit of the number; empty otherwise.</summary>
    public string Unit { get; }

    /// <summary>The moment, where the evidence is one: its text is a date or a time of it.</summary>
    internal DateTimeOffset? At { get; private init; }

    /// <summary>The reading, where the evidence is one that is only a bound or about a value.</summary>
    internal Reading? Bounded { get; private init; }

    /// <summary>Unit of such a reading: its text has it.</summary>
    internal string BoundedUnit { get; private init; } = "";

    /// <summary>Whether the number is a difference: what a scale is shifted by does not count.</summary>
    internal bool IsDifference { get; init; }

    /// <summary>What the text or the unit tells of in English, for those who tell it in another language; null where the text says all.</summary>
    internal object? Fact { get; init; }

    /// <summary>The measurand's name, where its id says what the evidence is.</summary>
    private string? OwnName { get; init; }

    /// <summary>Name, text and unit.</summary>
    /// <returns>For example <c>limit 200 mg/kg</c>.</returns>
    public override string ToString() => Unit.Length == 0 ? $"{Name} {Text}" : $"{Name} {Text} {Unit}";

    /// <summary>A number with as many digits as its uncertainty bears: what is written is what the number holds.</summary>
    /// <param name="id">What it is.</param>
    /// <param name="value">The number.</param>
    /// <param name="unit">Its unit; empty for a plain number.</param>
    /// <param name="uncertainty">How far the number may be out, in the same unit. Null where that is not known.</param>
    internal static EvidenceItem Number(string id, double value, string unit, double? uncertainty = null) =>
        Written(id, Guard.Finite(value, unit, id), PlainText.Number(value, uncertainty), unit);

    /// <summary>A figure as it was given, such as a limit.</summary>
    internal static EvidenceItem Figure(string id, double value, string unit) =>
        Written(id, Guard.Finite(value, unit, id), PlainText.Reported(value), unit);

    /// <summary>A reading; one that is only a bound is no number.</summary>
    internal static EvidenceItem Reading(string id, Reading reading, Measurand measurand) =>
        Reading(id, null, reading, measurand);

    /// <summary>A reading that is called by its measurand, where there are several.</summary>
    internal static EvidenceItem Reading(Reading reading, Measurand measurand) =>
        Reading(measurand.Id, measurand.Name, reading, measurand);

    internal static EvidenceItem Word(string id, string text) => new(id, null, text, "");

    internal static EvidenceItem Date(string id, DateTimeOffset at) =>
        new(id, null, PlainText.Date(at), "") { At = at };

    internal static EvidenceItem Moment(string id, DateTimeOffset at) =>
        new(id, null, PlainText.Time(at), "") { At = at };

    private static EvidenceItem Reading(string id, string? name, Reading reading, Measurand measurand)
    {
        var text = measurand.Text(reading);
        var number =
            measurand.Unit.Length == 0 ? text : text.Substring(0, text.Length - measurand.Unit.Length).TrimEnd();
        return reading.Qualifier == Qualifier.None
            ? Written(id, reading.Value, number, measurand.Unit, name)
            : new EvidenceItem(id, null, text, "")
            {
                Bounded = reading,
                BoundedUnit = measurand.Unit,
                OwnName = name,
            };
    }

    private static EvidenceItem Written(string id, double value, string text, string unit, string? name = null) =>
        new(
            id,
            double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var written)
            && Guard.IsFinite(written)
                ? written
                : value,
            text,
            unit
        )
        {
            OwnName = name,
        };
}
