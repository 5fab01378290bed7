namespace OilCondition.Cleanup;

/// <summary>How the interval of a derived figure is made.</summary>
internal enum CleanupFigureMethod
{
    /// <summary>Profile likelihood: all curves that are compatible with the readings.</summary>
    Profile,

    /// <summary>Delta method: standard error from the covariance of the fit, Student's t.</summary>
    Delta,

    /// <summary>From the ends of two intervals, each at half the uncertainty: covers at least as often as stated.</summary>
    TwoIntervals,
}
