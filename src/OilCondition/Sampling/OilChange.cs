namespace OilCondition.Sampling;

/// <summary>The oil was drained and replaced: a new charge begins, with its own history and its own alert keys.</summary>
public sealed class OilChange : OilEvent
{
    /// <summary>An oil change.</summary>
    /// <param name="at">When the new charge went in.</param>
    public OilChange(DateTimeOffset at)
        : base(at) { }
}
