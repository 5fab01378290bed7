namespace OilCondition.Cleanup;

/// <summary>What is done about a first stage of a run that is no exponential fall, where no marker tells when it ended.</summary>
public enum FirstStageRule
{
    /// <summary>
    /// A slow start is looked for in the shape of the readings and left out: the first readings on a straight line that falls less than
    /// the exponential of the rest would have, where that describes the run far better than one exponential.
    /// </summary>
    Detect,

    /// <summary>The shape is not looked at; stated starts and readings at saturation still count.</summary>
    Keep,
}
