using OilCondition.Text;
using OilCondition.Treatment;

namespace OilCondition.Cleanup;

/// <summary>When all that is asked has been reached and has held for long enough: the whole job, and each part of it.</summary>
/// <remarks>
/// A part is completed when its readings have been at the target or below for the holding time without one above. Its curve crosses the target within the
/// interval of the fit. Readings scatter about the curve, and the last one above the target comes, to the chance q, before the moment t with
/// Π Φ((target − c(t_i)) / s) = q over the readings t_i of the holding time from t on, spaced as before (Φ: normal distribution, s: scatter about the
/// curve). Both distances are added as independent errors are, square root of the sum of squares; the holding time comes on top.
/// <para>
/// The whole is completed with its latest part. The late end is that of the latest part; for the early end each part has its share of the doubt. Derived; the
/// coverage is held against runs with a known truth. Readings that follow one another (drift) widen neither: see <see cref="CoverageInDoubt"/>.
/// </para>
/// </remarks>
public sealed class CleanupCompletion
{
    internal CleanupCompletion(
        CompletionOutcome outcome,
        CleanupPart rulingPart,
        double confidence,
        bool coverageInDoubt,
        DateTimeOffset asOf,
        DateTimeOffset? earliest,
        DateTimeOffset? estimate,
        DateTimeOffset? latest,
        IReadOnlyList<CleanupCompletion>? parts = null
    )
    {
        Outcome = outcome;
        RulingPart = rulingPart;
        Confidence = confidence;
        CoverageInDoubt = coverageInDoubt;
        AsOf = asOf;
        HasEarliest = earliest.HasValue;
        Earliest = earliest ?? asOf;
        HasEstimate = estimate.HasValue;
        Estimate = estimate ?? asOf;
        HasLatest = latest.HasValue;
        Latest = latest ?? asOf;
        Parts = parts ?? [];
    }

    /// <summary>What can be said.</summary>
    public CompletionOutcome Outcome { get; }

    /// <summary>The part that rules: the one that keeps the answer from being better, else the one that is last. Of a part, the part itself.</summary>
    public CleanupPart RulingPart { get; }

    /// <summary>Confidence level of the ends.</summary>
    public double Confidence { get; }

    /// <summary>Whether the readings of a part follow one another so closely that the ends hold less often than stated.</summary>
    public bool CoverageInDoubt { get; }

    /// <summary>The latest reading.</summary>
    public DateTimeOffset AsOf { get; }

    /// <summary>Whether there is an early end.</summary>
    public bool HasEarliest { get; }

    /// <summary>Earliest moment compatible with the readings; <see cref="AsOf"/> where there is none.</summary>
    public DateTimeOffset Earliest { get; }

    /// <summary>Whether there is a best estimate.</summary>
    public bool HasEstimate { get; }

    /// <summary>Best estimate; <see cref="AsOf"/> where there is none.</summary>
    public DateTimeOffset Estimate { get; }

    /// <summary>Whether there is a late end.</summary>
    public bool HasLatest { get; }

    /// <summary>Latest moment compatible with the readings; <see cref="AsOf"/> where there is none.</summary>
    public DateTimeOffset Latest { get; }

    /// <summary>Each part of what is asked; none for a part.</summary>
    public IReadOnlyList<CleanupCompletion> Parts { get; }

    /// <summary>The answer in words.</summary>
    /// <returns>A sentence, invariant culture.</returns>
    public override string ToString() =>
        Outcome switch
        {
            CompletionOutcome.Met => $"completed {PlainText.Time(Estimate)}",
            CompletionOutcome.Expected => $"completion expected {PlainText.Time(Estimate)}{Between()}"
                + (Parts.Count > 1 ? $", {Words} is last" : ""),
            CompletionOutcome.NotDemonstrated when HasEarliest =>
                $"not before {PlainText.Time(Earliest)}; the readings of {Words} do not show that it gets there",
            CompletionOutcome.NotDemonstrated => $"the readings of {Words} do not show that it gets there",
            CompletionOutcome.TooCold => "the oil is too cold for its readings to count",
            CompletionOutcome.FreeWaterLeaving => "free water is leaving; no date before the dissolved water falls",
            CompletionOutcome.TooFewReadings when RulingPart == CleanupPart.Water =>
                "too few readings of dissolved water",
            CompletionOutcome.TooFewReadings => $"too few readings of {Words}",
            CompletionOutcome.ReadingsTooFarApart => $"readings of {Words} come too seldom to show that it holds",
            _ => $"as it runs, never: {Words} stays above its target",
        };

    private string Words => StallWords.Of(RulingPart);

    /// <summary>The interval, where it differs from the estimate in the minutes printed.</summary>
    private string Between()
    {
        var (from, to) = (PlainText.Time(Earliest), PlainText.Time(Latest));
        return from == to ? "" : $" ({from} to {to})";
    }
}
