namespace OilCondition.Statistics;

/// <summary>One of several ways to read a series: on a clock of its own, or with a reading left out.</summary>
/// <param name="Times">Times on its clock, in order.</param>
/// <param name="Weights">Working weights; none are equal ones.</param>
/// <param name="Fit">The best curve with these weights.</param>
/// <param name="Found">What that fit found on its way.</param>
/// <param name="Clock">Its clock; null for the plain one.</param>
internal sealed record DecayView(
    double[] Times,
    double[] Weights,
    ExponentialDecay Fit,
    DecayFound Found,
    DecayClock? Clock
);
