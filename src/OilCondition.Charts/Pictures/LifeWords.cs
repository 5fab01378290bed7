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
    /// <param name="figure">What the limit is called, with a place for its figure.</param>
    public static string Of(Page page, Shown shown, RemainingLife life, string figure)
    {
        var texts = page.Texts;
        var limit = texts.Say(figure, shown.Text(texts, life.Limit));
        return life switch
        {
            RemainingLife.Crosses crosses => texts.Say(
                "{0} is passed by {1} in one case of ten, by {2} in five, by {3} in nine.",
                limit,
                page.Day(crosses.P10),
                page.Day(crosses.P50),
                page.Day(crosses.P90)
            ),
            RemainingLife.NoLatestDate open => texts.Say(
                "{0} is passed by {1} in one case of ten; no latest date can be given.",
                limit,
                page.Day(open.P10)
            ),
            RemainingLife.HeldByMakeUp held => texts.Say(
                "{0} is not reached: make-up holds the level at {1}.",
                limit,
                shown.Text(texts, held.LongRunLevel)
            ),
            RemainingLife.NotApproaching => texts.Say(
                "{0} is passed within {1} years in less than one case of ten.",
                limit,
                texts.Count(LifeForecast.HorizonYears)
            ),
            RemainingLife.AlreadyCrossed => texts.Say("{0} is passed already.", limit),
            RemainingLife.TooFewReadings few => texts.Say(
                "{0}: no forecast, {1} of {2} readings.",
                limit,
                texts.Count(few.Count),
                texts.Count(few.Needed)
            ),
            _ => throw new InvalidOperationException($"{life.GetType().Name} has no words."),
        };
    }
}
