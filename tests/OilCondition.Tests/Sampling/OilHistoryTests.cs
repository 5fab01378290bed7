using OilCondition.Sampling;

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

        history.ChargeAt(Invented.Start.AddDays(49)).Number.ShouldBe(1);
        var second = history.ChargeAt(Invented.Start.AddDays(50));
        second.Number.ShouldBe(2);
        second.Since.ShouldBe(Invented.Start.AddDays(50));
    }

    [Fact]
    public void A_moment_before_the_first_record_is_refused_with_both_dates()
    {
        var history = Invented.History([Water(1, 0, 50)]);

        var error = Should.Throw<ArgumentOutOfRangeException>(() => history.ChargeAt(Invented.Start.AddDays(-1)));
        error.Message.ShouldContain("asOf is 2025-01-05 08:00:00Z");
        error.Message.ShouldContain("the first record is of 2025-01-06 08:00:00Z");
        error.Message.ShouldContain("M1");
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
        series.LeftOut.Single().Point.SampleNumber.ShouldBe("S6");
        series.LeftOut.Single().Reason.ShouldBe(LeftOutReason.SuspectSample);
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
}
