using System.Globalization;
using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Interactive.Views;

/// <summary>A figure with its interval, in as many digits as tell the two ends apart: a slope of 1.0021 known to 0.0009 must not read '1, from 1 to 1'.</summary>
internal static class Known
{
    private const int MostDecimals = 12;

    public static string Text(double estimate, Interval interval)
    {
        if (interval is not { Lower: { } lower, Upper: { } upper } || !(upper > lower))
        {
            return $"{PlainText.Number(estimate)}; {interval}";
        }

        var decimals = Math.Max(0, 1 - (int)Math.Floor(Math.Log10(upper - lower)));
        if (decimals > MostDecimals)
        {
            return $"{PlainText.Number(estimate)}; {interval}";
        }

        // The sum with 0 makes 0 of minus 0.
        string Round(double value) =>
            (Math.Round(value, decimals) + 0.0).ToString(
                "0." + new string('#', decimals),
                CultureInfo.InvariantCulture
            );
        var doubt = interval.CoverageInDoubt ? ", covers less often than stated" : "";
        return $"{Round(estimate)}; {Round(lower)} to {Round(upper)} ({PlainText.Number(100 * interval.Confidence)} %){doubt}";
    }
}
