using CsCheck;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Sampling;

public class OilHistoryTests
{
    private static OilSample Water(int number, double days, double ppm) =>
        Invented.Sample(number, days, (Measurands.WaterContent, new Reading(ppm)));

    [Fact]
    public void Order_of_rows_changes_nothing()
    {
        OilSample[] samples = [.. Enumerable.Range(0, 12).Select(i => Water(i, 10 * i, 50 + i))];
        var forward = Invented.History(samples);
        var backward = Invented.History(samples.Reverse());

        backward.Samples.Select(one => one.SampleNumber).ShouldBe(forward.Samples.Select(one => one.SampleNumber));
        forward.Samples.Select(one => one.TakenAt).ShouldBeInOrder();
    }

    [Fact]
    public void A_repeated_sample_is_kept_once_and_said()
    {
        var history = Invented.History([Water(1, 0, 50), Water(2, 9, 60), Water(2, 9, 60)]);

        history.Samples.Count.ShouldBe(2);
        history.Issues.Single().Kind.ShouldBe(HistoryIssueKind.RepeatedSample);
    }

    [Fact]
    public void A_number_used_twice_keeps_the_first_and_sets_the_other_aside_with_its_readings()
    {
        var history = Invented.History([Water(1, 0, 50), Water(1, 9, 60)]);

        history.Samples.Single().Readings[Measurands.WaterContent].Value.ShouldBe(50);
        var issue = history.Issues.Single();
        issue.Kind.ShouldBe(HistoryIssueKind.ConflictingSample);
        issue.Readings[Measurands.WaterContent].Value.ShouldBe(60);
    }

    [Theory]
    [InlineData(9, 60.0, HistoryIssueKind.ConflictingSample)]
    [InlineData(0, 60.0, HistoryIssueKind.ConflictingSample)]
    [InlineData(0, -5.0, HistoryIssueKind.ImplausibleReading)]
    public void What_the_laboratory_wrote_on_a_report_set_aside_stays_with_its_issue(
        int days,
        double water,
        HistoryIssueKind kind
    )
    {
        OilSample Report(int day, double value, string remark) =>
            new(
                "S1",
                Invented.Start.AddDays(day),
                new Dictionary<Measurand, Reading> { [Measurands.WaterContent] = new(value) },
                new Dictionary<string, string> { ["Remark"] = remark }
            );
        List<OilSample> reports = [Report(days, water, "bottle leaked")];
        if (kind != HistoryIssueKind.ImplausibleReading)
        {
            reports.Insert(0, Report(0, 50, "clear"));
        }

        var history = Invented.History(reports);

        history
            .Issues.Where(issue => issue.Kind == kind)
            .Select(issue => issue.Texts["Remark"])
            .ShouldContain("bottle leaked");
        PublicState.Of(OilHistory.Parse(history.ToJson())).ShouldBe(PublicState.Of(history));
    }

    [Theory]
    [InlineData(181, 60, 1)]
    [InlineData(182, 60, 2)]
    [InlineData(365, 60, 2)]
    [InlineData(365, 50, 1)]
    public void A_number_that_begins_anew_is_another_sample_unless_all_readings_are_the_same(
        int days,
        double water,
        int expected
    )
    {
        var readings = (double mgPerKg) =>
            new[] { (Measurands.WaterContent, new Reading(mgPerKg)), (Measurands.Iron, new Reading(3)) };
        var history = Invented.History([
            Invented.Sample(1, 0, readings(50)),
            Invented.Sample(1, days, readings(water)),
        ]);

        history.Samples.Count.ShouldBe(expected);
        history.Issues.Count.ShouldBe(2 - expected);
    }

    [Fact]
    public void One_reading_that_comes_back_after_a_year_is_no_proof_of_one_bottle() =>
        Invented.History([Water(1, 0, 50), Water(1, 365, 50)]).Samples.Count.ShouldBe(2);

