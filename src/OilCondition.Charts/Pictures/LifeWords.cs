using OilCondition.Charts.Drawing;
using OilCondition.Prognosis;

namespace OilCondition.Charts.Pictures;

/// <summary>When a limit is passed, as a sentence.</summary>
internal static class LifeWords
{
    /// <summary>The sentence on a life.</summary>
    /// <param name="page">Words and dates.</param>
    /// <param name="shown">The unit.</param>
    /// <param name="life">The life.</param>
    /// <param name="figure">Key of what the limit is called.</param>
    public static string Of(Page page, Shown shown, RemainingLife life, string figure)
    {
        var texts = page.Texts;
        var limit = ("limit", texts.Say(figure, ("limit", shown.Text(life.Limit))));
        return life switch
        {
            RemainingLife.Crosses crosses => texts.Say(
                "life.dates",
                limit,
                ("early", page.Day(crosses.P10)),
                ("middle", page.Day(crosses.P50)),
                ("late", page.Day(crosses.P90))
            ),
            RemainingLife.NoLatestDate open => texts.Say("life.open", limit, ("early", page.Day(open.P10))),
            RemainingLife.HeldByMakeUp held => texts.Say("life.held", limit, ("level", shown.Text(held.LongRunLevel))),
            RemainingLife.NotApproaching => texts.Say(
                "life.far",
                limit,
                ("years", page.Sentences.Number(LifeForecast.HorizonYears))
            ),
            RemainingLife.AlreadyCrossed => texts.Say("life.passed", limit),
            RemainingLife.TooFewReadings few => texts.Say(
                "life.few",
                limit,
                ("count", page.Sentences.Number(few.Count)),
                ("needed", page.Sentences.Number(few.Needed))
            ),
            _ => throw new InvalidOperationException($"{life.GetType().Name} has no words."),
        };
    }
}
