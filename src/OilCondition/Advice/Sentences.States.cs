using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Text;
using OilCondition.Treatment;

namespace OilCondition;

/// <content>What is to be done and heeded, and where a measurand stands.</content>
public sealed partial class Sentences
{
    /// <summary>A recommendation as a sentence.</summary>
    /// <param name="recommendation">The recommendation.</param>
    /// <returns>What to do, with quantities.</returns>
    public string Of(Recommendation recommendation)
    {
        var action = Guard.NotNull(recommendation).Action;
        // Where no sample is on record, or none for long, there is none to be confirmed.
        var isFirst =
            action == RecommendedAction.SampleAgain
            && recommendation.Problems.All(problem => problem.Topic == ProblemTopic.Sampling);
        var what = Say(isFirst ? "recommendation.sample" : "recommendation." + PlainText.Kebab(action));
        return recommendation.Quantities.Count == 0
            ? what
            : Say(
                "recommendation.with",
                ("what", what),
                ("quantities", string.Join("; ", recommendation.Quantities.Select(Of)))
            );
    }

    /// <summary>A caution as a sentence.</summary>
    /// <param name="caution">The caution.</param>
    /// <returns>The usual warning of the trade.</returns>
    public string Of(Caution caution) => Say("caution." + PlainText.Kebab(caution));

    /// <summary>What stands with every decision that is shown: who decides, and what comes first.</summary>
    public string Notice => book["decision.notice"];

    /// <summary>A kind of treatment.</summary>
    /// <param name="kind">The kind.</param>
    /// <returns>For example <c>vacuum dehydration</c>.</returns>
    public string Of(TreatmentKind kind) => Say("treatment." + PlainText.Kebab(kind));

    /// <summary>Where a measurand stands against its limits, in a word.</summary>
    /// <param name="state">The state.</param>
    /// <returns>For example <c>alarm</c>.</returns>
    public string Of(LimitState state) => Say("state." + PlainText.Kebab(state));

    /// <summary>How grave something is, in a word.</summary>
    /// <param name="severity">The severity.</param>
    /// <returns>For example <c>alarm</c>.</returns>
    public string Of(Severity severity) => Say("state." + PlainText.Kebab(severity));

    /// <summary>Why the next sample is due when it is, as a sentence.</summary>
    /// <param name="nextSample">The next sample.</param>
    /// <returns>One sentence with its date.</returns>
    public string Of(NextSample nextSample) =>
        Say(
            Guard.NotNull(nextSample).IsOverdue ? "next.overdue" : "next.due",
            ("date", Date(nextSample.At)),
            ("why", Say("next." + PlainText.Kebab(nextSample.Reason)))
        );

    /// <summary>Why a state is not determined, as a phrase.</summary>
    /// <param name="reason">The reason.</param>
    /// <returns>A phrase without a full stop.</returns>
    public string Of(LimitReason reason) => Say("reason." + PlainText.Kebab(reason));

    /// <summary>A percentile that a fleet did not give, as a phrase.</summary>
    /// <param name="missing">The figure.</param>
    /// <returns>For example <c>the upper alarm is not determined: percentile 98 takes 114 oil charges with a reading, the fleet has 60</c>.</returns>
    public string Of(Limit.MissingFigure missing) =>
        Say(
            "missing.figure",
            ("side", Say("side." + PlainText.Kebab(Guard.NotNull(missing).Side))),
            ("word", Say("word." + PlainText.Kebab(missing.Zone))),
            (
                "why",
                Say(
                    missing.Reason == LimitReason.FleetOnlyBounded ? "missing.bounded" : "missing.few",
                    ("percentile", Reported(missing.Percentile)),
                    ("needed", Number(missing.ChargesNeeded)),
                    ("charges", Number(missing.Charges))
                )
            )
        );

    /// <summary>The figures of a measurand that a fleet did not give, each as a phrase behind a semicolon.</summary>
    internal string Missing(IEnumerable<LimitEvaluation> limits) =>
        string.Concat(limits.SelectMany(one => one.Limit.MissingFigures).Select(missing => $"; {Of(missing)}"));

