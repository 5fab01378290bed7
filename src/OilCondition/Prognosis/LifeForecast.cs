using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Prognosis;

/// <summary>Forecasts when a measurand crosses a limit.</summary>
/// <example>
/// <code>
/// var life = LifeForecast.Of(series, limit: 0.3, LimitSide.Upper, asOf);
/// if (life is RemainingLife.Crosses crosses)
/// {
///     Console.WriteLine($"plan for {crosses.P10:yyyy-MM-dd}, expected {crosses.P50:yyyy-MM-dd}");
/// }
/// </code>
/// </example>
public static class LifeForecast
{
    /// <summary>Fewest readings for an interval worth acting on.</summary>
    public const int FewestReadings = 5;

    /// <summary>Fewest readings where other machines have taught how fast and how evenly such a measurand moves.</summary>
    public const int FewestReadingsWithFleet = Degradation.FewestWithFleet;

    /// <summary>How far a forecast looks: no oil charge lives longer.</summary>
    public const int HorizonYears = 30;

    internal const double HorizonDays = HorizonYears * 365.25;

    private const double Unlikely = 0.1;

    /// <summary>Forecasts one measurand against one limit.</summary>
    /// <remarks>
    /// The series is screened first, as an assessment does it (<see cref="SeriesTrend"/>): wild readings, and what lay before a change to the better, do not enter; a yearly
    /// cycle is taken out and goes on ahead. Censored readings do not enter. On a logarithmic measurand, and for exponential growth, logarithms are used, and
    /// readings of 0 do not enter. Readings at one moment count as their mean in the default model.
    /// </remarks>
    /// <param name="series">The readings since the last oil change or treatment.</param>
    /// <param name="limit">The limit, in the measurand's unit; above 0 where logarithms are used.</param>
    /// <param name="side">On which side it lies.</param>
    /// <param name="asOf">Now; in the years 1900 to 2199.</param>
    /// <param name="options">Model and prior knowledge; <see cref="LifeOptions.Default"/> where left out.</param>
    /// <returns>One of the cases of <see cref="RemainingLife"/>.</returns>
    /// <exception cref="ArgumentException">First-order loss was asked for an upper limit, or the fleet is one of another measurand.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not finite, or not above 0 where logarithms are used; now lies outside its range.</exception>
    public static RemainingLife Of(
        MeasurandSeries series,
        double limit,
        LimitSide side,
        DateTimeOffset asOf,
        LifeOptions? options = null
    ) => Of(SeriesTrend.Of(Guard.NotNull(series)), limit, side, asOf, options ?? LifeOptions.Default);

    /// <summary>The same for a series that has been judged.</summary>
    internal static RemainingLife Of(
        SeriesTrend trend,
        double limit,
        LimitSide side,
        DateTimeOffset asOf,
        LifeOptions options,
        FamilyDesigns? designs = null
    )
    {
        Guard.Moment(asOf);
        var series = trend.Judged;
        Check(series, side, options);
        var logarithmic = UsesLogarithms(series.Measurand, options.Model);
        var scaledLimit = logarithmic
            ? Math.Log(Guard.Positive(limit, series.Measurand.Unit))
            : Guard.Finite(limit, series.Measurand.Unit);
        if (side == LimitSide.Both)
        {
            throw new ArgumentOutOfRangeException(nameof(side), "side is Both; a single figure lies on one side.");
        }

        var question = new LifeQuestion(series, limit, side, options.Model);
        if (series.Points.Count > 0 && series.ReadingOf(series.Points.Count - 1).IsBeyond(limit, side))
        {
            return new RemainingLife.AlreadyCrossed(question);
        }

        // The cycle is known on the measurand's own scale only.
        var cycle = logarithmic == (series.Measurand.Scale == NaturalScale.Logarithmic) ? trend.Assessment.Cycle : null;
        var scaled = ScaledSeries.Of(series, logarithmic, cycle);
        if (scaled.Days.Length == 0 && ScaledSeries.OfBounds(series, limit, side, logarithmic) is { } bounds)
        {
            scaled = bounds;
        }

        var line = Statistics.StraightLine.Fit(scaled.Days, scaled.Values);
        var moments = Statistics.Numbers.CountDistinct(scaled.Days);
        var needed = options.NeededReadings;
        if (moments < needed || !line.IsDetermined)
        {
            return new RemainingLife.TooFewReadings(question, moments, needed);
        }

        var lastReadingAt = series.Origin.AddDays(scaled.Days[scaled.Days.Length - 1]);
        if (options.Model == LifeModel.FirstOrderLoss)
        {
            return Loss(question, scaled, line, options, lastReadingAt, asOf);
        }

        var law = Law(question, scaled, scaledLimit, cycle, options, Latest(lastReadingAt, asOf), designs);
        return Case(question, line, new CrossingForecast(law, lastReadingAt, asOf));
    }

