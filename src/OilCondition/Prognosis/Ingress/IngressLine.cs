using MathNet.Numerics.Distributions;
using OilCondition.Statistics;

namespace OilCondition.Prognosis;

/// <summary>One slope through stretches that each have a level of their own, weighed by the precision of single readings.</summary>
internal sealed class IngressLine
{
    private const double Level = 0.05;
    private const double ClearlyBent = 0.01;
    private const int Rounds = 4;

    /// <summary>Two results differ by less than this many standard deviations in 95 of 100 cases.</summary>
    private const double DeviationsOfPrecision = 2.8;

    private readonly Stretch[] stretches;
    private readonly double squares;
    private readonly double scatter;
    private readonly int degrees;

    private IngressLine(Stretch[] stretches)
    {
        this.stretches = stretches;
        Stretches = [.. stretches.Select(one => one.Series)];
        Count = stretches.Sum(one => one.Count);
        squares = stretches.Sum(one => one.Sxx);
        SlopePerDay = stretches.Sum(one => one.Sxy) / squares;
        double[] residuals = [.. stretches.SelectMany(one => one.Residuals(SlopePerDay))];
        var parts = stretches.Length + 1;
        if (stretches.Length == 1 && stretches[0].Bend() is { Chance: < ClearlyBent } bend)
        {
            // A clear bend is no scatter: the slope is then the mean rate over the time seen.
            residuals = bend.Residuals;
            parts++;
        }

        degrees = Count - parts;
        var correlation = ResidualCorrelation.Corrected(residuals, parts);
        var widening = Math.Sqrt((1 + correlation) / (1 - correlation));

        // A run of lucky readings does not scatter less than the method does.
        scatter = Math.Max(1, Math.Sqrt(residuals.Sum(one => one * one) / degrees) * widening);
    }

    public IReadOnlyList<MeasurandSeries> Stretches { get; }

    public int Count { get; }

    /// <summary>mg/kg a day.</summary>
    public double SlopePerDay { get; }

    /// <summary>Whether a parabola falls below the line at its end, clearly; within the last stretch.</summary>
    public bool LevelsOff
    {
        get
        {
            var last = stretches[stretches.Length - 1];
            return last.Bend() is { } bend && bend.Size < 0 && bend.Chance < Level;
        }
    }

    /// <summary>The line, or null where there are too few readings.</summary>
    public static IngressLine? Of(IReadOnlyList<MeasurandSeries> all)
    {
        const int Fewest = 3;
        var usable = all.Select(Stretch.Of).OfType<Stretch>().ToArray();
        var alone = usable.LastOrDefault(one => one.Count >= Fewest);
        if (alone is null)
        {
            return usable.Sum(one => one.Count) - usable.Length < 2 ? null : Weighed(usable);
        }

        var latest = Weighed([alone]);
        return Weighed([
            .. usable
                .TakeWhile(one => one != alone)
                .Where(one => one.Count >= Fewest && latest.Resembles(Weighed([one]))),
            alone,
        ]);
    }

    public Interval Slope(double confidence, double times)
    {
        var half = IntervalLevel.StudentQuantile(confidence, IntervalSide.Both, degrees) * scatter / Math.Sqrt(squares);
        return Interval.Between(times * (SlopePerDay - half), times * (SlopePerDay + half), confidence);
    }

    /// <summary>Interval of the line at the last reading, mg/kg.</summary>
    public Interval LevelAtEnd(double confidence)
    {
        var last = stretches[stretches.Length - 1];
        var distance = last.LastDay - last.MeanDay;
        var value = last.MeanValue + SlopePerDay * distance;
        var half =
            IntervalLevel.StudentQuantile(confidence, IntervalSide.Both, degrees)
            * scatter
            * Math.Sqrt(1 / last.Weight + distance * distance / squares);
        return Interval.Between(value - half, value + half, confidence);
    }

    /// <summary>Weights depend on the line and the line on the weights: a few rounds settle it.</summary>
    private static IngressLine Weighed(Stretch[] stretches)
    {
        var line = new IngressLine(stretches);
        for (var round = 0; round < Rounds; round++)
        {
            var slope = line.SlopePerDay;
            line = new IngressLine([.. stretches.Select(one => one.WeighedAlong(slope))]);
        }

        return line;
    }

