namespace OilCondition.Statistics;

/// <summary>How the ends of a Theil-Sen interval are read from the sorted slopes.</summary>
/// <remarks>
/// N slopes, C = z sqrt(Var S). Ranks from 1: lower (N − C)/2, upper (N + C)/2 + 1. The ranks are seldom whole, and the rules differ in what
/// they do then. For the sulfate series of the USEPA Unified Guidance, example 17-6, the upper 95 % end is 35.712 interpolated and 35.849 rounded.
/// </remarks>
internal enum TheilSenRankRule
{
    /// <summary>Interpolated between the neighbouring slopes (Gilbert 1987, section 16.5; USEPA Unified Guidance 2009, section 17.3.3).</summary>
    Interpolated,

    /// <summary>The nearest ranks, half to even: always two of the slopes themselves (as general numerical libraries do).</summary>
    Rounded,

    /// <summary>
    /// The exact distribution of S: the narrowest pair of slopes that covers at least as often as stated. Where ties or a correlation rule
    /// it out, or above 100 readings, interpolated.
    /// </summary>
    Exact,
}
