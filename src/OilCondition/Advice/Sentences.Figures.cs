using System.Globalization;
using OilCondition.Cleanliness;
using OilCondition.Limits;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition;

/// <content>Figures, dates and names as these sentences write them.</content>
public sealed partial class Sentences
{
    /// <summary>A measurand's name in this language; its own where there is none.</summary>
    /// <param name="measurand">The measurand.</param>
    /// <returns>For example <c>water content</c>.</returns>
    public string Name(Measurand measurand) =>
        book.TryGet("measurand." + Guard.NotNull(measurand).Id, out var name) ? name : measurand.Name;

    /// <summary>The unit in which these sentences give a measurand.</summary>
    /// <param name="measurand">The measurand.</param>
    /// <returns>For example <c>mg/kg</c>; in US customary units <c>ppm</c>.</returns>
    public string Unit(Measurand measurand) => Shown(0, Guard.NotNull(measurand).Unit).Unit;

    /// <summary>A figure of a measurand in the unit in which these sentences give it, for a scale that is drawn beside them.</summary>
    /// <param name="value">The figure, in the measurand's unit.</param>
    /// <param name="measurand">The measurand.</param>
    /// <returns>The figure; in US customary units 60 °C are 140.</returns>
    public double Value(double value, Measurand measurand) => Shown(value, Guard.NotNull(measurand).Unit).Value;

    /// <summary>A figure of a measurand without its unit, as exact as its test method.</summary>
    /// <param name="value">The figure, in the measurand's unit.</param>
    /// <param name="measurand">The measurand.</param>
    /// <param name="measured">The reading that it comes from, whose precision it has; itself where left out.</param>
    /// <returns>For example <c>230</c>.</returns>
    public string Number(double value, Measurand measurand, double? measured = null) =>
        Bare(value, Guard.NotNull(measurand).Unit, measurand.UncertaintyOf(measured ?? value));

    /// <summary>A reading with its qualifier and unit.</summary>
    /// <param name="reading">The reading, in the measurand's unit.</param>
    /// <param name="measurand">The measurand.</param>
    /// <returns>For example <c>&lt;20 mg/kg</c>; in US customary units <c>&lt;20 ppm</c>.</returns>
    public string Text(Reading reading, Measurand measurand)
    {
        var (value, unit) = Shown(reading.Value, Guard.NotNull(measurand).Unit);
        var text =
            reading.Qualifier == Qualifier.Approximately
                ? Decimal(PlainText.Number(value, Scaled(measurand.UncertaintyOf(reading.Value), measurand.Unit)))
                : Reported(value);
        return $"{reading.Mark}{text} {unit}".TrimEnd();
    }

    /// <summary>A day.</summary>
    /// <param name="at">The moment, at its own offset.</param>
    /// <returns>For example <c>2026-03-14</c>.</returns>
    public string Date(DateTimeOffset at) => at.ToString(book["format.date"], CultureInfo.InvariantCulture);

    /// <summary>A day and time.</summary>
    /// <param name="at">The moment, at its own offset.</param>
    /// <returns>For example <c>2026-03-14 06:15</c>.</returns>
    public string Time(DateTimeOffset at) => at.ToString(book["format.time"], CultureInfo.InvariantCulture);

    /// <summary>The time of a day.</summary>
    /// <param name="at">The moment, at its own offset.</param>
    /// <returns>For example <c>06:15</c>.</returns>
    public string TimeOfDay(DateTimeOffset at) => at.ToString(book["format.time-of-day"], CultureInfo.InvariantCulture);

    /// <summary>A month.</summary>
    /// <param name="at">The moment, at its own offset.</param>
    /// <returns>For example <c>2026-03</c>.</returns>
    public string Month(DateTimeOffset at) => at.ToString(book["format.month"], CultureInfo.InvariantCulture);

    /// <summary>A temperature, to the degree.</summary>
    /// <param name="temperature">The temperature.</param>
    /// <returns>For example <c>48 °C</c> or <c>118 °F</c>.</returns>
    public string Text(Temperature temperature) => With(temperature.DegreesCelsius, "°C", 1);

    /// <summary>A volume.</summary>
    /// <param name="volume">The volume.</param>
    /// <returns>For example <c>1800 L</c> or <c>476 gal</c>.</returns>
    public string Text(Volume volume) => With(volume.Liters, "L");

    /// <summary>A figure on which something rests, with its name.</summary>
    /// <param name="evidence">The evidence.</param>
    /// <returns>For example <c>oil temperature 48 °C</c>.</returns>
    public string Of(EvidenceItem evidence)
    {
        var named =
            book.TryGet("evidence." + Guard.NotNull(evidence).Id, out var name)
            || book.TryGet("measurand." + evidence.Id, out name)
                ? name
                : evidence.Name;
        if (evidence.At is { } at)
        {
            // A moment is a longer text than a day.
            return $"{named} {(evidence.Text.Length > "2026-03-14".Length ? Time(at) : Date(at))}";
        }

        if (evidence.Bounded is { } bounded)
        {
            var (limit, own) = Shown(bounded.Value, evidence.BoundedUnit);
            var bare = evidence.Text.Substring(0, evidence.Text.Length - evidence.BoundedUnit.Length).TrimEnd();
            var number = limit == bounded.Value ? Decimal(bare) : bounded.Mark + Reported(limit);
            return $"{named} {number} {own}".TrimEnd();
        }

        if (evidence.Value is not { } value)
        {
            return $"{named} {Fact(evidence)}";
        }

        var rate = evidence.Fact as RateUnit;
        var given = rate?.Unit ?? evidence.Unit;
        var (shown, unit) = Shown(value, given);
        if (evidence.IsDifference)
        {
            shown = Scaled(value, given)!.Value;
        }

        var text = shown == value ? Decimal(evidence.Text) : Reported(shown);
        return $"{named} {text} {(rate is null ? unit : Of(rate))}".TrimEnd();
    }

