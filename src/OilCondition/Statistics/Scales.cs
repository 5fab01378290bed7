using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>From values to the scale on which they scatter evenly, and back.</summary>
internal static class Scales
{
    public static double[] Transformed(ReadOnlySpan<double> values, NaturalScale scale, string name)
    {
        Numbers.Check(values, name);
        var transformed = values.ToArray();
        for (var i = 0; scale == NaturalScale.Logarithmic && i < transformed.Length; i++)
        {
            transformed[i] = Math.Log(Guard.Positive(transformed[i], "", name));
        }

        return transformed;
    }

    /// <summary>Back to the unit of the values, kept finite.</summary>
    public static double Back(double transformed, NaturalScale scale) =>
        scale == NaturalScale.Logarithmic ? Math.Exp(Math.Min(transformed, 700)) : transformed;
}