    [Fact]
    public void Samples_without_a_number_are_called_by_their_moment_and_are_one_bottle_at_one_moment()
    {
        var at = Invented.Start.ToOffset(TimeSpan.FromHours(1));
        OilSample Unnumbered(DateTimeOffset moment, Measurand measurand) =>
            new("", moment, new Dictionary<Measurand, Reading> { [measurand] = new(5) });
        var history = Invented.History([
            Unnumbered(at, Measurands.Iron),
            Unnumbered(Invented.Start, Measurands.WaterContent),
            Unnumbered(Invented.Start.AddDays(1), Measurands.Iron),
            Unnumbered(new DateTimeOffset(2025, 3, 1, 0, 0, 0, TimeSpan.Zero), Measurands.Iron),
        ]);

        history
            .Samples.Select(sample => (sample.SampleNumber, sample.Readings.Count))
            .ShouldBe([("2025-01-06 09:00", 2), ("2025-01-07 08:00", 1), ("2025-03-01", 1)]);
        history.Samples[1].ToString().ShouldBe("unnumbered of 2025-01-07 08:00");
    }

    [Fact]
    public void Texts_of_all_reports_of_a_bottle_are_kept()
    {
        OilSample Report(double iron, params (string Header, string Text)[] texts) =>
            new(
                "S1",
                Invented.Start,
                new Dictionary<Measurand, Reading>
                {
                    [Measurands.Iron] = new(iron),
                    [Measurands.RelativeSaturation] = new(101),
                },
                texts.ToDictionary(one => one.Header, one => one.Text)
            );
        OilSample[] reports =
        [
            Report(3, ("Remark", "clear"), ("Colour", "L2.0")),
            Report(3, ("Remark", "bright"), ("Laboratory", "North")),
            Report(4, ("Remark", "clear")),
        ];
        foreach (var history in new[] { Invented.History(reports), Invented.History(reports.Reverse()) })
        {
            history
                .Samples.Single()
                .Texts.OrderBy(text => text.Key)
                .Select(text => $"{text.Key}={text.Value}")
                .ShouldBe(["Colour=L2.0", "Laboratory=North", "Remark=bright | clear"]);
        }
    }

    [Fact]
    public void Two_reports_of_one_bottle_are_put_together_and_believed_where_they_agree()
    {
        // The first report has iron, the second iron again, with its method, and acid number; over water they differ.
        OilSample[] reports =
        [
            Invented.Sample(1, 0, (Measurands.Iron, new Reading(7)), (Measurands.WaterContent, new Reading(60))),
            Invented.Sample(
                1,
                0,
                (Measurands.Iron, new Reading(7, Qualifier.None, "ASTM D5185")),
                (Measurands.AcidNumber, new Reading(0.1)),
                (Measurands.WaterContent, new Reading(600))
            ),
        ];
        foreach (var history in new[] { Invented.History(reports), Invented.History(reports.Reverse()) })
        {
            var sample = history.Samples.Single();
            sample.Readings.Keys.ShouldBe([Measurands.Iron, Measurands.AcidNumber], ignoreOrder: true);
            sample.Readings[Measurands.Iron].Method.ShouldBe("ASTM D5185");
            history.Issues.Select(issue => issue.Kind).Distinct().ShouldBe([HistoryIssueKind.ConflictingSample]);
            history.Issues.Select(issue => issue.Readings.Single().Value.Value).ShouldBe([60, 600], ignoreOrder: true);
        }
    }

    [Fact]
    public void A_part_report_before_the_whole_one_is_no_contradiction()
    {
        var history = Invented.History([
            Water(1, 0, 60),
            Invented.Sample(1, 0, (Measurands.WaterContent, new Reading(60)), (Measurands.Iron, new Reading(3))),
        ]);

        history.Samples.Single().Readings.Count.ShouldBe(2);
        history.Issues.Single().Kind.ShouldBe(HistoryIssueKind.RepeatedSample);
    }

