namespace OilCondition.Statistics;

/// <summary>How the scatter of the readings goes with their size. A wrong choice makes intervals too narrow; a residual check suggests the other.</summary>
public enum DecayNoise
{
    /// <summary>The same standard deviation for every reading, or in proportion to 1/sqrt(weight) where weights are given.</summary>
    Constant,

    /// <summary>Standard deviation in proportion to the true value: weights 1/curve², iterated until they agree with the curve.</summary>
    Proportional,

    /// <summary>Normal scatter of the logarithm: least squares in ln y, for counts that fall over decades. All values must be above 0.</summary>
    Logarithmic,

    /// <summary>
    /// A constant part and one in proportion to the true value, variance a² + (b y)² (Rocke and Lorenzato 1995), told from the readings. For who
    /// does not know which: intervals then hold about as often as they say in either case, a little wider than with the right one.
    /// </summary>
    TwoComponent,
}
