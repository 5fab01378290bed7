using CsCheck;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Advice;

/// <summary>One state for each measurand: its limits inside, one life on each limited side, one finding for each problem.</summary>
public class MeasurandStateTests
{
    private static readonly Source AnySource = Source.CommonPractice("invented");
    private static readonly DateTimeOffset Now = Invented.Start.AddDays(400);

    private static Limit Acid(double? alert, double? alarm, LimitKind kind = LimitKind.Absolute) =>
        new(Measurands.AcidNumber, kind, new LimitBand(alert, alarm), null, AnySource);

    private static ConditionAssessment Assess(Func<int, double> acid, params Limit[] limits) =>
        ConditionAssessor.Assess(
            Invented.History(
                Enumerable
                    .Range(0, 13)
                    .Select(i => Invented.Sample(i, 30 * i, (Measurands.AcidNumber, new Reading(acid(i)))))
            ),
            new LimitSet("test", limits),
            new AssessmentOptions(Now)
        );

    private static double Ageing(int month) => 0.1 + 0.02 * month + 0.004 * (month % 3);

    /// <summary>All that is told, dates to the tick, but not the list of limits itself.</summary>
    private static string Told(ConditionAssessment assessment) =>
        string.Join(
            "\n",
            assessment
                .Findings.Select(finding => $"{finding.Code} {finding.Severity} {Sentences.English.Of(finding)}")
                .Concat(assessment.Alerts.Select(alert => $"{alert.Key} {alert.Severity} {alert.Findings.Count}"))
                .Concat(assessment.Recommendations.Select(one => $"{one.Severity} {Sentences.English.Of(one)}"))
                .Concat(
                    assessment.States.Select(state =>
                        $"{state.Measurand.Id} {state.Worst.State} {state.Worst.Reason} {state.Worst.Since:O} {state.Worst.Pending} "
                        + string.Join(" ", state.Lives.Select(Told))
                    )
                )
                .Concat(assessment.First.Shares.Select(share => $"{share.Life.Limit:R} {share.Chance:0.000000000}"))
                .Append($"{assessment.Worst} {assessment.NextSample?.At:O} {assessment.NextSample?.Reason}")
        );

    private static string Told(RemainingLife life) =>
        $"{life.GetType().Name} {life.Side} {life.Limit:R} "
        + life switch
        {
            RemainingLife.Crosses it => $"{it.P10:O} {it.P50:O} {it.P90:O}",
            RemainingLife.NoLatestDate it => $"{it.P10:O}",
            _ => "",
        };

    [Fact]
    public void The_same_figure_given_twice_moves_no_date()
    {
        var once = Assess(Ageing, Acid(0.3, 0.5));
        var twice = Assess(Ageing, Acid(0.3, 0.5), Acid(0.3, 0.5));

        twice.States.Single().Limits.Count.ShouldBe(2);
        twice.States.Single().Lives.Count.ShouldBe(1);
        twice.NextSample!.At.ShouldBe(once.NextSample!.At);
        once.First.TryAt(0.1, out var first).ShouldBeTrue();
        twice.First.TryAt(0.1, out var again).ShouldBeTrue();
        again.ShouldBe(first);
        Told(twice).ShouldBe(Told(once));
    }

    [Fact]
    public void Alert_and_alarm_in_two_limits_say_the_same_as_in_one()
    {
        foreach (var last in new[] { 0.2, 0.35, 0.6 })
        {
            double Value(int i) => i == 12 ? last : Ageing(i) / 2;
            Told(Assess(Value, Acid(0.3, null), Acid(null, 0.5))).ShouldBe(Told(Assess(Value, Acid(0.3, 0.5))));
        }
    }

    [Fact]
    public void A_life_runs_to_the_strictest_alarm_of_all_kinds_of_fixed_figures()
    {
        // New oil 0.1: a rise of 0.3 is 0.4, stricter than 0.5; the alert of the third limit is no alarm.
        var state = Assess(Ageing, Acid(0.3, 0.5), Acid(0.2, 0.3, LimitKind.ChangeFromNew), Acid(0.35, null))
            .States.Single();

        state.Lives.Single().Limit.ShouldBe(0.4, 1e-12);
        state.LimitOf(state.Lives[0]).Kind.ShouldBe(LimitKind.ChangeFromNew);
        Assess(Ageing, Acid(0.4, null), Acid(0.35, null)).States.Single().Lives.Single().Limit.ShouldBe(0.35, 1e-12);
    }

    [Fact]
    public void One_problem_is_one_finding_with_the_strictest_figure_that_was_passed()
    {
        var assessment = Assess(i => i == 12 ? 0.7 : 0.1, Acid(0.4, 0.6), Acid(0.3, 0.5));

        assessment.Findings.OfType<LimitFinding>().Single().Evaluation.Figure.ShouldBe(0.5);
        assessment.Alerts.Single().Findings.Count.ShouldBe(1);
        assessment.States.Single().Worst.Figure.ShouldBe(0.5);
    }

