using OilCondition.Charts.Drawing;
using OilCondition.Prognosis;

namespace OilCondition.Charts.Pictures;

/// <summary>The dates by which a limit is passed in one, nine and five cases of ten, as charts mark them: the one to plan with first.</summary>
internal static class LifeDates
{
    /// <summary>Dates are shown as far ahead as three times what lies behind.</summary>
    public const double MostAhead = 3;

    public static IEnumerable<(double Chance, DateTimeOffset At)> Of(RemainingLife.Forecast life)
    {
        foreach (var chance in new[] { 0.1, 0.9, 0.5 })
        {
            if (life.Crossing.TryAt(chance, out var at))
            {
                yield return (chance, at);
            }
        }
    }

    public static string Words(Page page, double chance, DateTimeOffset at) =>
        $"{page.Texts.Reported(100 * chance)} % {page.Day(at)}";

    public static Layer Key(Page page) => new Strokes(page.Texts["life.marks"], Ink.Blue, Dash.Dots, []);
}
