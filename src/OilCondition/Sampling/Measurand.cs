using OilCondition.Text;

namespace OilCondition;

/// <summary>Something that is measured on an oil: what it is called, its unit, when it is worse and what is plausible.</summary>
/// <remarks>All readings of a measurand are in its one unit. Two measurands are equal when their ids are.</remarks>
public sealed class Measurand : IEquatable<Measurand>
{
    /// <summary>Beyond anything that is measured, and what a fit of a cleanup takes.</summary>
    private const double Largest = 1e12;

    /// <summary>Each reading of a file is looked up by its measurand.</summary>
    private readonly int hash;

    /// <summary>Defines a measurand.</summary>
    /// <param name="id">Stable identifier in lower case with hyphens, for files and keys, such as <c>acid-number</c>.</param>
    /// <param name="name">What people call it.</param>
    /// <param name="unit">The one unit of its readings.</param>
    /// <param name="worse">In which direction it gets worse.</param>
    /// <param name="scale">Scale on which its scatter is even.</param>
    /// <param name="lowestPlausible">Lowest value that a working method can give, from −1e12; 0 or more on a logarithmic scale.</param>
    /// <param name="highestPlausible">Highest value that a working method can give, up to 1e12.</param>
    /// <param name="testMethod">Usual test method; empty where there is none.</param>
    /// <param name="tellsOilIdentity">Whether it depends first of all on which oil it is, as viscosity and additive elements do.</param>
    /// <param name="topic">What it tells of, which decides what is recommended.</param>
    /// <param name="addsUp">
    /// Whether the value of a blend is the parts' values weighted by volume and what changes it adds up over time, so that a top-up
    /// can be corrected in a trend. Particle counts blend so, but they follow the filter, not the sum of what came in.
    /// </param>
    /// <param name="absolutePrecision">How far two results of the test method may differ whatever the value, in the unit; 0 where it is not known.</param>
    /// <param name="relativePrecision">The same as a fraction of the value, 0 to 1; the larger of the two counts.</param>
    /// <param name="precisionSource">Where the precision comes from; needed where one is given.</param>
    /// <exception cref="ArgumentException">A text is blank, the id has other characters, or the range is empty or too wide.</exception>
    public Measurand(
        string id,
        string name,
        string unit,
        LimitSide worse,
        NaturalScale scale,
        double lowestPlausible,
        double highestPlausible,
        string testMethod = "",
        bool tellsOilIdentity = false,
        MeasurandTopic topic = MeasurandTopic.Other,
        bool addsUp = false,
        double absolutePrecision = 0,
        double relativePrecision = 0,
        Source? precisionSource = null
    )
    {
        Id = Guard.NotBlank(id);
        if (id.Any(character => character is not ((>= 'a' and <= 'z') or (>= '0' and <= '9') or '-')))
        {
            throw new ArgumentException($"id is '{id}'; allowed: lower-case letters, digits and hyphens.", nameof(id));
        }

        hash = StringComparer.Ordinal.GetHashCode(id);
        Name = Guard.NotBlank(name);
        Unit = Guard.NotNull(unit);
        NormalUnit = ReportedUnits.Normal(unit);
        Worse = worse;
        Scale = scale;
        LowestPlausible = Guard.InRange(lowestPlausible, -Largest, Largest, unit);
        HighestPlausible = Guard.InRange(highestPlausible, -Largest, Largest, unit);
        if (!(lowestPlausible < highestPlausible))
        {
            throw new ArgumentException(
                $"The plausible range of {id} is empty: {lowestPlausible} to {highestPlausible} {unit}.",
                nameof(highestPlausible)
            );
        }

        if (scale == NaturalScale.Logarithmic && lowestPlausible < 0)
        {
            throw new ArgumentOutOfRangeException(
                nameof(lowestPlausible),
                $"The scale of {id} is logarithmic, and lowestPlausible is {lowestPlausible} {unit}; allowed: 0 or more."
            );
        }

        TestMethod = Guard.NotNull(testMethod);
        TellsOilIdentity = tellsOilIdentity;
        Topic = topic;
        AddsUp = addsUp;
        AbsolutePrecision = Guard.InRange(absolutePrecision, 0, Largest, unit);
        RelativePrecision = Guard.InRange(relativePrecision, 0, 1, "");
        PrecisionSource = precisionSource;
        if ((absolutePrecision > 0 || relativePrecision > 0) && precisionSource is null)
        {
            throw new ArgumentNullException(nameof(precisionSource), $"The precision of {id} needs its source.");
        }
    }

    /// <summary>Stable identifier, for files and keys.</summary>
    public string Id { get; }

    /// <summary>What people call it.</summary>
    public string Name { get; }

