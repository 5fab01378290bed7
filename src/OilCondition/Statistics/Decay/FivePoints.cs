namespace OilCondition.Statistics;

/// <summary>The lowest point of a polynomial through values at −2, −1, 0, 1 and 2, of which the middle one is the lowest.</summary>
internal static class FivePoints
{
    /// <summary>Where the lowest point is.</summary>
    /// <param name="values">The values.</param>
    /// <param name="wide">Whether all five count (a quartic) or only the middle three (a parabola).</param>
    public static double Lowest(ReadOnlySpan<double> values, bool wide)
    {
        var slope = 0.5 * (values[3] - values[1]);
        var bend = values[1] - 2 * values[2] + values[3];
        var at = bend > 0 ? -slope / bend : 0;
        if (!wide)
        {
            return at;
        }

        var (third, fourth) = Quartic(values, ref slope, ref bend);
        for (var i = 0; i < 2; i++)
        {
            var second = bend + at * (third + at * fourth / 2);
            at -= second > 0 ? (slope + at * (bend + at * (third / 2 + at * fourth / 6))) / second : 0;
        }

        return at;
    }

    /// <summary>The least value of the quartic between −1 and 1; where it misbehaves, the middle one.</summary>
    public static double Least(ReadOnlySpan<double> values)
    {
        var at = Lowest(values, wide: true);
        var slope = 0.5 * (values[3] - values[1]);
        var bend = values[1] - 2 * values[2] + values[3];
        var (third, fourth) = Quartic(values, ref slope, ref bend);
        var fall = at * (slope + at * (bend / 2 + at * (third / 6 + at * fourth / 24)));
        return at > -1 && at < 1 && fall < 0 ? values[2] + fall : values[2];
    }

    /// <summary>Derivatives of the quartic from the differences of one step, which are given, and of two.</summary>
    private static (double Third, double Fourth) Quartic(ReadOnlySpan<double> values, ref double slope, ref double bend)
    {
        var slopeOfTwo = 0.5 * (values[4] - values[0]);
        var bendOfTwo = values[4] - 2 * values[2] + values[0];
        var third = slopeOfTwo - 2 * slope;
        var fourth = bendOfTwo - 4 * bend;
        slope = (8 * slope - slopeOfTwo) / 6;
        bend = (16 * bend - bendOfTwo) / 12;
        return (third, fourth);
    }
}
