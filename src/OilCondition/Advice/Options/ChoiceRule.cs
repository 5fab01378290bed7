namespace OilCondition;

/// <summary>The rule by which options are ranked. Derive from it to rank by a rule of your own; its statement is shown with every decision.</summary>
/// <example>
/// <code>
/// sealed class SoonestDone : ChoiceRule
/// {
///     public override string Statement => "what is done soonest";
///     public override IReadOnlyList&lt;TreatmentOption&gt; Rank(IReadOnlyList&lt;TreatmentOption&gt; options) =>
///         [.. options.OrderBy(one => one.Verdict).ThenBy(one => one.DoneP50)];
/// }
/// </code>
/// </example>
public abstract class ChoiceRule
{
    /// <summary>A treatment that reaches its target in fewer than half of the cases is no better than to wait (ours).</summary>
    private const double EvenOdds = 0.5;

    /// <summary>The cheapest way that meets the target as surely as asked before the date that the risk allows. Where prices are missing, the shortest.</summary>
    /// <remarks>
    /// First those that do so, by their median effort: cost where every price is known, else the hours for which the equipment is bound. Then those that
    /// do so later, soonest first; then those that may, surest first, if at least as likely as not; then waiting; then what is ruled out. Equals are
    /// ranked by when they are done, then by id.
    /// </remarks>
    public static ChoiceRule CheapestInTime { get; } = new Cheapest();

    /// <summary>The rule in words.</summary>
    public abstract string Statement { get; }

    /// <summary>Ranks options.</summary>
    /// <param name="options">The options of one decision, in any order.</param>
    /// <returns>All of them, best first. The first is recommended, unless it is ruled out.</returns>
    public abstract IReadOnlyList<TreatmentOption> Rank(IReadOnlyList<TreatmentOption> options);

    /// <summary>The rule in words.</summary>
    /// <returns>As <see cref="Statement"/>.</returns>
    public override string ToString() => Statement;

    private sealed class Cheapest : ChoiceRule
    {
        public override string Statement => Sentences.English.Of(this);

        public override IReadOnlyList<TreatmentOption> Rank(IReadOnlyList<TreatmentOption> options) =>
            [
                .. options
                    .OrderBy(Class)
                    .ThenBy(one => one.Verdict == OptionVerdict.Meets ? one.Effort ?? double.MaxValue : 0)
                    .ThenByDescending(one =>
                        one.Verdict == OptionVerdict.NotSure ? one.Probability.DecimalFractions : 0
                    )
                    .ThenBy(one => one.DoneP90 ?? one.DoneP50 ?? DateTimeOffset.MaxValue)
                    .ThenBy(one => one.Id, StringComparer.Ordinal),
            ];

        private static int Class(TreatmentOption option) =>
            option.Verdict == OptionVerdict.NotSure && option.Probability.DecimalFractions < EvenOdds
                ? (int)OptionVerdict.Waits * 2 + 1
                : (int)option.Verdict * 2;
    }
}
