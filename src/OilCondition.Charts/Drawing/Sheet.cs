namespace OilCondition.Charts.Drawing;

/// <summary>A scene laid out on a sheet: the frame of the data and every text at its place, none over another.</summary>
internal sealed class Sheet
{
    private const double Margin = 12;
    private const double TickLength = 5;
    private const double SymbolWidth = 26;
    private const double LeastData = 110;
    private const int MostLines = 6;

    private readonly Scene scene;
    private readonly int width;
    private readonly int height;
    private readonly List<Placed> texts = [];
    private readonly List<(Layer Layer, double X, double Y)> symbols = [];
    private readonly List<(double From, double To, Ink Ink)> leaders = [];

    public Sheet(Scene scene, int width, int height)
    {
        this.scene = scene;
        this.width = width;
        this.height = height;
        var keys = Keys(out var keyHeight);
        var lines = scene
            .Lines.SelectMany(line =>
                Lettering.Wrap(CleanText.Of(line), Lettering.Normal, width - 2 * Margin, MostLines)
            )
            .Take(MostLines)
            .ToList();
        var under = Under(keyHeight);
        var title = Lettering.Wrap(CleanText.Of(scene.Title), Lettering.Large, width - 2 * Margin, 2);

        // A low sheet has no room for what the description says as well.
        while (lines.Count > 0 && height - under - Head(title.Count, lines.Count) < LeastData)
        {
            lines.RemoveAt(lines.Count - 1);
        }

        Top = Head(title.Count, lines.Count);
        Bottom = height - under;
        Left = LeftEnd();
        Right = RightEnd();
        WriteHead(title, lines);
        if (scene.Empty is { } words)
        {
            texts.Clear();
            WriteHead(title, []);
            WriteMiddle(words);
            return;
        }

        WriteLevels();
        WriteMoments();
        WriteTicks();
        WriteKeys(keys, keyHeight);
    }

    public double Left { get; private set; }

    public double Right { get; private set; }

    public double Top { get; }

    public double Bottom { get; }

    /// <summary>The texts, in the order of reading.</summary>
    public IReadOnlyList<Placed> Texts => texts;

    /// <summary>Where the key shows what a layer looks like: the middle of the symbol.</summary>
    public IReadOnlyList<(Layer Layer, double X, double Y)> Symbols => symbols;

    /// <summary>From the end of a level at the frame to its words, where they had to make room.</summary>
    public IReadOnlyList<(double From, double To, Ink Ink)> Leaders => leaders;

    public IReadOnlyList<Tick> TicksX { get; private set; } = [];

    public IReadOnlyList<Tick> TicksY { get; private set; } = [];

    /// <summary>Room from the frame to the words of its levels.</summary>
    public const double LeaderWidth = 14;

    public double PixelX(double place) => Left + (place - LowX) / (HighX - LowX) * (Right - Left);

    public double PixelY(double place) => Bottom - (place - LowY) / (HighY - LowY) * (Bottom - Top);

    public double LowX => Math.Min(scene.X.Place(scene.X.From), scene.X.Place(scene.X.To));

    public double HighX => Math.Max(scene.X.Place(scene.X.From), scene.X.Place(scene.X.To));

    public double LowY => Math.Min(scene.Y.Place(scene.Y.From), scene.Y.Place(scene.Y.To));

    public double HighY => Math.Max(scene.Y.Place(scene.Y.From), scene.Y.Place(scene.Y.To));

    private double Head(int titleLines, int lines) =>
        Margin
        + titleLines * Lettering.Line(Lettering.Large)
        + lines * Lettering.Line(Lettering.Normal)
        + (scene.Y.Label.Length > 0 ? Lettering.Line(Lettering.Normal) + 11 : 6)
        + MomentRows * Lettering.Line(Lettering.Small);

    private int MomentRows => Math.Min(2, scene.Moments.Count(moment => moment.Text.Length > 0));

    private double Under(double keyHeight) =>
        Margin
        + keyHeight
        + TickLength
        + Lettering.Line(Lettering.Small)
        + 3
        + (scene.X.Label.Length > 0 ? Lettering.Line(Lettering.Normal) : 0);