    /// <summary>The one unit of its readings.</summary>
    public string Unit { get; }

    /// <summary>The unit as files spell it, without blanks and case.</summary>
    internal string NormalUnit { get; }

    /// <summary>In which direction it gets worse.</summary>
    public LimitSide Worse { get; }

    /// <summary>Scale on which its scatter is even.</summary>
    public NaturalScale Scale { get; }

    /// <summary>Lowest plausible value.</summary>
    public double LowestPlausible { get; }

    /// <summary>Highest plausible value.</summary>
    public double HighestPlausible { get; }

    /// <summary>Usual test method; empty where there is none.</summary>
    public string TestMethod { get; }

    /// <summary>Whether it depends first of all on which oil it is.</summary>
    public bool TellsOilIdentity { get; }

    /// <summary>What it tells of, which decides what is recommended.</summary>
    public MeasurandTopic Topic { get; }

    /// <summary>Whether top-ups can be corrected in a trend: it blends by volume and adds up over time.</summary>
    public bool AddsUp { get; }

    /// <summary>How far two results of the test method may differ whatever the value, in the unit; 0 where it is not known.</summary>
    public double AbsolutePrecision { get; }

    /// <summary>The same as a fraction of the value; the larger of the two counts.</summary>
    public double RelativePrecision { get; }

    /// <summary>Where the precision comes from; null where none is given.</summary>
    public Source? PrecisionSource { get; }

    /// <summary>A reading with its qualifier and unit, as people write it.</summary>
    /// <remarks>
    /// A reported figure has up to four digits, one calculated from other readings (<see cref="Qualifier.Approximately"/>) as many as
    /// the precision of the test method bears.
    /// </remarks>
    /// <param name="reading">The reading, in the measurand's unit.</param>
    /// <returns>For example <c>&lt;10 mg/kg</c> or <c>≈69 mg/kg</c>.</returns>
    public string Text(Reading reading) =>
        $"{reading.Mark}{(reading.Qualifier == Qualifier.Approximately ? Text(reading.Value) : PlainText.Reported(reading.Value))} {Unit}".TrimEnd();

    /// <summary>A figure that follows from a reading, with as many digits as the precision of the test method bears and without the unit.</summary>
    /// <param name="value">The figure, in the measurand's unit.</param>
    /// <param name="measured">The reading from which it follows, where that is another value; null for the figure itself.</param>
    /// <returns>For example <c>70</c> for 69.4 of a total of 212; three digits where the precision is not known.</returns>
    public string Text(double value, double? measured = null) =>
        PlainText.Number(value, UncertaintyOf(measured ?? value));

    internal double UncertaintyOf(double value) => Math.Max(AbsolutePrecision, RelativePrecision * Math.Abs(value));

    /// <summary>Whether more, or less, is worse; true for both sides where any departure is.</summary>
    internal bool IsWorse(LimitSide side) => Worse == LimitSide.Both || Worse == side;

    /// <summary>Whether a value is one that a working method can give.</summary>
    /// <param name="value">The value, in the measurand's unit.</param>
    /// <returns>True within the plausible range, both ends included.</returns>
    public bool IsPlausible(double value) => value >= LowestPlausible && value <= HighestPlausible;

    /// <summary>Converts a number in a unit that laboratories write into this measurand's unit.</summary>
    /// <remarks>
    /// Understood, without regard to case and blanks: mg/kg, ppm, %, % (m/m), wt% for contents; %, aw for relative saturation; °C, °F, K;
    /// mm²/s, cSt, SUS (also SSU) for viscosities at 40 and 100 °C; per mL, per 100 mL, and iso-4406 (the scale number's upper limit) for
    /// particles; kg/m³, g/mL for densities; mgKOH/g; min, h; and a measurand's own unit, always.
    /// </remarks>
    /// <param name="value">The number as reported.</param>
    /// <param name="unit">The unit as written; empty stands for the measurand's own.</param>
    /// <param name="converted">The number in the measurand's unit, or 0.</param>
    /// <returns>Whether the unit is understood for this measurand and the number has a meaning in it.</returns>
    public bool TryConvert(double value, string unit, out double converted) =>
        ReportedUnits.TryConvert(this, value, unit, out converted);

    /// <inheritdoc/>
    public bool Equals(Measurand? other) =>
        ReferenceEquals(this, other) || (other is not null && string.Equals(Id, other.Id, StringComparison.Ordinal));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Measurand);

    /// <inheritdoc/>
    public override int GetHashCode() => hash;

    /// <summary>Name and unit.</summary>
    /// <returns>For example <c>acid number [mgKOH/g]</c>.</returns>
    public override string ToString() => Unit.Length == 0 ? Name : $"{Name} [{Unit}]";
}
