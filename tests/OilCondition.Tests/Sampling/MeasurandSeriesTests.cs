namespace OilCondition.Tests.Sampling;

public class MeasurandSeriesTests
{
    private static readonly DateTimeOffset End = Invented.Start.AddDays(1000);

    private static OilSample Iron(int number, double days, double ppm, double? hours = null, string method = "")
    {
        var readings = new List<(Measurand, Reading)> { (Measurands.Iron, new Reading(ppm, Qualifier.None, method)) };
        if (hours is { } meter)
        {
            readings.Add((Measurands.OilHours, new Reading(meter)));
        }

        return Invented.Sample(number, days, [.. readings]);
    }

    private static MeasurandSeries Series(params OilSample[] samples) =>
        Invented.History(samples).SampleSeries(Measurands.Iron, Invented.Start, End);

    [Fact]
    public void Over_oil_hours_wear_of_a_machine_that_rests_is_a_straight_line()
    {
        // 1 mg/kg per 100 oil hours; the machine runs hard, rests, and runs again.
        var series = Series(
            Iron(1, 0, 10, 1000),
            Iron(2, 10, 12, 1200),
            Iron(3, 90, 12.1, 1210),
            Iron(4, 100, 14, 1400)
        );

        series.TryOnOilHours(out var onHours).ShouldBeTrue();

        onHours!.IsOverOilHours.ShouldBeTrue();
        onHours.OilHoursPerDay!.Value.ShouldBe(4, 1e-12);
        var (days, values) = onHours.ToColumns();
        days.ShouldBe([0, 50, 52.5, 100], 1e-9); // 4 hours a day: 200 h are 50 days
        for (var i = 1; i < 4; i++)
        {
            ((values[i] - values[0]) / (days[i] - days[0])).ShouldBe(0.04, 1e-9);
        }
    }

    [Fact]
    public void The_axis_of_oil_hours_meets_the_calendar_at_the_last_reading_and_goes_on_at_the_mean_duty()
    {
        Series(Iron(1, 0, 10, 0), Iron(2, 10, 12, 300), Iron(3, 100, 14, 400)).TryOnOilHours(out var onHours);

        onHours!.DaysAt(Invented.Start.AddDays(100)).ShouldBe(100, 1e-9);
        onHours.DaysAt(Invented.Start.AddDays(130)).ShouldBe(130, 1e-9);
        onHours.DaysAt(Invented.Start.AddDays(10)).ShouldBe(75, 1e-9);
        onHours.DaysAt(Invented.Start.AddDays(5)).ShouldBe(37.5, 1e-9); // half-way between two readings
    }

    [Fact]
    public void Samples_without_oil_hours_are_left_out_and_said()
    {
        Series(Iron(1, 0, 10, 0), Iron(2, 10, 12), Iron(3, 100, 14, 400)).TryOnOilHours(out var onHours);

        onHours!.Points.Count.ShouldBe(2);
        var left = onHours.LeftOut.Single();
        left.SampleNumber.ShouldBe("S2");
        left.LeftOut.ShouldBe(LeftOutReason.NoOilHours);
    }

    [Fact]
    public void A_meter_that_ran_backwards_or_stood_still_gives_no_axis()
    {
        Series(Iron(1, 0, 10, 500), Iron(2, 10, 12, 20)).TryOnOilHours(out var backwards).ShouldBeFalse();
        backwards.ShouldBeNull();
        Series(Iron(1, 0, 10, 500), Iron(2, 10, 12, 499), Iron(3, 20, 14, 700)).TryOnOilHours(out _).ShouldBeFalse();
        Series(Iron(1, 0, 10, 500), Iron(2, 10, 12, 500)).TryOnOilHours(out _).ShouldBeFalse();
        Series(Iron(1, 0, 10, 500)).TryOnOilHours(out _).ShouldBeFalse();
    }

    [Fact]
    public void Readings_by_another_method_than_the_latest_are_left_out_and_said()
    {
        var series = Series(
            Iron(1, 0, 30, method: "RDE"),
            Iron(2, 10, 31, method: "RDE"),
            Iron(3, 20, 22),
            Iron(4, 30, 22, method: "ICP"),
            Iron(5, 40, 23, method: "icp")
        );

        series.Points.Select(point => point.SampleNumber).ShouldBe(["S3", "S4", "S5"]);
        series
            .LeftOut.Select(left => left.LeftOut!.Value)
            .ShouldBe([LeftOutReason.OtherMethod, LeftOutReason.OtherMethod]);
    }

    [Fact]
    public void A_reading_without_method_equals_the_default()
    {
        new Reading(0).ShouldBe(default);
        default(Reading).Method.ShouldBe("");
    }
}
