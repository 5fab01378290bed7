using System.Text.Json;
using CsCheck;
using OilCondition.Limits;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Limits;

/// <summary>Limits from the machine's own history and from a fleet.</summary>
public class StatisticalLimitTests
{
    private static readonly Source AnySource = Source.CommonPractice("invented");

    /// <summary>Ten readings with mean 10 and standard deviation 1, without a trend.</summary>
    private static readonly double[] Usual = [10.4, 9.1, 11.5, 10.1, 8.6, 9.5, 11.1, 9.7, 10.9, 9.1];

    private static Limit Own(double? alert, double? alarm, int confirmations = 1) =>
        new(
            Measurands.Iron,
            LimitKind.OwnHistory,
            new LimitBand(alert, alarm),
            null,
            AnySource,
            confirmations: confirmations
        );

    private static MeasurandSeries Iron(params double[] values) =>
        Invented
            .History(values.Select((v, i) => Invented.Sample(i, 30 * i, (Measurands.Iron, new Reading(v)))))
            .SampleSeries(Measurands.Iron, Invented.Start, Invented.Start.AddDays(2000));

    [Fact]
    public void The_figure_is_the_normal_tolerance_limit_of_the_earlier_readings()
    {
        var evaluation = Own(95, null).Evaluate(Invented.Oil, Iron([.. Usual, 12]));

        // Mean and standard deviation by hand; factor k(10, 0.95, 0.90) = 2.568, tables of one-sided normal tolerance factors (from memory).
        var mean = Usual.Average();
        var deviation = Math.Sqrt(Usual.Sum(v => (v - mean) * (v - mean)) / 9);
        evaluation.Upper!.Alert!.Value.ShouldBe(mean + 2.568 * deviation, 0.001 * deviation);
        evaluation.State.ShouldBe(LimitState.Normal);
    }

    [Fact]
    public void A_reading_far_outside_the_usual_is_an_alarm()
    {
        var evaluation = Own(95, 99).Evaluate(Invented.Oil, Iron([.. Usual, 16]));

        evaluation.State.ShouldBe(LimitState.Alarm);
        evaluation.Upper!.Alarm!.Value.ShouldBeGreaterThan(evaluation.Upper.Alert!.Value);
    }

    [Fact]
    public void What_is_judged_is_no_part_of_the_yardstick()
    {
        double Figure(double latest) =>
            Own(95, 99).Evaluate(Invented.Oil, Iron([.. Usual, latest])).Upper!.Alarm!.Value;

        Figure(16).ShouldBe(Figure(10));

        // With two confirmations two readings are judged. 12 is near enough to the others not to be left out of them as wild.
        Own(95, null, 2)
            .Evaluate(Invented.Oil, Iron([.. Usual, 12, 12]))
            .Upper!.Alert!.Value.ShouldBe(
                Own(95, null).Evaluate(Invented.Oil, Iron([.. Usual, 12])).Upper!.Alert!.Value
            );
    }

    [Fact]
    public void A_wild_earlier_reading_does_not_widen_the_limits()
    {
        double[] wild = [.. Usual];
        wild[4] = 60;
        var figure = Own(95, null).Evaluate(Invented.Oil, Iron([.. wild, 10])).Upper!.Alert!.Value;

        figure.ShouldBeLessThan(16);
    }

    [Fact]
    public void Fewer_than_eight_earlier_readings_give_none() =>
        Own(95, null).Evaluate(Invented.Oil, Iron([.. Usual.Take(7), 10])).Reason.ShouldBe(LimitReason.TooFewReadings);

    [Fact]
    public void A_history_that_climbs_gives_none()
    {
        var climbing = Enumerable.Range(0, 12).Select(i => 5 + i + 0.2 * (i % 3)).ToArray();

        Own(95, null).Evaluate(Invented.Oil, Iron(climbing)).Reason.ShouldBe(LimitReason.HistoryMoves);
    }

    [Fact]
    public void Readings_that_are_rounded_alike_still_scatter()
    {
        // Eight times 2 mg/kg, read in whole numbers: 3 is one step up, 4 is too far. k(8, 0.99, 0.90) = 3.783 (tables, from memory) over
        // sqrt(6) gives 3.544.
        double[] alike = [2, 2, 2, 2, 2, 2, 2, 2];

        Own(95, 99).Evaluate(Invented.Oil, Iron([.. alike, 3])).State.ShouldBe(LimitState.Normal);
        Own(95, 99).Evaluate(Invented.Oil, Iron([.. alike, 3])).Upper!.Alarm!.Value.ShouldBe(3.544, 0.002);
        Own(95, 99).Evaluate(Invented.Oil, Iron([.. alike, 4])).State.ShouldBe(LimitState.Alarm);
    }