    private double LeftEnd()
    {
        var words = scene
            .Y.Ticks(MostY(Bottom - Top))
            .Select(tick => Lettering.Width(CleanText.Of(tick.Text), Lettering.Small));
        var widest = words.DefaultIfEmpty(0).Max();
        return Margin + Math.Min(widest, width * (scene.Y.HasRows ? 0.3 : 0.2)) + TickLength + 4;
    }

    private double RightEnd()
    {
        var widest = scene
            .Levels.Select(level => Lettering.Width(scene.WordsOf(level), Lettering.Small))
            .DefaultIfEmpty(0)
            .Max();
        return width - Margin - (widest > 0 ? Math.Min(widest, width * 0.3) + LeaderWidth + 3 : 6);
    }

    private static int MostY(double room) => (int)Math.Max(2, room / 38);

    private void Write(string text, double left, double baseline, float size, Ink? ink = null) =>
        texts.Add(new Placed(text, left, baseline, size, ink ?? Ink.Text));

    private void WriteHead(IReadOnlyList<string> title, IReadOnlyList<string> lines)
    {
        var y = Margin;
        foreach (var line in title)
        {
            y += Lettering.Line(Lettering.Large);
            Write(line, Margin, y - 5, Lettering.Large);
        }

        foreach (var line in lines)
        {
            y += Lettering.Line(Lettering.Normal);
            Write(line, Margin, y - 3, Lettering.Normal);
        }

        if (scene.Y.Label.Length > 0)
        {
            y += Lettering.Line(Lettering.Normal) + 2;
            Write(
                Lettering.Cut(CleanText.Of(scene.Y.Label), Lettering.Normal, width - 2 * Margin),
                Margin,
                y - 3,
                Lettering.Normal,
                Ink.Frame
            );
        }
    }

    private void WriteMiddle(string words)
    {
        var lines = Lettering.Wrap(CleanText.Of(words), Lettering.Large, Right - Left - 2 * Margin, 3);
        var y = (Top + Bottom - lines.Count * Lettering.Line(Lettering.Large)) / 2;
        foreach (var line in lines)
        {
            y += Lettering.Line(Lettering.Large);
            Write(line, (Left + Right - Lettering.Width(line, Lettering.Large)) / 2, y, Lettering.Large, Ink.Frame);
        }
    }

    /// <summary>Words of levels beside the frame, at their level or as near to it as the others leave room.</summary>
    private void WriteLevels()
    {
        var room = width - Margin - Right - LeaderWidth;
        var most = (Bottom - Top) / Math.Max(1, scene.Levels.Count) >= 2 * Lettering.Line(Lettering.Small) ? 2 : 1;
        var blocks = scene
            .Levels.Select(level =>
                (
                    Level: level,
                    Lines: Lettering.Wrap(scene.WordsOf(level), Lettering.Small, room, most),
                    Wanted: PixelY(scene.Y.Place(level.At))
                )
            )
            .OrderBy(block => block.Wanted)
            .ToList();
        var line = Lettering.Line(Lettering.Small);
        double[] tops = [.. blocks.Select(block => block.Wanted - block.Lines.Count * line / 2)];
        double Height(int i) => blocks[i].Lines.Count * line;
        for (var i = 0; i < tops.Length; i++)
        {
            tops[i] = Math.Max(tops[i], i == 0 ? Top : tops[i - 1] + Height(i - 1));
        }

        var floor = Bottom + line;
        for (var i = tops.Length - 1; i >= 0; i--)
        {
            tops[i] = Math.Min(tops[i], floor - Height(i));
            floor = tops[i];
        }

        for (var i = 0; i < tops.Length; i++)
        {
            // More words than there is height for: those that came last are left to the description.
            if (tops[i] < Top - line)
            {
                continue;
            }

            var (level, lines, wanted) = blocks[i];
            leaders.Add(
                (wanted, tops[i] + Height(i) / 2, level.Dash is null || !scene.Y.Shows(level.At) ? Ink.Grid : level.Ink)
            );
            for (var at = 0; at < lines.Count; at++)
            {
                Write(lines[at], Right + LeaderWidth, tops[i] + (at + 1) * line - 4, Lettering.Small);
            }
        }
    }