    /// <summary>What a measurand does, as a phrase with its figures that agrees with its limits and its findings.</summary>
    /// <remarks>
    /// A measurand that changed at once, or stands beyond a limit, is not called without a trend only because its readings are too few or too scattered
    /// to show an even one: what they went from and to is said instead.
    /// </remarks>
    /// <param name="state">Where the measurand stands.</param>
    /// <returns>A phrase without a full stop.</returns>
    public string Of(MeasurandState state)
    {
        var (measurand, trend) = (Guard.NotNull(state).Measurand, state.Trend);
        if (SuddenChangeFinding.Of(state) is { } change)
        {
            return Say(
                change.IsUnconfirmed ? "trend.sudden" : "trend.changed",
                ("course", Course(change)),
                ("readings", Readings(trend))
            );
        }

        var points = trend.Judged.Points;
        var isEven = trend.Assessment.Verdict is TrendVerdict.Rising or TrendVerdict.Falling;
        return !isEven && state.Worst.State >= LimitState.Alert && points.Count > 1
            ? Say(
                "trend.uneven",
                ("first", Figure(points[0].Reading.Value, measurand)),
                ("last", Text(points[points.Count - 1].Reading, measurand)),
                ("readings", Readings(trend))
            )
            : Of(trend, state.Lives);
    }

    /// <summary>What a trend alone shows, as a phrase with its pace; limits and findings are those of a <see cref="MeasurandState"/>.</summary>
    /// <param name="trend">The trend.</param>
    /// <returns>A phrase without a full stop, such as <c>rising, 0.01 mgKOH/g per 30 days (13 readings)</c>.</returns>
    public string Of(SeriesTrend trend) => Of(Guard.NotNull(trend), []);

    private string Of(SeriesTrend trend, IReadOnlyList<RemainingLife> lives)
    {
        var worse = trend.Series.Measurand.Worse;
        var better = worse == LimitSide.Upper ? TrendVerdict.Falling : TrendVerdict.Rising;
        var verdict = trend.Assessment.Verdict;

        // On a side that is limited it may go too far.
        var ahead = lives.FirstOrDefault(life => FindingList.MovesTowards(trend.Assessment, life.Side));
        var improving = worse != LimitSide.Both && verdict == better && ahead is null ? "-improving" : "";
        return verdict switch
        {
            TrendVerdict.Rising => Say(
                "trend.rising" + improving,
                ("pace", Pace(trend, ahead)),
                ("readings", Readings(trend))
            ),
            TrendVerdict.Falling => Say(
                "trend.falling" + improving,
                ("pace", Pace(trend, ahead)),
                ("readings", Readings(trend))
            ),
            TrendVerdict.NoTrend => Say("trend.none", ("readings", Readings(trend))),
            _ => Say("trend.few", ("count", Number(trend.Judged.Points.Count)), ("aside", Aside(trend))),
        };
    }

    /// <summary>How long a measurand has to a limit, as a phrase that agrees with what its trend says.</summary>
    /// <param name="state">The state of the measurand.</param>
    /// <param name="life">One of its lives.</param>
    /// <returns>A phrase without a full stop; dates are those of 10, 50 and 90 % chance.</returns>
    public string Of(MeasurandState state, RemainingLife life)
    {
        var limit = ("limit", Figure(Guard.NotNull(life).Limit, Guard.NotNull(state).Measurand));
        if (life is not RemainingLife.Forecast forecast)
        {
            return life is RemainingLife.TooFewReadings few
                ? Say("life.few", limit, ("count", Number(few.Count)), ("needed", Number(few.Needed)))
                : Say("life.passed", limit);
        }

        // Dates are those of a limit that is not passed yet, which none of them says.
        if (forecast.Crossing.IsLikelyPassed)
        {
            return Say("life.unseen", limit, ("chance", Unseen(forecast)));
        }

        // What may happen one day in decades is no news, and its dates would only hide those that matter.
        if (
            forecast.Crossing.ChanceBefore(forecast.Crossing.AsOf.AddYears(5)) < 0.1
            || !forecast.Crossing.TryAt(0.1, out var p10)
        )
        {
            return Say("life.far", limit);
        }

        var change = SuddenChangeFinding.Of(state);
        if (!FindingList.MovesTowards(state.Trend.Assessment, life.Side) && change?.Side != life.Side)
        {
            // Beyond a limit already, or gone from its level at once, it is not said to stand still.
            return Say(
                state.Worst.State >= LimitState.Alert || change is not null ? "life.beyond" : "life.no-trend",
                limit,
                ("date", Date(p10))
            );
        }

        return life is RemainingLife.Crosses crosses
            ? Say("life.dates", limit, ("early", Date(p10)), ("middle", Date(crosses.P50)), ("late", Date(crosses.P90)))
            : Say("life.open", limit, ("early", Date(p10)));
    }