    [Fact]
    public void The_median_as_an_upper_figure_is_an_upper_figure() =>
        Own(50, null)
            .Evaluate(Invented.Oil, Iron([.. Usual, 10]))
            .Upper!.Alert!.Value.ShouldBeGreaterThan(Usual.Average());

    [Fact]
    public void A_lower_percentile_bounds_from_below()
    {
        var limit = new Limit(
            Measurands.Rpvot,
            LimitKind.OwnHistory,
            null,
            new LimitBand(5, 1),
            AnySource,
            confirmations: 1
        );
        var series = Invented
            .History(Usual.Append(4).Select((v, i) => Invented.Sample(i, 30 * i, (Measurands.Rpvot, new Reading(v)))))
            .SampleSeries(Measurands.Rpvot, Invented.Start, Invented.Start.AddDays(2000));
        var evaluation = limit.Evaluate(Invented.Oil, series);

        evaluation.State.ShouldBe(LimitState.Alarm);
        evaluation.Lower!.Alarm!.Value.ShouldBeLessThan(evaluation.Lower.Alert!.Value);
    }

    /// <summary>One sound reading in a hundred passes a 99 % figure: two are asked for unless somebody says otherwise. The figures are the same.</summary>
    [Fact]
    public void An_own_history_limit_waits_for_two_readings_by_default()
    {
        var byDefault = new Limit(Measurands.Rpvot, LimitKind.OwnHistory, null, new LimitBand(5, 1), AnySource);
        var explicitly = new Limit(
            Measurands.Rpvot,
            LimitKind.OwnHistory,
            null,
            new LimitBand(5, 1),
            AnySource,
            confirmations: 1
        );
        byDefault.Confirmations.ShouldBe(2);
        explicitly.Confirmations.ShouldBe(1);
        new Limit(Measurands.Rpvot, LimitKind.Absolute, null, new LimitBand(5, 1), AnySource).Confirmations.ShouldBe(1);
        Json("").Confirmations.ShouldBe(2);
        Json("\"confirmations\": 1,").Confirmations.ShouldBe(1);

        LimitEvaluation Of(Limit limit, params double[] late) =>
            limit.Evaluate(
                Invented.Oil,
                Invented
                    .History(
                        Usual
                            .Concat(late)
                            .Select((v, i) => Invented.Sample(i, 30 * i, (Measurands.Rpvot, new Reading(v))))
                    )
                    .SampleSeries(Measurands.Rpvot, Invented.Start, Invented.Start.AddDays(2000))
            );
        var (waiting, told) = (Of(byDefault, 4), Of(explicitly, 4));
        (waiting.State, waiting.Pending, waiting.Reason).ShouldBe(
            (LimitState.Normal, LimitState.Alarm, LimitReason.AwaitingConfirmation)
        );
        told.State.ShouldBe(LimitState.Alarm);

        // What is judged is no part of the yardstick, so that two readings are judged by those before both.
        waiting.Lower!.Alarm.ShouldBe(Of(explicitly, 0).Lower!.Alarm!.Value, 0.1);
        (Of(byDefault, 4, 4).State >= LimitState.Alert).ShouldBeTrue();
    }

    private static Limit Json(string confirmations) =>
        LimitSet
            .Parse(
                $$"""
                { "name": "invented", "limits": [ { "measurand": "rpvot", "kind": "own-history", "unit": "%", {{confirmations}}
                  "lower": { "alert": 5, "alarm": 1 }, "source": { "kind": "common-practice", "text": "invented" } } ] }
                """
            )
            .Limits.Single();

    [Theory]
    [InlineData(49.9)]
    [InlineData(100.0)]
    [InlineData(0.95)]
    public void A_percentile_of_the_wrong_side_is_refused(double figure) =>
        Should.Throw<ArgumentOutOfRangeException>(() => Own(figure, null)).Message.ShouldContain("50 to 99.99 %");

    [Fact]
    public void How_often_a_usual_reading_is_alarmed_stays_below_the_percentile()
    {
        // 99th percentile with 90 % confidence: on average fewer than 1 % of new usual readings lie beyond it.
        var random = new Random(20_261_125);
        double Normal() =>
            Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var judged = 0;
        var beyond = 0;
        for (var run = 0; run < 1500; run++)
        {
            var values = Enumerable.Range(0, 13).Select(_ => 20 + 2 * Normal()).ToArray();
            var evaluation = Own(99, null).Evaluate(Invented.Oil, Iron(values));
            judged += evaluation.State == LimitState.NotDetermined ? 0 : 1;
            beyond += evaluation.State >= LimitState.Alert ? 1 : 0;
        }

        judged.ShouldBeGreaterThan(1300, "seed 20261125");
        ((double)beyond / judged).ShouldBeLessThan(0.01, "seed 20261125");
    }

