using OilCondition.Text;

namespace OilCondition;

/// <content>What is said of an option in the cells of a table.</content>
public static partial class Sentences
{
    /// <summary>The hours of an option, the middle and from 10 to 90 % of the cases.</summary>
    /// <param name="option">The option.</param>
    /// <returns>For example <c>15.7 h (12.3 to 22)</c>; empty where it cannot be taken, or is to wait.</returns>
    public static string Hours(TreatmentOption option) =>
        Guard.NotNull(option) is { IsPossible: true, Assessment.Band: { } band } ? DecisionWords.Hours(band) : "";

    /// <summary>Why an option is ruled out, where its floor is, when the trouble is back, and what makes it doubtful.</summary>
    /// <param name="option">The option.</param>
    /// <returns>Phrases without full stops; none where nothing is to be said.</returns>
    public static IReadOnlyList<string> Remarks(TreatmentOption option) =>
        Guard.NotNull(option).Verdict == OptionVerdict.Waits && option.RuledOut.Length == 0
            ? []
            : [.. DecisionWords.Below(option)];
}
