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
        CameIn = facts.WaterIngress is { } ingress ? Stated(ingress.KilogramsPerHour, length, Removed) : null;
        DrawnOff = CameIn is { } entered ? Sum(Removed, entered, Removed.Method, confidence) : Removed;
        if (
            CameIn is null
            && facts.FloorWithoutIngress is { } floor
            && account.Ingress(floor, confidence) is { Estimate: not null } found
        )
        {
            // Either interval may miss: at half the uncertainty each their sum covers as often as stated.
            var half = 1 - (1 - confidence) / 2;
            CameIn = Over(found, length);
            DrawnOff = Sum(
                account.FallSince(facts.Before, at, half),
                Over(account.Ingress(floor, half), length),
                CleanupFigureMethod.TwoIntervals,
                confidence
            );
        }

        Expected = Condensed(DrawnOff, facts.ExhaustShare);
        Difference = facts.Condensate - Expected.Estimate;
        Agreement = AgreementOf();
        Reasons = Agreement switch
        {
            CondensateAgreement.LessCollected =>
            [
                .. facts.ExhaustShare is null ? [CondensateReason.VapourWithExhaust] : Array.Empty<CondensateReason>(),
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

    public CleanupFigure<Volume>? CameIn { get; }

    public CleanupFigure<Volume> DrawnOff { get; }

    /// <summary>What should stand in the condensate vessel: drawn off, less what leaves with the exhaust.</summary>
    public CleanupFigure<Volume> Expected { get; }

    public Volume? Difference { get; }

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
            coverageInDoubt: false,
            isExtrapolated: false
        );
    }

    private static CleanupFigure<Volume> Over(CleanupFigure<MassFlow> ingress, TimeSpan length)
    {
        Volume? Of(MassFlow? flow) => flow is { } some ? Litres(some.KilogramsPerHour * length.TotalHours) : null;
        return new CleanupFigure<Volume>(
            ingress.Outcome,
            ingress.Method,
            Of(ingress.Estimate),
            Of(ingress.Lower),
            Of(ingress.Upper),
            ingress.Confidence,
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
        var lower = one.Lower + other.Lower;
        var upper = one.Upper + other.Upper;
        var outcome =
            lower.HasValue && upper.HasValue ? CleanupFigureOutcome.Bounded
            : one.Estimate is null ? one.Outcome
            : lower.HasValue ? CleanupFigureOutcome.NoUpperEnd
            : upper.HasValue ? CleanupFigureOutcome.NoLowerEnd
            : CleanupFigureOutcome.NotDetermined;
        return new CleanupFigure<Volume>(
            outcome,
            method,
            one.Estimate + other.Estimate,
            lower,
            upper,
            confidence,
            one.CoverageInDoubt || other.CoverageInDoubt,
            one.IsExtrapolated
        );
    }

    private static CleanupFigure<Volume> Condensed(CleanupFigure<Volume> drawnOff, Ratio? exhaustShare)
    {
        if (exhaustShare is not { } share)
        {
            return drawnOff;
        }

        var stays = 1 - share.DecimalFractions;
        return new CleanupFigure<Volume>(
            drawnOff.Outcome,
            drawnOff.Method,
            drawnOff.Estimate * stays,
            drawnOff.Lower * stays,
            drawnOff.Upper * stays,
            drawnOff.Confidence,
            drawnOff.CoverageInDoubt,
            drawnOff.IsExtrapolated
        );
    }

    private CondensateAgreement AgreementOf()
    {
        if (facts.Condensate is not { } condensate)
        {
            return CondensateAgreement.NotMeasured;
        }

        var error = facts.CondensateError.DecimalFractions;
        return condensate.Liters * (1 + error) < Expected.Lower?.Liters ? CondensateAgreement.LessCollected
            : condensate.Liters * (1 - error) > Expected.Upper?.Liters ? CondensateAgreement.MoreCollected
            : Expected is { Lower: not null, Upper: not null } ? CondensateAgreement.Agrees
            : CondensateAgreement.NotDetermined;
    }
}