    /// <summary>Machines of one charge each, sampled once more than the machine before; the latest reading is the one given.</summary>
    private static OilHistory[] Fleet(params Reading[] latest) =>
        [
            .. latest.Select(
                (reading, m) =>
                    Invented.History(
                        Enumerable
                            .Range(0, m % 4)
                            .Select(i => Invented.Sample(i, 30 * i, (Measurands.Iron, new Reading(10_000))))
                            .Append(Invented.Sample(99, 500, (Measurands.Iron, reading)))
                    )
            ),
        ];

    private static Reading[] UpTo(int last) => [.. Enumerable.Range(1, last).Select(i => new Reading(i))];

    private static Limit FleetLimit(double alert, double? alarm) =>
        new(Measurands.Iron, LimitKind.Fleet, new LimitBand(alert, alarm), null, AnySource);

    private static Limit Resolved(Limit limit, params OilHistory[] fleet) =>
        new LimitSet("test", [limit]).WithFleet(fleet).Limits.Single();

    [Fact]
    public void A_fleet_gives_its_percentile_by_rank_and_says_so()
    {
        // 1 to 99: the 90th percentile has rank 0.9 x 100 = 90.
        var limit = Resolved(FleetLimit(90, 95), Fleet(UpTo(99)));

        limit.Kind.ShouldBe(LimitKind.Absolute);
        limit.Upper!.Alert!.Value.ShouldBe(90, 1e-9);
        limit.Upper.Alarm!.Value.ShouldBe(95, 1e-9);
        limit.Source.Kind.ShouldBe(SourceKind.UserData);
        limit.Source.Text.ShouldBe(
            "percentiles 90 and 95 of the latest readings of 99 oil charges of 99 machines; invented"
        );
    }

    [Theory]
    [InlineData(90, 22)] // smallest n with 1 - 0.9^n >= 0.9, by hand ln 0.1 / ln 0.9 = 21.9
    [InlineData(95, 45)] // 44.9
    [InlineData(98, 114)] // 113.97
    public void Too_small_a_fleet_is_refused(double percentile, int needed)
    {
        Resolved(FleetLimit(percentile, null), Fleet(UpTo(needed))).Kind.ShouldBe(LimitKind.Absolute);
        var refused = Resolved(FleetLimit(percentile, null), Fleet(UpTo(needed - 1)));
        refused.Kind.ShouldBe(LimitKind.Fleet);
        refused.Evaluate(Invented.Oil, Iron(1, 2)).Reason.ShouldBe(LimitReason.FleetTooSmall);
        refused.Upper!.Alert.ShouldBe(percentile);
        var missing = refused.MissingFigures.Single();
        (missing.Charges, missing.ChargesNeeded).ShouldBe((needed - 1, needed));
        FleetLimit(percentile, null).Evaluate(Invented.Oil, Iron(1, 2)).Reason.ShouldBe(LimitReason.NoFleet);
    }

    /// <summary>Of 60 charges the 90th percentile has rank 0.9 x 61 = 54.9; the 98th takes 114.</summary>
    [Fact]
    public void A_percentile_that_is_refused_leaves_its_neighbour()
    {
        var limit = Resolved(FleetLimit(90, 98), Fleet(UpTo(60)));

        limit.Kind.ShouldBe(LimitKind.Absolute);
        limit.Upper!.Alert!.Value.ShouldBe(54.9, 1e-9);
        limit.Upper.Alarm.ShouldBeNull();
        limit.Lower.ShouldBeNull();
        limit.Source.Text.ShouldBe("percentile 90 of the latest readings of 60 oil charges of 60 machines; invented");
        var missing = limit.MissingFigures.Single();
        (missing.Side, missing.Zone, missing.Reason).ShouldBe(
            (LimitSide.Upper, LimitState.Alarm, LimitReason.FleetTooSmall)
        );
        (missing.Percentile, missing.Charges, missing.ChargesNeeded).ShouldBe((98, 60, 114));
        missing.ToString().ShouldBe("upper alarm, percentile 98: fleet too small (60 of 114 oil charges)");

        var evaluation = limit.Evaluate(Invented.Oil, Iron(1, 2, 1000));
        evaluation.State.ShouldBe(LimitState.Alert);
        evaluation.ToString().ShouldEndWith($"; {missing}");
    }

