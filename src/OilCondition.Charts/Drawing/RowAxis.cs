namespace OilCondition.Charts.Drawing;

/// <summary>Rows or columns with names: the first at 0, each one unit wide.</summary>
internal sealed class RowAxis : Axis
{
    private readonly IReadOnlyList<string> names;

    public RowAxis(string label, IReadOnlyList<string> names, bool isUpsideDown = false)
        : base(label, -0.5, Math.Max(1, names.Count) - 0.5)
    {
        this.names = names;
        IsUpsideDown = isUpsideDown;
    }

    /// <summary>Whether the first row stands on top.</summary>
    public bool IsUpsideDown { get; }

    public override bool HasRows => names.Count > 0;

    public override IReadOnlyList<Tick> Ticks(int most) => [.. names.Select((name, row) => new Tick(Place(row), name))];

    protected override double Scale(double value) => IsUpsideDown ? From + To - value : value;
}