    [Fact]
    public void Any_order_of_reports_that_contradict_each_other_gives_the_same_records() =>
        Gen.Select(Gen.Select(Gen.Int[0, 2], Gen.Int[0, 1], Gen.Int[0, 2], Gen.Int[0, 2]).Array[1, 8], Gen.Int[0, 1000])
            .Holds(
                (raw, seed) =>
                {
                    var reports = raw.Select(one =>
                            Invented.Sample(
                                one.Item1,
                                one.Item2,
                                (Measurands.WaterContent, new Reading(50 + one.Item3)),
                                (Measurands.Iron, new Reading(one.Item4, Qualifier.None, one.Item3 == 0 ? "" : "D5185"))
                            )
                        )
                        .ToList();
                    var random = new Random(seed);

                    Written(Invented.History(reports.OrderBy(_ => random.Next())))
                        .ShouldBe(Written(Invented.History(reports)));

                    static string Written(OilHistory history) =>
                        string.Join(
                            "\n",
                            history
                                .Samples.Select(one => (one.SampleNumber, one.TakenAt, "", one.Readings))
                                .Concat(
                                    history.Issues.Select(one =>
                                        (one.SampleNumber, one.At, one.Kind.ToString(), one.Readings)
                                    )
                                )
                                .Select(one =>
                                    $"{one.Item1} {one.Item2:O} {one.Item3} "
                                    + string.Join(
                                        " ",
                                        one.Readings.OrderBy(pair => pair.Key.Id)
                                            .Select(pair => $"{pair.Key.Id}={pair.Value}{pair.Value.Method}")
                                    )
                                )
                        );
                },
                iter: 500
            );

    [Fact]
    public void A_sensor_row_and_an_oil_change_that_are_there_twice_count_once()
    {
        SensorReading Row(double percent) =>
            new(Invented.Start, new Dictionary<Measurand, Reading> { [Measurands.RelativeSaturation] = new(percent) });
        var change = Invented.Start.AddDays(1);
        var history = OilHistory.Create(
            Invented.Machine,
            [],
            [Row(30), Row(40), Row(30)],
            [new OilChange(change), new OilChange(change), new OilChange(change.AddHours(1))]
        );

        history.SensorReadings.Count.ShouldBe(2);
        history.Events.Count.ShouldBe(2);
        // Entered twice, an hour apart: one charge.
        history.ChargeAt(change.AddDays(1)).Since.ShouldBe(change.AddHours(1));
        history.Issues.ShouldBeEmpty();
    }

