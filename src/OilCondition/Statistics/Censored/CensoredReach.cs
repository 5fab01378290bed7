namespace OilCondition.Statistics;

/// <summary>How far a quantity reaches before the likelihood of its best curve falls below a limit.</summary>
internal static class CensoredReach
{
    /// <summary>
    /// Where a function that is not negative inside passes zero on the way outside; null if it never does. Doubling steps first, then the
    /// false position (Illinois) on sqrt(ln likelihood lost), which is nearly a straight line.
    /// </summary>
    /// <param name="inside">ln of the likelihood less the limit.</param>
    /// <param name="room">Its largest value.</param>
    /// <param name="from">Where it has that.</param>
    /// <param name="to">How far to look.</param>
    /// <param name="step">First step, above 0.</param>
    public static double? Edge(Func<double, double> inside, double room, double from, double to, double step)
    {
        double Height(double excess) => Math.Sqrt(room) - Math.Sqrt(Math.Max(0, room - excess));
        var away = Math.Sign(to - from);
        step = away * Math.Max(step, 1e-6 * Math.Abs(to - from));
        var high = Math.Sqrt(room);
        double outside;
        double low;
        do
        {
            outside = (from + step - to) * away < 0 ? from + step : to;
            low = Height(inside(outside));
            if (low >= 0)
            {
                if (outside == to)
                {
                    return null;
                }

                (from, high) = (outside, low);
                step *= 2;
            }
        } while (low >= 0);

        var lastSide = 0;
        for (var i = 0; i < 60 && Math.Abs(outside - from) > 1e-8 * (1 + Math.Abs(from)); i++)
        {
            var middle = outside - low * (outside - from) / (low - high);
            var height = Height(inside(middle));
            var side = height >= 0 ? 1 : -1;
            if (Math.Abs(height) < 1e-7 * Math.Sqrt(room))
            {
                return middle;
            }

            if (side > 0)
            {
                (from, high) = (middle, height);
                low *= lastSide == side ? 0.5 : 1;
            }
            else
            {
                (outside, low) = (middle, height);
                high *= lastSide == side ? 0.5 : 1;
            }

            lastSide = side;
        }

        return from;
    }
}
