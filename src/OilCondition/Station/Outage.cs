using OilCondition.Text;

namespace OilCondition;

/// <summary>A planned time in which a machine stands, so that it can be opened.</summary>
public sealed record Outage
{
    /// <summary>States an outage.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="from">When the machine is stopped and handed over.</param>
    /// <param name="to">When it must be handed back, after that.</param>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A moment lies outside the years 1900 to 2199, or the end is not after the start.</exception>
    public Outage(string name, DateTimeOffset from, DateTimeOffset to)
    {
        Name = Guard.NotBlank(name);
        From = Guard.Moment(from);
        To = Guard.Moment(to);
        if (to <= from)
        {
            throw new ArgumentOutOfRangeException(
                nameof(to),
                $"to is {PlainText.Time(to)}; allowed: after {PlainText.Time(from)}."
            );
        }
    }

    /// <summary>What it is called.</summary>
    public string Name { get; }

    /// <summary>When the machine is stopped and handed over.</summary>
    public DateTimeOffset From { get; }

    /// <summary>When it must be handed back.</summary>
    public DateTimeOffset To { get; }

    /// <summary>Name and time.</summary>
    /// <returns>For example <c>annual outage, 2026-09-07 06:00 to 2026-09-18 16:00</c>.</returns>
    public override string ToString() => $"{Name}, {PlainText.Time(From)} to {PlainText.Time(To)}";
}
