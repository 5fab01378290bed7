using OilCondition.Text;

namespace OilCondition;

/// <summary>Something that is measured on an oil: what it is called, its unit, when it is worse and what is plausible.</summary>
/// <remarks>All readings of a measurand are in its one unit. Two measurands are equal when their ids are.</remarks>
public sealed class Measurand : IEquatable<Measurand>
{
    /// <summary>Beyond anything that is measured, and what a fit of a cleanup takes.</summary>
    private const double Largest = 1e12;

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
    /// <param name="topic">What alerts on it are about, when several measurands tell of one problem; empty for the id.</param>
    /// <param name="addsUp">
    /// Whether the value of a blend is the parts' values weighted by volume and what changes it adds up over time, so that a top-up
    /// can be reckoned out of a trend. Particle counts blend so, but they follow the filter, not the sum of what came in.
    /// </param>
    /// <exception cref="ArgumentException">A text is blank, the id has other characters, or the range is empty or too wide.</exception>
    public Measurand(
        string id,
        string name,
        string unit,
        WorseDirection worse,
        NaturalScale scale,
        double lowestPlausible,
        double highestPlausible,
        string testMethod = "",
        bool tellsOilIdentity = false,
        string topic = "",
        bool addsUp = false
    )
    {
        Id = Guard.NotBlank(id);
        if (id.Any(character => character is not ((>= 'a' and <= 'z') or (>= '0' and <= '9') or '-')))
        {
            throw new ArgumentException($"id is '{id}'; allowed: lower-case letters, digits and hyphens.", nameof(id));
        }

        Name = Guard.NotBlank(name);
        Unit = Guard.NotNull(unit);
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
        Topic = Guard.NotNull(topic).Length == 0 ? id : topic;
        AddsUp = addsUp;
    }

    /// <summary>Stable identifier, for files and keys.</summary>
    public string Id { get; }

    /// <summary>What people call it.</summary>
    public string Name { get; }

    /// <summary>The one unit of its readings.</summary>
    public string Unit { get; }

    /// <summary>In which direction it gets worse.</summary>
    public WorseDirection Worse { get; }

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

    /// <summary>What alerts on it are about: its id, or one word for several measurands that tell of one problem.</summary>
    public string Topic { get; }

    /// <summary>Whether top-ups can be reckoned out of a trend: it blends by volume and adds up over time.</summary>
    public bool AddsUp { get; }

    /// <summary>Whether a value is one that a working method can give.</summary>
    /// <param name="value">The value, in the measurand's unit.</param>
    /// <returns>True within the plausible range, both ends included.</returns>
    public bool IsPlausible(double value) => value >= LowestPlausible && value <= HighestPlausible;

    /// <inheritdoc/>
    public bool Equals(Measurand? other) => other is not null && string.Equals(Id, other.Id, StringComparison.Ordinal);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Measurand);

    /// <inheritdoc/>
    public override int GetHashCode() => StringComparer.Ordinal.GetHashCode(Id);

    /// <summary>Name and unit.</summary>
    /// <returns>For example <c>acid number [mgKOH/g]</c>.</returns>
    public override string ToString() => Unit.Length == 0 ? Name : $"{Name} [{Unit}]";
}
