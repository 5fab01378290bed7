using OilCondition.Statistics;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>Water of a run in litres: lost by the oil, come in, drawn off, collected.</summary>
internal sealed class WaterBalance
{
    private readonly CleanupRunFacts facts;

    public WaterBalance(CleanupStatus status, CleanupRunFacts facts, TimeSpan length, DateTimeOffset end)
    {
        this.facts = facts;
        var curve = status.Curve;
        var at = end > curve.Origin ? end : curve.Origin;
        var account = new WaterAccount(curve, facts.Loop.Charge, facts.OilDensity);
        var confidence = status.Confidence;
        Removed = account.FallSince(facts.Before, at, confidence);
        CameIn = Stated(facts.WaterIngress?.KilogramsPerHour ?? 0, length, Removed);
        IsIngressKnown = facts.WaterIngress.HasValue;
        DrawnOff = Sum(Removed, CameIn, Removed.Method, confidence);
        if (!IsIngressKnown && facts.FloorWithoutIngress is { } floor)
        {
            // Either interval may miss: at half the doubt each their sum covers as often as stated.
            var half = 1 - (1 - confidence) / 2;
            var found = account.Ingress(floor, confidence);
            IsIngressKnown = found.HasEstimate;
            CameIn = found.HasEstimate ? Over(found, length) : CameIn;
            DrawnOff = found.HasEstimate
                ? Sum(
                    account.FallSince(facts.Before, at, half),
                    Over(account.Ingress(floor, half), length),
                    CleanupFigureMethod.TwoIntervals,
                    confidence
                )
                : DrawnOff;
        }

        HasDifference = facts.Condensate.HasValue && DrawnOff.HasEstimate;
        Difference = HasDifference ? facts.Condensate!.Value - DrawnOff.Estimate : Volume.Zero;
        Agreement = AgreementOf();
        Reasons = Agreement switch
        {
            CondensateAgreement.LessCollected =>
            [
                CondensateReason.VapourWithExhaust,
                CondensateReason.DrainedElsewhere,
                CondensateReason.LessWaterBefore,
            ],
            CondensateAgreement.MoreCollected =>
            [
                CondensateReason.WaterCameIn,
                CondensateReason.StandingWater,
                CondensateReason.HumidSweepAir,
            ],
            _ => [],
        };
    }

    public CleanupFigure<Volume> Removed { get; }

    public bool IsIngressKnown { get; }

    public CleanupFigure<Volume> CameIn { get; }

    public CleanupFigure<Volume> DrawnOff { get; }

    public bool HasDifference { get; }

    public Volume Difference { get; }

    public CondensateAgreement Agreement { get; }

    public IReadOnlyList<CondensateReason> Reasons { get; }

    private static Volume Litres(double kilograms) =>
        Volume.FromCubicMeters(kilograms / WaterContent.WaterDensity.KilogramsPerCubicMeter);

    private static CleanupFigure<Volume> Stated(double perHour, TimeSpan length, CleanupFigure<Volume> like)
    {
        var litres = Litres(perHour * length.TotalHours);
        return new CleanupFigure<Volume>(
            CleanupFigureOutcome.Known,
            like.Method,
            litres,
            litres,
            litres,
            like.Confidence,
            like.Side,
            coverageInDoubt: false,
            isExtrapolated: false
        );
    }

    private static CleanupFigure<Volume> Over(CleanupFigure<MassFlow> ingress, TimeSpan length)
    {
        Volume? Of(bool has, MassFlow flow) => has ? Litres(flow.KilogramsPerHour * length.TotalHours) : null;
        return new CleanupFigure<Volume>(
            ingress.Outcome,
            ingress.Method,
            Of(ingress.HasEstimate, ingress.Estimate),
            Of(ingress.HasLower, ingress.Lower),
            Of(ingress.HasUpper, ingress.Upper),
            ingress.Confidence,
            ingress.Side,
            ingress.CoverageInDoubt,
            isExtrapolated: false
        );
    }

    private static CleanupFigure<Volume> Sum(
        CleanupFigure<Volume> one,
        CleanupFigure<Volume> other,
        CleanupFigureMethod method,
        double confidence
    )
    {
        Volume? lower = one.HasLower && other.HasLower ? one.Lower + other.Lower : null;
        Volume? upper = one.HasUpper && other.HasUpper ? one.Upper + other.Upper : null;
        var outcome =
            lower.HasValue && upper.HasValue ? CleanupFigureOutcome.Bounded
            : !one.HasEstimate ? one.Outcome
            : lower.HasValue ? CleanupFigureOutcome.NoUpperEnd
            : upper.HasValue ? CleanupFigureOutcome.NoLowerEnd
            : CleanupFigureOutcome.NotDetermined;
        return new CleanupFigure<Volume>(
            outcome,
            method,
            one.HasEstimate && other.HasEstimate ? one.Estimate + other.Estimate : null,
            lower,
            upper,
            confidence,
            IntervalSide.Both,
            one.CoverageInDoubt || other.CoverageInDoubt,
            one.IsExtrapolated
        );
    }

    private CondensateAgreement AgreementOf()
    {
        if (facts.Condensate is not { } condensate)
        {
            return CondensateAgreement.NotMeasured;
        }

        var error = facts.CondensateError.DecimalFractions;
        return DrawnOff.HasLower && condensate.Liters * (1 + error) < DrawnOff.Lower.Liters
                ? CondensateAgreement.LessCollected
            : DrawnOff.HasUpper && condensate.Liters * (1 - error) > DrawnOff.Upper.Liters
                ? CondensateAgreement.MoreCollected
            : DrawnOff.HasLower && DrawnOff.HasUpper ? CondensateAgreement.Agrees
            : CondensateAgreement.NotDetermined;
    }
}
