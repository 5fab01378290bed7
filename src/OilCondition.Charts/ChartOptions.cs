using OilCondition.Text;

namespace OilCondition.Charts;

/// <summary>Size, words and units of a chart.</summary>
public sealed class ChartOptions
{
    /// <summary>Smallest and largest width and height in pixels.</summary>
    internal const int LeastWidth = 480;
    internal const int LeastHeight = 320;
    internal const int MostPixels = 4000;

    /// <summary>States how charts are drawn.</summary>
    /// <param name="texts">Words, and how numbers and dates are written; null for <see cref="ChartTexts.English"/>.</param>
    /// <param name="units">Units of the figures.</param>
    /// <param name="utcOffset">Offset of the dates on the axis, −14 h to +14 h in whole minutes; null for that of now, or of the latest record.</param>
    /// <param name="width">Width, 480 to 4000 pixels.</param>
    /// <param name="height">Height, 320 to 4000 pixels.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size or the offset lies outside its range.</exception>
    public ChartOptions(
        ChartTexts? texts = null,
        ChartUnits units = ChartUnits.Si,
        TimeSpan? utcOffset = null,
        int width = 900,
        int height = 520
    )
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
        Units = units;
        UtcOffset = utcOffset;
        Width = Side(width, LeastWidth, nameof(width));
        Height = Side(height, LeastHeight, nameof(height));
    }

    /// <summary>English, SI, 900 × 520 pixels.</summary>
    public static ChartOptions Default { get; } = new();

    /// <summary>Words, and how numbers and dates are written.</summary>
    public ChartTexts Texts { get; }

    /// <summary>Units of the figures.</summary>
    public ChartUnits Units { get; }

    /// <summary>Offset of the dates on the axis; null for that of now, or of the latest record.</summary>
    public TimeSpan? UtcOffset { get; }

    /// <summary>Width in pixels.</summary>
    public int Width { get; }

    /// <summary>Height in pixels.</summary>
    public int Height { get; }

    internal static int Side(int pixels, int least, string name) =>
        (int)Guard.InRange(pixels, least, MostPixels, "pixels", name);

    /// <summary>Size, units and language.</summary>
    /// <returns>For example <c>900 × 520 pixels, si, en</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Width} × {Height} pixels, {PlainText.Spaced(Units)}, {Texts.Language}");
}
