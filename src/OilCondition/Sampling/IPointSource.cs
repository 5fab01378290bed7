namespace OilCondition;

/// <summary>Where a point of a series comes from: a sample, which has a reading of each measurand, or a point that was made for itself.</summary>
internal interface IPointSource
{
    /// <summary>Moment, number and oil hours.</summary>
    PointOrigin Origin { get; }

    /// <summary>Its reading of a measurand, which it has.</summary>
    Reading ReadingOf(Measurand measurand);

    /// <summary>The same as a point.</summary>
    SeriesPoint PointOf(Measurand measurand);
}