    [Fact]
    public void A_moment_that_was_never_set_is_refused_with_its_name_and_range()
    {
        var readings = new Dictionary<Measurand, Reading>();
        Should
            .Throw<ArgumentOutOfRangeException>(() => new OilSample("S1", default, readings))
            .Message.ShouldContain("takenAt is 0001-01-01; allowed: 1900 to 2199");
        Should.Throw<ArgumentOutOfRangeException>(() => new SensorReading(default, readings)).ParamName.ShouldBe("at");
        Should
            .Throw<ArgumentOutOfRangeException>(() => new OilChange(DateTimeOffset.MaxValue))
            .ParamName.ShouldBe("at");
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                new TreatmentRun(
                    Invented.Start,
                    DateTimeOffset.MaxValue,
                    TreatmentKind.Coalescer,
                    Measurands.WaterContent,
                    50
                )
            )
            .ParamName.ShouldBe("endedAt");
    }

    [Fact]
    public void An_implausible_reading_is_set_aside_and_the_others_are_kept()
    {
        var history = Invented.History([
            Invented.Sample(
                1,
                0,
                (Measurands.WaterContent, new Reading(-5)),
                (Measurands.AcidNumber, new Reading(0.1))
            ),
        ]);

        history.Samples.Single().Readings.Keys.ShouldBe([Measurands.AcidNumber]);
        var issue = history.Issues.Single();
        issue.Kind.ShouldBe(HistoryIssueKind.ImplausibleReading);
        issue.Readings[Measurands.WaterContent].Value.ShouldBe(-5);
    }

    [Fact]
    public void An_oil_change_starts_a_new_charge()
    {
        var history = Invented.History([Water(1, 0, 50), Water(2, 100, 60)], new OilChange(Invented.Start.AddDays(50)));

        history.ChargeAt(Invented.Start.AddDays(49)).ToString().ShouldBe("undated");
        var second = history.ChargeAt(Invented.Start.AddDays(50));
        second.ToString().ShouldBe("2025-02-25");
        second.Since.ShouldBe(Invented.Start.AddDays(50));
    }

    [Fact]
    public void Before_the_first_record_nothing_is_known_of_the_charge()
    {
        var charge = Invented.History([Water(1, 0, 50)]).ChargeAt(Invented.Start.AddDays(-1));

        charge.IsDated.ShouldBeFalse();
        charge.Since.ShouldBe(Invented.Start.AddDays(-1));
    }

    [Fact]
    public void A_change_that_is_entered_late_leaves_the_later_charge_its_name()
    {
        OilSample[] samples = [Water(1, 0, 50), Water(2, 100, 60)];
        var change = new OilChange(Invented.Start.AddDays(50));
        var now = Invented.Start.AddDays(100);

        var whole = Invented.History(samples, new OilChange(Invented.Start.AddDays(20)), change).ChargeAt(now);
        whole.ShouldBe(Invented.History(samples, change).ChargeAt(now));
        // The same moment with another offset, and a window in which the older records are gone.
        whole
            .ToString()
            .ShouldBe(
                Invented
                    .History([samples[1]], new OilChange(change.At.ToOffset(TimeSpan.FromHours(9))))
                    .ChargeAt(now)
                    .ToString()
            );
    }

    [Fact]
    public void Changes_a_day_or_more_apart_are_two_charges()
    {
        var change = Invented.Start.AddDays(50);
        OilCharge At(double hours) =>
            Invented
                .History([Water(1, 0, 50)], new OilChange(change), new OilChange(change.AddHours(24)))
                .ChargeAt(change.AddHours(hours));

        At(23).Since.ShouldBe(change);
        At(24).Since.ShouldBe(change.AddHours(24));
        int Charges(double hours) =>
            OilCharge.Starts([new OilChange(change), new OilChange(change.AddHours(hours))]).Count;
        Charges(23.99).ShouldBe(1);
        Charges(24).ShouldBe(2);
    }

    [Fact]
    public void A_bottle_of_another_oil_is_flagged_kept_and_left_out_of_the_series()
    {
        var samples = Enumerable
            .Range(0, 10)
            .Select(i =>
                Invented.Sample(
                    i,
                    30 * i,
                    (Measurands.Viscosity40, new Reading(i == 6 ? 321 : 46 + 0.1 * (i % 3))),
                    (Measurands.Zinc, new Reading(i == 6 ? 15 : 410 + 4 * (i % 4))),
                    (Measurands.WaterContent, new Reading(i == 6 ? 430 : 60))
                )
            );
        var history = Invented.History(samples);

        history.Issues.Single().SampleNumber.ShouldBe("S6");
        history.Samples.Count.ShouldBe(10);
        var series = history.SampleSeries(Measurands.WaterContent, Invented.Start, Invented.Start.AddDays(300));
        series.Points.Count.ShouldBe(9);
        series.LeftOut.Single().SampleNumber.ShouldBe("S6");
        series.LeftOut.Single().LeftOut.ShouldBe(LeftOutReason.SuspectSample);
    }

    [Fact]
    public void A_slug_of_water_with_dirt_is_no_other_oil()
    {
        var samples = Enumerable
            .Range(0, 10)
            .Select(i =>
                Invented.Sample(
                    i,
                    30 * i,
                    (Measurands.Viscosity40, new Reading(46 + 0.1 * (i % 3))),
                    (Measurands.Zinc, new Reading(410 + 4 * (i % 4))),
                    (Measurands.WaterContent, new Reading(i == 6 ? 2500 : 60)),
                    (Measurands.Iron, new Reading(i == 6 ? 80 : 4)),
                    (Measurands.Particles4, new Reading(i == 6 ? 90_000 : 1000))
                )
            );

        Invented.History(samples).Issues.ShouldBeEmpty();
    }

    [Fact]
    public void Censored_readings_stay_censored_in_the_series()
    {
        var history = Invented.History([
            Invented.Sample(1, 0, (Measurands.WaterContent, new Reading(10, Qualifier.LessThan))),
            Water(2, 5, 12),
        ]);
        var series = history.SampleSeries(Measurands.WaterContent, Invented.Start, Invented.Start.AddDays(10));

        series.Points[0].Reading.ToString().ShouldBe("<10");
        series.ToColumns().Values.ShouldBe([12]);
        series.ToColumns().Days.ShouldBe([5]);
    }

    [Theory]
    [InlineData(-1, false)]
    [InlineData(0, true)]
    [InlineData(9, true)]
    [InlineData(10, false)] // ended: its effect is there to be judged
    public void A_treatment_runs_from_its_start_until_just_before_its_end(int hours, bool expected)
    {
        var end = Invented.Start.AddHours(10);
        var run = new TreatmentRun(Invented.Start, end, TreatmentKind.VacuumDehydration, Measurands.WaterContent, 60);

        run.IsUnderWay(Invented.Start.AddHours(hours)).ShouldBe(expected);
    }
}
