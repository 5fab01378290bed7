namespace OilCondition.Charts.Drawing;

/// <summary>Numbers on an even scale, or on one of logarithms.</summary>
internal sealed class NumberAxis : Axis
{
    private readonly ChartTexts texts;

    /// <summary>Values that ticks stand at; null for round numbers.</summary>
    private IReadOnlyList<double>? Places { get; init; }

    private NumberAxis(string label, double from, double to, bool isLogarithmic, ChartTexts texts)
        : base(label, from, to)
    {
        IsLogarithmic = isLogarithmic;
        this.texts = texts;
    }

    public bool IsLogarithmic { get; }

    /// <summary>An axis that holds all values with some room at the ends, and no negative room where no value is negative.</summary>
    public static NumberAxis Around(
        string label,
        IEnumerable<double> values,
        bool isLogarithmic,
        ChartTexts texts,
        bool isFromZero = false
    )
    {
        double[] all = [.. values.Where(value => !isLogarithmic || value > 0)];
        var (low, high) =
            all.Length == 0 ? (isLogarithmic ? 1.0 : 0.0, isLogarithmic ? 10.0 : 1.0) : (all.Min(), all.Max());
        if (isLogarithmic)
        {
            var room = Math.Max(0.06 * Math.Log10(high / low), low == high ? 0.3 : 0.05);
            return new NumberAxis(label, low / Math.Pow(10, room), high * Math.Pow(10, room), true, texts);
        }

        var from = isFromZero && low > 0 ? 0 : low;
        var size = high - from;
        var least = Math.Max(Math.Abs(high), Math.Abs(from)) * 1e-9;
        var pad = size > least ? 0.07 * size : Math.Max(Math.Abs(high) * 0.1, high == 0 ? 1 : 0);
        return new NumberAxis(label, from >= 0 ? Math.Max(0, from - pad) : from - pad, high + pad, false, texts);
    }

    /// <summary>The same axis with ticks at given values.</summary>
    public NumberAxis WithTicksAt(IReadOnlyList<double> places) =>
        new(Label, From, To, IsLogarithmic, texts) { Places = places };

    public override IReadOnlyList<Tick> Ticks(int most)
    {
        if (Places is not null)
        {
            List<double> seen = [.. Places.Where(Shows)];
            var step = 1 + (seen.Count - 1) / Math.Max(1, most);
            return
            [
                .. seen.Where((_, i) => i % step == 0).Select(value => new Tick(Place(value), texts.Reported(value))),
            ];
        }

        return IsLogarithmic ? Decades(most) ?? Even(most) : Even(most);
    }

    protected override double Scale(double value) => IsLogarithmic ? Math.Log10(value) : value;

    /// <summary>Powers of ten, between them 2 and 5 where there is room; null where fewer than two lie in the range.</summary>
    private List<Tick>? Decades(int most)
    {
        var first = (int)Math.Ceiling(Math.Log10(From) - 1e-9);
        var last = (int)Math.Floor(Math.Log10(To) + 1e-9);
        var step = 1 + Math.Max(0, last - first) / Math.Max(1, most);
        var between = step == 1 && 3 * (last - first + 2) <= most;
        var ticks = new List<Tick>();
        for (var power = first - 1; power <= last; power++)
        {
            if (power >= first && (power - first) % step == 0)
            {
                Add(Math.Pow(10, power));
            }

            if (between)
            {
                Add(2 * Math.Pow(10, power));
                Add(5 * Math.Pow(10, power));
            }
        }

        return ticks.Count >= 2 ? ticks : null;

        void Add(double value)
        {
            if (Shows(value))
            {
                ticks.Add(new Tick(Place(value), texts.Reported(value)));
            }
        }
    }

    private List<Tick> Even(int most)
    {
        var step = Step((To - From) / Math.Max(1, most));
        var ticks = new List<Tick>();
        for (var i = Math.Ceiling(From / step - 1e-9); i * step <= To + 1e-9 * step; i++)
        {
            // A value of 1e15 and a step of 1e-3 would never get on.
            if (ticks.Count > 100 || !(i + 1 > i))
            {
                break;
            }

            ticks.Add(new Tick(Place(i * step), texts.Stepped(i * step, step)));
        }

        return ticks;
    }

    /// <summary>The smallest of 1, 2, 5, 10 … that is not below a size.</summary>
    private static double Step(double least)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(least, 1e-300))));
        return power
            * (
                least <= power ? 1
                : least <= 2 * power ? 2
                : least <= 5 * power ? 5
                : 10
            );
    }
}
