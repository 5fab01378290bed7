using OilCondition.Charts;
using OilCondition.Prognosis;
using OilCondition.Text;

namespace OilCondition.Interactive.Views;

/// <summary>A remaining life: by when the limit is passed, in how many cases of ten.</summary>
internal static class LifeView
{
    public static View Of(RemainingLife life)
    {
        var measurand = life.Series.Measurand;
        var view = new View()
            .Heading($"Remaining life: {measurand.Name}")
            .Line(life.ToString())
            .Figures([
                (
                    life.Side == LimitSide.Upper ? "limit, not to be exceeded" : "limit, not to be fallen below",
                    $"{PlainText.Reported(life.Limit)} {measurand.Unit}"
                ),
                ("model of ageing", PlainText.Spaced(life.Model)),
                ("readings", PlainText.Number(life.Series.Points.Count)),
                .. life is RemainingLife.Forecast forecast ? Dates(forecast) : [],
            ]);
        return view.Picture(LifeChart.Of(life));
    }

    private static IEnumerable<(string Name, string Figure)> Dates(RemainingLife.Forecast forecast)
    {
        yield return ("as of", PlainText.Date(forecast.Crossing.AsOf));
        foreach (var (chance, cases) in new[] { (0.1, "1"), (0.5, "5"), (0.9, "9") })
        {
            yield return (
                $"passed in {cases} of 10 cases by",
                forecast.Crossing.TryAt(chance, out var at) ? PlainText.Date(at) : "no date within the horizon"
            );
        }
    }
}
