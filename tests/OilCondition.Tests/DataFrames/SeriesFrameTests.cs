using Microsoft.Data.Analysis;
using OilCondition.DataFrames;
using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Tests.DataFrames;

public class SeriesFrameTests
{
    [Fact]
    public void A_series_comes_back_with_its_times_values_and_bounds_and_the_same_trend()
    {
        var judged = HarrowPointFleet
            .Assessments.SelectMany(one => one.States)
            .Select(state => state.Trend.Judged)
            .ToList();
        judged.Sum(series => series.LeftOut.Count).ShouldBeGreaterThan(0);
        foreach (var series in judged.Where(series => !series.IsOverOilHours))
        {
            var frame = SeriesFrame.Of(series);
            var back = SeriesFrame.Read(frame, series.Measurand, out var problems);

            problems.ShouldBeEmpty();
            back.Points.Select(point => (point.At, point.At.Offset, point.Reading.Value, point.Reading.Qualifier))
                .ShouldBe(
                    series.Points.Select(point =>
                        (point.At, point.At.Offset, point.Reading.Value, point.Reading.Qualifier)
                    )
                );
            frame.Rows.Count.ShouldBe(series.Points.Count + series.LeftOut.Count);
        }
    }

    [Fact]
    public void What_was_left_out_stands_there_with_its_reason()
    {
        var series = HarrowPointFleet
            .Assessments.SelectMany(one => one.States)
            .Select(state => state.Trend.Judged)
            .First(one => one.LeftOut.Count > 0);
        var frame = SeriesFrame.Of(series);
        var last = frame.Rows.Count - 1;

        frame["leftOut"][0].ShouldBeNull();
        frame["leftOut"][last].ShouldBe(PlainText.Kebab(series.LeftOut[^1].LeftOut!.Value));
        frame["sampleNumber"][last].ShouldBe(series.LeftOut[^1].SampleNumber);
        frame["days"][0].ShouldBe(series.DaysAt(series.Points[0].At));
        frame["measurand"][0].ShouldBe(series.Measurand.Id);
    }

    [Fact]
    public void Rows_that_are_no_readings_are_reported_and_nulls_passed_over()
    {
        var at = new DateTime(2026, 3, 14, 0, 0, 0, DateTimeKind.Utc);
        var frame = new DataFrame(
            new DateTimeDataFrameColumn("atUtc", [at, at.AddDays(1), null, at.AddDays(3), at.AddDays(4)]),
            new DoubleDataFrameColumn("value", [5, null, 6, -1, 8]),
            new StringDataFrameColumn("qualifier", ["<", null, null, null, null])
        );

        var series = SeriesFrame.Read(frame, Measurands.Iron, out var problems);

        series
            .Points.Select(point => (point.Reading.Value, point.Reading.Qualifier))
            .ShouldBe([(5, Qualifier.LessThan), (8, Qualifier.None)]);
        // A loader of CSV makes empty texts of cells that are null.
        frame.Columns.Add(new StringDataFrameColumn("leftOut", ["", "wild", "", "", ""]));
        SeriesFrame.Read(frame, Measurands.Iron, out _).Points.Select(point => point.Reading.Value).ShouldBe([5, 8]);
        problems.Select(problem => (problem.Row, problem.Column)).ShouldBe([(2, "atUtc"), (3, "value")]);
        SeriesTrend.Of(series).Assessment.Verdict.ShouldBe(TrendVerdict.TooFewReadings);
        Should
            .Throw<FormatException>(() => SeriesFrame.Read(new DataFrame(), Measurands.Iron, out _))
            .Message.ShouldContain("'atUtc' is missing. column 'value' is missing");
    }
}
