using OilCondition.Prognosis;
using OilCondition.Text;

namespace OilCondition;

/// <summary>A measurand that moves towards a limit and may cross it within the planning horizon.</summary>
internal sealed class RemainingLifeFinding : Finding
{
    internal RemainingLifeFinding(
        RemainingLife.Forecast life,
        MeasurandState state,
        DateTimeOffset horizon,
        bool followsTreatment
    )
        : base(FindingCode.RemainingLifeShort, Severity.Alert, life.Series.Measurand)
    {
        Life = life;
        State = state;
        Horizon = horizon;
        FollowsTreatment = followsTreatment;
        Earliest =
            life.Crossing.IsLikelyPassed ? life.Crossing.AsOf
            : life.Crossing.TryAt(0.1, out var p10) ? p10
            : horizon;
    }

    /// <summary>The forecast.</summary>
    public RemainingLife.Forecast Life { get; }

    /// <summary>Trend and limit behind it.</summary>
    public MeasurandState State { get; }

    /// <summary>End of the planning horizon.</summary>
    public DateTimeOffset Horizon { get; }

    /// <summary>Crossed by then in one case of ten: the date to plan with.</summary>
    public DateTimeOffset Earliest { get; }

    /// <summary>Chance of crossing within the planning horizon.</summary>
    public double ChanceWithinHorizon => ChanceOf(Life, Horizon);

    /// <summary>Chance of crossing by a moment: since the last reading, where the limit is rather passed by now than not.</summary>
    public static double ChanceOf(RemainingLife.Forecast life, DateTimeOffset by) =>
        life.Crossing.ChanceWithin((by - life.Crossing.AsOf).TotalDays);

    /// <summary>Whether the trend runs since a treatment of this charge: what was removed comes back.</summary>
    public bool FollowsTreatment { get; }

    internal override LimitSide Side => Life.Side;

    /// <inheritdoc/>
    public override IReadOnlyList<EvidenceItem> Evidence
    {
        get
        {
            var trend = State.Trend.Assessment;
            var evidence = new List<EvidenceItem> { EvidenceItem.Figure("limit", Life.Limit, Measurand.Unit) };
            double[] chances = Life.Crossing.IsLikelyPassed ? [] : [0.1, 0.5, 0.9];
            foreach (var chance in chances)
            {
                var id = FormattableString.Invariant($"chance-{chance * 100:0}-percent-by");
                evidence.Add(
                    Life.Crossing.TryAt(chance, out var at)
                        ? EvidenceItem.Date(id, at)
                        : EvidenceItem.Word(id, "no upper bound")
                );
            }

            evidence.Add(EvidenceItem.Number("chance-within-the-planning-horizon", ChanceWithinHorizon, ""));
            evidence.Add(TrendPace.Evidence(State.Trend));
            evidence.Add(EvidenceItem.Word("trend-by", PlainText.Kebab(trend.Method)));
            evidence.Add(EvidenceItem.Number("chance-of-such-a-trend-by-scatter", trend.PValue, ""));
            evidence.Add(EvidenceItem.Number("readings-used", trend.Used.Count, ""));
            evidence.AddRange(
                State
                    .Trend.Judged.LeftOut.GroupBy(left => left.LeftOut!.Value)
                    .OrderBy(group => group.Key)
                    .Select(group =>
                        EvidenceItem.Number(EvidenceNames.LeftOut + PlainText.Kebab(group.Key), group.Count(), "")
                    )
            );
            evidence.Add(EvidenceItem.Date("readings-since", State.Trend.Judged.Points[0].At));
            evidence.Add(EvidenceItem.Word("top-ups", PlainText.Kebab(State.TopUps)));
            if (State.BoundedByTopUps > 0)
            {
                evidence.Add(EvidenceItem.Number("readings-bounded-by-top-ups", State.BoundedByTopUps, ""));
            }

            evidence.Add(EvidenceItem.Word("limit-source", State.LimitOf(Life).Source.ToString()));
            return evidence;
        }
    }

    internal override string Said(Sentences sentences) => sentences.Life(this);
}
