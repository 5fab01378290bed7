using OilCondition.Text;

namespace OilCondition.Cleanup;

/// <summary>A part of what a run is to reach: a measurand with its target, its curve, and when it will have held.</summary>
/// <remarks>
/// A part is completed when its readings have been at the target or below for the holding time without one above. Its curve crosses the target within the
/// interval of the fit. Readings scatter about the curve, and the last one above the target comes, to the chance q, before the moment t with
/// Π Φ((target − c(t_i)) / s) = q over the readings t_i of the holding time from t on, spaced as before (Φ: normal distribution, s: scatter about the
/// curve). Both distances are added as independent errors are, square root of the sum of squares; the holding time comes on top. Derived; the coverage is
/// compared with runs of a known truth. Readings that follow one another (drift) widen neither.
/// </remarks>
public sealed class CleanupPart
{
    internal CleanupPart(RunPart part, Arrival<DateTimeOffset> arrival, CompletionReason reason, DateTimeOffset? centre)
    {
        Measurand = part.Measurand;
        Target = part.Target;
        Curve = part.Curve;
        Arrival = arrival;
        Reason = reason;
        Centre = centre;
        IsStalled = part.IsStalled && !part.Hold.IsMet && part.Hold.Since is null;
        StallEvidence = IsStalled ? part.Look.Evidence : [];
        MetAt = part.IsMet ? part.Hold.MetAt : null;
        HoldingSince = part.Hold.IsMet ? part.Hold.HeldFrom : part.Hold.Since;
    }

    /// <summary>What is followed.</summary>
    public Measurand Measurand { get; }

    /// <summary>What is to be reached, in the measurand's unit.</summary>
    public double Target { get; }

    /// <summary>The fitted fall.</summary>
    public CleanupCurve Curve { get; }

    /// <summary>When the part has been at its target for long enough.</summary>
    public Arrival<DateTimeOffset> Arrival { get; }

    /// <summary>Why there is no date.</summary>
    public CompletionReason Reason { get; }

    /// <summary>Whether its readings show that it stalls above its target.</summary>
    public bool IsStalled { get; }

    /// <summary>The figures that show it; none where it does not stall.</summary>
    public IReadOnlyList<EvidenceItem> StallEvidence { get; }

    /// <summary>Since when it is at the target; null where it is not.</summary>
    public DateTimeOffset? HoldingSince { get; }

    /// <summary>When it had been there for long enough; null where it has not.</summary>
    public DateTimeOffset? MetAt { get; }

    /// <summary>The best estimate also where the readings do not show yet that it arrives: to rank parts by.</summary>
    internal DateTimeOffset? Centre { get; }

    /// <summary>When it arrives, in words.</summary>
    /// <returns>For example <c>water content 60 mg/kg: expected 2025-12-11 20:00 (2025-12-11 18:00 to 2025-12-11 23:00)</c>.</returns>
    public override string ToString() =>
        $"{$"{Measurand.Name} {PlainText.Number(Target)} {Measurand.Unit}".TrimEnd()}: {Outlook.Words(Arrival, Reason, Measurand)}";
}