    /// <summary>Whether another line has the same slope and the same scatter, as far as tests at 5 % can tell.</summary>
    private bool Resembles(IngressLine other)
    {
        var larger = Math.Max(scatter, other.scatter);
        var smaller = Math.Min(scatter, other.scatter);
        var (above, below) = scatter >= other.scatter ? (degrees, other.degrees) : (other.degrees, degrees);
        var error = Math.Sqrt(scatter * scatter / squares + other.scatter * other.scatter / other.squares);
        var t = Math.Abs(SlopePerDay - other.SlopePerDay) / error;
        return FisherSnedecor.CDF(above, below, larger * larger / (smaller * smaller)) <= 1 - Level / 2
            && t <= IntervalLevel.StudentQuantile(1 - Level, IntervalSide.Both, Math.Min(degrees, other.degrees));
    }

    /// <summary>One stretch with its weights.</summary>
    private sealed class Stretch
    {
        private readonly double[] days;
        private readonly double[] values;
        private readonly double[] weights;

        private Stretch(MeasurandSeries series, double[] days, double[] values, double[] weights)
        {
            Series = series;
            this.days = days;
            this.values = values;
            this.weights = weights;
            Weight = weights.Sum();
            MeanDay = Sum(i => days[i]) / Weight;
            MeanValue = Sum(i => values[i]) / Weight;
            Sxx = Sum(i => (days[i] - MeanDay) * (days[i] - MeanDay));
            Sxy = Sum(i => (days[i] - MeanDay) * (values[i] - MeanValue));
        }

        public MeasurandSeries Series { get; }

        public int Count => days.Length;

        public double Weight { get; }

        public double MeanDay { get; }

        public double MeanValue { get; }

        public double Sxx { get; }

        public double Sxy { get; }

        public double LastDay => days[days.Length - 1];

        /// <summary>Null where there are fewer than two readings at different times.</summary>
        public static Stretch? Of(MeasurandSeries series)
        {
            var (days, values) = series.ToColumns();
            var level = values.Length > 0 ? values.Average() : 0;
            var weight = WeightAt(series, level);
            var stretch = new Stretch(series, days, values, [.. values.Select(_ => weight)]);
            return values.Length >= 2 && stretch.Sxx > 1e-9 * stretch.Weight ? stretch : null;
        }

        public Stretch WeighedAlong(double slope)
        {
            // Where the line runs below zero the readings tell how small they are.
            var least = 0.1 * values.Average();
            return new Stretch(
                Series,
                days,
                values,
                [.. days.Select(day => WeightAt(Series, Math.Max(least, MeanValue + slope * (day - MeanDay))))]
            );
        }

        /// <summary>Weighed sum of squares about a line of a slope through the middle.</summary>
        public double Left(double slope) => Residuals(slope).Sum(residual => residual * residual);

        /// <summary>Residuals in standard deviations of a reading.</summary>
        public IEnumerable<double> Residuals(double slope) =>
            days.Select((day, i) => Math.Sqrt(weights[i]) * (values[i] - MeanValue - slope * (day - MeanDay)));

        /// <summary>A parabola beside the line, with the chance that scatter alone bends it so; null where too few readings are.</summary>
        public (double Size, double Chance, double[] Residuals)? Bend()
        {
            const int Fewest = 8;
            if (Count < Fewest)
            {
                return null;
            }

            var slope = Sxy / Sxx;
            double[] square = [.. days.Select(day => (day - MeanDay) * (day - MeanDay))];
            var mean = Sum(i => square[i]) / Weight;
            var tilt = Sum(i => (days[i] - MeanDay) * (square[i] - mean)) / Sxx;
            double[] part = [.. days.Select((day, i) => square[i] - mean - tilt * (day - MeanDay))];
            var squares = Sum(i => part[i] * part[i]);
            if (!(squares > 0))
            {
                return null;
            }

            var size = Sum(i => part[i] * (values[i] - MeanValue - slope * (days[i] - MeanDay))) / squares;
            var left = Math.Max(Count - 3, Left(slope) - size * size * squares) / (Count - 3);
            var t = size * Math.Sqrt(squares / left);
            return (
                size,
                StudentDistribution.TwoSidedTail(t, Count - 3),
                [.. Residuals(slope).Select((residual, i) => residual - Math.Sqrt(weights[i]) * size * part[i])]
            );
        }

        private double Sum(Func<int, double> of)
        {
            double sum = 0;
            for (var i = 0; i < days.Length; i++)
            {
                sum += weights[i] * of(i);
            }

            return sum;
        }

        private static double WeightAt(MeasurandSeries series, double level)
        {
            var absolute = series.Measurand.AbsolutePrecision / DeviationsOfPrecision;
            var relative = series.Measurand.RelativePrecision / DeviationsOfPrecision * level;
            return 1 / (absolute * absolute + relative * relative);
        }
    }
}
