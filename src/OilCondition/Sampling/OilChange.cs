using OilCondition.Text;

namespace OilCondition;

/// <summary>The oil was drained and replaced: a new charge begins, with its own history and its own alert keys.</summary>
public sealed class OilChange : OilEvent
{
    /// <summary>An oil change.</summary>
    /// <param name="at">When the new charge went in; in the years 1900 to 2199.</param>
    /// <exception cref="ArgumentOutOfRangeException">The moment lies outside its range.</exception>
    public OilChange(DateTimeOffset at)
        : base(at, nameof(at)) { }

    /// <summary>What and when.</summary>
    /// <returns>For example <c>oil change on 2025-03-04</c>.</returns>
    public override string ToString() => $"oil change on {PlainText.Date(At)}";
}
