using OilCondition.Text;
using UnitsNet;

namespace OilCondition;

/// <summary>New oil was added to the charge.</summary>
public sealed class TopUp : OilEvent
{
    /// <summary>A top-up.</summary>
    /// <param name="at">When it was done; in the years 1900 to 2199.</param>
    /// <param name="volume">How much was added, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The volume is not above 0, or the moment outside its range.</exception>
    public TopUp(DateTimeOffset at, Volume volume)
        : base(at, nameof(at))
    {
        Guard.Positive(volume.Liters, "L", nameof(volume));
        Volume = volume;
    }

    /// <summary>How much was added.</summary>
    public Volume Volume { get; }

    /// <summary>What and when.</summary>
    /// <returns>For example <c>top-up of 20 L on 2025-03-04</c>.</returns>
    public override string ToString() => $"top-up of {PlainText.Number(Volume.Liters)} L on {PlainText.Date(At)}";
}
