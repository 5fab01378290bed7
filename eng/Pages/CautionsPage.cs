using OilCondition;
using OilCondition.Text;
using OilCondition.Treatment;

namespace Pages;

/// <summary>Every caution with its sentence, and the work that it goes with.</summary>
internal static class CautionsPage
{
    private const string Head = """
        # Cautions

        **What it answers.** What is to be beware of in which work on oil, in the words that reports and work requests print.

        Made from the code by `dotnet run --project eng/Pages`; a test fails when it is stale. Cautions are common practice, no source. A plan leaves out
        those that its conditions rule out; here nothing is known of the conditions, so all that may apply are listed.

        Do pass them on with every work request. Don't take the list for a permit: the limits of the makers come first, then local codes, and some of this
        work is for licensed people.


        """;

    public static string Write()
    {
        var treatments = Enum.GetValues<TreatmentKind>();
        var actions = Enum.GetValues<RecommendedAction>();
        var text = Head + "## What they say\n\n" + MadePages.Row("caution", "sentence") + "|---|---|\n";
        foreach (var caution in Enum.GetValues<Caution>())
        {
            text += MadePages.Row($"`{PlainText.Kebab(caution)}`", Sentences.English.Of(caution));
        }

        text += "\n## By treatment\n\n" + MadePages.Row("treatment", "cautions") + "|---|---|\n";
        foreach (var kind in treatments)
        {
            text += MadePages.Row($"`{PlainText.Kebab(kind)}`", Words(CautionsOf.Treatment(kind)));
        }

        text += MadePages.Row("warming the oil in its tank", Words(CautionsOf.Heating(default)));
        text += "\n## By recommendation\n\n" + MadePages.Row("recommendation", "cautions") + "|---|---|\n";
        foreach (var action in actions)
        {
            text += MadePages.Row($"`{PlainText.Kebab(action)}`", Words(Advisor.Cautions(action)));
        }

        return text;
    }

    private static string Words(IEnumerable<Caution> cautions) =>
        string.Join(", ", cautions.Select(caution => PlainText.Spaced(caution)));
}