    [Fact]
    public void Bounds_that_touch_one_percentile_leave_its_neighbour_too()
    {
        // The sixty lowest of 99 read '<61': the 40th percentile from below is one of them, the 90th is rank 90.
        var readings = UpTo(99);
        for (var i = 0; i < 60; i++)
        {
            readings[i] = new Reading(61, Qualifier.LessThan);
        }

        var limit = Resolved(
            new Limit(Measurands.Iron, LimitKind.Fleet, new LimitBand(90, null), new LimitBand(40, 10), AnySource),
            Fleet(readings)
        );

        limit.Upper!.Alert!.Value.ShouldBe(90, 1e-9);
        limit.Lower.ShouldBeNull();
        limit
            .MissingFigures.Select(one => (one.Side, one.Zone, one.Percentile, one.Reason))
            .ShouldBe([
                (LimitSide.Lower, LimitState.Alert, 40, LimitReason.FleetOnlyBounded),
                (LimitSide.Lower, LimitState.Alarm, 10, LimitReason.FleetOnlyBounded),
            ]);
    }

    /// <summary>Two wild readings of fourteen, a sixth.</summary>
    [Fact]
    public void A_search_for_wild_readings_that_ends_at_its_most_is_said_of_the_measurand()
    {
        var history = Invented.History(
            Enumerable
                .Range(0, 14)
                .Select(i =>
                    Invented.Sample(i, 30 * i, (Measurands.Iron, new Reading(i is 4 or 9 ? 60 : 10 + 0.3 * (i % 3))))
                )
        );
        var state = ConditionAssessor
            .Assess(
                history,
                new LimitSet("test", [FleetLimit(90, null)]),
                new AssessmentOptions(Invented.Start.AddDays(400))
            )
            .States.Single();

        state.Trend.Assessment.Outliers.Count.ShouldBe(2);
        state.ToString().ShouldEndWith("(12 readings, 2 set aside, as many wild ones as are looked for)");
    }

    /// <summary>From the fleet to what a plant reads: state, finding, evidence, JSON.</summary>
    [Fact]
    public void What_a_fleet_did_not_give_is_said_in_state_sentence_and_document()
    {
        var limits = new LimitSet("test", [FleetLimit(90, 98)]).WithFleet(Fleet(UpTo(60)));
        var history = Invented.History(
            Enumerable.Range(0, 3).Select(i => Invented.Sample(i, 30 * i, (Measurands.Iron, new Reading(80 + i))))
        );
        var assessment = ConditionAssessor.Assess(history, limits, new AssessmentOptions(Invented.Start.AddDays(61)));

        const string Words =
            "the upper alarm is not determined: percentile 98 takes 114 oil charges with a reading, the fleet has 60";
        assessment.States.Single().ToString().ShouldStartWith($"iron 82 mg/kg: alert; {Words}; ");
        var finding = assessment.Findings.Single(one => one.Code == FindingCode.LimitPassed);
        finding.ToString().ShouldContain("above the alert limit of 54.9 mg/kg");
        finding.ToString().ShouldContain(Words);
        var item = finding.Evidence.Single(one => one.Id == "limit-missing");
        item.ToString().ShouldBe($"limit missing {Words}");
        Sentences
            .German.Of(item)
            .ShouldBe(
                "fehlende Grenze die obere Alarmgrenze ist nicht bestimmt: Perzentil 98 braucht 114 Ölfüllungen mit einem Wert, die Flotte hat 60"
            );
        using var json = JsonDocument.Parse(assessment.ToJson());
        var written = json.RootElement.GetProperty("states")[0].GetProperty("limits")[0];
        written.GetProperty("upper").GetRawText().ShouldNotContain("alarm");
        written.GetProperty("upper").GetProperty("alert").GetDouble().ShouldBe(54.9);
        var missing = written.GetProperty("missingFigures")[0];
        string Text(string name) => missing.GetProperty(name).GetString()!;
        (Text("side"), Text("zone"), Text("reason")).ShouldBe(("upper", "alarm", "fleet-too-small"));
        missing.GetProperty("percentile").GetDouble().ShouldBe(98);
        missing.GetProperty("charges").GetInt32().ShouldBe(60);
        missing.GetProperty("chargesNeeded").GetInt32().ShouldBe(114);
    }

