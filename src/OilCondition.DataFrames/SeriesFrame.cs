using Microsoft.Data.Analysis;
using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>One measurand over time as a frame, and back.</summary>
/// <example>
/// <code>
/// var points = SeriesFrame.Of(state.Trend.Judged);         // what was left out stands there with its reason
/// var series = SeriesFrame.Read(points, Measurands.Iron, out var problems);
/// </code>
/// </example>
public static class SeriesFrame
{
    /// <summary>A row for each reading of a series, in order of time, then for each that was left out.</summary>
    /// <param name="series">The series.</param>
    /// <returns>A new frame.</returns>
    public static DataFrame Of(MeasurandSeries series)
    {
        var measurand = Guard.NotNull(series).Measurand;
        return new FrameShape<SeriesPoint>()
            .Text(FrameNames.Measurand, _ => measurand.Id)
            .Text(FrameNames.Unit, _ => measurand.Unit)
            .MomentWithOffset(point => point.At)
            .Number("days", point => series.DaysAt(point.At))
            .Number(FrameNames.Value, point => point.Reading.Value)
            .Text(FrameNames.Qualifier, point => QualifierSign.Of(point.Reading.Qualifier))
            .Word(FrameNames.Method, point => point.Reading.Method)
            .Number("reported", point => point.Reported.Value)
            .Text("reportedQualifier", point => QualifierSign.Of(point.Reported.Qualifier))
            .Word(FrameNames.SampleNumber, point => point.SampleNumber)
            .Number("oilHours", point => point.OilHours)
            .Text("leftOut", point => point.LeftOut is { } reason ? PlainText.Kebab(reason) : null)
            .Of([.. series.Points, .. series.LeftOut]);
    }

    /// <summary>The series of a frame with <c>atUtc</c> and <c>value</c>, and <c>offsetMinutes</c>, <c>qualifier</c>, <c>leftOut</c> where there are such.</summary>
    /// <remarks>Rows that were left out stay out. A null value is no reading. The sample number of a point is its row, as in <see cref="MeasurandSeries.FromColumns"/>.</remarks>
    /// <param name="frame">The frame.</param>
    /// <param name="measurand">The measurand, in whose unit the values are.</param>
    /// <param name="problems">What was not taken over, in order of the rows.</param>
    /// <returns>The series of the other rows.</returns>
    /// <exception cref="FormatException">Columns are missing or of another type: all of them are named.</exception>
    public static MeasurandSeries Read(DataFrame frame, Measurand measurand, out IReadOnlyList<FrameProblem> problems)
    {
        Guard.NotNull(measurand);
        var input = new FrameInput(Guard.NotNull(frame));
        var moments = new MomentCells(input);
        var value = input.Number(FrameNames.Value, isNeeded: true);
        var qualifier = input.Text(FrameNames.Qualifier);
        var leftOut = input.Text("leftOut");
        input.ThrowIfFaulty("a series");
        var (found, dates, readings) = (new List<FrameProblem>(), new List<DateTimeOffset>(), new List<Reading>());
        for (var row = 0; row < input.RowCount; row++)
        {
            if (
                string.IsNullOrEmpty(leftOut(row))
                && value(row) is { } number
                && moments.TryRead(row, found, out var at)
                && ReadingCell.Of(
                    input,
                    row,
                    measurand,
                    number,
                    qualifier(row),
                    null,
                    (FrameNames.Value, FrameNames.Qualifier),
                    found
                )
                    is { } reading
            )
            {
                dates.Add(at);
                readings.Add(reading);
            }
        }

        problems = found;
        return MeasurandSeries.FromColumns(
            measurand,
            dates,
            readings.ConvertAll(reading => reading.Value),
            readings.ConvertAll(reading => reading.Qualifier)
        );
    }
}