    [Fact]
    public void A_reading_that_is_only_a_bound_is_not_made_normal_by_a_looser_limit()
    {
        ConditionAssessment Water(params double[] alerts) =>
            ConditionAssessor.Assess(
                Invented.History([
                    Invented.Sample(0, 390, (Measurands.WaterContent, new Reading(60, Qualifier.LessThan))),
                ]),
                new LimitSet(
                    "test",
                    alerts.Select(alert => new Limit(
                        Measurands.WaterContent,
                        LimitKind.Absolute,
                        new LimitBand(alert, null),
                        null,
                        AnySource
                    ))
                ),
                new AssessmentOptions(Now)
            );

        Water(50).States.Single().Worst.State.ShouldBe(LimitState.NotDetermined);
        Water(50, 90).States.Single().Worst.State.ShouldBe(LimitState.NotDetermined);
        Water(90).States.Single().Worst.State.ShouldBe(LimitState.Normal);
    }

    [Fact]
    public void A_limit_that_says_nothing_new_changes_nothing_that_is_told() =>
        Gen.Select(Gen.Int[0, int.MaxValue - 1], Gen.Int[0, 100], Gen.Int[0, 7], Gen.Int[0, 8], Gen.Int[0, 2])
            .Holds(
                (seed, percent, which, where, part) =>
                {
                    var one = new InventedHistories(seed);
                    var limits = InventedHistories.Limits.Limits.ToList();
                    var expected = ConditionAssessor.Assess(
                        one.History(),
                        new LimitSet("once", limits),
                        new AssessmentOptions(one.End.AddDays(seed % 40))
                    );
                    limits.Insert(where, NothingNew(limits[which], percent, part));

                    Told(
                            ConditionAssessor.Assess(
                                one.History(),
                                new LimitSet("and nothing new", limits),
                                new AssessmentOptions(one.End.AddDays(seed % 40))
                            )
                        )
                        .Split('\n')
                        .Order(StringComparer.Ordinal)
                        .ShouldBe(Told(expected).Split('\n').Order(StringComparer.Ordinal));
                },
                iter: 200
            );

    /// <summary>The same limit (0 %), or one whose figures lie up to twice as far out; whole, without its alert, or without its alarm.</summary>
    private static Limit NothingNew(Limit limit, int percent, int part)
    {
        double? Farther(double? figure) =>
            limit.Kind == LimitKind.OwnHistory
                ? figure + (99.9 - figure) * percent / 100
                : figure * (1 + percent / 100.0);
        LimitBand? Band(LimitBand? band) =>
            band is null ? null
            : part == 1 && band.Alarm is not null ? new LimitBand(null, Farther(band.Alarm))
            : part == 2 && band.Alert is not null ? new LimitBand(Farther(band.Alert), null)
            : new LimitBand(Farther(band.Alert), Farther(band.Alarm));
        return new Limit(
            limit.Measurand,
            limit.Kind,
            Band(limit.Upper),
            Band(limit.Lower),
            limit.Source,
            limit.DeadBand * (100 - percent) / 100,
            limit.Confirmations,
            limit.Per,
            limit.OverOilHours
        );
    }

    [Fact]
    public void The_starting_set_for_turbines_gives_one_state_and_one_life_on_each_side_a_measurand()
    {
        var history = Invented.History(
            Enumerable
                .Range(0, 13)
                .Select(i =>
                    Invented.Sample(
                        i,
                        30 * i,
                        (Measurands.Viscosity40, new Reading(46 + 0.1 * (i % 3))),
                        (Measurands.Rpvot, new Reading(900 - 20 * i - 5 * (i % 2)))
                    )
                )
        );
        var oil = new Oil(
            "invented",
            new Dictionary<Measurand, Reading> { [Measurands.Viscosity40] = new(46), [Measurands.Rpvot] = new(900) }
        );
        var machine = new Machine(
            "M1",
            "turbine",
            oil,
            Invented.Machine.ChargeVolume,
            Invented.Machine.RunningTemperature,
            Invented.Machine.StandstillTemperature
        );
        var limits = LimitSet.Starter(StarterEquipment.Turbine);
        var assessment = ConditionAssessor.Assess(
            OilHistory.Create(machine, history.Samples, [], []),
            limits,
            new AssessmentOptions(Now)
        );

        assessment.States.Select(state => state.Measurand).ShouldBeUnique();
        assessment.States.Count.ShouldBe(limits.Limits.Count - 2); // viscosity and RPVOT have two entries each
        MeasurandState Of(Measurand measurand) => assessment.States.Single(state => state.Measurand.Equals(measurand));
        Of(Measurands.Viscosity40).Limits.Count.ShouldBe(2);
        Of(Measurands.Viscosity40).Lives.Select(life => life.Limit).ShouldBe([50.6, 41.4], 1e-9); // 46 ± 10 %, not ± 5 %
        Of(Measurands.Rpvot).Lives.Select(life => life.Limit).ShouldBe([225], 1e-9); // 25 % of 900
    }
}