    [Fact]
    public void A_lower_percentile_needs_as_many_and_counts_from_below()
    {
        var limit = new Limit(Measurands.Iron, LimitKind.Fleet, null, new LimitBand(10, null), AnySource);

        Resolved(limit, Fleet(UpTo(21))).Kind.ShouldBe(LimitKind.Fleet);
        Resolved(limit, Fleet(UpTo(29))).Lower!.Alert!.Value.ShouldBe(3, 1e-9); // rank 0.1 x 30
    }

    [Fact]
    public void Every_charge_of_a_machine_counts_once_with_its_latest_reading_that_is_not_suspect()
    {
        // A hundred charges of one machine, four samples each; in one charge the latest bottle is of another oil.
        OilSample Sample(int charge, int i, double iron, bool isSwapped = false) =>
            Invented.Sample(
                10 * charge + i,
                100 * charge + 10 * i,
                (Measurands.Iron, new Reading(iron)),
                (Measurands.Viscosity40, new Reading(isSwapped ? 321 : 46)),
                (Measurands.Zinc, new Reading(isSwapped ? 12 : 400))
            );
        var samples = Enumerable
            .Range(1, 99)
            .SelectMany(c => Enumerable.Range(0, 6).Select(i => Sample(c, i, i == 4 ? c : 5000)).Where((_, i) => i < 5))
            .Append(Sample(50, 5, 40_000, isSwapped: true));
        var changes = Enumerable.Range(1, 99).Select(c => new OilChange(Invented.Start.AddDays(100 * c - 1)));

        var limit = Resolved(FleetLimit(90, null), Invented.History(samples, [.. changes]));

        limit.Upper!.Alert!.Value.ShouldBe(90, 1e-9);
        limit.Source.Text.ShouldContain("99 oil charges of 1 machines");
    }

    [Theory]
    [InlineData(Qualifier.LessThan, 1, 60, 90.0)] // sixty of '<5': the rank 90 lies above them
    [InlineData(Qualifier.LessThan, 1, 90, null)] // rank 90 is one of the bounds
    [InlineData(Qualifier.GreaterThan, 91, 99, 90.0)] // the nine highest read '>200'
    [InlineData(Qualifier.GreaterThan, 90, 99, null)]
    [InlineData(Qualifier.LessThan, 95, 95, null)] // one of '<95' may lie anywhere below: ranks move by one
    public void A_percentile_is_given_only_where_bounds_do_not_touch_it(
        Qualifier qualifier,
        int from,
        int to,
        double? expected
    )
    {
        var readings = UpTo(99);
        for (var i = from; i <= to; i++)
        {
            readings[i - 1] = new Reading(
                from == to ? i
                    : qualifier == Qualifier.LessThan ? 5
                    : 200,
                qualifier
            );
        }

        var limit = Resolved(FleetLimit(90, null), Fleet(readings));

        (limit.Kind == LimitKind.Absolute).ShouldBe(expected is not null);
        limit.Upper!.Alert!.Value.ShouldBe(90, 1e-9);
        var reason = limit.Evaluate(Invented.Oil, Iron(1, 2)).Reason;
        reason.ShouldBe(expected is null ? LimitReason.FleetOnlyBounded : LimitReason.Compared);
    }

    [Fact]
    public void Wherever_the_bounded_readings_lie_a_given_percentile_is_that_of_the_true_ones() =>
        Gen.Select(Gen.Int[0, 60], Gen.Int[0, 60], Gen.Int[22, 60], Gen.Int[0, 10_000])
            .Holds(
                (detection, saturation, count, seed) =>
                {
                    var random = new Random(seed);
                    var truth = Enumerable.Range(0, count).Select(_ => (double)random.Next(0, 200)).ToArray();
                    var seen = truth.Select(value =>
                        value < detection ? new Reading(detection, Qualifier.LessThan)
                        : value > 100 + saturation ? new Reading(100 + saturation, Qualifier.GreaterThan)
                        : new Reading(value)
                    );
                    var limit = Resolved(FleetLimit(90, null), Fleet([.. seen]));
                    if (limit.Kind == LimitKind.Absolute)
                    {
                        Resolved(FleetLimit(90, null), Fleet([.. truth.Select(value => new Reading(value))]))
                            .Upper!.Alert.ShouldBe(limit.Upper!.Alert);
                    }
                },
                iter: 200
            );

    [Fact]
    public void Order_of_the_fleet_changes_nothing() =>
        Gen.Shuffle(Fleet(UpTo(99)))
            .Holds(fleet => Resolved(FleetLimit(90, null), fleet).Upper!.Alert!.Value.ShouldBe(90, 1e-9), iter: 20);
}