    /// <summary>
    /// How far a law must reach: the horizon counts from now, the law from the last reading. Twice and twice again, so that its table has the same times
    /// whenever it is asked: a later now moves no chance.
    /// </summary>
    private static double Latest(DateTimeOffset lastReadingAt, DateTimeOffset asOf)
    {
        var latest = HorizonDays;
        while (latest < HorizonDays + (asOf - lastReadingAt).TotalDays)
        {
            latest *= 2;
        }

        return latest;
    }

    private static CrossingLaw Law(
        LifeQuestion question,
        ScaledSeries scaled,
        double limit,
        SeasonalCycle? cycle,
        LifeOptions options,
        double latest,
        FamilyDesigns? designs
    )
    {
        if (options.Model is not (LifeModel.Family or LifeModel.RandomWalk))
        {
            return LawOfLine(question, scaled, limit, latest);
        }

        var isFamily = options.Model == LifeModel.Family;
        var prior = isFamily ? options.Fleet?.Prior : DegradationPrior.RandomWalk;
        var error = isFamily ? question.Series.ReadingError : 0;
        using var fit = Degradation.Fit(scaled.Days, scaled.Values, prior, error, designs);
        return question.Side == LimitSide.Upper ? fit.Above(limit, latest, cycle) : fit.Below(limit, latest, cycle);
    }

    private static CrossingLaw LawOfLine(LifeQuestion question, ScaledSeries scaled, double limit, double latest)
    {
        // Mirrored for a lower limit, so that the line always has to rise to the limit.
        var sign = question.Side == LimitSide.Upper ? 1 : -1;
        var towards = Statistics.StraightLine.Fit(scaled.Days, [.. scaled.Values.Select(value => sign * value)]);
        var law = new LineLaw(
            towards,
            sign * limit,
            scaled.Days[scaled.Days.Length - 1],
            question.Model == LifeModel.LineNewReading ? BandKind.NewReading : BandKind.Mean
        );
        return CrossingLaw.Of(law.Passed, latest);
    }

    private static RemainingLife Loss(
        LifeQuestion question,
        ScaledSeries scaled,
        StraightLine trend,
        LifeOptions options,
        DateTimeOffset lastReadingAt,
        DateTimeOffset asOf
    )
    {
        var fit = Statistics.FirstOrderLoss.Fit(
            scaled.Days,
            scaled.Values,
            options.NewOilValue,
            options.MakeUpPercentPerYear / 100 / 365.25
        );
        var crossing = new CrossingForecast(
            fit.Below(question.Limit, Latest(lastReadingAt, asOf)),
            lastReadingAt,
            asOf
        );
        var ever = fit.ChanceEverBelow(question.Limit);
        return options.MakeUpPercentPerYear > 0 && ever < Unlikely
            ? new RemainingLife.HeldByMakeUp(question, trend, crossing, fit.Course.LongRun, ever)
            : Case(question, trend, crossing);
    }

    private static RemainingLife Case(LifeQuestion question, StraightLine trend, CrossingForecast crossing)
    {
        if (!crossing.TryAt(Unlikely, out var p10))
        {
            // What has most likely been passed since the last reading leaves nothing to be passed later: it is no limit that is far.
            return crossing.IsLikelyPassed
                ? new RemainingLife.NoLatestDate(question, trend, crossing, crossing.AsOf)
                : new RemainingLife.NotApproaching(question, trend, crossing);
        }

        return crossing.TryAt(0.5, out var p50) && crossing.TryAt(1 - Unlikely, out var p90)
            ? new RemainingLife.Crosses(question, trend, crossing, p10, p50, p90)
            : new RemainingLife.NoLatestDate(question, trend, crossing, p10);
    }

    private static bool UsesLogarithms(Measurand measurand, LifeModel model) =>
        model == LifeModel.ExponentialGrowth
        || (measurand.Scale == NaturalScale.Logarithmic && model != LifeModel.FirstOrderLoss);

    private static void Check(MeasurandSeries series, LimitSide side, LifeOptions options)
    {
        if (options.Model == LifeModel.FirstOrderLoss && side == LimitSide.Upper)
        {
            throw new ArgumentException(
                "side is Upper; first-order loss falls, so that its limit is a lower one.",
                nameof(side)
            );
        }

        if (options.Fleet is { } fleet && !fleet.Measurand.Equals(series.Measurand))
        {
            throw new ArgumentException(
                $"The fleet taught {fleet.Measurand.Id}, the series is of {series.Measurand.Id}.",
                nameof(options)
            );
        }
    }
}