    private void WriteMoments()
    {
        var taken = new List<(double From, double To, int Row)>();
        foreach (var moment in scene.Moments.Where(one => scene.X.Shows(one.At) && one.Text.Length > 0))
        {
            var text = CleanText.Of(moment.Text);
            var size = Lettering.Width(text, Lettering.Small);
            var left = Within(PixelX(scene.X.Place(moment.At)) - size / 2, size);
            var row = Enumerable
                .Range(0, MomentRows)
                .Where(one =>
                    !taken.Any(other => other.Row == one && left < other.To + 8 && left + size > other.From - 8)
                )
                .Select(one => (int?)one)
                .FirstOrDefault();
            if (row is { } free && size < width - 2 * Margin)
            {
                taken.Add((left, left + size, free));
                Write(text, left, Top - 5 - free * Lettering.Line(Lettering.Small), Lettering.Small);
            }
        }
    }

    /// <summary>A left end that keeps a text on the sheet.</summary>
    private double Within(double left, double size) => Math.Max(4, Math.Min(left, width - 4 - size));

    private void WriteTicks()
    {
        var line = Lettering.Line(Lettering.Small);
        TicksY = scene.Y.Ticks(MostY(Bottom - Top));
        var last = double.PositiveInfinity;
        foreach (var tick in TicksY.OrderBy(tick => tick.At))
        {
            var y = PixelY(tick.At);
            if (last - y < line)
            {
                continue;
            }

            last = y;
            var room = Left - TickLength - 4 - Margin;
            var most = scene.Y.HasRows && (Bottom - Top) / TicksY.Count > 2 * line + 4 ? 2 : 1;
            var lines = Lettering.Wrap(CleanText.Of(tick.Text), Lettering.Small, room, most);
            for (var i = 0; i < lines.Count; i++)
            {
                Write(
                    lines[i],
                    Left - TickLength - 4 - Lettering.Width(lines[i], Lettering.Small),
                    y + 4 + (i - (lines.Count - 1) / 2.0) * line,
                    Lettering.Small
                );
            }
        }

        TicksX = scene.X.Ticks((int)Math.Max(2, (Right - Left) / (scene.X is TimeAxis ? 90 : 60)));
        var under = Bottom + TickLength + line;
        var end = double.NegativeInfinity;
        foreach (var tick in TicksX.OrderBy(tick => tick.At))
        {
            var text = CleanText.Of(tick.Text);
            var size = Lettering.Width(text, Lettering.Small);
            var left = Within(PixelX(tick.At) - size / 2, size);
            if (left > end + 10)
            {
                Write(text, left, under - 2, Lettering.Small);
                end = left + size;
            }
        }

        if (scene.X.Label.Length > 0)
        {
            var label = Lettering.Cut(CleanText.Of(scene.X.Label), Lettering.Normal, Right - Left);
            Write(
                label,
                Right - Lettering.Width(label, Lettering.Normal),
                under + Lettering.Line(Lettering.Normal),
                Lettering.Normal,
                Ink.Frame
            );
        }
    }

    /// <summary>The key in rows: entries side by side as far as the width goes.</summary>
    private List<(Layer Layer, string Text, double X, int Row)> Keys(out double keyHeight)
    {
        var keys = new List<(Layer Layer, string Text, double X, int Row)>();
        var (x, row) = (Margin, 0);
        foreach (var layer in scene.Layers.Where(layer => layer is { Key: not null, IsEmpty: false }))
        {
            var text = Lettering.Cut(CleanText.Of(layer.Key!), Lettering.Small, width - 2 * Margin - SymbolWidth);
            var size = SymbolWidth + Lettering.Width(text, Lettering.Small);
            if (x > Margin && x + size > width - Margin)
            {
                (x, row) = (Margin, row + 1);
            }

            keys.Add((layer, text, x, row));
            x += size + 18;
        }

        keyHeight = keys.Count == 0 ? 0 : (row + 1) * Lettering.Line(Lettering.Small) + 6;
        return keys;
    }

    private void WriteKeys(List<(Layer Layer, string Text, double X, int Row)> keys, double keyHeight)
    {
        foreach (var (layer, text, x, row) in keys)
        {
            var y = height - Margin - keyHeight + 6 + (row + 1) * Lettering.Line(Lettering.Small);
            Write(text, x + SymbolWidth, y - 4, Lettering.Small);
            symbols.Add((layer, x + SymbolWidth / 2 - 3, y - 8));
        }
    }
}
