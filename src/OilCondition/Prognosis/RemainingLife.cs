using OilCondition.Sampling;
using OilCondition.Statistics;

namespace OilCondition.Prognosis;

/// <summary>How long until a measurand crosses a limit: exactly one of the nested cases.</summary>
/// <remarks>
/// Straight line through the readings since the last oil change or treatment, on the measurand's natural scale; the prediction band
/// of one new reading is inverted (Fieller), and the chance is conditional on the limit not being crossed now. Sound when the
/// scatter is independent from sample to sample; see <see cref="StraightLineFit"/> for the formulas.
/// </remarks>
public abstract class RemainingLife
{
    private RemainingLife(MeasurandSeries series, double limit)
    {
        Series = series;
        Limit = limit;
    }

    /// <summary>The readings that were used.</summary>
    public MeasurandSeries Series { get; }

    /// <summary>The limit, in the measurand's unit.</summary>
    public double Limit { get; }

    /// <summary>The limit will be crossed, and both ends of the interval are known.</summary>
    public sealed class Crosses : RemainingLife
    {
        internal Crosses(MeasurandSeries series, double limit, StraightLineFit trend, LifeQuantile[] quantiles)
            : base(series, limit)
        {
            Trend = trend;
            P10 = quantiles[0];
            P50 = quantiles[1];
            P90 = quantiles[2];
        }

        /// <summary>The line, in days from the series' origin, on the measurand's natural scale.</summary>
        public StraightLineFit Trend { get; }

        /// <summary>Crossed by then in one case of ten: the date to plan with.</summary>
        public LifeQuantile P10 { get; }

        /// <summary>Crossed by then in half of the cases.</summary>
        public LifeQuantile P50 { get; }

        /// <summary>Crossed by then in nine cases of ten.</summary>
        public LifeQuantile P90 { get; }
    }

    /// <summary>The limit may be crossed from some date on, but the trend is too uncertain to say that it will be.</summary>
    public sealed class LateEndOpen : RemainingLife
    {
        internal LateEndOpen(MeasurandSeries series, double limit, StraightLineFit trend, LifeQuantile p10)
            : base(series, limit)
        {
            Trend = trend;
            P10 = p10;
        }

        /// <summary>The line, in days from the series' origin, on the measurand's natural scale.</summary>
        public StraightLineFit Trend { get; }

        /// <summary>Crossed by then in one case of ten.</summary>
        public LifeQuantile P10 { get; }
    }

    /// <summary>The last reading is beyond the limit.</summary>
    public sealed class AlreadyCrossed : RemainingLife
    {
        internal AlreadyCrossed(MeasurandSeries series, double limit)
            : base(series, limit) { }
    }

    /// <summary>The readings do not move towards the limit.</summary>
    public sealed class NotApproaching : RemainingLife
    {
        internal NotApproaching(MeasurandSeries series, double limit)
            : base(series, limit) { }
    }

    /// <summary>There are too few readings for a trend.</summary>
    public sealed class TooFewReadings : RemainingLife
    {
        internal TooFewReadings(MeasurandSeries series, double limit, int count, int needed)
            : base(series, limit)
        {
            Count = count;
            Needed = needed;
        }

        /// <summary>Readings there are.</summary>
        public int Count { get; }

        /// <summary>Readings needed.</summary>
        public int Needed { get; }
    }
}
