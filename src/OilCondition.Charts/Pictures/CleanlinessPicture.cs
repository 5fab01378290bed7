using OilCondition.Charts.Drawing;
using OilCondition.Cleanliness;
using ScottPlot;

namespace OilCondition.Charts.Pictures;

/// <summary>Three sizes, drawn on the logarithms of counts with the scale numbers beside.</summary>
internal sealed class CleanlinessPicture(Page page, string title, IReadOnlyList<SizeColumn> columns)
{
    private static readonly string[] Sizes = ["≥4 µm(c)", "≥6 µm(c)", "≥14 µm(c)"];

    private readonly ChartTexts texts = page.Texts;

    public Scene Scene()
    {
        if (columns.All(column => column.Low is null))
        {
            return Drawing.Scene.Nothing(title, texts["cleanliness.none"]);
        }

        List<double> counts =
        [
            .. columns
                .SelectMany(column => new[] { column.Low, column.High, column.Asked })
                .OfType<double>()
                .Where(count => count > 0),
        ];

        // A count of 0 has no logarithm: it stands at the foot, a scale number below the others.
        var least = counts.DefaultIfEmpty(1).Min() / 2;
        var axis = NumberAxis
            .Around(texts["cleanliness.axis"], [.. counts, least], isLogarithmic: true, texts)
            .WithTicksAt([
                .. Enumerable.Range(0, Iso4406.HighestScaleNumber + 1).Select(Iso4406.UpperLimitPerMillilitre),
            ]);
        return new Scene(title, Lines(), new RowAxis("", [.. columns.Select(Name)]), axis)
        {
            Layers = [.. Layers(axis)],
            Levels = [.. Numbers(axis)],
        };
    }

    private string Name(SizeColumn column, int at) => $"{Sizes[at]}: {column.Words}";

    private IEnumerable<Layer> Layers(NumberAxis axis)
    {
        IEnumerable<(SizeColumn Column, int At)> all = columns.Select((column, at) => (column, at));
        var codes = all.Where(one => one.Column is { IsCode: true, Low: not null }).ToList();
        if (codes.Count > 0)
        {
            yield return new Boxes(
                texts["cleanliness.code"],
                Ink.SkyBlue,
                [
                    .. codes.Select(one => new Stroke(
                        new Spot(one.At - 0.16, one.Column.Low!.Value),
                        new Spot(one.At + 0.16, one.Column.High!.Value)
                    )),
                ],
                Ink.Black
            );
        }

        var counted = all.Where(one => one.Column is { IsCode: false, Low: not null }).ToList();
        if (counted.Count > 0)
        {
            yield return new Strokes(
                null,
                Ink.SkyBlue,
                Dash.Solid,
                [
                    .. counted.Select(one => new Stroke(
                        new Spot(one.At, axis.From),
                        new Spot(one.At, one.Column.Low!.Value)
                    )),
                ],
                14
            );
            yield return new Marks(
                texts["cleanliness.counted"],
                Ink.Black,
                MarkerShape.FilledDiamond,
                [.. counted.Select(one => new Spot(one.At, one.Column.Low!.Value))],
                10
            );
        }

        var asked = all.Where(one => one.Column.Asked is not null).ToList();
        if (asked.Count > 0)
        {
            yield return new Strokes(
                texts["cleanliness.asked"],
                Ink.Vermilion,
                Dash.Solid,
                [
                    .. asked.Select(one => new Stroke(
                        new Spot(one.At - 0.3, one.Column.Asked!.Value),
                        new Spot(one.At + 0.3, one.Column.Asked!.Value)
                    )),
                ],
                2.5f
            );
        }
    }

    /// <summary>Scale numbers in the middle of their classes, every second or third where there are many.</summary>
    private IEnumerable<LevelMark> Numbers(NumberAxis axis)
    {
        var shown = Enumerable
            .Range(0, Iso4406.HighestScaleNumber + 1)
            .Where(number => axis.Shows(Iso4406.TypicalCountPerMillilitre(number)))
            .ToList();
        var step = 1 + shown.Count / 14;
        return shown
            .Where(number => (number - shown[0]) % step == 0)
            .Select(number => new LevelMark(
                Iso4406.TypicalCountPerMillilitre(number),
                number == shown[0]
                    ? texts.Say("cleanliness.scale-number", ("number", page.Sentences.Number(number)))
                    : page.Sentences.Number(number),
                Ink.Grey,
                null
            ));
    }

    private List<string> Lines()
    {
        var lines = new List<string>();
        var code = string.Join("/", columns.Select(column => column.Words));
        var at = columns.Max(column => column.At);
        lines.Add(
            at is { } taken
                ? texts.Say("cleanliness.told-on", ("code", code), ("date", page.Day(taken)))
                : texts.Say("cleanliness.told", ("code", code))
        );
        if (columns.Any(column => column.Asked is not null))
        {
            var asked = string.Join("/", columns.Select(column => column.Asked is null ? "-" : column.AskedWords));
            var above = columns
                .Select((column, i) => (column, i))
                .Where(one => one.column.Asked is { } most && (one.column.IsBeyondScale || one.column.High > most))
                .Select(one => Sizes[one.i])
                .ToList();
            lines.Add(
                above.Count == 0
                    ? texts.Say("cleanliness.told-met", ("code", asked))
                    : texts.Say("cleanliness.told-exceeded", ("code", asked), ("sizes", string.Join(", ", above)))
            );
        }

        if (columns.Any(column => column.Low == 0))
        {
            lines.Add(texts["cleanliness.zeros"]);
        }

        return lines;
    }
}