    /// <summary>The chance in per cent that a limit has been passed by now, never told as a certainty.</summary>
    private string Unseen(RemainingLife.Forecast life) =>
        Number(Math.Min(99, Math.Floor(100 * life.Crossing.ChanceUnseenBefore(life.Crossing.AsOf))));

    /// <summary>The hours of a treatment, the middle and from 10 to 90 % of the cases.</summary>
    /// <param name="band">The band.</param>
    /// <returns>For example <c>15.7 h (14.1 to 17.5)</c>.</returns>
    public string Hours(TreatmentBand band) =>
        (Guard.NotNull(band).TimeP10, band.TimeP50, band.TimeP90) switch
        {
            ({ } early, { } middle, { } late) when Hour(early) == Hour(late) => Say(
                "hours.exact",
                ("hours", Hour(middle))
            ),
            ({ } early, { } middle, { } late) => Say(
                "hours.band",
                ("middle", Hour(middle)),
                ("early", Hour(early)),
                ("late", Hour(late))
            ),
            (_, { } middle, _) => Say("hours.or-more", ("hours", Hour(middle))),
            ({ } early, _, _) => Say("hours.or-more", ("hours", Hour(early))),
            _ => Say("hours.open"),
        };

    /// <summary>The topics that ask for something, in words.</summary>
    /// <param name="recommendation">The recommendation.</param>
    /// <returns>For example <c>Water, dirt</c>.</returns>
    public string Topics(Recommendation recommendation) =>
        Capital(
            string.Join(
                ", ",
                Guard
                    .NotNull(recommendation)
                    .Problems.Select(problem => Topic(problem.Topic))
                    .Distinct(StringComparer.Ordinal)
            )
        );

    /// <summary>How many readings a trend rests on, and how many it set aside.</summary>
    private string Readings(SeriesTrend trend) =>
        Say("trend.readings", ("count", Number(trend.Judged.Points.Count)), ("aside", Aside(trend)));

    private string Aside(SeriesTrend trend)
    {
        int Count(LeftOutReason reason) => trend.Judged.LeftOut.Count(point => point.LeftOut == reason);
        var (wild, before, other) = (
            Count(LeftOutReason.Wild),
            Count(LeftOutReason.BeforeChange),
            Count(LeftOutReason.OtherMethod)
        );
        var rest = trend.Judged.LeftOut.Count - trend.Series.LeftOut.Count - wild - before;
        var more = trend.Assessment.Reasons.Contains(TrendReason.MoreOutliersPossible);
        return string.Concat(
            wild + rest == 0 ? "" : Say(more ? "trend.aside-most" : "trend.aside", ("count", Number(wild + rest))),
            before == 0
                ? ""
                : Say("trend.aside-before", ("count", Number(before)), ("date", Date(trend.Judged.Points[0].At))),
            other == 0 ? "" : Say("trend.other-method", ("count", Number(other)))
        );
    }

    /// <summary>How fast a trend goes, with as many digits as the interval of its slope bears.</summary>
    private string Pace(SeriesTrend trend) =>
        TrendPace.IsFactor(trend)
            ? Say("trend.factor", ("factor", Number(TrendPace.Factor(trend))))
            : Say("trend.change", ("change", Change(trend)));

    /// <summary>The same beside what lies ahead: a mean pace that would lead to other dates is said to be a mean.</summary>
    private string Pace(SeriesTrend trend, RemainingLife? ahead)
    {
        var pace = Pace(trend);
        return ahead is not RemainingLife.Forecast life ? pace
            : TrendPace.IsFasterOfLate(trend, life) ? Say("trend.faster", ("pace", pace))
            : TrendPace.IsSlowerAhead(trend, life) ? Say("trend.on-average", ("pace", pace))
            : pace;
    }

    private string Change(SeriesTrend trend)
    {
        var unit = TrendPace.Unit(trend);
        var change = Scaled(TrendPace.Change(trend), unit)!.Value;
        var number = Decimal(PlainText.Number(change, Scaled(TrendPace.Uncertainty(trend), unit)));
        return $"{number} {Shown(0, unit).Unit}";
    }

    private string Course(SuddenChangeFinding change) =>
        Say(
            "trend.course",
            ("before", Level(change.Before, change)),
            ("after", $"{Level(change.After, change)} {Shown(0, change.Measurand.Unit).Unit}".TrimEnd())
        );

    private string Level(double value, SuddenChangeFinding change) =>
        Bare(value, change.Measurand.Unit, Math.Abs(change.After - change.Before) / 10);

    private string Hour(TimeSpan time) => Decimal(PlainText.Number(time.TotalHours, time.TotalHours / 20));
}
