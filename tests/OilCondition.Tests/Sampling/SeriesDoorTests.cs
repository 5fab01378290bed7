using OilCondition.Prognosis;
using OilCondition.Statistics;

namespace OilCondition.Tests.Sampling;

/// <summary>Series from columns and from sensors: nothing lost, nothing invented, each fault with its row.</summary>
public class SeriesDoorTests
{
    private static DateTimeOffset Day(double day) => Invented.Start.AddDays(day);

    [Fact]
    public void Columns_in_any_order_make_the_series_that_samples_make()
    {
        double[] days = [60, 0, 30, 90, 120, 150];
        double[] values = [0.10, 0.08, 0.09, 0.11, 0.12, 0.13];
        var columns = MeasurandSeries.FromColumns(Measurands.AcidNumber, [.. days.Select(Day)], values);
        var samples = Invented
            .History([
                .. days.Select((day, i) => Invented.Sample(i, day, (Measurands.AcidNumber, new Reading(values[i])))),
            ])
            .SampleSeries(Measurands.AcidNumber, Day(0), Day(200));

        columns.ToColumns().Days.ShouldBe(samples.ToColumns().Days);
        columns.ToColumns().Values.ShouldBe([0.08, 0.09, 0.10, 0.11, 0.12, 0.13]);
        columns.Points[0].SampleNumber.ShouldBe("row 1");
        SeriesTrend.Of(columns).Assessment.PValue.ShouldBe(SeriesTrend.Of(samples).Assessment.PValue);
        LifeForecast
            .Of(columns, 0.3, LimitSide.Upper, Day(150))
            .ToString()
            .ShouldBe(LifeForecast.Of(samples, 0.3, LimitSide.Upper, Day(150)).ToString());
    }

    [Fact]
    public void Columns_keep_bounds_and_set_the_implausible_aside()
    {
        var series = MeasurandSeries.FromColumns(
            Measurands.WaterContent,
            [Day(0), Day(1), Day(2)],
            [10, -5, 40],
            [Qualifier.LessThan, Qualifier.None, Qualifier.None]
        );

        series.Points.Select(point => point.Reading.IsCensored).ShouldBe([true, false]);
        var left = series.LeftOut.Single();
        left.LeftOut.ShouldBe(LeftOutReason.Implausible);
        left.Reading.Value.ShouldBe(-5);
        MeasurandSeries.FromColumns(Measurands.WaterContent, [], []).Points.ShouldBeEmpty();
    }

    [Fact]
    public void Bad_columns_are_named_with_their_row()
    {
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                MeasurandSeries.FromColumns(Measurands.WaterContent, [Day(0), Day(1)], [10, double.NaN])
            )
            .Message.ShouldContain("values[1]");
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                MeasurandSeries.FromColumns(Measurands.WaterContent, [default, Day(1)], [10, 20])
            )
            .Message.ShouldContain("dates[0]");
        Should.Throw<ArgumentException>(() => MeasurandSeries.FromColumns(Measurands.WaterContent, [Day(0)], [10, 20]));
        Should.Throw<ArgumentException>(() => MeasurandSeries.FromColumns(Measurands.WaterContent, [Day(0)], [10], []));
    }

    [Fact]
    public void Sensors_make_a_series_in_which_the_middle_reading_stands_for_an_interval()
    {
        // Three readings on the first day, none on the second, two on the third.
        (double Day, double Percent)[] rows = [(0.1, 20), (0.5, 80), (0.9, 22), (2.2, 31), (2.6, 30)];
        var history = OilHistory.Create(
            Invented.Machine,
            [],
            [
                .. rows.Select(row => new SensorReading(
                    Day(row.Day),
                    new Dictionary<Measurand, Reading> { [Measurands.RelativeSaturation] = new(row.Percent) }
                )),
            ],
            []
        );

        history
            .SensorSeries(Measurands.RelativeSaturation, Day(0), Day(9))
            .ToColumns()
            .Values.ShouldBe([20, 80, 22, 31, 30]);
        var daily = history.SensorSeries(Measurands.RelativeSaturation, Day(0), Day(9), TimeSpan.FromDays(1));
        daily.ToColumns().Values.ShouldBe([22, 30]);
        daily.ToColumns().Days[0].ShouldBe(0.9, 1e-9);
        history.SensorSeries(Measurands.Iron, Day(0), Day(9)).Points.ShouldBeEmpty();
        Should.Throw<ArgumentOutOfRangeException>(() =>
            history.SensorSeries(Measurands.RelativeSaturation, Day(0), Day(9), TimeSpan.Zero)
        );
    }

    [Fact]
    public void A_moisture_sensor_tells_water_content_by_the_curve_and_a_bound_at_saturation()
    {
        // Half of 100 mg/kg at 20 °C is 50 (the invented curve's own point); full saturation only says 'at least'.
        SensorReading Row(double day, double percent) =>
            new(
                Day(day),
                new Dictionary<Measurand, Reading>
                {
                    [Measurands.RelativeSaturation] = new(percent),
                    [Measurands.OilTemperature] = new(20),
                }
            );
        var history = OilHistory.Create(Invented.Machine, [], [Row(0, 50), Row(1, 100)], []);

        var series = history.SensorSeries(Measurands.WaterContent, Day(0), Day(9));

        series.Points[0].Reading.Value.ShouldBe(50, 1e-9);
        series.Points[0].Reading.Qualifier.ShouldBe(Qualifier.Approximately);
        series.Points[1].Reading.Qualifier.ShouldBe(Qualifier.GreaterThan);
    }
}
