namespace OilCondition.Sampling;

/// <summary>One measurand on one time axis, in order of time. Censored readings stay censored.</summary>
public sealed class MeasurandSeries
{
    internal MeasurandSeries(
        Measurand measurand,
        DateTimeOffset origin,
        IReadOnlyList<SeriesPoint> points,
        IReadOnlyList<SeriesPoint> leftOut
    )
    {
        Measurand = measurand;
        Origin = origin;
        Points = points;
        LeftOut = leftOut;
    }

    /// <summary>The measurand.</summary>
    public Measurand Measurand { get; }

    /// <summary>Where the time axis starts.</summary>
    public DateTimeOffset Origin { get; }

    /// <summary>The readings, in order of time.</summary>
    public IReadOnlyList<SeriesPoint> Points { get; }

    /// <summary>Readings of suspect samples, kept out of the trend.</summary>
    public IReadOnlyList<SeriesPoint> LeftOut { get; }

    /// <summary>Days from the origin to a moment.</summary>
    /// <param name="at">The moment.</param>
    /// <returns>Days, negative before the origin.</returns>
    public double DaysAt(DateTimeOffset at) => (at - Origin).TotalDays;

    /// <summary>The readings that are values, as two columns of equal length.</summary>
    /// <returns>Days from the origin, ascending, and values in the measurand's unit.</returns>
    public (double[] Days, double[] Values) ToColumns()
    {
        var measured = Points.Where(point => !point.Reading.IsCensored).ToList();
        return ([.. measured.Select(point => DaysAt(point.At))], [.. measured.Select(point => point.Reading.Value)]);
    }
}
