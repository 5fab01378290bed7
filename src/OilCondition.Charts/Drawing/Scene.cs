namespace OilCondition.Charts.Drawing;

/// <summary>All that a chart shows, before it is given a size: words in the order of reading, layers in the order of drawing.</summary>
internal sealed record Scene(string Title, IReadOnlyList<string> Lines, Axis X, Axis Y)
{
    public IReadOnlyList<Layer> Layers { get; init; } = [];

    public IReadOnlyList<LevelMark> Levels { get; init; } = [];

    /// <summary>Words of a level; beyond the axis they stand at its edge with an arrow, and the level has no line.</summary>
    public string WordsOf(LevelMark level) =>
        (
            level.At > Y.To ? "↑ "
            : level.At < Y.From ? "↓ "
            : ""
        ) + CleanText.Of(level.Text);

    /// <summary>Most important first: where two sets of words would meet, the later ones are left out; the key has them.</summary>
    public IReadOnlyList<Moment> Moments { get; init; } = [];

    /// <summary>Words in place of data; null where there is some.</summary>
    public string? Empty { get; init; }

    /// <summary>A chart that says that there is nothing to draw.</summary>
    public static Scene Nothing(string title, string words, IReadOnlyList<string>? lines = null) =>
        new(title, [words, .. lines ?? []], Axis.Blank, Axis.Blank) { Empty = words };
}
