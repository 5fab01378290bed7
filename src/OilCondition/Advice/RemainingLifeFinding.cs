using OilCondition.Prognosis;
using OilCondition.Sampling;

namespace OilCondition.Advice;

/// <summary>A limit that is likely to be crossed within the planning horizon.</summary>
public sealed class RemainingLifeFinding : Finding
{
    internal RemainingLifeFinding(RemainingLife.Crosses life, bool followsTreatment)
        : base(FindingCode.RemainingLifeShort, Severity.Alert, life.Series.Measurand)
    {
        Life = life;
        FollowsTreatment = followsTreatment;
    }

    /// <summary>The forecast.</summary>
    public RemainingLife.Crosses Life { get; }

    /// <summary>Whether the trend runs since a treatment of this charge: what was removed comes back.</summary>
    public bool FollowsTreatment { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<EvidenceItem> Evidence
    {
        get
        {
            var slope = Life.Trend.Slope * 30;
            var logarithmic = Measurand.Scale == NaturalScale.Logarithmic;
            return
            [
                EvidenceItem.Number("limit", Life.Limit, Measurand.Unit),
                EvidenceItem.Date("10 % chance by", Life.P10.At),
                EvidenceItem.Date("50 % chance by", Life.P50.At),
                EvidenceItem.Date("90 % chance by", Life.P90.At),
                logarithmic
                    ? EvidenceItem.Number("factor per 30 days", Math.Exp(slope), "")
                    : EvidenceItem.Number("change per 30 days", slope, Measurand.Unit),
                EvidenceItem.Number("chance of such a slope by scatter", Life.Trend.SlopePValue, ""),
                EvidenceItem.Number("readings used", Life.Trend.Count, ""),
                EvidenceItem.Number(
                    "readings left out",
                    Life.Series.LeftOut.Count + Life.Series.Points.Count - Life.Trend.Count,
                    ""
                ),
                EvidenceItem.Date("readings since", Life.Series.Origin),
            ];
        }
    }
}
