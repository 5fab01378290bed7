using OilCondition.Text;

namespace OilCondition.Charts;

/// <summary>Words, units and size of a chart.</summary>
public sealed class ChartOptions
{
    /// <summary>Smallest and largest width and height in pixels.</summary>
    internal const int LeastWidth = 480;
    internal const int LeastHeight = 320;
    internal const int MostPixels = 4000;

    /// <summary>States how charts are drawn.</summary>
    /// <param name="texts">Words, with their units, numbers and dates; null for <see cref="ChartTexts.English"/>.</param>
    /// <param name="utcOffset">Offset of the dates on the axis, −14 h to +14 h in whole minutes; null for that of now, or of the latest record.</param>
    /// <param name="width">Width, 480 to 4000 pixels.</param>
    /// <param name="height">Height, 320 to 4000 pixels.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size or the offset lies outside its range.</exception>
    public ChartOptions(ChartTexts? texts = null, TimeSpan? utcOffset = null, int width = 900, int height = 520)
    {
        if (utcOffset is { } offset)
        {
            Guard.InRange(offset.TotalHours, -14, 14, "h", nameof(utcOffset));
            if (offset.Ticks % TimeSpan.TicksPerMinute != 0)
            {
                throw new ArgumentOutOfRangeException(
                    nameof(utcOffset),
                    $"utcOffset is {offset}; allowed: whole minutes."
                );
            }
        }

        Texts = texts ?? ChartTexts.English;
        UtcOffset = utcOffset;
        Width = Side(width, LeastWidth, nameof(width));
        Height = Side(height, LeastHeight, nameof(height));
    }

    /// <summary>English, SI, 900 × 520 pixels.</summary>
    public static ChartOptions Default { get; } = new();

    /// <summary>Words, with their units, numbers and dates.</summary>
    public ChartTexts Texts { get; }

    /// <summary>Offset of the dates on the axis; null for that of now, or of the latest record.</summary>
    public TimeSpan? UtcOffset { get; }

    /// <summary>Width in pixels.</summary>
    public int Width { get; }

    /// <summary>Height in pixels.</summary>
    public int Height { get; }

    internal static int Side(int pixels, int least, string name) =>
        (int)Guard.InRange(pixels, least, MostPixels, "pixels", name);

    /// <summary>Size, language and units.</summary>
    /// <returns>For example <c>900 × 520 pixels, en, SI</c>.</returns>
    public override string ToString() => FormattableString.Invariant($"{Width} × {Height} pixels, {Texts}");
}