    /// <summary>A number without a unit.</summary>
    /// <param name="value">The number.</param>
    /// <param name="uncertainty">Its uncertainty, whose first figure is the last one written; null for three figures.</param>
    /// <returns>For example <c>15.7</c>; in German <c>15,7</c>.</returns>
    public string Number(double value, double? uncertainty = null) => Decimal(PlainText.Number(value, uncertainty));

    /// <summary>What stands between whole and parts of a number.</summary>
    public string DecimalSeparator => separator;

    /// <summary>A fact that is no figure; what has no words in this language stays as it is.</summary>
    private string Fact(EvidenceItem evidence)
    {
        const string Sample = "sample ";
        var text = evidence.Text;
        return evidence.Fact switch
        {
            Limit.MissingFigure missing => Of(missing),
            Measurand measurand => Name(measurand),
            _ when text.StartsWith(Sample, StringComparison.Ordinal) => Say(
                "fact-sample",
                ("number", text.Substring(Sample.Length))
            ),
            _ => book.TryGet("fact." + text, out var fact) ? fact : text,
        };
    }

    /// <summary>The unit of a rate, such as <c>mg/kg per 30 days</c>.</summary>
    private string Of(RateUnit rate) =>
        Say(
                rate.IsOverOilHours ? "rate.oil-hours" : "rate.days",
                ("unit", Shown(0, rate.Unit).Unit),
                ("count", Number(rate.Count))
            )
            .TrimStart();

    private string Reported(double value) => Decimal(PlainText.Reported(value));

    private string Decimal(string number) => separator == "." ? number : number.Replace(".", separator);

    /// <summary>A figure with its unit, with as many digits as its uncertainty bears.</summary>
    internal string With(double value, string unit, double? uncertainty = null)
    {
        var (shown, shownUnit) = Shown(value, unit);
        return $"{Decimal(PlainText.Number(shown, Scaled(uncertainty, unit)))} {shownUnit}".TrimEnd();
    }

    /// <summary>The same without its unit.</summary>
    private string Bare(double value, string unit, double? uncertainty = null) =>
        Decimal(PlainText.Number(Shown(value, unit).Value, Scaled(uncertainty, unit)));

    /// <summary>A limit or a level of a measurand, without its unit.</summary>
    private string Figure(double value, Measurand measurand) => Reported(Shown(value, measurand.Unit).Value);

    private (double Value, string Unit) Shown(double value, string unit) =>
        (units, unit) switch
        {
            (Units.UsCustomary, "°C") => (Temperature.FromDegreesCelsius(value).DegreesFahrenheit, "°F"),
            (Units.UsCustomary, "L") => (Volume.FromLiters(value).UsGallons, "gal"),
            (Units.UsCustomary, "mL") => (Volume.FromMilliliters(value).UsOunces, "fl oz"),
            (Units.UsCustomary, "L/min") => (VolumeFlow.FromLitersPerMinute(value).UsGallonsPerMinute, "gal/min"),
            (Units.UsCustomary, "kg") => (Mass.FromKilograms(value).Pounds, "lb"),
            (Units.UsCustomary, "kg/h") => (MassFlow.FromKilogramsPerHour(value).PoundsPerHour, "lb/h"),
            (Units.UsCustomary, "g/h") => (MassFlow.FromGramsPerHour(value).PoundsPerHour, "lb/h"),
            (Units.UsCustomary, "mg/kg") => (value, "ppm"),
            (Units.UsCustomary, "mm²/s") => (value, "cSt"),
            _ => (value, book.TryGet("unit." + unit, out var name) ? name : unit),
        };

    /// <summary>A difference in its unit: what a scale is shifted by does not count.</summary>
    private double? Scaled(double? difference, string unit) =>
        difference is { } open ? Shown(open, unit).Value - Shown(0, unit).Value : null;

    private string Quantity(Reading reading, Measurand measurand) =>
        CodeOf(reading, measurand) is { } code
            ? Say("quantity.with-code", ("quantity", WithoutCode(reading, measurand)), ("code", code))
            : WithoutCode(reading, measurand);

    private string WithoutCode(Reading reading, Measurand measurand)
    {
        var bare = Text(new Reading(reading.Value, reading.Qualifier), measurand).TrimStart('<', '>', '≈');
        return reading.Qualifier switch
        {
            Qualifier.LessThan => Say("quantity.below", ("quantity", bare)),
            Qualifier.GreaterThan => Say("quantity.at-least", ("quantity", bare)),
            Qualifier.Approximately => Say("quantity.about", ("quantity", bare)),
            _ => bare,
        };
    }

    private string Quantity(double value, Measurand measurand) => Quantity(new Reading(value), measurand);

    private static string? CodeOf(Reading reading, Measurand measurand) =>
        Measurands.HasScaleNumber(measurand) && measurand.IsPlausible(reading.Value)
            ? Iso4406.ScaleNumber(reading.Value).ToString(CultureInfo.InvariantCulture)
            : null;
}
