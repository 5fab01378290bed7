namespace OilCondition.Statistics;

/// <summary>How a quantile is read between sorted values x_1 … x_n (Hyndman and Fan 1996). The rules differ most in the tails.</summary>
/// <remarks>For the 95 % point of one sample of 40 skewed readings type 7 gives 39.4, type 8 44.2 and type 6 46.6 ppm: state the rule beside the figure.</remarks>
public enum QuantileRule
{
    /// <summary>Position p (n − 1) + 1: what spreadsheets and most numerical libraries do; too low in the upper tail of small samples.</summary>
    Type7,

    /// <summary>Position p (n + 1): the mean rank; on average p of new readings lie below. Beyond the extremes it stays at the extreme.</summary>
    Type6,

    /// <summary>Position p (n + 1/3) + 1/3: about median-unbiased for any distribution; recommended by Hyndman and Fan.</summary>
    Type8,
}
