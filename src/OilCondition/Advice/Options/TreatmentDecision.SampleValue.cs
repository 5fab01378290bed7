using UnitsNet;

namespace OilCondition;

/// <content>The worth of another sample.</content>
public sealed partial class TreatmentDecision
{
    /// <summary>What one more sample before deciding would change.</summary>
    /// <remarks>
    /// The level is taken as normal about the reading with the error of its method; five equally likely second readings are drawn from it, at the 10, 30, 50, 70 and
    /// 90 % points. Each makes a mean with the first, whose error is smaller by √2. The decision is made anew for each among the four best ways: how often is it another one?
    /// </remarks>
    public sealed class SampleValue
    {
        /// <summary>Stands for a choice where nothing is to be chosen.</summary>
        internal const string NoTreatment = "none";

        internal SampleValue(string chosen, IReadOnlyList<string> choices)
        {
            Chosen = chosen;
            Choices = choices;
        }

        /// <summary>What is chosen without it: the id of an option, or <c>none</c>.</summary>
        public string Chosen { get; }

        /// <summary>What would be chosen after each of the five readings, lowest first; <c>none</c> where no treatment would be needed.</summary>
        public IReadOnlyList<string> Choices { get; }

        /// <summary>Share of the readings after which the choice is another one.</summary>
        public Ratio ChangesIn =>
            Ratio.FromDecimalFractions(Choices.Count(one => one != Chosen) / (double)Choices.Count);

        /// <summary>Whether it is worth taking before deciding: it changes the choice in at least one reading of five.</summary>
        public bool IsWorthTaking => ChangesIn.DecimalFractions > 0;

        /// <summary>The answer in a sentence.</summary>
        /// <returns>For example <c>One more sample would not change the choice.</c></returns>
        public override string ToString() => Sentences.English.Of(this);
    }
}
