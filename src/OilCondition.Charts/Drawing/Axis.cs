namespace OilCondition.Charts.Drawing;

/// <summary>An axis: its range in values, how values become places, and its ticks for the room that there is.</summary>
internal abstract class Axis
{
    protected Axis(string label, double from, double to)
    {
        Label = label;
        From = from;
        To = to;
    }

    /// <summary>What it counts, with its unit; empty for nothing.</summary>
    public string Label { get; }

    /// <summary>Its lower end, in values.</summary>
    public double From { get; }

    /// <summary>Its upper end, in values.</summary>
    public double To { get; }

    public static Axis Blank { get; } = new RowAxis("", []);

    /// <summary>Whether its words stand at rows, each of which is to be seen.</summary>
    public virtual bool HasRows => false;

    /// <summary>The place of a value; what lies beyond an end stands at that end.</summary>
    public double Place(double value) => Scale(Math.Max(From, Math.Min(To, value)));

    /// <summary>Whether a value lies within the ends.</summary>
    public bool Shows(double value) => value >= From && value <= To;

    /// <summary>Ticks, at most as many as there is room for.</summary>
    public abstract IReadOnlyList<Tick> Ticks(int most);

    protected virtual double Scale(double value) => value;
}
