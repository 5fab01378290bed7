using OilCondition.Charts.Drawing;

namespace OilCondition.Charts.Pictures;

/// <summary>Rows of bars from 0, each with a whisker from one to nine cases in ten.</summary>
internal static class RowBars
{
    public static Boxes Of(string key, Ink ink, IEnumerable<(int Row, RowBar Bar)> rows) =>
        new(
            key,
            ink,
            [.. rows.Select(one => new Stroke(new Spot(0, one.Row - 0.28), new Spot(one.Bar.P50, one.Row + 0.28)))],
            Ink.Black
        );

    public static IEnumerable<Layer> Whiskers(string key, IEnumerable<(int Row, RowBar Bar)> rows)
    {
        List<Stroke> whiskers =
        [
            .. rows.SelectMany(one => one.Bar is { P10: { } low, P90: { } high } ? Whisker(one.Row, low, high) : []),
        ];
        // A white edge, so that it is seen on a dark bar.
        yield return new Strokes(null, Ink.White, Dash.Solid, whiskers, 4.5f);
        yield return new Strokes(key, Ink.Black, Dash.Solid, whiskers, 1.6f);
    }

    /// <summary>The axis from 0 to the end of the longest bar or whisker.</summary>
    public static NumberAxis Axis(string label, IEnumerable<RowBar> bars, ChartTexts texts) =>
        NumberAxis.Around(
            label,
            bars.SelectMany(bar => new[] { bar.P10, bar.P50, bar.P90 }).OfType<double>().Append(0),
            false,
            texts,
            isFromZero: true
        );

    private static Stroke[] Whisker(int row, double from, double to) =>
        [
            new(new Spot(from, row), new Spot(to, row)),
            new(new Spot(from, row - 0.15), new Spot(from, row + 0.15)),
            new(new Spot(to, row - 0.15), new Spot(to, row + 0.15)),
        ];
}
