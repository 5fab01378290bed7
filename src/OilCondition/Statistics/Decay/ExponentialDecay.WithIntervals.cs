using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <content>A fit among many with the intervals of its parts.</content>
public readonly partial record struct ExponentialDecay
{
    /// <summary>A decay with intervals of the profile likelihood for start, floor and rate.</summary>
    [StructLayout(LayoutKind.Auto)]
    public readonly record struct WithIntervals
    {
        internal WithIntervals(in ExponentialDecay fit, in Interval start, in Interval floor, in Interval rate)
        {
            Fit = fit;
            Start = start;
            Floor = floor;
            Rate = rate;
        }

        /// <summary>The best curve.</summary>
        public ExponentialDecay Fit { get; }

        /// <summary>Interval for the start.</summary>
        public Interval Start { get; }

        /// <summary>Interval for the floor, never below the lowest floor.</summary>
        public Interval Floor { get; }

        /// <summary>Interval for the rate: without a lower end a straight line is compatible, without an upper end a sudden drop.</summary>
        public Interval Rate { get; }

        /// <summary>The curve and its intervals.</summary>
        /// <returns>The fit, then start, floor and rate with their ends.</returns>
        public override string ToString() => $"{Fit}; start {Start}; floor {Floor}; rate {Rate}";
    }
}
